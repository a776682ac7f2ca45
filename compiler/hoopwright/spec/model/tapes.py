"""The parts of a build on tapes: tapes, hem band, ties, lacing. Lengths in metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.library.model import Goods
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class TapeBuild:
    """The tapes that carry the hoops.

    ``waist_fractions`` and ``hem_fractions``: fractions of girth from centre front by the wearer's
    left, ascending, one a tape.
    """

    material: Goods
    count: int
    front_gap: float | None
    to: Literal["hem", "band"]
    waist_fractions: tuple[float, ...]
    hem_fractions: tuple[float, ...]


@record(frozen=True, slots=True)
class BandBuild:
    """The hem band: cloth folded double between the two lowest hoops.

    ``depth`` is between the two hoops' centres. ``cut_height`` is the maker's own rule, or None.
    """

    material: Goods
    depth: float
    grain: Literal["along", "across", "either"]
    cut_height: float | None


@record(frozen=True, slots=True)
class TieBuild:
    """Ties across the hoops, of ``material``: ``count`` beside each other on every hoop that needs any (0: as
    many as the oval asks for). ``lengths``: those the maker states, m, by hoop; they must agree with the oval."""

    material: Goods
    count: int
    lengths: tuple[tuple[str, float], ...] = ()


@record(frozen=True, slots=True)
class HipTieBuild:
    """Tapes from the front of a hoop round behind the hips, which hold a back-heavy cage off the legs: one on
    each of ``count`` hoops, from the one nearest the hips downward."""

    material: Goods
    count: int


@record(frozen=True, slots=True)
class LacingBuild:
    """A lacing inside half hoops: two panels of ``material`` at their ends, laced to each other with ``cord``
    through eyelets ``spacing`` m apart, ``gap`` m between the panels as laced. It sets the chord."""

    material: Goods
    cord: Goods
    gap: float
    spacing: float
