"""Side hoops: half ovals at each side of the hips, in the channels of an outer panel sewn to an inner one.

Each hoop is half of an ellipse, ``front_to_back`` deep where it lies on the hip and standing out by its
reach; its channel is that long (half the true perimeter), its steel a little shorter. The ends of the steel are held
by the inner panel and a tie inside, so that by itself it lies in a bow (an elastica), which the shape keeps
beside the wished half oval.
"""

from __future__ import annotations

from itertools import accumulate, pairwise
from math import cos, hypot, pi, sin

from hoopwright.shape import lengths
from hoopwright.shape.body import Body, body_of
from hoopwright.shape.clearance import door_check
from hoopwright.shape.curves import bow
from hoopwright.shape.curves.ellipse import perimeter
from hoopwright.shape.families import problems
from hoopwright.shape.families.pair_panels import gathers, side_panels
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.model import (
    XY,
    Hoop,
    HoopPlace,
    PlanOutline,
    Shape,
    SideChannel,
    SidePair,
    Tie,
)
from hoopwright.shape.skirt import over_petticoats, skirt_over_sides
from hoopwright.shape.waist import Waist
from hoopwright.source.quantity import length_text
from hoopwright.spec.model import PairPlan, SideBuild, Spec

SIDES = (("L", 1.0), ("R", -1.0))
TIE_END = 0.0254
"""What a tie is longer at each end, to be sewn into the seam, m: common practice, no source."""
POCKET = 8 * 0.0254
"""A slit a hand goes through, m: common practice, no source."""
CLEAR = 0.00635
"""Cloth left between the slit and a channel, m: our figure."""
_POINTS = 36


def draw_pair(spec: Spec, waist: Waist) -> Shape:
    """The shape of a pair of side hoops."""
    plan, build = spec.shape.ground_plan.pair, spec.build.sides
    if plan is None or build is None:
        raise ValueError("side hoops have a plan and cloth")
    body = body_of(spec)
    lowest = waist.side - plan.hoops[-1].drop
    hip = max([row.width / 2 for row in body.rows if row.height >= lowest] + [_at(body, lowest, waist)])
    channels = _channels(plan, build, waist, hip)
    hoops = tuple(
        _hoop(waist, plan, channels, k, side, sign, hip)
        for side, sign in SIDES
        for k in range(len(channels))
    )
    outs = tuple((waist.side - one.drop, hip + one.wished) for one in channels)
    across = 2 * hip + 2 * max(one.wished for one in channels)
    pair = SidePair(
        plan.front_to_back,
        hip,
        across,
        build.material.name,
        build.on_band,
        build.at,
        _pocket(spec, build, channels),
        lengths.channel(spec.build.hoops.material.section),
        max(0.0, sum(gathers(channels))),
        gathers(channels),
        channels,
    )
    door = door_check(
        spec, across,
        "turn sideways: from front to back they are no wider than the body; or press both up under the arms",
    )
    return Shape(
        waist_heights=spec.wearer.waist_heights,
        waistband=lengths.waistband(spec),
        body=body.rows,
        skirt=over_petticoats(skirt_over_sides(spec, waist, body, hoops, outs), spec.load),
        checks=(door,),
        hoops=hoops,
        ties=_ties(build, plan, channels),
        panels=side_panels(spec, pair),
        sides=pair,
    )


def _pocket(spec: Spec, build: SideBuild, channels: tuple[SideChannel, ...]) -> float:
    """The pocket slit, from a waistband's width below the edge down to just above the first channel."""
    channel = lengths.channel(spec.build.hoops.material.section)
    room = max(0.0, channels[0].down - channel / 2 - CLEAR - spec.build.waistband.width)
    if build.pocket is None:
        return min(POCKET, room)
    if build.pocket > room:
        raise Impossible(problems.pocket_too_long(length_text(room, spec.units)))
    return build.pocket


def _at(body: Body, height: float, waist: Waist) -> float:
    """Half the body's width at a height, the lowest row's below it, m."""
    oval = body.outline(height) or (body.lowest if body.rows else waist.outline)
    return oval.a


def _channels(
    plan: PairPlan, build: SideBuild, waist: Waist, hip: float
) -> tuple[SideChannel, ...]:
    """The channel of every hoop, from the top."""
    start, half = waist.side_start, plan.front_to_back / 2
    outer = [start, *((waist.side - one.drop, hip + one.reach) for one in plan.hoops)]
    inner = [start, *((waist.side - one.drop, hip) for one in plan.hoops)]
    downs = list(accumulate(hypot(a[0] - b[0], a[1] - b[1]) for a, b in pairwise(outer)))
    straight = hypot(inner[-1][0] - start[0], hip - start[1])
    found = []
    for k, one in enumerate(plan.hoops):
        arc = perimeter(half, one.reach) / 2
        held = (
            bow.of_length(arc - build.shorter, plan.front_to_back)
            if arc - build.shorter > plan.front_to_back
            else None
        )
        share = (start[0] - inner[k + 1][0]) / (start[0] - inner[-1][0])
        found.append(
            SideChannel(
                (f"L{k + 1}", f"R{k + 1}"),
                one.drop,
                downs[k],
                straight * share,
                arc,
                arc - build.shorter,
                one.reach,
                held.reach if held else 0.0,
            )
        )
    return tuple(found)


def _hoop(
    waist: Waist,
    plan: PairPlan,
    channels: tuple[SideChannel, ...],
    k: int,
    side: str,
    sign: float,
    hip: float,
) -> Hoop:
    one, half = channels[k], plan.front_to_back / 2
    height = waist.side - one.drop
    path = tuple(
        (sign * (hip + one.wished * sin(pi * i / _POINTS)), half * cos(pi * i / _POINTS))
        for i in range(_POINTS + 1)
    )
    path = path if sign > 0 else path[::-1]
    outline = PlanOutline(
        "oval", one.wished, plan.front_to_back, 0.0, pi, sideways=sign * (hip + one.wished / 2), path=path
    )
    place: HoopPlace = "hem" if k == len(channels) - 1 else "top" if k == 0 else "body"
    start = 0.0 if sign > 0 else 0.5
    return Hoop(
        f"{side}{k + 1}",
        place,
        height,
        one.drop,
        one.width,
        outline,
        one.steel,
        0.0,
        False,
        (),
        start,
        start + 0.5,
        _bow(one, plan, hip, sign),
    )


def _bow(one: SideChannel, plan: PairPlan, hip: float, sign: float) -> tuple[XY, ...]:
    """The line the steel takes by itself, from its front end."""
    if not one.stands:
        return ()
    held = bow.of_length(one.steel, plan.front_to_back)
    points = [held.point(i / _POINTS) for i in range(_POINTS + 1)]
    return tuple((sign * (hip + off), along) for along, off in points)


def _ties(build: SideBuild, plan: PairPlan, channels: tuple[SideChannel, ...]) -> tuple[Tie, ...]:
    """A tie inside each hoop, from end to end along the inner panel."""
    found = []
    for at, side in ((0, "L"), (1, "R")):
        for k, one in enumerate(channels, start=1):
            pull = bow.of_length(one.steel, plan.front_to_back).pull if one.stands else 0.0
            start = 0.0 if side == "L" else 0.5
            found.append(
                Tie(
                    f"tie {side}{k}",
                    one.hoops[at],
                    "chord",
                    start,
                    start + 0.5,
                    plan.front_to_back,
                    plan.front_to_back + 2 * TIE_END,
                    pull,
                    build.tie.name,
                )
            )
    return tuple(found)
