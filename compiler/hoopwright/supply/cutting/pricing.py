"""Selections of pieces for one length, by worth: the best one, or all that are good enough.

A table, by dynamic programming on a coarse grid with sizes rounded down, gives for every room and every
rest of the sizes a worth that no selection can exceed. Depth-first search on the true sizes follows the
most promising branch and leaves out what the table rules out; as the grid is fine, hardly anything is tried
in vain.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from hoopwright.source.record import record
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.packing import Fill

_CELLS = 6_000
_TINY = 1e-9


@record(frozen=True, slots=True)
class Selection:
    """The most valuable selection found, its worth, and an upper bound on any worth (equal when proven)."""

    fill: Fill
    worth: float
    upper: float


class Prices:
    """Worths of the sizes, prepared for capacities up to `longest`: `most_valuable` and `all_valuable`."""

    def __init__(
        self, sizes: Sequence[int], counts: Sequence[int], worths: Sequence[float], longest: int
    ) -> None:
        self._width = len(sizes)
        self._kinds = [i for i, n in enumerate(counts) if n and sizes[i] <= longest]
        self._sizes = [sizes[i] for i in self._kinds]
        self._counts = [counts[i] for i in self._kinds]
        self._worths = [max(0.0, worths[i]) for i in self._kinds]
        self._grid = max(1, longest // _CELLS)
        self._table = self._tabulate(longest // self._grid)

    def _tabulate(self, cells: int) -> Any:
        """Row j: the greatest relaxed worth of sizes j, j + 1, ... for every room in cells."""
        import numpy as np

        table = np.zeros((len(self._kinds) + 1, cells + 1))
        for j in range(len(self._kinds) - 1, -1, -1):
            table[j] = table[j + 1]
            cell = self._sizes[j] // self._grid
            if self._worths[j] <= 0:
                continue
            for k in range(1, min(self._counts[j], cells // max(1, cell)) + 1):
                shifted = table[j + 1, : cells + 1 - k * cell] + k * self._worths[j]
                np.maximum(table[j, k * cell :], shifted, out=table[j, k * cell :])
        return table

    def most_valuable(self, cap: int, steps: int) -> Selection:
        """The selection of greatest worth that fits on `cap`, searched for in at most so many steps."""
        sizes, counts, worths, table, grid = self._sizes, self._counts, self._worths, self._table, self._grid
        budget = Budget(steps)
        best, best_fill = 0.0, [0] * len(sizes)
        chosen = [0] * len(sizes)
        upper = float(table[0, max(0, cap) // grid])

        def visit(j: int, room: int, worth: float) -> None:
            nonlocal best, best_fill
            if worth > best + _TINY:
                best, best_fill = worth, chosen[:]
            while j < len(sizes) and (sizes[j] > room or worths[j] <= 0):
                j += 1
            if j == len(sizes) or not budget.take():
                return
            branches = []
            for k in range(min(counts[j], room // sizes[j]) + 1):
                rest = room - k * sizes[j]
                hope = worth + k * worths[j] + float(table[j + 1, rest // grid])
                branches.append((hope, k, rest))
            for hope, k, rest in sorted(branches, reverse=True):
                if hope <= best + _TINY or budget.left < 0:
                    break
                chosen[j] = k
                visit(j + 1, rest, worth + k * worths[j])
            chosen[j] = 0

        if cap > 0:
            visit(0, cap, 0.0)
        return Selection(self._spread(best_fill), best, best if budget.left >= 0 else upper)

    def all_valuable(self, cap: int, least: float, most: int, budget: Budget) -> list[Fill] | None:
        """All maximal selections worth at least `least` that fit on `cap`; None when there are more than
        `most` or the budget runs out."""
        sizes, counts, worths, table, grid = self._sizes, self._counts, self._worths, self._table, self._grid
        chosen = [0] * len(sizes)
        found: list[Fill] = []

        def visit(j: int, room: int, worth: float, skipped: int) -> bool:
            """`skipped`: the smallest size of which a piece that would fit was left out so far (0: none)."""
            if not budget.take():
                return False
            if worth + float(table[j, room // grid]) < least - _TINY:
                return True
            if j == len(sizes):
                if (skipped == 0 or skipped > room) and any(chosen):
                    found.append(self._spread(chosen))
                return len(found) <= most
            for k in range(min(counts[j], room // sizes[j]), -1, -1):
                chosen[j] = k
                less = sizes[j] if k < counts[j] and (skipped == 0 or sizes[j] < skipped) else skipped
                if not visit(j + 1, room - k * sizes[j], worth + k * worths[j], less):
                    return False
            chosen[j] = 0
            return True

        return found if visit(0, max(0, cap), 0.0, 0) else None

    def _spread(self, chosen: Sequence[int]) -> Fill:
        fill = [0] * self._width
        for i, k in zip(self._kinds, chosen, strict=True):
            fill[i] = k
        return tuple(fill)
