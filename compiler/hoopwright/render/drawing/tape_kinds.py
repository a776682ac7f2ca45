"""Tapes that are alike, and words for where a tape hangs."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.shape.model import Mark, Tape
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Kind:
    """Tapes cut and marked alike, in the order of their numbers."""

    tapes: tuple[Tape, ...]

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks they share."""
        return self.tapes[0].marks

    @property
    def names(self) -> str:
        """Their names as a maker lists them: ``T1 and T6``."""
        ids = [tape.id for tape in self.tapes]
        return ids[0] if len(ids) == 1 else f"{', '.join(ids[:-1])} and {ids[-1]}"

    @property
    def where(self) -> str:
        """Where they hang: ``beside centre front``, ``at the sides`` ..."""
        words: list[str] = []
        for tape in self.tapes:
            word = where(tape)
            if word not in words:
                words.append(word)
        return _both(words)


def kinds_of(plan: Plan) -> tuple[Kind, ...]:
    """Tapes grouped by what is printed of them: marks and cut length, in the plan's units."""
    units = plan.spec.units
    groups: dict[tuple[object, ...], list[Tape]] = {}
    for tape in plan.shape.tapes:
        key = (length_text(tape.cut, units),
               *((mark.hoop, length_text(mark.at, units)) for mark in tape.marks))
        groups.setdefault(key, []).append(tape)
    return tuple(Kind(tuple(tapes)) for tapes in groups.values())


def where(tape: Tape) -> str:
    """Where on the hem a tape hangs, seen by the wearer: front, front left, left, back left, back ..."""
    turn = tape.hem_fraction % 1.0
    if turn < 0.02 or turn > 0.98:
        return "front"
    if abs(turn - 0.5) < 0.02:
        return "back"
    side, along = ("left", turn) if turn < 0.5 else ("right", 1 - turn)
    if abs(along - 0.25) < 0.05:
        return side
    return f"front {side}" if along < 0.25 else f"back {side}"


def _both(words: list[str]) -> str:
    """``front left`` and ``front right`` told in one."""
    if len(words) == 2 and {word.split()[-1] for word in words} == {"left", "right"}:
        rest = {" ".join(word.split()[:-1]) for word in words}
        if len(rest) == 1:
            return f"{rest.pop()} left and right".lstrip()
    return ", ".join(words) if len(words) < 3 else "all round"
