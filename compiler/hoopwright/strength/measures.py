"""The one number of each check, worst part first: what it is, and what it may be."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import pi
from types import MappingProxyType

from hoopwright.shape.judge import Sense
from hoopwright.shape.model import Hoop, Shape
from hoopwright.source.record import record
from hoopwright.strength.handling import handled
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.setting import closing_stress, curved_stress


@record(frozen=True, slots=True)
class Measured:
    """A check's number: ``part``, ``value`` and ``limit``, SI."""

    part: str
    value: float | None
    limit: float | None
    sense: Sense = "at most"

    @property
    def used(self) -> float:
        """How much of what is allowed is used up; above 1 it misses. 0 when it is not known."""
        if self.value is None or not self.limit:
            return 0.0
        return self.value / self.limit if self.sense == "at most" else self.limit / max(self.value, 1e-12)


def _sag(problem: Problem, solution: Solution) -> Measured:
    limit = problem.spec.limits.sag
    worst: tuple[float, str] = (0.0, "")
    for hoop in solution.hoops:
        if hoop.sag is None:
            return Measured(hoop.id, None, limit)
        worst = max(worst, (hoop.sag, hoop.id), key=lambda pair: pair[0])
    return Measured(worst[1], worst[0], limit)


def _round(problem: Problem, solution: Solution) -> Measured:
    worst: tuple[float, str] | None = None
    for hoop, drawn in zip(solution.hoops, problem.shape.hoops, strict=True):
        if hoop.inward is None or hoop.outward is None:
            return Measured(hoop.id, None, problem.spec.limits.out_of_round)
        across = drawn.girth / pi if drawn.closed else drawn.plan.width
        share = max(abs(hoop.inward), abs(hoop.outward)) / across
        worst = max(worst or (share, hoop.id), (share, hoop.id), key=lambda pair: pair[0])
    share, part = worst or (0.0, "")
    return Measured(part, share, problem.spec.limits.out_of_round)


def _buckling(problem: Problem, solution: Solution) -> Measured:
    return Measured(solution.weakest, solution.buckling.value, problem.spec.limits.factor, "at least")


def _set_closed(problem: Problem, solution: Solution) -> Measured:
    e, depth = modulus(problem.stock, problem.material), problem.stock.section.depth
    closed = [hoop for hoop in problem.shape.hoops if hoop.closed]
    found = [(curved_stress(e, depth, curvature), hoop) for curvature, hoop in bowed(problem.shape)]
    if closed:
        least = min(closed, key=lambda hoop: hoop.girth)
        sprung = problem.spec.build.hoops.formed != "pre-formed"
        found.append((closing_stress(e, depth, least.girth) if sprung else 0.0, least.id))
    if not found:
        return Measured("", None, problem.spec.limits.stress_worn * problem.material.elastic_limit)
    stress, part = max(found)
    return Measured(part, stress, problem.spec.limits.stress_worn * problem.material.elastic_limit)


def bowed(shape: Shape) -> list[tuple[float, str]]:
    """Greatest curvature of each half hoop, 1/m: its reach times the pull over EI that holds its chord."""
    return [(_stands(shape.hoop(tie.hoop)) * tie.pull, tie.hoop) for tie in shape.ties
            if tie.kind in ("chord", "lacing")]


def _stands(hoop: Hoop) -> float:
    """How far a half hoop stands off its chord, m: behind it, or beside the hip by itself."""
    if not hoop.plan.sideways:
        return hoop.plan.depth
    out = [abs(x) for x, _ in hoop.real]
    return max(out) - min(out) if out else hoop.plan.width


def _set_worn(problem: Problem, solution: Solution) -> Measured:
    limit = problem.spec.limits.stress_worn * problem.material.elastic_limit
    if any(hoop.stress is None for hoop in solution.hoops):
        return Measured("", None, limit)
    stress, part = max(((hoop.stress or 0.0, hoop.id) for hoop in solution.hoops), key=lambda pair: pair[0])
    return Measured(part, stress, limit)


def _door(problem: Problem, solution: Solution) -> Measured:
    found = handled("door", problem) or handled("closing", problem)
    limit = problem.spec.limits.stress_door * problem.material.elastic_limit
    return Measured("", None, limit) if found is None else Measured(found.part, found.stress, limit)


def _equilibrium(problem: Problem, solution: Solution) -> Measured:
    return Measured("", 1.0 if solution.status == "solved" else 0.0, 1.0, "at least")


def _swing(problem: Problem, solution: Solution) -> Measured:
    return Measured(problem.shape.hoops[-1].id, solution.swing, problem.spec.limits.swing)


MEASURES: Mapping[str, Callable[[Problem, Solution], Measured]] = MappingProxyType({
    "equilibrium": _equilibrium,
    "buckling": _buckling,
    "sag": _sag,
    "out-of-round": _round,
    "swing": _swing,
    "set-closed": _set_closed,
    "set-worn": _set_worn,
    "door": _door,
})
"""Every check of mechanics that has one number, by its code."""
