"""Splices seen as longer stock: lengths joined end to end form a chain, and the piece across each joint is
spliced.

A plan with splices links lengths that share a spliced piece. A linked group of b lengths has at least b - 1
splices, each of which takes a lap and a kerf, so its pieces fit into one length of the sum of the
capacities less (b - 1) times that. Hence "which groups, and do the pieces fit into them" bounds the cost
from below, and when the pieces of every group can be laid on its chain with b - 1 splices, the bound is
reached.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations

from hoopwright.source.record import record
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.mixes import Mix
from hoopwright.supply.cutting.packing import Fill

LONGEST_CHAIN = 5

Group = tuple[int, ...]
"""Capacities of the lengths in one chain, shortest first."""


@record(frozen=True, slots=True)
class Item:
    """A piece to be laid on a chain: its `key`, length in units without kerf, and whether it may be
    spliced."""

    key: int
    length: int
    spliceable: bool


@record(frozen=True, slots=True)
class SpliceUnits:
    """The splice rule in units: `kerf`, `lap`, the `shortest` part, and the `most` splices of one piece."""

    kerf: int
    lap: int
    shortest: int
    most: int


Laid = list[list[tuple[int, int]]]
"""For each length of a chain, (key of the piece, units cut there); a key on several lengths is a spliced
piece."""


def group_cap(group: Group, loss: int) -> int:
    """What a chain holds: the sum of its capacities less lap and kerf of each joint."""
    return sum(group) - (len(group) - 1) * loss


def partitions(caps: tuple[int, ...], joints: int, most: int) -> list[tuple[Group, ...]] | None:
    """All ways to link lengths with exactly `joints` joints, by capacities only; None when more than
    `most`."""
    level: set[tuple[Group, ...]] = {tuple((c,) for c in sorted(caps))}
    for _ in range(joints):
        grown: set[tuple[Group, ...]] = set()
        for groups in sorted(level):
            grown.update(_linked(groups))
            if len(grown) > most:
                return None
        level = grown
    return sorted(level)


def _linked(groups: tuple[Group, ...]) -> Iterator[tuple[Group, ...]]:
    for i in range(len(groups)):
        for j in range(i + 1, len(groups)):
            rest = [g for k, g in enumerate(groups) if k not in (i, j)]
            yield tuple(sorted([*rest, tuple(sorted(groups[i] + groups[j]))]))


def lay_on_chain(
    group: Group, items: tuple[Item, ...], rule: SpliceUnits, budget: Budget
) -> tuple[Group, Laid] | None:
    """The lengths of a chain in some order and what is cut from each, every joint inside a spliced piece;
    None when no way was found within the budget."""
    for order in sorted(set(permutations(group)), reverse=True):
        laid = _lay(order, 0, items, None, rule, budget)
        if laid is not None:
            return order, laid
        if budget.left < 0:
            return None
    return None


@record(frozen=True, slots=True)
class _Carry:
    """The rest of a spliced piece that goes on to the next length, and the splices it has so far."""

    key: int
    length: int
    splices: int


def _lay(
    caps: Group, at: int, items: tuple[Item, ...], carry: _Carry | None, rule: SpliceUnits, budget: Budget
) -> Laid | None:
    """Lay the rest of the chain from the length `at` on."""
    if not budget.take():
        return None
    room = caps[at] - (carry.length + rule.kerf if carry else 0)
    here = [(carry.key, carry.length)] if carry else []
    if room < 0:
        return _pass_through(caps, at, items, carry, rule, budget) if carry else None
    if at == len(caps) - 1:
        if sum(i.length + rule.kerf for i in items) > room:
            return None
        return [here + [(i.key, i.length) for i in items]]
    for across in items:
        whole = across.length + rule.lap
        if not across.spliceable or whole < 2 * rule.shortest:
            continue
        rest = tuple(i for i in items if i is not across)
        for chosen in _subsets(rest, room - rule.kerf - rule.shortest, rule.kerf, budget):
            used = sum(i.length + rule.kerf for i in chosen)
            part = min(room - rule.kerf - used, whole - rule.shortest)
            onward = _Carry(across.key, whole - part, 1)
            left = tuple(i for i in rest if i not in chosen)
            after = _lay(caps, at + 1, left, onward, rule, budget)
            if after is not None:
                return [here + [(i.key, i.length) for i in chosen] + [(across.key, part)], *after]
    return None


def _pass_through(
    caps: Group, at: int, items: tuple[Item, ...], carry: _Carry, rule: SpliceUnits, budget: Budget
) -> Laid | None:
    """A length wholly taken by the middle of a piece spliced more than once."""
    part = min(caps[at] - rule.kerf, carry.length + rule.lap - rule.shortest)
    if carry.splices >= rule.most or part < rule.shortest or at == len(caps) - 1:
        return None
    onward = _Carry(carry.key, carry.length + rule.lap - part, carry.splices + 1)
    after = _lay(caps, at + 1, items, onward, rule, budget)
    return None if after is None else [[(carry.key, part)], *after]


def _subsets(items: tuple[Item, ...], room: int, kerf: int, budget: Budget) -> Iterator[tuple[Item, ...]]:
    """Selections of items that fit into `room`, fuller ones of longer pieces first; equal sums and lengths
    once."""
    if room < 0:
        return
    seen: set[tuple[int, ...]] = set()

    def visit(j: int, left: int, chosen: tuple[Item, ...]) -> Iterator[tuple[Item, ...]]:
        if not budget.take():
            return
        if j == len(items):
            lengths = tuple(i.length for i in chosen)
            if lengths not in seen:
                seen.add(lengths)
                yield chosen
            return
        if items[j].length + kerf <= left:
            yield from visit(j + 1, left - items[j].length - kerf, (*chosen, items[j]))
        yield from visit(j + 1, left, chosen)

    yield from visit(0, room, ())


@record(frozen=True, slots=True)
class Chained:
    """Groups of lengths, the pieces on each (same order), the mix bought, its cost with splices, the lower
    bound."""

    mix: Mix
    groups: tuple[Group, ...]
    fills: list[Fill]
    cost: int
    lower: int
    steps: int
