"""Whether every tape pulls on every stretch, and how much to take up where one does not.

What the hoops do while a tape hangs slack is judged by the other checks, on the same solution. So a tape that pulls
elsewhere and is loose on one stretch only looks untidy, and is pinned up while it is tried on; one that pulls nowhere
is of no use.
"""

from __future__ import annotations

from hoopwright.shape.judge import judged
from hoopwright.source.printed import Units, length_text
from hoopwright.spec.check import Check
from hoopwright.strength.mending.change import NO_GAP
from hoopwright.strength.mending.remedy import Trials
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Segment, TapeStrength

LEAST = 0.0015
"""m: a tape that is longer than its way by less hangs straight, and cannot be marked more closely (our judgement)."""
LAIN = "all of them hang slack somewhere: a hoop lies on the body and bears what they should; make it larger or lower"
"""What every tape hanging slack means."""

Loose = tuple[str, str, Segment]
"""A tape, where the slack stretch begins, and that stretch."""


def slack_check(problem: Problem, solution: Solution, trials: Trials) -> Check:
    """Tapes that pull nowhere, or hang loose somewhere by more than a hair; there should be none."""
    loose = _loose(problem, solution)
    tapes = tuple(dict.fromkeys(tape for tape, _, _ in loose))
    value = None if "slack" in solution.unassessed else float(len(tapes))
    return judged(
        "slack", ", ".join(tapes), value, 0.0, "count", "at most",
        says="every tape pulls", source=solution.sources.get("slack", "tape tensions of the solved cage"),
        remedy=_remedy(loose, tapes, solution, trials) if tapes else "",
        unknown=solution.unassessed.get("slack", ""),
        soft=len(tapes) < len(solution.tapes) and not any(_idle(tape) for tape in solution.tapes)
        and all(part.loose is not None for _, _, part in loose),
    )


def _loose(problem: Problem, solution: Solution) -> tuple[Loose, ...]:
    """The slack stretches; one down the hem band is none, for there the cloth carries the hoop."""
    band = problem.shape.band
    carried = "" if band is None else band.lower
    return tuple(
        (tape.id, above, part)
        for tape in solution.tapes
        for above, part in zip(("the waistband", *(one.to for one in tape.segments)), tape.segments, strict=False)
        if part.slack and part.to != carried and (_idle(tape) or part.loose is None or part.loose >= LEAST)
    )


def _idle(tape: TapeStrength) -> bool:
    """Whether it pulls nowhere."""
    return all(part.slack for part in tape.segments)


def _remedy(loose: tuple[Loose, ...], tapes: tuple[str, ...], solution: Solution, trials: Trials) -> str:
    """What makes every tape pull: what to take up, and even spacing where it was solved to do so."""
    if len(tapes) == len(solution.tapes):
        return LAIN
    idle = [tape.id for tape in solution.tapes if _idle(tape)]
    ways = "; ".join(filter(None, (
        _taken_up([one for one in loose if one[0] not in idle], trials.spec.units),
        f"leave out what pulls nowhere: {', '.join(idle)}" if idle else "",
    )))
    even = trials.solved(NO_GAP[0])
    if even is None or even[1].status != "solved":
        return ways
    left = tuple(dict.fromkeys(tape for tape, _, _ in _loose(*even)))
    effect = "then every tape pulls" if not left else f"then only {', '.join(left)} hang slack"
    return f"{NO_GAP[0].said_of(trials.spec)} ({effect}), or {ways}" if len(left) < len(tapes) else ways


def _taken_up(loose: list[Loose], units: Units) -> str:
    """What to pin up while trying on: ``T2, T4 by 3/8 in from the waistband to H1``; alike stretches together."""
    alike: dict[tuple[str, str, str], list[str]] = {}
    for tape, above, part in loose:
        much = "" if part.loose is None else f" by {length_text(part.loose, units)}"
        alike.setdefault((above, part.to, much), []).append(tape)
    said = [f"{', '.join(tapes)}{much} from {above} to {to}" for (above, to, much), tapes in alike.items()]
    return f"take up what hangs loose when it is tried on: {'; '.join(said)}" if said else ""
