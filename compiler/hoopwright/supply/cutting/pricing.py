"""Selections of pieces for one length, by worth: the best one, or all that are good enough.

Both searches go through the sizes in order of worth per length and are bounded by filling the rest of the
length with the best such rate (the fractional knapsack bound of Dantzig, 1957).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.packing import Fill

_TINY = 1e-9


@dataclass(frozen=True)
class Selection:
    """The most valuable selection found, its worth, and an upper bound on any worth (equal when proven)."""

    fill: Fill
    worth: float
    upper: float


def most_valuable(
    sizes: Sequence[int], counts: Sequence[int], worths: Sequence[float], cap: int, budget: Budget
) -> Selection:
    """The selection of greatest worth that fits on `cap`; `upper` is the root bound when the budget runs
    out."""
    order = _by_rate(sizes, counts, worths, cap)
    best, best_fill = 0.0, [0] * len(order)
    chosen = [0] * len(order)
    root = _bound(sizes, worths, order, 0, cap)
    complete = True

    def visit(j: int, room: int, worth: float) -> None:
        nonlocal best, best_fill, complete
        if worth > best + _TINY:
            best, best_fill = worth, chosen[:]
        if j == len(order) or not complete:
            return
        i = order[j]
        if worth + worths[i] / sizes[i] * room <= best + _TINY:
            return
        if not budget.take():
            complete = False
            return
        for k in range(min(counts[i], room // sizes[i]), -1, -1):
            chosen[j] = k
            visit(j + 1, room - k * sizes[i], worth + k * worths[i])
        chosen[j] = 0

    visit(0, cap, 0.0)
    return Selection(_spread(order, best_fill, len(sizes)), best, best if complete else root)


def all_valuable(
    sizes: Sequence[int],
    counts: Sequence[int],
    worths: Sequence[float],
    cap: int,
    least: float,
    most: int,
    budget: Budget,
) -> list[Fill] | None:
    """All maximal selections worth at least `least` that fit on `cap`; None when there are more than `most`
    or the budget runs out."""
    worths = [w + _TINY for w in worths]
    order = _by_rate(sizes, counts, worths, cap)
    chosen = [0] * len(order)
    found: list[Fill] = []

    def visit(j: int, room: int, worth: float, skipped: int) -> bool:
        if not budget.take():
            return False
        if j == len(order):
            if (skipped == 0 or skipped > room) and any(chosen):
                found.append(_spread(order, chosen, len(sizes)))
            return len(found) <= most
        i = order[j]
        if worth + worths[i] / sizes[i] * room < least - _TINY:
            return True
        for k in range(min(counts[i], room // sizes[i]), -1, -1):
            chosen[j] = k
            out = sizes[i] if k < counts[i] else 0
            smallest = min((s for s in (skipped, out) if s), default=0)
            if not visit(j + 1, room - k * sizes[i], worth + k * worths[i], smallest):
                return False
        chosen[j] = 0
        return True

    return found if visit(0, cap, 0.0, 0) else None


def _by_rate(sizes: Sequence[int], counts: Sequence[int], worths: Sequence[float], cap: int) -> list[int]:
    """Sizes of some worth that fit at all, best worth per length first."""
    kinds = [i for i, s in enumerate(sizes) if counts[i] and s <= cap and worths[i] > 0]
    return sorted(kinds, key=lambda i: (-worths[i] / sizes[i], i))


def _bound(sizes: Sequence[int], worths: Sequence[float], order: list[int], j: int, room: int) -> float:
    return worths[order[j]] / sizes[order[j]] * max(0, room) if j < len(order) else 0.0


def _spread(order: Sequence[int], chosen: Sequence[int], width: int) -> Fill:
    fill = [0] * width
    for j, k in enumerate(chosen):
        fill[order[j]] = k
    return tuple(fill)
