"""The strength stage's checks: a number, its limit, a result, a remedy in plain words and a source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from hoopwright.shape.judge import MARGIN, judged
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.strength.answer import SOURCE
from hoopwright.strength.balance import balance_check, off_centre, seat_room
from hoopwright.strength.families.pair import tied_shorter
from hoopwright.strength.handled import handling_checks
from hoopwright.strength.joining import join_checks
from hoopwright.strength.measures import MEASURES, Measured
from hoopwright.strength.mending.remedy import Trials, bounds, remedy, used_by
from hoopwright.strength.mending.rescue import rescue
from hoopwright.strength.method import Method, Problem, Solution
from hoopwright.strength.model import Weights
from hoopwright.strength.slack import slack_check

SCREEN = 1.3
"""How far below real buckling loads the closed forms' bound lies at least (four tapes: 3.9 against 3). What the whole
cage solved gives way at is no bound, and a miss there is one."""


@record(frozen=True, slots=True)
class Sort:
    """What belongs to a check whatever its number: words, dimension, source, and a remedy when no change
    computed helps."""

    says: str
    dimension: str
    source: str
    otherwise: str


FRAMES = ("sinking", "reach")
"""Asked only of what a method has told a rim or sides of."""
SORTS: Mapping[str, Sort] = MappingProxyType({
    "equilibrium": Sort(
        "a shape is found in which the cage hangs at rest under its load", "count",
        SOURCE,
        "take more tapes, evenly spaced, or a stiffer strip"),
    "buckling": Sort(
        "no hoop buckles under the inward pull of its tapes", "ratio",
        "least of 3A/R^3 and 9BC/(B + 4C)/R^3: Timoshenko and Gere, Theory of Elastic Stability (from"
        " memory), a lower bound; the factor asked for is our judgement",
        "take a stiffer strip, or carry less skirt"),
    "sag": Sort(
        "the hoops keep level between the tapes", "length",
        "ring on n supports, bent and twisted together, free to twist at the tapes (derived); the limit"
        " is our judgement",
        "take more tapes, or a wider strip"),
    "out-of-round": Sort(
        "the hoops keep their shape between the tapes", "share",
        "ring under n equal inward loads (derived; as in Roark's Formulas for Stress and Strain, from"
        " memory); the limit is our judgement",
        "take more tapes, or a thicker strip"),
    "swing": Sort(
        "the cage hangs where it was drawn and does not swing forward or back", "length",
        "movement of the hem's centre on the whole cage solved; the limit is our judgement",
        "tie the upper hoops to the hips with tapes (where tapes carry the hoops: `build: {hip_ties: {count: 2}}`), or"
        " wear a pad behind that holds the cage off the body"),
    "sinking": Sort(
        "it sinks no farther than the skirt's hem is off the floor", "length",
        "whole cage solved with large movements; the limit is the skirt's own clearance",
        "cut the skirt to it under its load, as the plan gives it, or hang less on it; a stiffer stock sinks less"),
    "reach": Sort(
        "what they lack, under their load, of the reach that they were wished to have", "length",
        "whole cage solved with large movements; the limit, 1 in, is our judgement",
        "wish them that much wider, shorten the ties, or take a stiffer stock"),
    "set-closed": Sort(
        "closing the smallest hoop leaves no set in it", "stress",
        "pi E t/G (derived) against a share of the elastic limit (our judgement)",
        "take a thinner strip, or a larger smallest hoop"),
    "set-worn": Sort(
        "wearing it leaves no set in the hoops", "stress",
        "whole curvature times E t/2, and bending between tapes (derived), against a share of the elastic"
        " limit (our judgement)",
        "take a thinner strip, or more tapes"),
    "door": Sort(
        "it springs back from being squeezed through the door", "stress",
        "hoop between parallel walls as an elastica (derived) against a share of the elastic limit (our"
        " judgement)",
        "turn sideways or lift one side at this door, or take a thinner strip"),
})


def strength_checks(
    problem: Problem, solution: Solution, weights: Weights, method: Method | None
) -> tuple[Check, ...]:
    """All checks of a solved cage; ``method`` solves changed cages for the remedies, None solves none."""
    trials = Trials(problem.spec, method, used_by(problem, solution), bounds(problem, solution))
    mechanics = tuple(_mechanics(code, problem, solution, trials) for code in SORTS
                      if code not in FRAMES or _told(code, problem))
    handled = tuple(_open(check, solution) for check in handling_checks(problem))
    hung = (*((balance_check(problem, solution),) if off_centre(problem) else ()), *seat_room(problem))
    return (*mechanics, *hung, *handled, *join_checks(problem),
            *((slack_check(problem, solution, trials),) if solution.tapes or problem.shape.tapes else ()),
            _weight(problem, weights))


def _told(code: str, problem: Problem) -> bool:
    """Whether a check of frames is asked of this one."""
    shape = problem.shape
    return shape.sides is not None or (code == "sinking" and shape.wheel is not None)


def _open(check: Check, solution: Solution) -> Check:
    """A check, not assessed where the method says why."""
    why = solution.unassessed.get(check.code)
    return check if why is None else replace(check, part="", value=None, result="not assessed", remedy=why)


def _mechanics(code: str, problem: Problem, solution: Solution, trials: Trials) -> Check:
    sort, measured = SORTS[code], MEASURES[code](problem, solution)
    if code in solution.unassessed:
        measured = replace(measured, part="", value=None)
    source = solution.sources.get(code, sort.source)
    if code == "buckling" and measured.value is None and code not in solution.unassessed:
        return Check(code, "", None, measured.limit, sort.dimension, "at least", "holds", "", source,
                     "no hoop is pressed inward, so none can buckle")
    margin = max(MARGIN, problem.stock.grade.spread) if measured.sense == "at most" else 0.0
    soft = _soft(code, problem, solution, measured)
    check = judged(
        code, measured.part, measured.value, measured.limit, sort.dimension, measured.sense,
        says=solution.says.get(code, sort.says),
        source=source, remedy="", unknown=solution.unassessed.get(code, ""), soft=soft, margin=margin,
    )
    if check.result not in ("fails", "marginal"):
        return check
    words = _remedy(code, problem, solution, measured, trials, check.result) or sort.otherwise
    trouble = solution.trouble if code == "equilibrium" else ()
    return replace(check, remedy="; ".join((*trouble, words)))


def _remedy(code: str, problem: Problem, solution: Solution, measured: Measured, trials: Trials,
            result: str) -> str:
    """What to change: for a miss the changed cages are solved; a narrow pass gets the usual words."""
    if code == "set-closed" and problem.stock.form == "cane":
        return "soak the cane and bend it to the curve before it goes in: it then lies in it unstrained"
    if measured.used <= 1.0 and problem.stock.grade.spread > 1 - measured.used:
        return "this grade varies widely: test a sample on the bench (droop and wrap) to be sure"
    if code == "equilibrium":
        return rescue(problem, solution, trials)
    if code == "reach":
        return tied_shorter(problem)
    return remedy(code, trials) if result == "fails" else ""


def _soft(code: str, problem: Problem, solution: Solution, measured: Measured) -> bool:
    """Whether a miss is only marginal: no door was stated, cane that is bent wet, what the maker can
    cut to, a bound of the closed forms that is not far off."""
    if code == "door":
        return problem.spec.limits.door is None
    if code == "set-closed":
        return problem.stock.form == "cane"
    if code == "equilibrium":
        return solution.status == "stands only by symmetry"
    if code in FRAMES:
        return True
    return code == "buckling" and solution.screened and measured.used <= SCREEN


def _weight(problem: Problem, weights: Weights) -> Check:
    parts = {"hoops": weights.hoops, "casings": weights.casings, "hem band": weights.band, "cloth": weights.cloth}
    heaviest = max(parts, key=lambda name: parts[name])
    return judged(
        "weight", "cage", weights.total, problem.spec.limits.weight, "mass", "at most",
        says="the cage alone is light enough", source="sum of its parts; the limit is the maker's",
        remedy=f"most of it is {heaviest}: fewer hoops, a narrower or thinner strip, or lighter cloth",
        unknown="no limit was stated (limits.weight)",
    )
