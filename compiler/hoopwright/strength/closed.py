"""The closed forms, hoop by hoop: statics of the tapes, rings under their pull, hoops hung between tapes.

Where tapes are not evenly spaced, every gap is taken as wide as the widest: that errs on the safe
side for sag and for roundness. A hoop with no tape of its own (carried by the hem band's cloth)
hangs with all its load from the hoop above and sags with it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import cos, pi, sin

from hoopwright.shape.model import Hoop, Shape, Tape
from hoopwright.strength import buckle, hang, ring, setting
from hoopwright.strength.droop import GRAVITY
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength, Segment, TapeStrength
from hoopwright.strength.section import properties
from hoopwright.strength.statics import TapeForces, tape_forces

NAME = "closed forms for each hoop, tapes as statics"
FEWEST = 3.0
"""Fewest supports (as spaced by the widest gap) for which a ring on tapes is a fair picture."""

_SLACK = "the closed forms take every tape as taut"


def solve(problem: Problem) -> Solution:
    """Solve a cage by closed forms."""
    shape = problem.shape
    loads = [(a + b) * GRAVITY for a, b in zip(problem.skirt, problem.own, strict=True)]
    carried = _onto_tapes(shape, loads)
    taped = [k for k, hoop in enumerate(shape.hoops) if hoop.fixings]
    forces = _all_forces(shape, [carried[k] for k in taped], taped)
    results: list[HoopStrength] = []
    factors: list[tuple[float, str]] = []
    unassessed = {"slack": _SLACK}
    for k, hoop in enumerate(shape.hoops):
        at = taped.index(k) if k in taped else None
        pulls = [] if at is None else [force.pull[at] for force in forces]
        result, factor = _hoop(problem, hoop, loads[k], carried[k], pulls, results[-1] if results else None)
        results.append(result)
        if factor is not None:
            factors.append((factor, hoop.id))
    if any(result.sag is None for result in results):
        wide = "a gap between tapes is more than a third of the hoop: no closed form holds there"
        unassessed |= {"sag": wide, "out-of-round": wide, "set-worn": wide}
    least = min(factors, default=None)
    return Solution(
        NAME, tuple(results), _tapes(shape, forces, taped),
        Buckling(None if least is None else least[0], True), "" if least is None else least[1], None,
        sum(force.waist_pull for force in forces), unassessed,
    )


def widest_gap(hoop: Hoop) -> float:
    """The widest gap between neighbouring tapes, as a fraction of the girth."""
    places = sorted(fixing.fraction % 1.0 for fixing in hoop.fixings)
    return max([b - a for a, b in pairwise(places)] + [1.0 - places[-1] + places[0]])


def tributary(hoop: Hoop) -> tuple[float, ...]:
    """Share of a hoop's load that each of its tapes takes: half the gap to either side; in the fixings'
    order."""
    order = sorted(range(len(hoop.fixings)), key=lambda k: hoop.fixings[k].fraction % 1.0)
    places = [hoop.fixings[k].fraction % 1.0 for k in order]
    shares = [0.0] * len(order)
    for rank, k in enumerate(order):
        before = (places[rank] - places[rank - 1]) % 1.0 if len(order) > 1 else 1.0
        after = (places[(rank + 1) % len(order)] - places[rank]) % 1.0 if len(order) > 1 else 1.0
        shares[k] = (before + after) / 2
    return tuple(shares)


def _onto_tapes(shape: Shape, loads: Sequence[float]) -> list[float]:
    """Loads N with those of untaped hoops handed to the hoop above."""
    carried = list(loads)
    for k in range(len(carried) - 1, 0, -1):
        if not shape.hoops[k].fixings:
            carried[k - 1] += carried[k]
            carried[k] = 0.0
    return carried


def _all_forces(shape: Shape, loads: Sequence[float], taped: Sequence[int]) -> list[TapeForces]:
    shares = [tributary(shape.hoops[k]) for k in taped]
    return [tape_forces([load * share[t] for load, share in zip(loads, shares, strict=True)],
    *_slopes(shape, tape, t)) for t, tape in enumerate(shape.tapes)]


def _slopes(shape: Shape, tape: Tape, index: int) -> tuple[list[float], list[float]]:
    """Outward slope and length over drop of each stretch of a tape, from the lean of the stretch that ends
    there.

    Outward is away from the hoop's centre at the fixing; the sideways part of the lean loads no ring.
    """
    slopes, stretches = [], []
    above = tape.start
    for mark in tape.marks:
        at = shape.hoop(mark.hoop).fixings[index].at
        plan = shape.hoop(mark.hoop).plan
        x, y = at[0], at[1] + plan.offset
        radius = (x * x + y * y) ** 0.5
        drop = above[2] - at[2]
        outward = ((at[0] - above[0]) * x + (at[1] - above[1]) * y) / radius / drop
        if mark.on_body:
            outward = sin(mark.lean) / cos(mark.lean)
        slopes.append(outward)
        stretches.append(1 / cos(mark.lean))
        above = at
    return slopes, stretches


def _hoop(problem: Problem, hoop: Hoop, load: float, carried: float, pulls: Sequence[float],
          above: HoopStrength | None) -> tuple[HoopStrength, float | None]:
    """One hoop, and its load factor against buckling where it is compressed."""
    radius, worn = hoop.girth / (2 * pi), problem.worn
    push = sum(pulls) / (2 * pi)
    line = load / hoop.girth
    if not pulls:
        stress = _stress(problem, radius, 0.0, 0.0)
        sag = None if above is None else above.sag
        return HoopStrength(hoop.id, line, 0.0, sag, 0.0, 0.0, stress), None
    critical = buckle.screen(worn.ei_weak, worn.ei_strong, worn.gj, radius)
    factor = critical * radius / push if push > 0 else None
    supports = 1 / widest_gap(hoop)
    if supports < FEWEST - 1e-9:
        return HoopStrength(hoop.id, line, push, None, None, None, None), factor
    pull = max(pulls, key=abs)
    hung = carried / hoop.girth
    inward = ring.inward_at_load(supports, pull, radius, worn.ei_weak)
    outward = ring.outward_midway(supports, pull, radius, worn.ei_weak)
    if pull < 0:
        inward, outward = -outward, -inward
    weak = abs(ring.moment_at_load(supports, pull, radius))
    stress = _stress(problem, radius, weak, hang.moment_over_tape(supports, hung, radius))
    sag = hang.sag(supports, hung, radius, worn.ei_strong, worn.gj)
    return HoopStrength(hoop.id, line, push, sag, inward, outward, stress), factor


def _stress(problem: Problem, radius: float, weak: float, strong: float) -> float:
    """Greatest stress of a straight-born hoop as worn, Pa: whole curvature in its plane, and bending out
    of it."""
    section, material = properties(problem.stock.section), problem.material
    modulus = material.ei_weak / section.weak
    in_plane = setting.curved_stress(modulus, 2 * section.weak_fibre, 1 / radius + weak / material.ei_weak)
    return section.combined(in_plane, strong * section.strong_fibre / section.strong)


def _tapes(shape: Shape, forces: Sequence[TapeForces], taped: Sequence[int]) -> tuple[TapeStrength, ...]:
    return tuple(
        TapeStrength(tape.id, tuple(Segment(shape.hoops[k].id, tension, False)
                                    for k, tension in zip(taped, force.tension, strict=True)))
        for tape, force in zip(shape.tapes, forces, strict=True)
    )
