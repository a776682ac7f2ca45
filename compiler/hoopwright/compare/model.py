"""What differs between two plans, as values; wording and formats come after."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Literal

from hoopwright.source.record import record
from hoopwright.supply.model import Mending

Section = Literal["shape", "build", "parts", "marks", "shopping", "cost", "hours", "checks", "tasks"]
SECTIONS: tuple[Section, ...] = (
    "shape", "build", "parts", "marks", "shopping", "cost", "hours", "checks", "tasks")
Values = tuple[float | str, ...]
Measures = tuple[tuple[str, Values], ...]
Value = float | str | Decimal | Measures


@record(frozen=True, slots=True)
class Cell:
    """One value. ``dimension``: ``length``, ``stock`` (a length printed exactly), ``mass``, ``share``,
    ``minutes``, ``money``, ``count``, ``text``, ``result`` (of a check) or ``measures`` (of a task). ``also``
    is what is told with it: found and limit, or a stock's size as the maker wrote it."""

    value: Value
    dimension: str
    also: str = ""


@record(frozen=True, slots=True)
class Change:
    """One difference. ``was`` and ``now`` are the part's or task's ids before and after, blank for the whole
    design; ``before`` is None for what is added, ``after`` for what is dropped."""

    section: Section
    was: str
    now: str
    what: str
    before: Cell | None
    after: Cell | None

    @property
    def kind(self) -> Literal["added", "dropped", "changed"]:
        """Whether it came, went, or changed."""
        return "added" if self.before is None else "dropped" if self.after is None else "changed"

    @property
    def name(self) -> str:
        """The part in words: ``H3``, or ``H3 (now H4)`` when its number has changed."""
        if self.was and self.now and self.was != self.now:
            return f"{self.was} (now {self.now})"
        return self.now or self.was

    def mirrored(self) -> Change:
        """The same difference seen from the other side."""
        return replace(self, was=self.now, now=self.was, before=self.after, after=self.before)


@record(frozen=True, slots=True)
class Undone:
    """Done work that no longer holds: ``gone`` (no such task), ``measures`` (``what`` has changed) or
    ``rests on`` another undone task, named in ``what``."""

    task: str
    title: str
    why: Literal["gone", "measures", "rests on"]
    what: str


@record(frozen=True, slots=True)
class Difference:
    """All that differs from one plan to another. ``undone`` is done work of the first that the second undoes,
    and ``mending`` what becomes of the pieces cut for it."""

    changes: tuple[Change, ...]
    undone: tuple[Undone, ...] = ()
    mending: Mending | None = None

    def of(self, section: Section) -> tuple[Change, ...]:
        """The changes of one section."""
        return tuple(change for change in self.changes if change.section == section)

    @property
    def empty(self) -> bool:
        """Whether nothing differs."""
        return not self.changes and not self.undone
