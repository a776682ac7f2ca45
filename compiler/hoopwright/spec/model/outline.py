"""The wished shape: how girth grows downward, the outline from above, where hoops are. Lengths in metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record

LineKind = Literal["cone", "dome", "bell", "drum", "table"]
Spacing = Literal["by tape", "level", "widening", "listed", "from hem"]
PlanKind = Literal["round", "oval", "thrown back", "half", "pair"]


@record(frozen=True, slots=True)
class TableRow:
    """A row of the maker's own line: a height above the floor and the girth there."""

    height: float
    girth: float


@record(frozen=True, slots=True)
class Line:
    """How the girth grows downward. ``power`` is the dome's swell or the bell's exponent."""

    kind: LineKind
    power: float
    rows: tuple[TableRow, ...] = ()


@record(frozen=True, slots=True)
class PlaceListed:
    """A hoop's place stated by the maker: exactly one of the three depths is set."""

    below_waist: float | None = None
    height: float | None = None
    down_tape: float | None = None


@record(frozen=True, slots=True)
class Graded:
    """A value at the top hoop and at the lowest one; even with height in between."""

    top: float
    low: float

    def at(self, share: float) -> float:
        """The value at a share of the height from the top hoop (0) to the lowest (1)."""
        return self.top if self.top == self.low else self.top + (self.low - self.top) * share


@record(frozen=True, slots=True)
class HalfPlan:
    """Half hoops behind the body. ``chord``: between the ends of a hoop; ``reach``: how far its middle stands
    behind the chord (None: it follows from the hem's girth); ``set_back``: how far the chord lies behind
    the waist's centre (None: the ends rest on the body); m. The lowest ``full`` hoops go all round, ovals
    of width over depth ``full_oval``."""

    chord: Graded
    reach: Graded | None
    set_back: Graded | None = None
    full: int = 0
    full_oval: float = 1.0


@record(frozen=True, slots=True)
class SideHoop:
    """A hoop of a pair: ``drop`` below the waistline at the side, ``reach`` beyond the hip, m."""

    drop: float
    reach: float


@record(frozen=True, slots=True)
class PairPlan:
    """Side hoops, alike on both sides: half ovals ``front_to_back`` m deep where they lie on the hip, the
    ``hoops`` from the top."""

    front_to_back: float
    hoops: tuple[SideHoop, ...]


@record(frozen=True, slots=True)
class GroundPlan:
    """The outline from above. ``oval``: width over depth; ``set_back``: how far the centre lies behind the
    waist's centre, m; ``reach``: how far the hem reaches in front of and behind the waist's centre, m, when
    that is stated instead of the two. ``half`` is set for half hoops only, ``pair`` for side hoops."""

    kind: PlanKind = "round"
    oval: Graded = Graded(1.0, 1.0)
    set_back: Graded = Graded(0.0, 0.0)
    reach: tuple[float, float] | None = None
    half: HalfPlan | None = None
    pair: PairPlan | None = None


@record(frozen=True, slots=True)
class Opening:
    """The upper ``hoops`` are open in front. ``gap``: opening along the hoop's line, m (None: from the first
    tape to the last); ``straps``: whether a strap across each opening holds its ends."""

    hoops: int
    gap: Graded | None
    straps: bool


@record(frozen=True, slots=True)
class ShapeSpec:
    """The wished shape. ``hem_off_floor`` is to the lower edge of the hem hoop.

    ``listed`` holds the hoops above the hem hoop (and above the band's upper hoop), from the top,
    when ``spacing`` is ``listed``. ``names`` may be shorter than ``count``; a blank keeps H1, H2 ...
    """

    ground_plan: GroundPlan
    line: Line
    top_hoop: PlaceListed
    top_girth: float | None
    hem_girth: float
    hem_off_floor: float
    count: int
    spacing: Spacing
    ratio: float
    listed: tuple[PlaceListed, ...] = ()
    names: tuple[str, ...] = ()
    opening: Opening | None = None
    every: float = 0.0  # from hoop to hoop up the cloth, m, when ``spacing`` is ``from hem``
    length: float = 0.0  # of a corded petticoat, from the waistband's lower edge down the cloth at the side, m
