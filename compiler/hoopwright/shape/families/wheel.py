"""The wheel of a drum farthingale: rings inside each other in one tilted plane, on spokes from waist to rim.

In the wheel's own plane the ring round the hole is the waist's oval about the waist's centre, the rim a circle
whose centre lies set back; rings between are even between the two, so that a spoke from a point of the hole
to the same parameter of the rim is straight and meets every ring at equal steps. Where the rim drops, rings
lie lower in the same share. The whole is turned about the line through the waist's centre from left to
right. Rings that do not pass over the hips are open where the slit crosses them, at centre front.
"""

from __future__ import annotations

from math import cos, dist, hypot, pi, sin

from hoopwright.shape import lengths
from hoopwright.shape.body import body_of
from hoopwright.shape.clearance import door_check, hem_checks
from hoopwright.shape.curves.ellipse import Ellipse, fraction_at, parameter_at, reach
from hoopwright.shape.families import problems
from hoopwright.shape.families.wheel_cover import cover_and_roll
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.judge import judged
from hoopwright.shape.model import (
    Fixing,
    Hoop,
    HoopPlace,
    PlanOutline,
    Point,
    RimPoint,
    Shape,
    Skirt,
    Spoke,
    Wheel,
)
from hoopwright.shape.skirt import for_petticoats
from hoopwright.shape.waist import Waist
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec, WheelBuild

DIRECTIONS = 8
OPENING = 0.0254
"""Gap between the ends of a ring that the slit crosses, m: our figure."""
SPOKE_END = 0.0127
"""What a spoke is longer at each end, to be turned over its ring, or bent along it, and bound, m: common practice,
no source."""
_POINTS = 72


@record(frozen=True, slots=True)
class Plane:
    """The wheel's plane: hole and rim as ellipses about the waist's centre, the rim ``drop`` m lower in it, all turned
    by ``tilt`` radians at ``height`` m above the floor."""

    hole: Ellipse
    rim: Ellipse
    drop: float
    tilt: float
    height: float

    @property
    def front(self) -> float:
        """From the hole forward to the rim, along the plane, m."""
        return self.rim.b - self.rim.offset - self.hole.b

    def ring(self, share: float) -> Ellipse:
        """The ring at a share of the way from the hole (0) to the rim (1)."""

        def even(inner: float, outer: float) -> float:
            return inner + (outer - inner) * share

        return Ellipse(
            even(self.hole.a, self.rim.a), even(self.hole.b, self.rim.b), even(0.0, self.rim.offset)
        )

    def place(self, x: float, y: float, share: float) -> Point:
        """The point in space of a point (to the left, forward) of the plane, ``share`` of the way to the rim, m."""
        down = self.drop * share
        return (
            x,
            y * cos(self.tilt) - down * sin(self.tilt),
            self.height - y * sin(self.tilt) - down * cos(self.tilt),
        )


def draw_wheel(spec: Spec, waist: Waist) -> Shape:
    """The shape of a wheel. Raises :class:`Impossible`."""
    build = spec.build.wheel
    if build is None:
        raise ValueError("a drum has a wheel")
    radius = build.width / 2
    plane = Plane(
        waist.outline, Ellipse(radius, radius, build.set_back), build.rim_drop, build.tilt, waist.side
    )
    if radius - build.set_back <= waist.outline.b or radius <= waist.outline.a:
        raise Impossible(problems.wheel_off_body())
    rim = tuple(_rim(spec, plane, 2 * pi * k / DIRECTIONS) for k in range(DIRECTIONS))
    if min(point.height for point in rim) <= spec.skirt_off_floor:
        raise Impossible(problems.rim_below_hem())
    slit = _slit(spec, build, plane)
    hoops = _rings(spec, build, plane, slit)
    spokes = tuple(_spoke(hoops, k) for k in range(build.spokes))
    wheel = _wheel(spec, build, plane, rim, spokes, slit)
    skirt = Skirt(
        rim[0].skirt, (rim[2].skirt + rim[6].skirt) / 2, rim[4].skirt, pi * build.width, spec.skirt_off_floor
    )
    return Shape(
        waist_heights=spec.wearer.waist_heights,
        waistband=lengths.waistband(spec),
        body=body_of(spec).rows,
        skirt=skirt,
        checks=_checks(spec, build, wheel),
        hoops=hoops,
        panels=cover_and_roll(wheel, plane.hole, _hole_forward(plane)),
        wheel=wheel,
    )


def _rim(spec: Spec, plane: Plane, angle: float) -> RimPoint:
    """The rim where a ray from the waist's centre meets it."""
    far, near = reach(plane.rim, angle), reach(plane.hole, angle)
    height = plane.place(far * sin(angle), far * cos(angle), 1.0)[2]
    over = hypot(far - near, plane.drop)
    return RimPoint(angle, over, height, over + height - spec.skirt_off_floor + for_petticoats(spec.load))


def _shares(build: WheelBuild) -> list[float]:
    return [k / (build.rings - 1) for k in range(build.rings)]


def _slit(spec: Spec, build: WheelBuild, plane: Plane) -> float:
    """From the hole forward: as stated, else to the first ring that passes over the hips, and long enough for
    the cover to pass over them."""
    front = plane.front
    if build.slit is not None:
        if build.slit >= front:
            raise Impossible(problems.slit_too_long())
        return build.slit
    wanted = (spec.wearer.hip - spec.wearer.waist) / 2
    for share in _shares(build)[:-1]:
        if plane.ring(share).perimeter >= spec.wearer.hip and share * front >= wanted:
            return share * front
    raise Impossible(problems.no_way_in())


def _rings(spec: Spec, build: WheelBuild, plane: Plane, slit: float) -> tuple[Hoop, ...]:
    """The rings from the hole to the rim; those the slit crosses are open in front."""
    front = plane.front
    names, found = spec.shape.names, []
    for k, share in enumerate(_shares(build)):
        ring = plane.ring(share)
        whole = ring.perimeter
        gap = OPENING / whole / 2 if share * front < slit - 1e-9 else 0.0
        start, end = gap, 1.0 - gap
        girth = whole * (end - start)
        middle = plane.place(0.0, -ring.offset, share)[2]
        id = names[k] if k < len(names) and names[k] else f"H{k + 1}"
        turns = [parameter_at(ring, start + (end - start) * i / _POINTS) for i in range(_POINTS)]
        turns.append(parameter_at(ring, end) if gap else 2 * pi)
        path = tuple((ring.a * sin(t), ring.b * cos(t) - ring.offset) for t in turns) if gap else ()
        plan = PlanOutline(
            "round" if abs(ring.a - ring.b) < 1e-12 else "oval",
            2 * ring.a,
            2 * ring.b,
            ring.offset,
            2 * pi if not gap else turns[-1] - turns[0],
            tilt=plane.tilt,
            path=path,
        )
        casing = lengths.casing_cut(girth, spec)
        place: HoopPlace = "top" if k == 0 else "hem" if k == build.rings - 1 else "body"
        found.append(
            Hoop(
                id,
                place,
                middle,
                plane.height - middle,
                girth,
                plan,
                girth if gap else lengths.hoop_cut(girth, spec),
                casing,
                casing > 0.0,
                tuple(_fixing(plane, ring, share, i, build.spokes) for i in range(build.spokes)),
                start,
                end,
            )
        )
    return tuple(found)


def _turn(k: int, count: int) -> float:
    """The parameter of a spoke: evenly round the rim, the first half a spacing from centre front."""
    return 2 * pi * (k + 0.5) / count


def _fixing(plane: Plane, ring: Ellipse, share: float, k: int, count: int) -> Fixing:
    t = _turn(k, count)
    x, y = ring.a * sin(t), ring.b * cos(t) - ring.offset
    return Fixing(f"S{k + 1}", fraction_at(ring, t), plane.place(x, y, share))


def _spoke(hoops: tuple[Hoop, ...], k: int) -> Spoke:
    points = [hoop.fixings[k].at for hoop in hoops]
    marks = tuple((hoop.id, dist(points[0], point)) for hoop, point in zip(hoops, points, strict=True))
    return Spoke(f"S{k + 1}", marks, points[0], points[-1], marks[-1][1] + 2 * SPOKE_END)


def _wheel(
    spec: Spec,
    build: WheelBuild,
    plane: Plane,
    rim: tuple[RimPoint, ...],
    spokes: tuple[Spoke, ...],
    slit: float,
) -> Wheel:
    """The wheel with its cover and roll as cut. A cover over a rim that drops is a shallow cone, opened flat:
    with mean radii r of the hole and R of the rim and the drop d its slant is l = |(R - r, d)|, so that it is
    cut with a radius of R l/(R - r) and 2 pi (R l/(R - r) - R) of its edge is taken out in a dart."""
    seam = spec.allowances.seam
    radius, hole = build.width / 2, plane.hole.perimeter / (2 * pi)
    longer = hypot(radius - hole, build.rim_drop) / (radius - hole)
    flat = radius * longer
    hem = spec.build.hoops.material.section.height + seam
    halves = 2 * (flat + hem) > build.cover.washed_width
    cut = (build.roll_length + 2 * seam, pi * build.roll + 2 * seam)
    return Wheel(
        build.width,
        build.set_back,
        build.tilt,
        build.rim_drop,
        spokes,
        rim,
        2 * flat,
        2 * pi * (flat - radius),
        hem,
        seam,
        slit,
        halves,
        build.cover.name,
        build.roll,
        build.roll_length,
        cut,
        build.roll_material.name,
        pi / 4 * build.roll**2 * build.roll_length,
    )


def _hole_forward(plane: Plane) -> float:
    """How far the hole lies before the middle of the cover as cut, m: half of what the slant behind it is
    longer than the one in front; where the rim does not drop, the set-back."""
    front = plane.front
    return (hypot(front + 2 * plane.rim.offset, plane.drop) - hypot(front, plane.drop)) / 2


def _checks(spec: Spec, build: WheelBuild, wheel: Wheel) -> tuple[Check, ...]:
    way_in = spec.wearer.waist + 2 * wheel.slit
    closed = judged(
        "step-in",
        "cover",
        way_in,
        spec.wearer.hip,
        "length",
        "at least",
        says="hole and slit of the cover pass over the hips",
        source="geometry: the waist's girth and both edges of the slit against the hips' girth",
        remedy="make the slit longer (build.wheel.cover.slit); rings that it crosses are open",
    )
    return (
        *hem_checks(spec),
        closed,
        door_check(
            spec,
            build.width,
            "a wheel does not fold: tip it up on one side with both hands and go"
            " through under it, or take another way",
        ),
    )
