"""The one number of each check, worst part first: what it is, and what it may be."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import pi
from types import MappingProxyType

from hoopwright.shape.judge import Sense, worst
from hoopwright.source.record import record
from hoopwright.strength.bows import bowed
from hoopwright.strength.formed import closing, curved
from hoopwright.strength.handling import handled
from hoopwright.strength.method import Problem, Solution

REACH = 0.0254
"""What side hoops may stand out less than wished, m: 1 in, our judgement, as at the stop."""


@record(frozen=True, slots=True)
class Measured:
    """A check's number: ``part``, ``value`` and ``limit``, SI. ``bound``: the value is the worst it can be, found no
    closer."""

    part: str
    value: float | None
    limit: float | None
    sense: Sense = "at most"
    bound: bool = False

    @property
    def used(self) -> float:
        """How much of what is allowed is used up; above 1 it misses. 0 when it is not known."""
        if self.value is None or not self.limit:
            return 0.0
        return self.value / self.limit if self.sense == "at most" else self.limit / max(self.value, 1e-12)


def _sag(problem: Problem, solution: Solution) -> Measured:
    limit = problem.spec.limits.sag
    found = [(0.0, "")]
    for hoop in solution.hoops:
        if hoop.sag is None:
            return Measured(hoop.id, None, limit)
        found.append((hoop.sag, hoop.id))
    sag, part = worst(found)
    return Measured(part, sag, limit)


def _round(problem: Problem, solution: Solution) -> Measured:
    found: list[tuple[float, str]] = []
    for hoop, drawn in zip(solution.hoops, problem.shape.hoops, strict=True):
        if hoop.inward is None or hoop.outward is None:
            return Measured(hoop.id, None, problem.spec.limits.out_of_round)
        if problem.shape.wheel is not None and not drawn.closed:
            continue
        across = drawn.girth / pi if drawn.closed else max(drawn.plan.width, drawn.plan.depth)
        found.append((max(abs(hoop.inward), abs(hoop.outward)) / across, hoop.id))
    share, part = worst(found or [(0.0, "")])
    return Measured(part, share, problem.spec.limits.out_of_round)


def _buckling(problem: Problem, solution: Solution) -> Measured:
    return Measured(solution.weakest, solution.buckling.value, problem.spec.limits.factor, "at least",
                    solution.buckling.at_least or solution.screened)


def _set_closed(problem: Problem, solution: Solution) -> Measured:
    closed = [hoop for hoop in problem.shape.hoops if hoop.closed]
    found = [(curved(problem, curvature), hoop) for curvature, hoop in bowed(problem.shape)]
    if closed:
        least = min(closed, key=lambda hoop: hoop.girth)
        sprung = problem.spec.build.hoops.formed != "pre-formed"
        found.append((closing(problem, least.girth) if sprung else 0.0, least.id))
    if not found:
        return Measured("", None, problem.spec.limits.stress_worn * problem.material.elastic_limit)
    stress, part = max(found)
    return Measured(part, stress, problem.spec.limits.stress_worn * problem.material.elastic_limit)


def _set_worn(problem: Problem, solution: Solution) -> Measured:
    limit = problem.spec.limits.stress_worn * problem.material.elastic_limit
    bent = [hoop for hoop in (*solution.hoops, *solution.spokes) if hoop.id not in solution.spared]
    if any(hoop.stress is None for hoop in bent):
        return Measured("", None, limit)
    stress, part = worst((hoop.stress or 0.0, hoop.id) for hoop in bent)
    return Measured(part, stress, limit)


def _door(problem: Problem, solution: Solution) -> Measured:
    found = handled("door", problem) or handled("closing", problem)
    limit = problem.spec.limits.stress_door * problem.material.elastic_limit
    return Measured("", None, limit) if found is None else Measured(found.part, found.stress, limit)


def _equilibrium(problem: Problem, solution: Solution) -> Measured:
    return Measured("", 1.0 if solution.status == "solved" else 0.0, 1.0, "at least")


def _swing(problem: Problem, solution: Solution) -> Measured:
    return Measured(problem.shape.hoops[-1].id, solution.swing, problem.spec.limits.swing)


def _sinking(problem: Problem, solution: Solution) -> Measured:
    """Of a wheel's rim, or of the lowest of side hoops, over which the skirt falls to its hem."""
    limit, part = problem.spec.skirt_off_floor, problem.shape.hoops[-1].id
    if solution.wheel is not None:
        return Measured(part, max(solution.wheel.sinks), limit)
    if solution.sides:
        low = solution.sides[-1]
        return Measured(low.hoops[0], low.down, limit)
    return Measured("", None, limit)


def _reach(problem: Problem, solution: Solution) -> Measured:
    """What the widest of side hoops lacks of its wished reach."""
    pair = problem.shape.sides
    if pair is None or not solution.sides:
        return Measured("", None, REACH)
    wished, lies = max(zip(pair.channels, solution.sides, strict=True), key=lambda both: both[0].wished)
    return Measured(lies.hoops[0], max(0.0, wished.wished - lies.reach), REACH)


MEASURES: Mapping[str, Callable[[Problem, Solution], Measured]] = MappingProxyType({
    "equilibrium": _equilibrium,
    "buckling": _buckling,
    "sag": _sag,
    "out-of-round": _round,
    "swing": _swing,
    "sinking": _sinking,
    "reach": _reach,
    "set-closed": _set_closed,
    "set-worn": _set_worn,
    "door": _door,
})
"""Every check of mechanics that has one number, by its code."""
