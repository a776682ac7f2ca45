"""The parts of a build whose cloth carries it: panels, channels, flounces, side hoops. Lengths in metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.library.model import Goods
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class ChannelBuild:
    """The channels of a petticoat. ``material``: cloth or tape of applied casings, None for tucks.
    ``feed_gap``: length of the opening in each through which its hoop goes in; ``turning``: turned in on
    each edge of a casing; m."""

    kind: Literal["tuck", "applied casing"]
    material: Goods | None
    feed_gap: float
    turning: float


@record(frozen=True, slots=True)
class FlounceBuild:
    """A gathered strip round the petticoat: ``depth`` finished, its lower edge ``above_hem`` m above the
    hoop of the hem; ``fullness``: its length over the girth there. ``cut_height`` is the maker's own rule, or
    None."""

    material: Goods
    depth: float
    fullness: float
    above_hem: float
    cut_height: float | None


@record(frozen=True, slots=True)
class PanelBuild:
    """The petticoat's cloth: ``count`` gores, or straight breadths. ``top``: girth of its upper edge before
    it is gathered, ``placket``: length of the opening below the waist, m. ``cord`` is set where a drawstring
    closes it. ``gore``: the maker's own finished widths at top and hem, m, or None."""

    kind: Literal["gores", "breadths"]
    count: int
    material: Goods
    top: float
    placket: float
    cord: Goods | None
    gore: tuple[float, float] | None = None


@record(frozen=True, slots=True)
class SideBuild:
    """The cloth of side hoops: ``on_band`` of the waistband for each, its middle at the fraction ``at`` of
    the waist by the wearer's left; ``pocket`` length of the slit (None: as long as there is room, 8 in at
    most); a steel ``shorter`` than its channel; m. ``tie`` inside, of that tape."""

    material: Goods
    tie: Goods
    on_band: float
    at: float
    pocket: float | None
    shorter: float
