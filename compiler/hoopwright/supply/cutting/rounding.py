"""From a fractional choice of columns to a whole plan: keep what fits, plan the rest anew."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from hoopwright.source.record import record
from hoopwright.supply.cutting.bounds import cover_rows
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.greedy import open_as_needed
from hoopwright.supply.cutting.master import Column, Kinds
from hoopwright.supply.cutting.mixes import Mix, cheapest_cover, cost_of
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.stock import Stock
from hoopwright.supply.cutting.trials import try_mixes

_THRESHOLDS = (0.9, 0.75, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1)
_TRIES = 24


def round_off(
    stock: Stock, kinds: Kinds, columns: Sequence[Column], used: Sequence[float]
) -> tuple[Mix, list[Fill]] | None:
    """The cheapest of a few plans that keep the most used columns (whole numbers first, then the larger
    fractions above a threshold) and pack the pieces left over by trials; a mix and its packing on the mix's
    bench."""
    plans = []
    for threshold in _THRESHOLDS:
        kept = _keep(stock, kinds, columns, used, threshold)
        plan = _complete(stock, kinds, kept)
        if plan is not None:
            plans.append(plan)
    return min(plans, key=lambda plan: (cost_of(stock, plan[0]), plan[0]), default=None)


@record(frozen=True, slots=True)
class _Kept:
    columns: list[Column]
    counts: tuple[int, ...]


def _keep(
    stock: Stock, kinds: Kinds, columns: Sequence[Column], used: Sequence[float], threshold: float
) -> _Kept:
    """Columns that fit into what is wanted and what there is, the most used first."""
    left, free = list(stock.counts), list(kinds.avail)
    kept: list[Column] = []
    order = sorted(range(len(columns)), key=lambda j: (-used[j], columns[j]))
    for j in order:
        kind, fill = columns[j]
        times = int(used[j] + 1 - threshold)
        for _ in range(times):
            if free[kind] and all(n <= have for n, have in zip(fill, left, strict=True)):
                free[kind] -= 1
                left = [have - n for n, have in zip(fill, left, strict=True)]
                kept.append(columns[j])
    return _Kept(kept, tuple(left))


def _complete(stock: Stock, kinds: Kinds, kept: _Kept) -> tuple[Mix, list[Fill]] | None:
    """A whole plan from the kept columns and a plan for the pieces left over."""
    rest = _rest_of(stock, kinds, kept)
    inner = _plan_rest(rest) if rest.sizes else ((0,) * len(stock.caps), [()] * len(rest.hand))
    if inner is None:
        return None
    mix, fills = inner
    place = [stock.sizes.index(s) for s in rest.sizes]
    wide = [_widen(fill, place, len(stock.sizes)) for fill in fills]
    by_kind: list[list[Fill]] = [[] for _ in kinds.caps]
    for kind, fill in kept.columns:
        by_kind[kind].append(fill)
    on_hand: dict[int, Fill] = dict(zip(rest.hand_index, wide[: len(rest.hand)], strict=True))
    empty: Fill = (0,) * len(stock.sizes)
    result: list[Fill] = []
    for cap, index in zip(stock.hand, stock.hand_index, strict=True):
        if index in on_hand:
            result.append(on_hand[index])
        else:
            waiting = by_kind[kinds.caps.index(cap)] if cap > 0 else []
            result.append(waiting.pop(0) if waiting else empty)
    bought = wide[len(rest.hand) :]
    total = []
    for t, n in enumerate(mix):
        result += by_kind[kinds.hand_kinds + t] + bought[:n]
        bought = bought[n:]
        total.append(n + len(by_kind[kinds.hand_kinds + t]))
    return tuple(total), result


def _rest_of(stock: Stock, kinds: Kinds, kept: _Kept) -> Stock:
    """The stock for the pieces left over, without the lengths that the kept columns take."""
    taken = [0] * len(kinds.caps)
    for kind, _ in kept.columns:
        taken[kind] += 1
    hand = []
    for b, cap in enumerate(stock.hand):
        kind = kinds.caps.index(cap) if cap > 0 else -1
        if 0 <= kind < kinds.hand_kinds and taken[kind]:
            taken[kind] -= 1
        else:
            hand.append(b)
    sizes = [i for i, n in enumerate(kept.counts) if n]
    return replace(
        stock,
        sizes=tuple(stock.sizes[i] for i in sizes),
        counts=tuple(kept.counts[i] for i in sizes),
        hand=tuple(stock.hand[b] for b in hand),
        hand_index=tuple(stock.hand_index[b] for b in hand),
        whole_hand=tuple(stock.whole_hand[b] for b in hand),
        avail=tuple(a - n for a, n in zip(stock.avail, taken[kinds.hand_kinds :], strict=True)),
    )


def _plan_rest(rest: Stock) -> tuple[Mix, list[Fill]] | None:
    rows = cover_rows(rest)
    low = cheapest_cover(rest, rows)
    if low is None:
        return None
    best = open_as_needed(rest)
    high = cost_of(rest, rest.avail) if best is None else cost_of(rest, best[0]) - 1
    return try_mixes(rest, rows, low, high, Budget(2_000), _TRIES).found or best


def _widen(fill: Fill, place: Sequence[int], width: int) -> Fill:
    wide = [0] * width
    for i, n in zip(place, fill, strict=True):
        wide[i] = n
    return tuple(wide)
