"""What a task leaves behind, in the measures its action names: with these alike, two plans ask for the same.

The vocabulary of actions lists for each which values of the plan its instruction prints (``hoop.cut``,
``tape.marks.at``); here they are looked up for the parts of one task.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import Enum

from hoopwright.compare.model import Measures, Values
from hoopwright.plan.model import Plan
from hoopwright.work.actions import ACTIONS
from hoopwright.work.model import Task

FINEST = 1e-4
"""Lengths that differ by less than this are the same, m."""
SEEN = 5e-4
"""A task whose measures differ by less than this is the same work: half of what a rule shows, m."""
STOCK = 1e-6
"""Sections of stock that differ by less than this are the same, m: what conversion of units may leave."""
_RULES = ("tolerance", "reserve")
_NOT_MADE = frozenset({"text", "source", "meaning", "says", "instruction", "name", "price"})


def outcome(plan: Plan, task: Task) -> Measures:
    """The measures of a task by name. Tolerances are left out: they judge the work, and do not make it."""
    found = []
    for name in ACTIONS[task.action].measures if task.action in ACTIONS else ():
        if not name.endswith(_RULES):
            values = tuple(_plain(_looked_up(plan, task, name.split("."))))
            if values:
                found.append((name, values))
    conditions = tuple(one.value for one in task.conditions if one.value is not None)
    return (*found, ("conditions", conditions)) if conditions else tuple(found)


def _looked_up(plan: Plan, task: Task, name: Sequence[str]) -> Iterator[object]:
    root, rest = name[0], list(name[1:])
    if root in ("build", "allowances"):
        yield from _walk([getattr(plan.spec, root)], rest)
    elif root == "corded" and plan.shape.corded is not None:
        rows = _parts(plan.shape.corded.rows, task) if rest[0] == "rows" else []
        yield from _walk(rows, rest[1:]) if rows else _walk([plan.shape.corded], rest)
    elif root == "stock":
        yield from _walk([plan.spec.build.hoops.material], rest)
    elif root in ("band", "waistband", "petticoat", "wheel", "sides"):
        yield from _walk([getattr(plan.shape, root)], rest)
    elif root == "hoop":
        yield from _walk(_parts(plan.shape.hoops, task), rest)
    elif root in ("tie", "panel"):
        yield from _walk(getattr(plan.shape, f"{root}s", ()), rest)
    elif root == "tape":
        yield from _tape(plan, task, rest)


def _parts(items: Iterable[object], task: Task) -> list[object]:
    return [item for item in items if getattr(item, "id", None) in task.parts]


def _tape(plan: Plan, task: Task, rest: list[str]) -> Iterator[object]:
    """Of a task on hoops, every tape's marks at these hoops; else all of its tapes."""
    tapes = _parts(plan.shape.tapes, task) or list(plan.shape.tapes)
    hoops = {hoop.id for hoop in plan.shape.hoops if hoop.id in task.parts}
    if rest[:1] == ["marks"] and hoops:
        for tape in plan.shape.tapes:
            yield from _walk([mark for mark in tape.marks if mark.hoop in hoops], rest[1:])
    else:
        yield from _walk(tapes, rest)


def _walk(items: Iterable[object], rest: list[str]) -> Iterator[object]:
    for item in items:
        if item is None:
            continue
        if isinstance(item, tuple):
            yield from _walk(item, rest)
        elif not rest:
            yield item
        elif hasattr(item, rest[0]):
            yield from _walk([getattr(item, rest[0])], rest[1:])


def _plain(values: Iterable[object]) -> Iterator[float | str]:
    """Numbers and words, whatever they are wrapped in; ids of tapes are no measure."""
    for value in values:
        if isinstance(value, bool | str | Enum):
            yield str(value)
        elif isinstance(value, int | float | Decimal):
            yield float(value)
        elif isinstance(value, tuple):
            yield from _plain(value)
        elif is_dataclass(value) and not isinstance(value, type):
            yield from _plain(getattr(value, field.name) for field in fields(value)
                              if field.name not in _NOT_MADE)


def differing(one: Measures, other: Measures, tolerance: float = FINEST) -> tuple[str, ...]:
    """The names of measures that differ by more than ``tolerance`` (stock by :data:`STOCK`, for a tenth of a
    millimetre makes another strip), or that only one of them has."""
    first, second = dict(one), dict(other)
    names = [*first, *(name for name in second if name not in first)]
    return tuple(name for name in names
                 if not _same(first.get(name), second.get(name), STOCK if _of_stock(name) else tolerance))


def _of_stock(name: str) -> bool:
    return name.startswith("stock.") or name.endswith(".section")


def _same(one: Values | None, other: Values | None, tolerance: float) -> bool:
    if one is None or other is None or len(one) != len(other):
        return one == other
    return all(abs(a - b) <= tolerance if isinstance(a, float) and isinstance(b, float) else a == b
               for a, b in zip(one, other, strict=True))
