"""The whole cage at once: a problem filled into the nonlinear solver, its answer read back as a solution.

Cloth of a hem band counts as a net that only pulls. How stiff cloth pulls is our judgement: a
woven cotton at small strains takes about 5 kN per metre of width and layer.
"""

from __future__ import annotations

from math import cos, dist, hypot, pi
from typing import Literal

from hoopwright.shape.curves.ellipse import point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.model import Hoop, Tape, Tie
from hoopwright.strength.cage.model import (
    BandModel,
    BodyModel,
    BodyRow,
    CageModel,
    FixedPoint,
    HoopModel,
    HoopPoint,
    Section,
    TapeModel,
    TieModel,
)
from hoopwright.strength.cage.result import CageResult, HoopResult
from hoopwright.strength.formed import closing, preformed
from hoopwright.strength.forms.droop import GRAVITY
from hoopwright.strength.forms.section import properties
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import (
    Buckling,
    HoopLines,
    HoopStrength,
    Segment,
    TapeStrength,
    TieStrength,
)

NAME = "whole cage, large movements, by finite elements: hoops as sprung rods, tapes and cloth that only pull"
POINTS = 64
"""Points that hand a hoop's line to the solver, which lays a smooth curve through them."""
CLOTH = 5000.0
"""N per metre of width and layer: our judgement for woven cotton at small strains."""
COARSE = 24
"""Rods in a hoop of a changed cage; 48 in the cage itself."""
WORK, WORK_OF_TRIAL = 3.2e6, 1.0e6
"""What solving a cage, and a changed one, may cost in unknowns factored: a few seconds. The committed cages cost up to
0.9e6; those that cost more hang from nothing that could hold them."""
MOST_SAID = 4
"""Reasons told when no equilibrium is found; more of the same are counted."""
STRIPS = 24
"""Upright strips that stand for the cloth of a hem band."""

SOURCE = "whole cage solved with large movements (our solver, held against independent finite elements)"
BUCKLING = (
    "load raised step by step on the whole cage until it gives way; the factor asked for is our judgement"
)


def solve(problem: Problem) -> Solution:
    """Solve a cage whole; where no equilibrium is found, the closed forms give the rest."""
    from hoopwright.strength.cage.solve import Options
    from hoopwright.strength.cage.solve import solve as solve_cage

    return solution(problem, solve_cage(model(problem), Options(work=WORK)))


def trial(problem: Problem) -> Solution:
    """The same on a coarser mesh, within a hundredth: for changed cages, held beside one another."""
    from hoopwright.strength.cage.solve import Options
    from hoopwright.strength.cage.solve import solve as solve_cage

    return solution(problem, solve_cage(model(problem), Options(elements=COARSE, work=WORK_OF_TRIAL)))


def model(problem: Problem) -> CageModel:
    """The mechanical model of a problem: lasting stiffness, own weight once, skirt as even line load."""
    shape, band = problem.shape, problem.shape.band
    section = section_of(problem)
    hoops = tuple(
        _hoop(hoop, section, skirt + own, _formed(problem, hoop))
        for hoop, skirt, own in zip(shape.hoops, problem.skirt, problem.own, strict=True)
    )
    ea = problem.spec.allowances.tape_stretch
    bands = (
        ()
        if band is None
        else (
            BandModel(
                "band", band.upper, band.lower, *_net(band.depth, shape.hoop(band.lower).girth), strips=STRIPS
            ),
        )
    )
    rows = tuple(BodyRow(row.height, row.width / 2, row.depth / 2) for row in shape.body)
    body = BodyModel(rows) if len(rows) > 1 else None
    tapes = tuple(_tape(tape, problem, ea) for tape in shape.tapes)
    ties = tuple(part for tie in shape.ties for part in _tie(tie, shape.hoop(tie.hoop), ea))
    return CageModel(hoops, tapes, bands, ties, body=body)


def solution(problem: Problem, result: CageResult) -> Solution:
    """What the solver found, in the stage's own terms."""
    if result.status not in ("solved", "stands only by symmetry"):
        return nothing(problem, result)
    factor = result.factor
    return Solution(
        NAME,
        tuple(hoop_of(hoop) for hoop in result.hoops),
        tuple(
            TapeStrength(
                tape.id, tuple(Segment(part.to, part.tension_n, part.slack) for part in tape.segments)
            )
            for tape in result.tapes
        ),
        Buckling(None, False) if factor is None else Buckling(factor.value, factor.at_least),
        "" if factor is None else factor.part or "",
        result.swing_m,
        result.waist_pull_n,
        sources={
            "sag": f"{SOURCE}; the limit is our judgement",
            "out-of-round": f"{SOURCE}; the limit is our judgement",
            "set-worn": f"{SOURCE}; the share of the elastic limit is our judgement",
            "buckling": BUCKLING,
            "slack": SOURCE,
        },
        unassessed=unfollowed(problem, result),
        status=result.status,
        trouble=tuple(note.text for note in result.notes),
        lines=tuple(HoopLines(hoop.id, hoop.wished, hoop.deformed) for hoop in result.hoops),
        ties=tuple(
            TieStrength(tie.id, tie.tension_n, tie.slack) for tie in result.ties if tie.id in _ids(problem)
        ),
    )


def unfollowed(problem: Problem, result: CageResult) -> dict[str, str]:
    """Why buckling is not assessed: how much more it carries was not followed far enough to judge it."""
    factor = result.factor
    if factor is None or factor.limit != "spent" or factor.value >= problem.spec.limits.factor:
        return {}
    return {"buckling": f"it carries at least {factor.value:.2g} times this load; how much more was not followed,"
                        " since a plan must not wait"}


def _ids(problem: Problem) -> frozenset[str]:
    return frozenset(tie.id for tie in problem.shape.ties)


def nothing(problem: Problem, result: CageResult, name: str = NAME) -> Solution:
    """No equilibrium: loads as they are, everything else not assessed, and why."""
    trouble = _trouble(result)
    why = "; ".join(trouble) or result.status
    hoops = tuple(
        HoopStrength(hoop.id, (skirt + own) * GRAVITY / hoop.girth, 0.0, None, None, None, None)
        for hoop, skirt, own in zip(problem.shape.hoops, problem.skirt, problem.own, strict=True)
    )
    codes = ("sag", "out-of-round", "set-worn", "buckling", "slack")
    return Solution(
        name,
        hoops,
        (),
        Buckling(None, False),
        "",
        None,
        0.0,
        unassessed=dict.fromkeys(codes, why),
        status=result.status,
        trouble=trouble,
        carries=_carries(result),
    )


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


def _hoop(hoop: Hoop, section: Section, mass: float, formed: bool) -> HoopModel:
    """One hoop, sprung from straight stock unless it is ``formed`` to its curve beforehand."""
    line = max(mass / hoop.girth - section.mass_per_m, 0.0) * GRAVITY
    born: Literal["straight", "preformed"] = "preformed" if formed else "straight"
    if not hoop.closed:
        path = tuple((x, y, hoop.height) for x, y in hoop.plan.path)
        return HoopModel(hoop.id, path, section, False, hoop.start, hoop.end, born, line_load_n_per_m=line)
    outline = ellipse_of(hoop.plan)
    points = tuple((*point_at(outline, k / POINTS), hoop.height) for k in range(POINTS))
    return HoopModel(hoop.id, points, section, born=born, line_load_n_per_m=line)


def _formed(problem: Problem, hoop: Hoop) -> bool:
    """Whether a hoop lies in its curve unstrained; an open one only where the spec says so."""
    if not hoop.closed:
        return problem.spec.build.hoops.formed == "pre-formed"
    return preformed(problem, closing(problem, hoop.girth))


def _tie(tie: Tie, hoop: Hoop, ea: float) -> tuple[TieModel, ...]:
    """A tie from side to side of its hoop; one behind the hips as two, each held where it leaves the body."""
    left, right = HoopPoint(tie.hoop, tie.at), HoopPoint(tie.hoop, tie.to)
    if tie.behind is None:
        return (TieModel(tie.id, left, right, tie.length, ea),)
    x, y, z = tie.behind
    length = dist((*point_at(ellipse_of(hoop.plan), tie.at), hoop.height), tie.behind)
    return (TieModel(tie.id, left, FixedPoint((x, y, z)), length, ea),
            TieModel(f"{tie.id} right", right, FixedPoint((-x, y, z)), length, ea))


def _tape(tape: Tape, problem: Problem, ea: float) -> TapeModel:
    fixings = []
    for mark in tape.marks:
        fixing = next(fixing for fixing in problem.shape.hoop(mark.hoop).fixings if fixing.tape == tape.id)
        fixings.append((mark.hoop, fixing.fraction % 1.0))
    return TapeModel(tape.id, tape.start, tuple(fixings), ea)


def _net(depth: float, girth: float) -> tuple[float, float]:
    """EA of an upright strip and of a diagonal, N, for two layers of cloth between two hoops."""
    upright = 2 * CLOTH * girth / STRIPS
    run = girth / STRIPS
    slope = hypot(depth, run) / max(depth, run)
    return upright, upright / slope * cos(pi / 4)


def hoop_of(hoop: HoopResult) -> HoopStrength:
    """What the solver found of one hoop."""
    return HoopStrength(
        hoop.id, hoop.load_n_per_m, hoop.thrust_n, hoop.sag_m, hoop.inward_m, hoop.outward_m, hoop.stress_pa
    )
