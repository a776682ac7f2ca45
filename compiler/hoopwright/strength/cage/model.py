"""The mechanical model of a cage: plain frozen values, independent of every other stage.

Units: metres, newtons, kilograms, radians. Axes: x to the wearer's left, y forward (centre front is +y), z
up. A fraction runs from centre front by the wearer's left, 0 to 1 over the girth.
"""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record

Xyz = tuple[float, float, float]


@record(frozen=True, slots=True)
class Section:
    """Stiffness and mass of one hoop's steel or cane (per hoop: nested strips already added).

    `ea` N; `ei_weak` bending in the hoop's plane, `ei_strong` out of it, `gj` torsion, all N m2;
    `mass_per_m` kg/m; `half_thickness` and `half_width` m, distance of the outer fibre in weak and strong
    bending; `modulus` Pa, used only to turn curvature into stress; `is_round`: add the two bending
    stresses as vectors, not corner to corner.
    """

    ea: float
    ei_weak: float
    ei_strong: float
    gj: float
    mass_per_m: float
    half_thickness: float
    half_width: float = 0.0
    modulus: float = 0.0
    is_round: bool = False


@record(frozen=True, slots=True)
class HoopModel:
    """One hoop: its wished centre line, section, and load.

    `points` follow the line by the wearer's left, any spacing, at least four (two for a straight open
    piece); a smooth curve is laid through them. A closed hoop starts at fraction 0 and the last point
    joins the first (do not repeat it); an open hoop has `start` and `end` fractions at its ends, even by
    arc length between. `born` "preformed" is free of stress in the wished shape; "straight" is sprung
    from a strip of curvature `born_curvature` (1/m, 0 for a dead straight one, positive for a coil set
    that curls the same way). `line_load_n_per_m` (skirt and casing) hangs straight down; the section's
    own weight is added by the solver. `load_rows` adds (fraction, N/m) rows, straight between rows.
    `edge` is the direction of the strip's width; by default the normal of the plane through the points
    (vertical for a level hoop). `elements`: at least so many rods in it, 0 for as many as the solve asks for.
    A straight piece of two points (a spoke, a strut) has no round and no level of its own to lose.
    """

    id: str
    points: tuple[Xyz, ...]
    section: Section
    closed: bool = True
    start: float = 0.0
    end: float = 1.0
    born: Literal["straight", "preformed"] = "preformed"
    born_curvature: float = 0.0
    line_load_n_per_m: float = 0.0
    load_rows: tuple[tuple[float, float], ...] = ()
    edge: Xyz | None = None
    elements: int = 0


@record(frozen=True, slots=True)
class HoopPoint:
    """A place on a hoop."""

    hoop: str
    fraction: float


@record(frozen=True, slots=True)
class FixedPoint:
    """A place that the wearer holds still."""

    xyz: Xyz


@record(frozen=True, slots=True)
class FreePoint:
    """A knot in the air where a tie ends, at first at `xyz`; of that name each is one, whoever names it."""

    id: str
    xyz: Xyz


Place = HoopPoint | FixedPoint | FreePoint


@record(frozen=True, slots=True)
class TapeModel:
    """A tape from the waistband down its fixings (hoop id, fraction), in order from the top.

    Its segments pull only; unstressed they are as long as the wished distances, unless `lengths` (m, one per
    segment) says otherwise. `ea` N. `mass_per_m` kg/m is shared between the ends of each segment.
    `twist_stiffness` N m per radian: how far a fixing holds the hoop from twisting (0, a sewn tape hardly
    does). `pieces` cuts every segment into that many, whose joints lie on the body where it stands in the way
    (one piece is straight and passes through it).
    """

    id: str
    anchor: Xyz
    fixings: tuple[tuple[str, float], ...]
    ea: float = 3000.0
    lengths: tuple[float, ...] = ()
    mass_per_m: float = 0.0
    twist_stiffness: float = 0.0
    pieces: int = 1


@record(frozen=True, slots=True)
class BandModel:
    """A cloth band between two hoops: a net of `strips` upright strips and, between them, crossed diagonals.

    `ea` N of one upright strip, `ea_diagonal` N of one diagonal (0 leaves them out); all pull only.
    `mass_per_m` kg per metre of girth is shared between both hoops.
    """

    id: str
    upper: str
    lower: str
    ea: float
    ea_diagonal: float = 0.0
    strips: int = 24
    mass_per_m: float = 0.0


@record(frozen=True, slots=True)
class TieModel:
    """A cross-tie, strap or lacing between two places, pulling only, of free length `length` m.

    `pieces` cuts it into so many, whose joints lie on the body where it stands in the way.
    """

    id: str
    a: Place
    b: Place
    length: float
    ea: float = 3000.0
    pieces: int = 1


@record(frozen=True, slots=True)
class JoinModel:
    """Two places that move together (spoke and rim); `stiff` joins their rotations too (a weld)."""

    a: HoopPoint
    b: Place
    stiff: bool = False


@record(frozen=True, slots=True)
class RestModel:
    """A pad, shelf or wall on which a place of a hoop lies: it pushes along `push` (of any length) where the
    place comes nearer than when it just touches, at `touches`; `stiffness` N/m. It neither pulls nor rubs.
    """

    id: str
    at: HoopPoint
    touches: Xyz
    push: Xyz
    stiffness: float


@record(frozen=True, slots=True)
class BodyRow:
    """One level ellipse of the body: height `z`, semi-axes `half_breadth` (x) and `half_depth` (y), centre
    `y`.
    """

    z: float
    half_breadth: float
    half_depth: float
    y: float = 0.0


@record(frozen=True, slots=True)
class BodyModel:
    """Body rows from top to bottom, straight between; `stiffness` N/m of each touching node, 0 lets the cage
    pass.
    """

    rows: tuple[BodyRow, ...]
    stiffness: float = 2000.0


@record(frozen=True, slots=True)
class PointLoad:
    """A dead force (N) on a place of a hoop: a leaning hand, a lifted hem."""

    at: HoopPoint
    force: Xyz


@record(frozen=True, slots=True)
class CageModel:
    """Everything the solver needs; the waistband itself is rigid and held by the wearer.

    `waist_centre` (x, y) is the point from which the outward pull on the waistband is measured. `mirrors`: the
    model is one half of a cage, the other its mirror image in the plane x = 0 (`x`) or y = 0 (`y`): what lies on
    that plane stays on it and turns only in it.
    """

    hoops: tuple[HoopModel, ...]
    tapes: tuple[TapeModel, ...] = ()
    bands: tuple[BandModel, ...] = ()
    ties: tuple[TieModel, ...] = ()
    joins: tuple[JoinModel, ...] = ()
    body: BodyModel | None = None
    point_loads: tuple[PointLoad, ...] = ()
    waist_centre: tuple[float, float] = (0.0, 0.0)
    mirrors: tuple[Literal["x", "y"], ...] = ()
    rests: tuple[RestModel, ...] = ()
