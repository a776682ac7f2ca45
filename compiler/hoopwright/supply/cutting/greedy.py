"""A first plan by best fit decreasing, lengths opened as they are needed and exchanged for cheaper ones
afterwards."""

from __future__ import annotations

from dataclasses import dataclass

from hoopwright.supply.cutting.mixes import Mix, cost_of
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.stock import Stock


@dataclass
class _Open:
    kind: int | None
    room: int
    fill: list[int]


def open_as_needed(stock: Stock) -> tuple[Mix, list[Fill]] | None:
    """The cheapest of a few greedy plans, as a mix and its packing on the mix's bench; None when all of
    them fail.

    Each plan prefers one offer to open (every offer in turn, then the best worth for money); stock on hand
    is open from the start.
    """
    plans = []
    for preferred in [*range(len(stock.caps)), None]:
        bins = _fill_greedily(stock, preferred)
        if bins is not None:
            plans.append(_as_mix(stock, _exchange(stock, bins)))
    return min(plans, key=lambda plan: (cost_of(stock, plan[0]), plan[0]), default=None)


def _fill_greedily(stock: Stock, preferred: int | None) -> list[_Open] | None:
    width = len(stock.sizes)
    bins = [_Open(None, cap, [0] * width) for cap in stock.hand]
    left = list(stock.avail)
    for i, (size, count) in enumerate(zip(stock.sizes, stock.counts, strict=True)):
        for _ in range(count):
            best = min((b for b in bins if b.room >= size), key=lambda b: b.room, default=None)
            if best is None:
                kinds = [t for t, cap in enumerate(stock.caps) if left[t] and cap >= size]
                if not kinds:
                    return None
                kind = min(kinds, key=lambda t: (t != preferred, stock.prices[t] / stock.caps[t], t))
                left[kind] -= 1
                best = _Open(kind, stock.caps[kind], [0] * width)
                bins.append(best)
            best.room -= size
            best.fill[i] += 1
    return bins


def _exchange(stock: Stock, bins: list[_Open]) -> list[_Open]:
    """Every bought length replaced by the cheapest offer that still holds its pieces."""
    left = list(stock.avail)
    for b in bins:
        if b.kind is not None:
            left[b.kind] -= 1
    for b in bins:
        if b.kind is None:
            continue
        filled = stock.caps[b.kind] - b.room
        kinds = [t for t, cap in enumerate(stock.caps) if cap >= filled and (left[t] or t == b.kind)]
        kind = min(kinds, key=lambda t: (stock.prices[t], t))
        left[b.kind] += 1
        left[kind] -= 1
        b.kind, b.room = kind, stock.caps[kind] - filled
    return bins


def _as_mix(stock: Stock, bins: list[_Open]) -> tuple[Mix, list[Fill]]:
    mix = [0] * len(stock.caps)
    for b in bins:
        if b.kind is not None:
            mix[b.kind] += 1
    ordered = [b for b in bins if b.kind is None]
    for kind in range(len(stock.caps)):
        ordered += [b for b in bins if b.kind == kind]
    return tuple(mix), [tuple(b.fill) for b in ordered]
