"""The resolved shape: hoops, tapes, bands and the lengths to cut. Geometry only.

Axes: origin on the floor under the waist's centre, x to the wearer's left, y to the front, z up; metres.
A fraction f of a girth runs from centre front (0) by the wearer's left (1/4) to centre back (1/2).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from hoopwright.shape.frames import SidePair, Wheel
from hoopwright.source.record import record
from hoopwright.spec.check import Check

Point = tuple[float, float, float]
XY = tuple[float, float]
TieKind = Literal["cross", "chord", "lacing", "strap", "hip"]
HoopPlace = Literal["top", "body", "band top", "hem"]


@record(frozen=True, slots=True)
class PlanOutline:
    """A hoop's outline from above: an ellipse ``width`` (left to right) by ``depth`` (front to back), m.

    ``offset`` is how far its centre lies behind the waist's centre, m, and ``sideways`` how far to the
    wearer's left. ``arc`` is the angle it spans, 2 pi for a closed hoop. A ``bow`` is a half hoop, a spring
    whose ends are held: ``width``, ``depth`` and ``offset`` are those of the box round it. ``path`` is the
    true line of an open hoop, from its end at the wearer's left to the other.
    ``tilt`` is the angle by which the hoop rises towards the back, radians.
    """

    kind: Literal["round", "oval", "bow"]
    width: float
    depth: float
    offset: float
    arc: float
    sideways: float = 0.0
    tilt: float = 0.0
    path: tuple[XY, ...] = ()


@record(frozen=True, slots=True)
class Fixing:
    """Where a tape is fixed to a hoop: tape id, fraction of the hoop's girth, and the point in space."""

    tape: str
    fraction: float
    at: Point


@record(frozen=True, slots=True)
class Hoop:
    """One hoop, from its centre line. ``cut`` and ``casing`` are lengths to cut, m (0 for no casing).

    ``place``: ``top``, ``body``, ``band top`` or ``hem``. ``cased`` is false for hoops in the hem band.
    An open hoop goes from fraction ``start`` to ``end``: of its whole ellipse's girth where a piece of that
    is left out in front, from 1/4 to 3/4 for a half hoop. ``girth`` then is the length from end to end.
    ``real`` is the line the spring takes between its ties, seen from above, when that differs from ``plan``.
    """

    id: str
    place: HoopPlace
    height: float
    below_waist: float
    girth: float
    plan: PlanOutline
    cut: float
    casing: float
    cased: bool
    fixings: tuple[Fixing, ...]
    start: float = 0.0
    end: float = 1.0
    real: tuple[XY, ...] = ()

    @property
    def closed(self) -> bool:
        """Whether the hoop goes all round."""
        return self.end - self.start >= 1.0


@record(frozen=True, slots=True)
class Mark:
    """A mark on a tape: which hoop, distance from the waistband's lower edge, lean from the vertical
    (radians).

    ``on_body`` is true when the stretch ending here lies on the body.
    """

    hoop: str
    at: float
    lean: float
    on_body: bool = False


@record(frozen=True, slots=True)
class Tape:
    """One tape. ``waist_angle`` is polar from the waist's centre, radians, 0 at centre front, positive
    to the left.

    ``start`` is its point on the waistband's lower edge. ``cut`` includes turnings, wrap and reserve.
    """

    id: str
    waist_fraction: float
    hem_fraction: float
    waist_angle: float
    start: Point
    marks: tuple[Mark, ...]
    cut: float
    ends_at: str


@record(frozen=True, slots=True)
class Waistband:
    """The waistband: ``cut`` = waist + ease + overlap + two turnings; width m."""

    girth: float
    width: float
    overlap: float
    cut: float
    material: str


@record(frozen=True, slots=True)
class HemBand:
    """The cloth band between the two lowest hoops, folded double: one strip ``height`` by ``length``, m.

    ``seam`` is the allowance included twice in ``height``; ``stated`` tells that the height is the
    maker's own rule.
    ``channel`` is how much of the folded height each hoop's channel takes.
    """

    upper: str
    lower: str
    depth: float
    height: float
    length: float
    seam: float
    channel: float
    stated: bool
    material: str
    grain: Literal["along", "across", "either"]


@record(frozen=True, slots=True)
class BodyRow:
    """The body's oval at a height: ``width``, ``depth`` m."""

    height: float
    width: float
    depth: float


@record(frozen=True, slots=True)
class Contact:
    """A tape or hoop that touches the body, and how far the body stands beyond it, m."""

    part: str
    height: float
    by: float


@record(frozen=True, slots=True)
class Tie:
    """A tie inside one hoop, from fraction ``at`` to fraction ``to`` of it: ``cross`` draws a spring into an
    oval, ``chord`` and ``lacing`` hold the ends of a half hoop, ``strap`` those of an open one. A lacing is
    cut as panels and cord, so its ``cut`` is 0. A ``hip`` tie goes from ``at`` behind the body to ``to``; it
    leaves the body at ``behind``, by the wearer's left, and the same on her right.

    ``length`` m between its ends, ``cut`` with what they take to be sewn. ``pull``: its tension over the
    bending stiffness EI of the bare, straight-born spring, 1/m2.
    """

    id: str
    hoop: str
    kind: TieKind
    at: float
    to: float
    length: float
    cut: float
    pull: float
    material: str
    behind: Point | None = None


@record(frozen=True, slots=True)
class Seam:
    """A seam of a panel, from corner to corner of its outline (numbers from 0), to the part ``to``."""

    corners: tuple[int, int]
    to: str
    allowance: float


@record(frozen=True, slots=True)
class Rule:
    """A line ruled on a panel: a channel, a row of eyelets, a fold; ``offset`` m up from its lowest edge."""

    name: str
    points: tuple[XY, ...]
    offset: float


@record(frozen=True, slots=True)
class Panel:
    """A piece of cloth that is no plain strip: ``count`` alike, cut to ``outline`` (m, corners in order from
    the lower left, x across, y up, seam allowances included), ``width`` by ``height`` over all. ``grain``
    is the way of the warp, ``mirrored`` tells that half of them are cut face down."""

    part: str
    count: int
    material: str
    outline: tuple[XY, ...]
    width: float
    height: float
    grain: Literal["up", "across"]
    seams: tuple[Seam, ...] = ()
    rules: tuple[Rule, ...] = ()
    mirrored: bool = False


@record(frozen=True, slots=True)
class Channel:
    """A hoop's channel in a petticoat; m. ``up``: its middle line above the finished lower edge, measured up
    the cloth; ``width``: flat; ``takes``: length of cloth folded away in a tuck; ``girth``: of the cloth
    there, that of the hoop or more. ``strip`` by ``height``: cut size of an applied casing, 0 for a tuck."""

    hoop: str
    up: float
    width: float
    takes: float
    girth: float
    strip: float
    height: float


@record(frozen=True, slots=True)
class Flounce:
    """A gathered strip: its head ``up`` m above the finished lower edge; ``girth`` of the petticoat at its
    own lower edge; ``length`` by ``height`` as cut, the ring closed."""

    id: str
    up: float
    girth: float
    depth: float
    length: float
    height: float
    material: str


@record(frozen=True, slots=True)
class Petticoat:
    """Cloth that carries the hoops, ``count`` gores or breadths. ``slant``: from the waistband's lower edge
    down the cloth to the hem hoop's line; ``half_angle`` of the cone through both, radians; ``edge``: from
    that line to the finished lower edge; ``head``: what the top needs above the waist's line to be turned
    or sewn in, and to be levelled; ``takes``: all tucks together; ``round_off``: how much higher the lower
    edge is at a seam than in the middle of a panel; ``drawstring``: cut length of the cord, 0 for a
    waistband; m."""

    kind: Literal["gores", "breadths"]
    count: int
    material: str
    slant: float
    half_angle: float
    top: float
    hem: float
    edge: float
    head: float
    takes: float
    round_off: float
    placket: float
    feed_gap: float
    drawstring: float
    cord: str
    channels: tuple[Channel, ...]
    casing: str
    flounces: tuple[Flounce, ...] = ()


@record(frozen=True, slots=True)
class Skirt:
    """The skirt to be worn over it, from the waistline over the cage to ``off_floor``: lengths and hem
    girth, m."""

    front: float
    side: float
    back: float
    hem_girth: float
    off_floor: float


@record(frozen=True, slots=True)
class Moved:
    """A mark that moves: where it was and where it goes, m from the waistband's lower edge."""

    tape: str
    hoop: str
    was: float
    goes: float


@record(frozen=True, slots=True)
class Refit:
    """What one fitting changes; m.

    ``low``: how much too low the hem hung, by tape (negative: too high). ``all_round`` of it is the same
    everywhere and is taken up at the waistband, each tape by ``drawn_up``; the rest, and hoops that were off
    by themselves, are in ``moved``. ``hoops``: how much too low a hoop's middle was. ``girths`` and
    ``waist``: drawn and as made. ``skirt``: the skirt over it before and after.
    """

    on: str
    low: Mapping[str, float]
    all_round: float
    drawn_up: Mapping[str, float]
    moved: tuple[Moved, ...]
    hoops: Mapping[str, float]
    girths: Mapping[str, tuple[float, float]]
    waist: tuple[float, float] | None
    skirt: tuple[Skirt, Skirt]

    @property
    def right(self) -> bool:
        """Whether all was right, so that nothing changes."""
        return not (self.all_round or self.moved or self.girths or self.waist)


@record(frozen=True, slots=True)
class Shape:
    """The whole shape, top down; tapes by number.

    ``profile``: (height, radius) points of the side line from the anchor to the hem hoop, for figures.
    ``total_hoop_length`` is the sum of cut lengths before rounding, m. ``refits`` tell what the fittings
    changed, in order; marks, girths and skirt are those after the last of them.
    """

    waist_heights: tuple[float, float, float, float]  # front, left, back, right
    hoops: tuple[Hoop, ...]
    tapes: tuple[Tape, ...]
    waistband: Waistband
    band: HemBand | None
    body: tuple[BodyRow, ...]
    contacts: tuple[Contact, ...]
    skirt: Skirt
    profile: tuple[tuple[float, float], ...]
    checks: tuple[Check, ...]
    ties: tuple[Tie, ...] = ()
    panels: tuple[Panel, ...] = ()
    refits: tuple[Refit, ...] = ()
    petticoat: Petticoat | None = None
    wheel: Wheel | None = None
    sides: SidePair | None = None

    def hoop(self, id: str) -> Hoop:
        """The hoop of that id; KeyError when there is none."""
        for hoop in self.hoops:
            if hoop.id == id:
                return hoop
        raise KeyError(id)

    @property
    def total_hoop_length(self) -> float:
        """Strip for all hoops, laps included, m."""
        return sum(hoop.cut for hoop in self.hoops)
