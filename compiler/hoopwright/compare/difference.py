"""Two plans in, what differs out: by meaning, not by text.

Lengths that differ by less than a tenth of a millimetre are the same, so that neither the order of keys nor
inches turned into centimetres is a change. A part or task that only one plan has is one change, not one for
each of its values. Seen from the other side the same changes come out, each turned round.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from hoopwright.compare.facts import Fact, Key, facts
from hoopwright.compare.model import SECTIONS, Cell, Change, Difference
from hoopwright.compare.outcome import FINEST, SEEN, differing
from hoopwright.compare.pairing import paired
from hoopwright.compare.undone import undone_work
from hoopwright.plan.model import Plan

_WHOLE = {"parts": ("to cut", "length", "pieces"), "tasks": ("minutes",), "shopping": ("packs", "amount")}
"""Of a part that came or went, the one value that stands for it."""
_NOISE = {"length": FINEST, "stock": 1e-6, "mass": 5e-4, "minutes": 0.5, "count": 0.5, "share": 1e-4}


def difference(before: Plan, after: Plan) -> Difference:
    """Everything that differs from ``before`` to ``after``."""
    pairs = paired(before, after)
    one, other = facts(before, pairs.before), facts(after, pairs.after)
    changes = sorted(_changes(one, other), key=_order)
    undone, mending = undone_work(before, after, pairs)
    return Difference(tuple(changes), undone, mending)


def _changes(one: dict[Key, Fact], other: dict[Key, Fact]) -> Iterator[Change]:
    here, there = {key[:2] for key in one}, {key[:2] for key in other}
    for key in sorted({*one, *other}):
        section, _, what = key
        first, second = one.get(key), other.get(key)
        if first is not None and second is not None:
            if not same(first.cell, second.cell):
                yield Change(section, first.part, second.part, _told(what, first, second), first.cell,
                             second.cell)
            continue
        fact = first or second
        alone = key[:2] not in here or key[:2] not in there
        if fact is None or (alone and what not in _WHOLE.get(section, (what,))):
            continue
        yield Change(section, first.part if first else "", second.part if second else "",
                     _told(what, first, second), first.cell if first else None,
                     second.cell if second else None)


def _told(what: str, first: Fact | None, second: Fact | None) -> str:
    """What is told of: a mark goes by the hoop it is of."""
    names = [fact.cell.also for fact in (first, second) if fact is not None]
    return f"mark at {'/'.join(sorted(set(names)))}" if re.match(r"(hoop [0-9]{3}|[-+] )", what) else what


def same(one: Cell, other: Cell) -> bool:
    """Whether two values are the same but for noise."""
    if one.dimension == "measures" and other.dimension == "measures":
        return not (isinstance(one.value, tuple) and isinstance(other.value, tuple)
                    and differing(one.value, other.value, SEEN))
    if isinstance(one.value, float) and isinstance(other.value, float):
        return abs(one.value - other.value) <= _NOISE.get(one.dimension, 1e-9)
    if isinstance(one.value, Decimal) or isinstance(other.value, Decimal):
        return one.value == other.value
    return one.value == other.value


def _order(change: Change) -> tuple[int, list[tuple[tuple[str, int], ...]], str]:
    """Section by section, parts by their names with numbers in order; the same from both sides."""
    names = sorted(_natural(name) for name in (change.was, change.now) if name)
    return SECTIONS.index(change.section), names, change.what


def _natural(name: str) -> tuple[tuple[str, int], ...]:
    parts = re.findall(r"(\D*)(\d*)", name)
    return tuple((word, int(number or 0)) for word, number in parts if word or number)
