"""What the laying out of cloth reads and writes: plain frozen values, lengths in metres, money in Decimal.

Directions: x runs across the cloth from selvage to selvage, y along it (the warp, the lengthwise grain).
"""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from hoopwright.source.record import record

Grain = Literal["along", "across", "either"]
Way = Literal["crosswise", "lengthwise"]


@record(frozen=True, slots=True)
class Cloth:
    """A cloth as it is sold. `width` is the usable width (m) between selvages before washing; `step` (m)
    the shop's smallest step of length; `price` is for `per` m. `nap`: nothing may be turned upside down.
    Shrinkages are fractions lost in the first wash, before cutting. `most` is the longest length the shop
    has (m; None: no limit)."""

    name: str
    width: float
    step: float = 0.1
    price: Decimal | None = None
    per: float = 0.9144
    nap: bool = False
    shrink_along: float = 0.0
    shrink_across: float = 0.0
    most: float | None = None


@record(frozen=True, slots=True)
class Remnant:
    """A piece of the same cloth on hand, washed already: `width` across and `length` along its warp, m."""

    width: float
    length: float
    name: str = ""


@record(frozen=True, slots=True)
class Band:
    """A long strip: `length` round or along it and `height`, both as cut (turnings and ends included), m.

    It may be made of several strips, all cut in one direction. `join` is the stock one join takes from the
    length (two seam allowances; 0 for strips butted selvage to selvage), `ring` whether its two ends are
    joined as well. `grain` is the direction of the cloth's warp in relation to the band's length: "along"
    is cut lengthwise, "across" crosswise. `shortest` is the shortest strip allowed when there are several
    (m); a band that must not be joined sets it to its own length.
    """

    part: str
    length: float
    height: float
    join: float = 0.0
    ring: bool = False
    grain: Grain = "either"
    count: int = 1
    shortest: float = 0.2


@record(frozen=True, slots=True)
class Panel:
    """A rectangle, `width` by `height` as cut, m; `grain` "along" has its height along the warp."""

    part: str
    width: float
    height: float
    grain: Grain = "along"
    count: int = 1


@record(frozen=True, slots=True)
class Gore:
    """A symmetric trapezoid as cut, m: `top` and `bottom` widths, `height` along the warp; laid head to
    tail when the cloth has no nap."""

    part: str
    top: float
    bottom: float
    height: float
    count: int = 1


ClothPart = Band | Panel | Gore


@record(frozen=True, slots=True)
class Placement:
    """One piece on the cloth: the corner (`x`, `y`) of its bounding box, `width` across and `height` along
    the cloth, m.

    `turned` is a quarter turn against the part's own drawing (a band's length along the warp, a panel on
    its side); `flipped` a half turn (a gore head to tail). `outline` is the true shape, counter-clockwise,
    m.
    """

    part: str
    copy: int
    piece: int
    x: float
    y: float
    width: float
    height: float
    turned: bool
    flipped: bool
    outline: tuple[tuple[float, float], ...]


@record(frozen=True, slots=True)
class Sheet:
    """A cloth or remnant laid out: `width` and `length` (m, washed), and what lies on it."""

    source: Literal["bought", "on hand"]
    name: str
    width: float
    length: float
    placements: tuple[Placement, ...]


@record(frozen=True, slots=True)
class BandWay:
    """How one copy of a band is cut: strips of which lengths (m, those on remnants first), and its joins
    (ring join included)."""

    part: str
    way: Way
    strips: tuple[float, ...]
    joins: int
    copy: int = 0


@record(frozen=True, slots=True)
class ClothPlan:
    """A layout on one cloth. `used` is the least length found (m, as washed), `needed` the same before
    washing, `buy` that rounded up to the shop's step; `lower_bound` is on `used`. `proven`: no layout of
    these parts with these ways of cutting buys less. `used_crosswise` and `used_lengthwise`: the same with
    every free band cut that one way (None when a part forbids it)."""

    cloth: Cloth
    sheets: tuple[Sheet, ...]
    bands: tuple[BandWay, ...]
    used: float
    needed: float
    buy: float
    cost: Decimal | None
    joins: int
    lower_bound: float
    proven: bool
    used_crosswise: float | None
    used_lengthwise: float | None


@record(frozen=True, slots=True)
class TooWide:
    """A part that does not fit on the cloth in any direction its grain allows: `across` is what it needs,
    m."""

    part: str
    across: float
    usable: float


@record(frozen=True, slots=True)
class ClothShort:
    """The shop has less than the layout needs, m."""

    cloth: str
    needed: float
    most: float


@record(frozen=True, slots=True)
class BadCloth:
    """A value no cloth or part has: which one, and why."""

    what: str
    why: str


ClothProblem = TooWide | ClothShort | BadCloth


@record(frozen=True, slots=True)
class ClothFailure:
    """No layout: every reason found."""

    problems: tuple[ClothProblem, ...]
