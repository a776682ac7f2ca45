"""The cage solver asked for any kind of cage, and its answer in the stage's own terms."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.strength.cage.model import CageModel, Section
from hoopwright.strength.cage.result import CageResult, HoopResult
from hoopwright.strength.forms.section import properties
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem, Solution, unjudged
from hoopwright.strength.model import Buckling, HoopStrength

POINTS = 64
"""Points that hand a hoop's line to the solver, which lays a smooth curve through them."""
CLOTH = 5000.0
"""N per metre of width and layer: our judgement for woven cotton at small strains."""
WORK, WORK_OF_TRIAL = 2.8e6, 0.6e6
"""What solving a cage, and a changed one, may cost in unknowns factored: a few seconds. Of some hundred designs, up to
sixty hoops, none that hangs at rest cost more than 0.4e6; following a limp one down to a sixth of its load cost 2.7e6.
"""
MOST_SAID = 4
"""Reasons told when no equilibrium is found; more of the same are counted."""
BY_SYMMETRY = "stands only by symmetry"
AT_REST = ("solved", BY_SYMMETRY)
"""What the solver says of a cage that it found at rest."""

SOURCE = "whole cage solved with large movements (our solver, held against independent finite elements)"
SOURCES: Mapping[str, str] = MappingProxyType({
    "sag": f"{SOURCE}; the limit is our judgement",
    "out-of-round": f"{SOURCE}; the limit is our judgement",
    "set-worn": f"{SOURCE}; the share of the elastic limit is our judgement",
    "buckling": "load raised step by step on the whole cage until it gives way; the factor asked for is our judgement",
})
"""Where the numbers of its checks come from, by code."""


def ask(problem: Problem, model: CageModel, elements: int, *, trial: bool = False, factor: bool = True) -> CageResult:
    """What the cage of a problem does that is laid out with so many ``elements``, rods in a hoop; a ``trial`` may cost
    less. How much more it would carry is followed as far as the maker's own limit asks; without ``factor`` not at all.
    """
    from hoopwright.strength.cage.solve import Options, solve
    from hoopwright.strength.cage.track import CAP

    work = WORK_OF_TRIAL if trial else WORK
    return solve(model, Options(elements, factor, max(CAP, problem.spec.limits.factor), work=work))


def section_of(problem: Problem) -> Section:
    """The section of a problem's stock, under a lasting load."""
    section, stock = properties(problem.stock.section), problem.stock
    e = modulus(stock, problem.worn)
    area = stock.linear_density / stock.grade.density
    return Section(
        ea=e * area,
        ei_weak=problem.worn.ei_weak,
        ei_strong=problem.worn.ei_strong,
        gj=problem.worn.gj,
        mass_per_m=stock.linear_density,
        half_thickness=section.weak_fibre,
        half_width=section.strong_fibre,
        modulus=e,
        is_round=not section.corners,
    )


def hoop_of(hoop: HoopResult) -> HoopStrength:
    """What the solver found of one hoop."""
    return HoopStrength(
        hoop.id, hoop.load_n_per_m, hoop.thrust_n, hoop.sag_m, hoop.inward_m, hoop.outward_m, hoop.stress_pa
    )


def buckling_of(result: CageResult) -> tuple[Buckling, str]:
    """The load factor, and the part that gives way there; no part where none is told."""
    factor = result.factor
    if factor is None:
        return Buckling(None, False), ""
    return Buckling(factor.value, factor.at_least), factor.part or ""


def unfollowed(problem: Problem, result: CageResult) -> dict[str, str]:
    """Why buckling is not assessed: how much more it carries was not followed far enough to judge it, or there is no
    load at which it stands of itself."""
    factor = result.factor
    if factor is None and result.status == BY_SYMMETRY:
        return {"buckling": "it stands only by symmetry, under any load, so that there is none to raise"}
    if factor is None or factor.limit != "spent" or factor.value >= problem.spec.limits.factor:
        return {}
    return {"buckling": f"it carries at least {factor.value:.2g} times this load; how much more was not followed,"
                        " since a plan must not wait"}


def nothing(problem: Problem, result: CageResult, name: str, *codes: str) -> Solution:
    """No equilibrium: loads as they are, everything else not assessed, ``codes`` neither, and why."""
    trouble = _trouble(result)
    why = "; ".join(trouble) or result.status
    bare = unjudged(problem, name, why)
    return replace(bare, unassessed={**bare.unassessed, **dict.fromkeys(codes, why)}, status=result.status,
                   trouble=trouble, carries=_carries(result))


def _carries(result: CageResult) -> float | None:
    """Share of its load at which it gives way; None when that is not known, or not below all of it."""
    factor = result.factor
    return factor.value if factor is not None and 0.0 < factor.value < 1.0 else None


def _trouble(result: CageResult) -> tuple[str, ...]:
    """Why there is no equilibrium, like things together, and how much of its load the cage carries."""
    carries, said = _carries(result), list(dict.fromkeys(note.text for note in result.notes))
    if carries is not None:
        how = "carries at least" if result.factor and result.factor.at_least else "gives way at about"
        said.insert(1, f"it {how} {carries * 100:.2g} % of this load")
    more = len(said) - MOST_SAID
    return tuple(said if more <= 1 else [*said[:MOST_SAID], f"and {more} more of this kind"])
