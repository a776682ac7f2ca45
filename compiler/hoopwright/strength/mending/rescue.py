"""What to change when a cage finds no rest: by what the solver met, each change solved before it is named.

A cage that gives way at a share f of its load needs 1/f of its strength. Changes that cannot give that much
(a strip s times as thick is about s^3 as stiff) are not tried: each trial that fails costs about a second.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import floor, log10
from types import MappingProxyType

from hoopwright.shape.model import Shape
from hoopwright.source.quantity import length_text
from hoopwright.spec.model import Spec, Units
from hoopwright.strength.measures import MEASURES
from hoopwright.strength.mending.change import LIGHTER, MORE_TAPES, NO_GAP, THICKER, Change
from hoopwright.strength.mending.remedy import Trials, used_by
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.verdict import CLAUSES

SPARE = 0.8
"""Share of the load it just carries that is proposed: our judgement."""
GAINS = (1.25**3, 1.5**3, 2.0**3)
"""What the sizes of THICKER gain."""
TAPES_GAIN = 3.0
"""More than two further tapes ever gained in our trials."""
LOWER: Mapping[Units, tuple[float, ...]] = MappingProxyType(
    {"centimetres": (0.02, 0.05, 0.10), "inches": (0.0254, 0.0508, 0.1016)})
"""How much lower the top hoop is hung where tapes do not descend, m."""
ROOM = 0.05
"""How much larger than the body's girth a hoop inside the body is made, as a share."""
NAMED = 2

SIZED = ("tapes do not descend",)
"""What is mended by one change in growing sizes, of which the smallest is named."""

OTHERWISE: Mapping[str, str] = MappingProxyType({
    "tapes do not descend": "hang the top hoop lower (shape.top_hoop), or measure the waist's height again",
    "too few fixings": "fix every hoop to at least three tapes",
    "hangs from nothing": "let the tapes run on to every hoop (build.tapes.to: hem)",
    "tips over": "space the tapes all round the waist, or tie the upper hoops to the hips",
    "bad model": "check the measures of the hoops it names",
})
"""What else can be done, by what the solver met."""


def rescue(problem: Problem, solution: Solution, trials: Trials) -> str:
    """Up to two changes after which it hangs at rest, with what then still misses; else the usual words for
    what was met."""
    named = []
    for change in _changes(problem, solution):
        solved = trials.solved(change)
        if solved is not None and solved[1].status == "solved":
            named.append(f"{change.said_of(problem.spec)} (it then hangs at rest{_misses(*solved)})")
        if len(named) == (1 if solution.status in SIZED else NAMED):
            break
    if not named and solution.carries and _bearable(problem, solution) is None:
        return "take a much stiffer strip: it would not even carry itself with something to spare"
    return ", or ".join(named) or OTHERWISE.get(solution.status, "")


def _misses(problem: Problem, solution: Solution) -> str:
    """What the changed cage still misses."""
    missed = []
    for code, used in used_by(problem, solution).items():
        if used > 1.0 and code in CLAUSES and code not in solution.unassessed:
            part = MEASURES[code](problem, solution).part if code in MEASURES else ""
            missed.append(CLAUSES[code].missed.format(part=part or "a part"))
    return f", but {' and '.join(missed)}" if missed else ""


def _changes(problem: Problem, solution: Solution) -> Iterator[Change]:
    """Changes worth a trial, the most promising first."""
    units = problem.spec.units
    if solution.status == "tapes do not descend":
        yield from (_lower(down, units) for down in LOWER[units])
        return
    if solution.status in ("too few fixings", "hangs from nothing", "bad model"):
        return
    inside = _inside(problem.shape)
    if inside > (problem.spec.shape.top_girth or inside):
        yield _larger(inside * (1 + ROOM), units)
    yield from NO_GAP
    need = 1 / solution.carries if solution.carries else 1.0
    if need <= TAPES_GAIN:
        yield MORE_TAPES[-1]
    if solution.status == "tips over":
        return
    share = _bearable(problem, solution)
    if share is not None:
        yield _lighten(share)
    elif solution.carries is None:
        yield LIGHTER[-1]
    yield from [change for change, gain in zip(THICKER, GAINS, strict=True) if gain >= need][:1]


def _bearable(problem: Problem, solution: Solution) -> float | None:
    """Share of the skirt it would carry with something to spare, to two figures; None when there is none."""
    skirt, own = sum(problem.skirt), sum(problem.own)
    if not solution.carries or skirt <= 0.0:
        return None
    share = (SPARE * solution.carries * (skirt + own) - own) / skirt
    if share < 1e-3:
        return None
    step = 10.0 ** (floor(log10(share)) - 1)
    return min(floor(share / step) * step, 0.95)


def _lighten(share: float) -> Change:
    def apply(spec: Spec) -> Spec | None:
        return replace(spec, load=tuple(replace(layer, mass=layer.mass * share) for layer in spec.load))

    return Change(f"hang no more than {share * 100:.2g} % of this skirt on it", apply)


def _lower(down: float, units: Units) -> Change:
    def apply(spec: Spec) -> Spec | None:
        top = spec.shape.top_hoop
        if top.below_waist is not None:
            top = replace(top, below_waist=top.below_waist + down)
        elif top.height is not None:
            top = replace(top, height=top.height - down)
        else:
            return None
        return replace(spec, shape=replace(spec.shape, top_hoop=top))

    return Change(f"hang the top hoop {length_text(down, units)} lower", apply)


def _larger(girth: float, units: Units) -> Change:
    def apply(spec: Spec) -> Spec | None:
        return replace(spec, shape=replace(spec.shape, top_girth=girth))

    return Change(f"make the top hoop {length_text(girth, units)} round, larger than the body there", apply)


def _inside(shape: Shape) -> float:
    """Girth of the body at the top hoop, m; 0 when no body is known."""
    top = shape.hoops[0].height
    rows = [row for row in shape.body if row.height >= top] or list(shape.body)
    below = [row for row in shape.body if row.height < top]
    near = [*rows[-1:], *below[:1]]
    return max((1.5708 * (row.width + row.depth) for row in near), default=0.0)
