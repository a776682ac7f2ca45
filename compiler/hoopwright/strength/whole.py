"""A cage on tapes solved whole: hoops, tapes, ties and body filled into the solver, its answer read back.

Cloth of a hem band counts as a net that only pulls.
"""

from __future__ import annotations

from math import cos, dist, hypot, pi
from typing import Literal

from hoopwright.shape.curves.ellipse import point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.model import Hoop, Tape, Tie
from hoopwright.strength.answer import (
    AT_REST,
    CLOTH,
    POINTS,
    SOURCE,
    SOURCES,
    ask,
    buckling_of,
    hoop_of,
    nothing,
    section_of,
    unfollowed,
)
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
from hoopwright.strength.cage.result import CageResult
from hoopwright.strength.formed import closing, preformed
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import HoopLines, Segment, TapeStrength, TieStrength

NAME = "whole cage, large movements, by finite elements: hoops as sprung rods, tapes and cloth that only pull"
FINE, COARSE = 32, 24
"""Rods in a hoop of the cage itself, and of a changed one. Against a mesh six times as fine sag, movement, stress and
thrust are within 0.3 and 0.5 % and the load factor within 2 and 3 %, measured on every kind of cage; where the body
holds a cage off, at single nodes, they are within 6 % on either."""
STRIPS = 24
"""Upright strips that stand for the cloth of a hem band."""


def solve(problem: Problem) -> Solution:
    """Solve a cage whole; where no equilibrium is found, nothing but its loads is told."""
    return solution(problem, ask(problem, model(problem), FINE))


def trial(problem: Problem) -> Solution:
    """The same on a coarser mesh: for changed cages, held beside one another."""
    return solution(problem, ask(problem, model(problem), COARSE, trial=True))


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
    if result.status not in AT_REST:
        return nothing(problem, result, NAME)
    buckling, weakest = buckling_of(result)
    own = {tie.id for tie in problem.shape.ties}
    return Solution(
        NAME,
        tuple(hoop_of(hoop) for hoop in result.hoops),
        tuple(
            TapeStrength(
                tape.id, tuple(Segment(part.to, part.tension_n, part.slack, part.loose_m) for part in tape.segments)
            )
            for tape in result.tapes
        ),
        buckling,
        weakest,
        result.swing_m,
        result.waist_pull_n,
        sources={**SOURCES, "slack": SOURCE},
        unassessed=unfollowed(problem, result),
        status=result.status,
        trouble=tuple(note.text for note in result.notes),
        lines=tuple(HoopLines(hoop.id, hoop.wished, hoop.deformed) for hoop in result.hoops),
        ties=tuple(TieStrength(tie.id, tie.tension_n, tie.slack) for tie in result.ties if tie.id in own),
        body_push=result.body_push_n,
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
        return (TieModel(tie.id, left, right, tie.span, ea),)
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
