"""Where the weight hangs: the centre of weight of cage and skirt against the waist.

A cage hangs from its waistband like a pan from a scale: it swings until its centre of weight lies below the
tapes that carry it. Within half the waist's depth of the waist's centre the waistband holds it level; beyond
that the front or the back tapes fall slack, and the cage comes on to the legs.
"""

from __future__ import annotations

from itertools import pairwise
from math import hypot

from hoopwright.shape.curves.ellipse import from_girth, point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.judge import judged
from hoopwright.shape.model import XY, Hoop
from hoopwright.source.quantity import force_text
from hoopwright.spec.check import Check
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.seat import LEAST_SEAT

ROUND = 96


def centre_of_weight(problem: Problem) -> XY:
    """Centre of weight of hoops and the skirt on them, seen from above, from the waist's centre, m."""
    masses = [own + skirt for own, skirt in zip(problem.own, problem.skirt, strict=True)]
    total = sum(masses)
    if total <= 0:
        return (0.0, 0.0)
    centres = [hoop_centre(hoop) for hoop in problem.shape.hoops]
    return (
        sum(m * x for m, (x, _) in zip(masses, centres, strict=True)) / total,
        sum(m * y for m, (_, y) in zip(masses, centres, strict=True)) / total,
    )


def hoop_centre(hoop: Hoop) -> XY:
    """Centre of weight of an even hoop, m: of its line, whatever its plan."""
    if hoop.closed:
        return (hoop.plan.sideways, -hoop.plan.offset)
    path = hoop.plan.path
    if not path:
        points = [point_at(ellipse_of(hoop.plan), hoop.start + (hoop.end - hoop.start) * k / ROUND)
                  for k in range(ROUND + 1)]
        path = tuple(points)
    lengths = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(path)]
    total = sum(lengths)
    middle = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairwise(path)]
    return (sum(s * x for s, (x, _) in zip(lengths, middle, strict=True)) / total,
            sum(s * y for s, (_, y) in zip(lengths, middle, strict=True)) / total)


def seat_room(problem: Problem) -> tuple[Check, ...]:
    """How much of a chair's depth half hoops leave to sit on: folded up, they stand out behind as before."""
    bows = [hoop for hoop in problem.shape.hoops if hoop.plan.kind == "bow"]
    if not bows:
        return ()
    wearer = problem.spec.wearer
    far, part = max((-min(y for _, y in hoop.plan.path), hoop.id) for hoop in bows)
    behind = far - from_girth(wearer.waist, wearer.waist_oval).b
    check = judged(
        "seat-room", part, problem.spec.limits.chair.depth - behind, LEAST_SEAT, "length", "at least",
        soft=True,
        says="half hoops folded up behind leave room on a chair",
        source="geometry: the seat's depth less what stands out behind the back; the limit is our judgement",
        remedy="sit on the edge, or sideways, or let the lacing or the ties out before you sit",
    )
    return (check,)


def off_centre(problem: Problem) -> bool:
    """Whether any hoop hangs off the waist's centre; round hoops hang under it by themselves, and a pair of side
    hoops evenly on both hips."""
    if problem.shape.sides is not None:
        return False
    return any(abs(y) + abs(x) > 1e-9 for x, y in (hoop_centre(hoop) for hoop in problem.shape.hoops))


def balance_check(problem: Problem, solution: Solution | None = None) -> Check:
    """The centre of weight within half the waist's depth of the waist's centre; of a wheel, within its roll."""
    x, y = centre_of_weight(problem)
    wearer, build = problem.spec.wearer, problem.spec.build
    limit = from_girth(wearer.waist, wearer.waist_oval).b
    if problem.shape.wheel is not None:
        return _wheel(problem, solution, hypot(x, y), limit + problem.shape.wheel.roll / 2)
    held = build.hip_ties is not None or problem.spec.shape.ground_plan.half is not None
    return judged(
        "balance", "cage", hypot(x, y), limit, "length", "at most", soft=held,
        says="the weight hangs under the waist",
        source="half the waist's depth: common practice, no source; centre of weight by geometry",
        remedy="set the hem less far back, carry less behind, or take hip ties (build.hip_ties) or a pad at"
        " the back",
    )


def _wheel(problem: Problem, solution: Solution | None, far: float, limit: float) -> Check:
    """A wheel's weight over its roll: beyond it the waistband must hold the front down."""
    lifts = 0.0 if solution is None or solution.wheel is None else -solution.wheel.front
    held = f"with {force_text(lifts)} " if lifts > 0.0 else ""
    return judged(
        "balance", "cage", far, limit, "length", "at most", soft=True,
        says="the weight lies over the waist and the roll behind it",
        source="half the waist's depth and half the roll's thickness: geometry; centre of weight by geometry",
        remedy=f"the wheel lifts the waistband in front: pin or tie it to stays or bodice, to hold it {held}down, or"
        " set the wheel less far back (build.wheel.set_back)",
    )
