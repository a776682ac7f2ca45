"""What to change when a check fails: the changed cages are solved, and the words say how much each helps.

The closed forms, which cost nothing, find the smallest size of a change that should do; the method of the
day has the last word on it. A change that makes another check fail is named as such.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from hoopwright.shape.draw import draw
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.strength.answer import AT_REST
from hoopwright.strength.measures import MEASURES
from hoopwright.strength.mending.change import FAMILIES, Change, Family
from hoopwright.strength.method import Method, Problem, Solution
from hoopwright.strength.methods import METHODS, kind_of
from hoopwright.strength.problem import pose
from hoopwright.strength.verdict import CLAUSES
from hoopwright.strength.weight import weights

MOST_SOLVED = 5
"""Changed cages solved for one plan."""
MOST_LOST = 2
"""Changed cages that find no rest either, after which no more are solved: those cost a second each, and a
plan must not wait."""
CLOSED = ("set-closed", "door")
"""Checks that the closed forms judge as well as any method."""
HELPS = 0.95
"""A change that leaves more than this share of what was used up is not worth naming."""


@record(frozen=True, slots=True)
class Tried:
    """A changed cage: ``used`` of what is allowed by the check in question, at most so much with ``bound``, and what
    else then fails."""

    words: str
    used: float
    bound: bool
    spoils: tuple[str, ...]


@record(frozen=True, slots=True)
class Trials:
    """Changed cages of one spec, each solved at most once whichever checks ask for it.

    ``before``: how much of what is allowed each check uses up in the cage as it is, of ``bounds`` at most so much.
    Without a ``method`` none is solved.
    """

    spec: Spec
    method: Method | None
    before: Mapping[str, float]
    bounds: frozenset[str] = frozenset()
    done: dict[tuple[str, bool], tuple[Problem, Solution] | None] = field(default_factory=dict)

    def solved(self, change: Change, quick: bool = False) -> tuple[Problem, Solution] | None:
        """The problem and solution of a changed cage, by the closed forms when ``quick``; None when the
        change does not apply, or when enough have been solved."""
        if self.method is None:
            return None
        key = (change.words, quick)
        if key not in self.done:
            if not quick and self._enough():
                return None
            changed = change.apply(self.spec)
            shape = None if changed is None else draw(changed)[0]
            if changed is None or shape is None:
                self.done[key] = None
            else:
                problem = pose(changed, shape)
                self.done[key] = (problem, (METHODS[kind_of(changed)].quick if quick else self.method)(problem))
        return self.done[key]

    def _enough(self) -> bool:
        """Whether as many cages have been solved as a plan may wait for."""
        solved = [found for (_, was_quick), found in self.done.items() if not was_quick]
        lost = sum(found is not None and found[1].status not in AT_REST for found in solved)
        return len(solved) >= MOST_SOLVED or lost >= MOST_LOST


def used_by(problem: Problem, solution: Solution) -> dict[str, float]:
    """How much of what is allowed each check uses up, 0 where that is not assessed; the weight too, when it has a
    limit."""
    used = {code: 0.0 if code in solution.unassessed else measure(problem, solution).used
            for code, measure in MEASURES.items()}
    limit = problem.spec.limits.weight
    if limit:
        used["weight"] = weights(problem.spec, problem.shape).total / limit
    return used


def bounds(problem: Problem, solution: Solution) -> frozenset[str]:
    """The checks whose number is only the worst it can be."""
    return frozenset(code for code, measure in MEASURES.items() if measure(problem, solution).bound)


def remedy(code: str, trials: Trials) -> str:
    """The changes that mend a check, or the best of those that help, in plain words; empty when none does."""
    tried = [found for family in FAMILIES.get(code, ()) if (found := _try(code, family, trials)) is not None]
    clean = [one for one in tried if one.used <= 1.0 and not one.spoils]
    if clean:
        return ", or ".join(f"{one.words} ({_effect(code, one, trials)})" for one in clean[:2])
    before = trials.before[code]
    helps = [one for one in tried if one.used < HELPS * before]
    if not helps:
        return ""
    best = min(helps, key=lambda one: (one.used > 1.0, len(one.spoils), one.used))
    words = f"{best.words} ({_effect(code, best, trials)})"
    if best.used > 1.0:
        words += ", which is not yet enough: combine it with other changes"
    return words + (f"; but then {' and '.join(best.spoils)}" if best.spoils else "")


def _try(code: str, family: Family, trials: Trials) -> Tried | None:
    """The smallest size of a change that mends the check, else the largest that applies; where one makes it worse no
    larger one is solved."""
    best: Tried | None = None
    for change in family[_first(code, family, trials):]:
        solved = trials.solved(change) or (trials.solved(change, quick=True) if code in CLOSED else None)
        if solved is None:
            break
        measured = MEASURES[code](*solved)
        if code in solved[1].unassessed or measured.value is None:
            continue
        used = used_by(*solved)
        spoils = tuple(
            CLAUSES[other].missed.format(part=MEASURES[other](*solved).part if other in MEASURES else "it")
            for other, share in used.items() if share > 1.0 >= trials.before.get(other, 0.0)
        )
        best = Tried(change.said_of(trials.spec), used[code], measured.bound, spoils)
        if best.used <= 1.0 or best.used > trials.before[code]:
            break
    return best


def _first(code: str, family: Family, trials: Trials) -> int:
    """The size from which on the closed forms expect the change to do; the largest when none does."""
    for size, change in enumerate(family):
        solved = trials.solved(change, quick=True)
        if solved is None:
            return max(0, size - 1)
        measured = MEASURES[code](*solved)
        if measured.value is None or measured.used <= 1.0:
            return size
    return len(family) - 1


def _effect(code: str, tried: Tried, trials: Trials) -> str:
    """How a change works, in hundredths of what is allowed; a load that was followed no farther leaves at most so
    much used up."""
    before, after = ("at most " if bound else "" for bound in (code in trials.bounds, tried.bound))
    return f"from {before}{trials.before[code] * 100:.0f} % to {after}{tried.used * 100:.0f} % of what is allowed"
