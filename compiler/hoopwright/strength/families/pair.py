"""A pair of side hoops, solved whole: one side, by its front half, for both sides and both halves are alike.

The steels are sprung rods in their own bows. What is in no book is taken on the safe side:

- The outer panel holds them as ``LINES`` strips of cloth from the waistband down, which only pull and are as
  long as the wished half ovals want them; those at the edge stand for the seam with the inner panel.
- The ends of each steel are held by its tie and lie on the body through it: the tie bends round the hip
  without rubbing. Below the lowest row measured the body is taken as wide as there.
- That it may slide round the hip to front or back is not seen by half a side: cloth rubs, and the stop tries
  it.
- As much of the skirt as lies along the lowest steel of a side hangs there; panels and ties count too.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import dist

from hoopwright.shape.curves.ellipse import from_girth, point_at
from hoopwright.shape.model import Hoop, Point, SidePair
from hoopwright.source.quantity import length_text
from hoopwright.strength import answer
from hoopwright.strength.answer import (
    AT_REST,
    CLOTH,
    SOURCE,
    ask,
    buckling_of,
    hoop_of,
    nothing,
    section_of,
    unfollowed,
)
from hoopwright.strength.bows import bowed
from hoopwright.strength.cage.model import (
    BodyModel,
    BodyRow,
    CageModel,
    FreePoint,
    HoopModel,
    HoopPoint,
    TapeModel,
    TieModel,
)
from hoopwright.strength.cage.result import CageResult, HoopResult
from hoopwright.strength.cloth import panels_mass
from hoopwright.strength.formed import curved, preformed
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import HoopLines, HoopStrength, SideStrength, TieStrength

NAME = (
    "whole side hoop, large movements, by finite elements: steels as sprung rods, cloth and ties that only pull,"
    " the hip by contact; one side by its front half"
)
LINES = 5
"""Strips of cloth that stand for half an outer panel, its edge and its middle included: with 9 the steels'
middles lie within 1 mm."""
IN_TIE = 3
"""Straight pieces of half a tie, whose joints lie on the hip."""
COARSE = 12
"""Rods in half a steel of changed side hoops; 24 in those themselves."""
FINE = 24
SHORTER = 0.9
"""Share of a tie's length that is tried when side hoops stand out too little."""
TIED_SHORTER = "tie them a tenth shorter"
"""How the words begin that say what shorter ties do."""
LEGS = 0.5
"""How far the body goes on below its lowest row, m."""
_PRESSED = (
    "side hoops are pressed up or in by hand, which bends no steel in a known way; the door's width is checked by"
    " itself"
)
_LIFTED = "how they fold up when she sits lies in cloth and chair: the stop on a chair tries it"
OPEN = {
    "swing": "whether they slide round the hip lies in how cloth rubs on it: the stop in the doorway tries it",
    "door": _PRESSED,
    "chair": _LIFTED,
    "car": _LIFTED,
    "bag": "side hoops fold flat and lie in a bag as they are",
}
"""What no form is known for."""
_TAKEN = "cloth as strips that only pull, inner panel and ties bent round a hip that does not rub (our model)"
_BOW = "greatest curvature of an elastica held at its chord times E t/2 (derived) against a share of the elastic"
SAYS = {
    "equilibrium": "a shape is found in which the side hoops hang at rest on hip and waistband under their load",
    "buckling": "no steel buckles under the pull of cloth and skirt",
    "sag": "the steels keep level between the strips of cloth that hold them",
    "out-of-round": "the steels keep their curves",
    "sinking": "the side hoops sink no farther than the skirt's hem is off the floor",
    "reach": "what the widest steels lack, under their load, of the reach beyond the hip that they were wished to have",
    "set-closed": "bending a steel into its channel leaves no set in it",
}
SOURCES = {
    **answer.SOURCES,
    "equilibrium": f"{SOURCE}; {_TAKEN}",
    "sinking": f"{SOURCE}; {_TAKEN}; the limit is the skirt's own clearance",
    "reach": f"{SOURCE}; {_TAKEN}; the limit, 1 in, is our judgement",
    "set-closed": f"{_BOW} limit (our judgement)",
    **dict.fromkeys(OPEN, "no form is known to us; it is tried at the stop"),
}


def solve(problem: Problem) -> Solution:
    """Solve a pair of side hoops whole."""
    found = solution(problem, ask(problem, model(problem), FINE))
    return replace(found, sides=_with_bare(problem, found.sides))


def _with_bare(problem: Problem, sides: tuple[SideStrength, ...]) -> tuple[SideStrength, ...]:
    """The same, with where each steel lies without the skirt, which a maker measures at the stops."""
    if not sides:
        return ()
    if not any(problem.skirt):
        return tuple(replace(one, bare=(one.reach, one.drop)) for one in sides)
    bare = replace(problem, skirt=(0.0,) * len(problem.skirt))
    alone = solution(bare, ask(bare, model(bare), COARSE, factor=False)).sides
    return tuple(replace(one, bare=(so.reach, so.drop)) for one, so in zip(sides, alone, strict=True)) \
        if alone else sides


def trial(problem: Problem) -> Solution:
    """The same on a coarser mesh, for changed side hoops."""
    return solution(problem, ask(problem, model(problem), COARSE, trial=True))


def model(problem: Problem) -> CageModel:
    """The front half of the left side hoop, mirrored in the plane from side to side. Raises ValueError without."""
    pair, left = problem.shape.sides, _left(problem)
    if pair is None:
        raise ValueError("side hoops have panels")
    hoops = tuple(_steel(problem, hoop) for hoop in left)
    wished = tuple(_wished(hoop) for hoop in left)
    ea = problem.spec.allowances.tape_stretch
    ties = tuple(
        TieModel(tie.id, HoopPoint(tie.hoop, 0.0), FreePoint(f"middle of {tie.id}", (line[0][0], 0.0, line[0][2])),
                 tie.length / 2, ea, pieces=IN_TIE)
        for tie, line in zip(problem.shape.ties, wished, strict=False)
    )
    tapes = tuple(_strip(problem, pair, k, wished, tuple(hoop.id for hoop in left)) for k in range(LINES))
    return CageModel(hoops, tapes, ties=ties, body=_body(problem), mirrors=("y",))


def tied_shorter(problem: Problem) -> str:
    """What the widest steel does with shorter ties, in words; empty when that finds no rest or does not help."""
    cage, units = model(problem), problem.spec.units
    ties = tuple(replace(tie, length=SHORTER * tie.length) for tie in cage.ties)
    result = ask(problem, replace(cage, ties=ties), COARSE, trial=True, factor=False)
    if result.status != "solved":
        return ""
    lies = max((_lies(problem, one, (hoop,)) for one, hoop in zip(result.hoops, _left(problem), strict=True)),
               key=lambda side: side.reach)
    length = length_text(SHORTER * problem.shape.ties[0].length, units)
    return (f"{TIED_SHORTER}, {length} between the seams: {lies.hoops[0]} then stands out"
            f" {length_text(lies.reach, units)} and goes down {length_text(lies.down, units)}")


def _left(problem: Problem) -> tuple[Hoop, ...]:
    return tuple(hoop for hoop in problem.shape.hoops if hoop.plan.sideways > 0)


def _half(path: tuple[tuple[float, float], ...], height: float) -> tuple[Point, ...]:
    """The front half of a line, its middle on the plane of symmetry."""
    front = path[: len(path) // 2 + 1]
    return (*((x, y, height) for x, y in front[:-1]), (front[-1][0], 0.0, height))


def _wished(hoop: Hoop) -> tuple[Point, ...]:
    return _half(hoop.plan.path, hoop.height)


def _steel(problem: Problem, hoop: Hoop) -> HoopModel:
    """Half a steel in the bow it takes by itself, with half of all that hangs on it."""
    section, k = section_of(problem), problem.shape.hoops.index(hoop)
    cloth = panels_mass(problem.spec, problem.shape) / len(problem.shape.hoops)
    mass = problem.skirt[k] + problem.own[k] + cloth
    line = max(mass / hoop.cut - section.mass_per_m, 0.0) * GRAVITY
    bends = {id: curvature for curvature, id in bowed(problem.shape)}
    formed = preformed(problem, curved(problem, bends.get(hoop.id, 0.0)))
    return HoopModel(hoop.id, _half(hoop.real or hoop.plan.path, hoop.height), section, False, 0.0, 0.5,
                     "preformed" if formed else "straight", line_load_n_per_m=line)


def _strip(problem: Problem, pair: SidePair, k: int, wished: tuple[tuple[Point, ...], ...],
           ids: tuple[str, ...]) -> TapeModel:
    """A strip of the outer panel from the waistband down over all steels; the edge's and the middle's are half
    as wide as the others."""
    wearer, share = problem.spec.wearer, k / (LINES - 1)
    half = pair.on_band / wearer.waist / 2
    x, y = point_at(from_girth(wearer.waist, wearer.waist_oval), 0.25 - half * (1 - share))
    anchor = (x, y if share < 1 else 0.0, wearer.side - problem.spec.build.waistband.width / 2)
    points = (anchor, *(_along(line, share) for line in wished))
    width = pair.front_to_back / 2 / (LINES - 1) * (0.5 if k in (0, LINES - 1) else 1.0)
    return TapeModel(f"strip {k + 1}", anchor, tuple((id, share / 2) for id in ids), CLOTH * width,
                     lengths=tuple(dist(a, b) for a, b in pairwise(points)))


def _along(line: tuple[Point, ...], share: float) -> Point:
    """The point at a share of a line's length."""
    steps = [dist(a, b) for a, b in pairwise(line)]
    left = share * sum(steps)
    for a, b, step in zip(line, line[1:], steps, strict=False):
        if left <= step + 1e-12:
            part = left / step
            return (a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1]), a[2] + part * (b[2] - a[2]))
        left -= step
    return line[-1]


def _body(problem: Problem) -> BodyModel | None:
    rows = [BodyRow(row.height, row.width / 2, row.depth / 2) for row in problem.shape.body]
    if not rows:
        return None
    low = min(rows, key=lambda row: row.z)
    return BodyModel((*rows, BodyRow(low.z - LEGS, low.half_breadth, low.half_depth)))


def solution(problem: Problem, result: CageResult) -> Solution:
    """What the solver found of a side hoop, told of both sides."""
    if result.status not in AT_REST:
        bare = nothing(problem, result, NAME, "sinking", "reach")
        return replace(bare, unassessed={**bare.unassessed, **OPEN}, sources=SOURCES, says=SAYS)
    shape = problem.shape
    pairs = [(one, shape.hoops[k], shape.hoops[k + len(result.hoops)]) for k, one in enumerate(result.hoops)]
    lies = tuple(_lies(problem, one, (left, right)) for one, left, right in pairs)
    found = [_strength(one) for one in result.hoops]
    pulls = [(tie, result.ties[k % len(result.ties)]) for k, tie in enumerate(shape.ties)]
    lines = [_whole(one) for one in result.hoops]
    return Solution(
        NAME, tuple(replace(one, id=hoop.id) for one, hoop in zip((*found, *found), shape.hoops, strict=True)), (),
        *buckling_of(result), None, 4 * result.waist_pull_n, {**OPEN, **unfollowed(problem, result)}, SOURCES, SAYS,
        result.status, tuple(note.text for note in result.notes if note.code not in ("slack-tape", "slack-tie")),
        lines=(*lines, *(_mirrored(line, hoop.id) for line, (_, _, hoop) in zip(lines, pairs, strict=True))),
        ties=tuple(TieStrength(tie.id, got.tension_n, got.slack) for tie, got in pulls),
        sides=lies, body_push=4 * result.body_push_n,
    )


def _lies(problem: Problem, one: HoopResult, hoops: tuple[Hoop, ...]) -> SideStrength:
    """Where a steel lies: its middle is the last of its points, its end the first."""
    pair = problem.shape.sides
    if pair is None:
        raise ValueError("side hoops have panels")
    down = one.wished[-1][2] - one.deformed[-1][2]
    ends = one.wished[0][2] - one.deformed[0][2]
    reach = max(x for x, _, _ in one.deformed) - pair.hip
    return SideStrength(tuple(hoop.id for hoop in hoops), reach, hoops[0].below_waist + down, down, down - ends)


def _strength(one: HoopResult) -> HoopStrength:
    """Forces as they are; how far it leaves its own curve, its movement as a whole taken out."""
    moved = [b[0] - a[0] for a, b in zip(one.wished, one.deformed, strict=True)]
    along = sum(moved) / len(moved)
    after = [*one.wished[1:], one.wished[-1]]
    before = [one.wished[0], *one.wished[:-1]]
    out = []
    for a, b, p, q in zip(one.wished, one.deformed, before, after, strict=True):
        run, rise = q[0] - p[0], q[1] - p[1]
        size = (run * run + rise * rise) ** 0.5
        out.append(((b[0] - a[0] - along) * -rise + (b[1] - a[1]) * run) / size)
    return replace(hoop_of(one), inward=max(0.0, -min(out)), outward=max(0.0, *out))


def _whole(one: HoopResult) -> HoopLines:
    """Both halves of a line, from its front end to the one behind."""
    return HoopLines(one.id, *((*line, *((x, -y, z) for x, y, z in reversed(line[:-1])))
                               for line in (one.wished, one.deformed)))


def _mirrored(line: HoopLines, id: str) -> HoopLines:
    """A line of the other side, from its end behind to the one in front, as its shape runs."""
    return HoopLines(id, *(tuple((-x, y, z) for x, y, z in reversed(part)) for part in (line.wished, line.loaded)))
