"""A wheel at the waist, solved whole: rings and spokes as sprung rods, hung from the waistband over its roll.

What is in no book is taken on the safe side, and the checks say so:

- The waist holds the waistband, and that holds the hole's ring at every spoke, but not against turning there.
- Spokes' ends are bound down at the hole's ring and the rim: there both turn as one. Bindings between
  hold place only.
- The roll gives like soft stuffing (``ROLL``) and pushes only up, square to the wheel, under the spokes that
  lie over it.
- The cover helps as a net of crossed strips from hole to rim, which only pull; over the slit there is none.
- The whole skirt hangs from the rim, and with it the half of the cover that lies nearer to it.
"""

from __future__ import annotations

from dataclasses import replace
from math import atan, atan2, cos, dist, hypot, pi, sin

from hoopwright.shape.curves.ellipse import point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.model import Point, Spoke, Wheel
from hoopwright.strength import answer
from hoopwright.strength.answer import (
    AT_REST,
    CLOTH,
    POINTS,
    SOURCE,
    ask,
    buckling_of,
    hoop_of,
    nothing,
    section_of,
    unfollowed,
)
from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    HoopModel,
    HoopPoint,
    JoinModel,
    RestModel,
    Section,
    TieModel,
)
from hoopwright.strength.cage.result import CageResult, HoopResult
from hoopwright.strength.cloth import panels_mass
from hoopwright.strength.formed import closing, preformed
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import HoopLines, WheelStrength

NAME = (
    "whole wheel, large movements, by finite elements: rings and spokes as sprung rods, bound down as one"
    " at hole and rim and pinned between, held by the waistband, on a soft roll"
)
ROLL = 300.0
"""N/m under a spoke: stuffing that gives 20 kPa to being pressed flat, over a hand's width of 3 cm by half the
roll's thickness; our judgement, on the soft side."""
IN_SPOKE = 8
"""Rods in a spoke, which bends evenly on edge."""
COARSE = 20
"""Rods in a ring of a changed wheel; 32 in the wheel itself: within 2 % of six times as many."""
FINE = 32
_RIGID = "a wheel is held round by its spokes and does not fold: lift it, and sit on a stool without arms"
OPEN = dict.fromkeys(("door", "chair", "car", "bag"), _RIGID)
"""What no form is known for: how a wheel is handled."""
_TAKEN = (
    "waist holds the band; spokes bound down at hole and rim hold like one piece, bindings between hold place"
    " only; roll taken as soft (our judgement, on the safe side)"
)
SAYS = {
    "equilibrium": "a shape is found in which the wheel lies at rest on waistband and roll under its load",
    "buckling": "neither rings nor spokes give way under the pull of the skirt",
    "sag": "the rim keeps level between the spokes",
    "out-of-round": "the closed rings keep their shape between the spokes",
    "sinking": "the rim sinks no farther than the skirt's hem is off the floor",
    "swing": "the rim stays where it was drawn and does not move forward or back",
    "set-worn": "wearing it leaves no set in rings and spokes (the hole's ring, sewn all round, may take one)",
}
SOURCES = {
    **answer.SOURCES,
    "equilibrium": f"{SOURCE}; {_TAKEN}",
    "sinking": f"{SOURCE}; {_TAKEN}; the limit is the skirt's own clearance",
    "swing": f"{SOURCE}; the limit is our judgement",
    **dict.fromkeys(OPEN, "no form is known to us; it is tried at the stop"),
}


def solve(problem: Problem) -> Solution:
    """Solve a wheel whole."""
    return solution(problem, ask(problem, model(problem), FINE))


def trial(problem: Problem) -> Solution:
    """The same on a coarser mesh, for changed wheels."""
    return solution(problem, ask(problem, model(problem), COARSE, trial=True))


def model(problem: Problem) -> CageModel:
    """The mechanical model of a wheel. Raises ValueError without one."""
    shape, wheel = problem.shape, problem.shape.wheel
    if wheel is None:
        raise ValueError("a wheel farthingale has a wheel")
    section, normal = section_of(problem), (0.0, sin(wheel.tilt), cos(wheel.tilt))
    hoops = [_ring(problem, wheel, k, section, normal) for k in range(len(shape.hoops))]
    hoops += [HoopModel(one.id, (one.hole, one.rim), section, False, 0.0, 1.0, "straight", edge=normal,
                        elements=IN_SPOKE) for one in wheel.spokes]
    joins = [join for k, one in enumerate(wheel.spokes) for join in _bound(problem, k, one)]
    return CageModel(tuple(hoops), ties=_cover(problem, wheel), joins=tuple(joins),
                     rests=_roll(problem, wheel, normal))


def _ring(problem: Problem, wheel: Wheel, k: int, section: Section, edge: Point) -> HoopModel:
    """A ring in the tilted plane, on edge, with its load."""
    hoop, last = problem.shape.hoops[k], len(problem.shape.hoops) - 1
    down = wheel.rim_drop * k / last
    path = hoop.plan.path or [point_at(ellipse_of(hoop.plan), i / POINTS) for i in range(POINTS)]
    points = tuple((x, y * cos(wheel.tilt) - down * sin(wheel.tilt),
                    hoop.height - (y + hoop.plan.offset) * sin(wheel.tilt)) for x, y in path)
    cover = panels_mass(problem.spec, problem.shape, "cover") / 2 if k == last else 0.0
    mass = problem.skirt[k] + problem.own[k] + cover
    line = max(mass / hoop.girth - section.mass_per_m, 0.0) * GRAVITY
    whole = hoop.girth / (hoop.end - hoop.start)
    formed = preformed(problem, closing(problem, whole))
    return HoopModel(hoop.id, points, section, hoop.closed, hoop.start, hoop.end,
                     "preformed" if formed else "straight", line_load_n_per_m=line, edge=edge)


def _bound(problem: Problem, k: int, spoke: Spoke) -> list[JoinModel]:
    """A spoke on all rings, and the hole's ring on the waistband."""
    long, last, found = spoke.marks[-1][1], len(spoke.marks) - 1, []
    for n, (ring, at) in enumerate(spoke.marks):
        crossing = HoopPoint(ring, problem.shape.hoop(ring).fixings[k].fraction)
        found.append(JoinModel(HoopPoint(spoke.id, at / long), crossing, stiff=n in (0, last)))
        if n == 0:
            found.append(JoinModel(crossing, FixedPoint(spoke.hole)))
    return found


def _cover(problem: Problem, wheel: Wheel) -> tuple[TieModel, ...]:
    """Crossed strips of cloth from the hole to the rim, between neighbouring spokes, none over the slit."""
    rim, found = problem.shape.hoops[-1], []
    strip = CLOTH * rim.girth / len(wheel.spokes) * cos(pi / 4)
    for k, (one, other) in enumerate(zip(wheel.spokes, wheel.spokes[1:], strict=False)):
        for way, (a, b, at) in enumerate(((one, other, k + 1), (other, one, k))):
            found.append(TieModel(f"cover {k + 1}{'ab'[way]}", HoopPoint(rim.id, rim.fixings[at].fraction),
                                  FixedPoint(a.hole), dist(a.hole, b.rim), strip))
    return tuple(found)


def _roll(problem: Problem, wheel: Wheel, push: Point) -> tuple[RestModel, ...]:
    """The roll under every spoke that it reaches, on the middle of its thickness."""
    covers, found = wheel.roll_length / problem.spec.wearer.waist, []
    for k, spoke in enumerate(wheel.spokes):
        from_back = abs((k + 0.5) / len(wheel.spokes) - 0.5)
        share = wheel.roll / 2 / spoke.marks[-1][1]
        if 2 * from_back <= covers and share < 1.0:
            a, b = spoke.hole, spoke.rim
            touches = (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2]))
            found.append(RestModel(f"roll {spoke.id}", HoopPoint(spoke.id, share), touches, push, ROLL))
    return tuple(found)


def solution(problem: Problem, result: CageResult) -> Solution:
    """What the solver found of a wheel."""
    if result.status not in AT_REST:
        bare = nothing(problem, result, NAME, "sinking", "swing")
        return replace(bare, unassessed={**bare.unassessed, **OPEN}, sources=SOURCES, says=SAYS)
    count = len(problem.shape.hoops)
    rings, rim = result.hoops[:count], result.hoops[count - 1]
    level = [*(0.0 for _ in rings[1:]), _between_spokes(problem, rim)]
    return Solution(
        NAME, tuple(replace(hoop_of(one), sag=sag) for one, sag in zip(rings, level, strict=True)), (),
        *buckling_of(result), hypot(*rim.shift_m[:2]), 0.0, {**OPEN, **unfollowed(problem, result)}, SOURCES, SAYS,
        result.status, tuple(note.text for note in result.notes),
        lines=tuple(HoopLines(one.id, one.wished, one.deformed) for one in result.hoops),
        spokes=tuple(replace(hoop_of(one), sag=None, inward=None, outward=None)
                     for one in result.hoops[count:]),
        wheel=_wheel(problem, result), spared=frozenset({rings[0].id}),
    )


def _between_spokes(problem: Problem, rim: HoopResult) -> float:
    """How far the rim hangs below the line between two spokes, m, its tilting as a whole taken out."""
    at = [fix.fraction % 1.0 for fix in problem.shape.hoops[-1].fixings]
    y = [place[1] for place in rim.wished]
    fell = [a[2] - b[2] for a, b in zip(rim.wished, rim.deformed, strict=True)]
    tips = _slope(list(zip(y, fell, strict=True)))
    drops = {f % 1.0: drop - tips * y for f, y, drop in zip(rim.fractions, y, fell, strict=True)}
    ends = [min(drops, key=lambda f: abs((f - mark + 0.5) % 1.0 - 0.5)) for mark in at]
    base = sorted((mark, drops[mark]) for mark in ends)
    return max(0.0, *(drop - _around(base, f, 1.0) for f, drop in drops.items()))


def _around(rows: list[tuple[float, float]], at: float, turn: float) -> float:
    """The value at a place of a round of ``turn`` from sorted rows (place, value), straight between them."""
    after = next((row for row in rows if row[0] >= at), (rows[0][0] + turn, rows[0][1]))
    before = next((row for row in reversed(rows) if row[0] <= at), (rows[-1][0] - turn, rows[-1][1]))
    if after[0] - before[0] < 1e-12:
        return after[1]
    share = (at - before[0]) / (after[0] - before[0])
    return before[1] + share * (after[1] - before[1])


def _wheel(problem: Problem, result: CageResult) -> WheelStrength:
    """How the rim lies, and what holds the wheel."""
    wheel, rim = problem.shape.wheel, result.hoops[len(problem.shape.hoops) - 1]
    if wheel is None:
        raise ValueError("a wheel farthingale has a wheel")
    drop = wheel.rim_drop * sin(wheel.tilt)
    rows = sorted((atan2(a[0], (a[1] + drop) / cos(wheel.tilt)) % (2 * pi), a[2] - b[2])
                  for a, b in zip(rim.wished, rim.deformed, strict=True))
    front, back = _bears(problem, result)
    return WheelStrength(
        tuple(_around(rows, point.angle % (2 * pi), 2 * pi) for point in wheel.rim),
        atan(-_slope([(one[1], one[2]) for one in rim.deformed])),
        front, back, sum(one.push_n for one in result.rests),
    )


def _bears(problem: Problem, result: CageResult) -> tuple[float, float]:
    """What the waistband bears at the hole's front and back, N: two forces up that do as much as all that hold
    the wheel there, in all and in tipping it."""
    spokes = problem.shape.wheel.spokes if problem.shape.wheel is not None else ()
    y, z = [one.hole[1] for one in spokes], [one.hole[2] for one in spokes]
    front, back, level = max(y), min(y), sum(z) / len(z)
    up = sum(one.force[2] for one in result.held)
    tips = sum(one.at[1] * one.force[2] - (one.at[2] - level) * one.force[1] for one in result.held)
    first = (tips - back * up) / (front - back)
    return first, up - first


def _slope(rows: list[tuple[float, float]]) -> float:
    """Slope of the straight line nearest to rows (y, z)."""
    y, z = (sum(row[k] for row in rows) / len(rows) for k in (0, 1))
    return sum((a - y) * (b - z) for a, b in rows) / sum((a - y) ** 2 for a, _ in rows)
