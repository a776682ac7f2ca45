"""A difference as JSON, in the units of ``plan.json``: mm, g, minutes, money as a decimal string."""

from __future__ import annotations

import json
from decimal import Decimal

from hoopwright.compare.model import Cell, Change, Difference
from hoopwright.render.machine.values import Json, grams, minutes, mm, money, ratio

FORMAT = 1
"""The version of the format, the key ``diff``."""


def difference_json(found: Difference, labels: tuple[str, str]) -> str:
    """The text: one object with ``changes`` in order, ``undone`` and ``mending``."""
    value: dict[str, Json] = {
        "diff": FORMAT,
        "before": labels[0],
        "after": labels[1],
        "changes": [_change(change) for change in found.changes],
        "undone": [{"task": item.task, "why": item.why, "what": item.what} for item in found.undone],
        "mending": _mending(found),
    }
    return json.dumps(value, indent=2, sort_keys=True, ensure_ascii=False) + "\n"


def _change(change: Change) -> Json:
    cell = change.after or change.before
    return {
        "section": change.section,
        "kind": change.kind,
        "part_before": change.was or None,
        "part_after": change.now or None,
        "what": change.what,
        "unit": _UNITS.get(cell.dimension, cell.dimension) if cell else "",
        "before": _value(change.before),
        "after": _value(change.after),
    }


_UNITS = {"length": "mm", "stock": "mm", "mass": "g", "minutes": "min"}


def _value(cell: Cell | None) -> Json:
    if cell is None:
        return None
    if isinstance(cell.value, Decimal):
        return money(cell.value)
    if isinstance(cell.value, float):
        printers = {"length": mm, "stock": mm, "mass": grams, "minutes": minutes}
        return printers.get(cell.dimension, ratio)(cell.value)
    if isinstance(cell.value, str):
        return cell.value
    return {name: [ratio(one) if isinstance(one, float) else one for one in values]
            for name, values in cell.value}


def _mending(found: Difference) -> Json:
    if found.mending is None:
        return None
    return {
        "pieces": [{"part": one.part, "length_mm": mm(one.length), "fate": one.fate, "serves": one.serves}
                   for one in found.mending.pieces],
        "anew": [{"part": one.part, "length_mm": mm(one.length)} for one in found.mending.anew],
        "cost": money(found.mending.cost),
    }
