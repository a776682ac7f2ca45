"""Filling one length as full as can be."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.supply.cutting.bounds import extend_sums

Fill = tuple[int, ...]
"""How many pieces of each size lie on one length (same order as the sizes)."""

_CELLS = 16_000
_STEPS = 600


def fullest(
    sizes: Sequence[int], left: Sequence[int], cap: int, forced: int | None, enough: int
) -> list[int]:
    """A full selection of the pieces `left`: it leaves at most `enough` of `cap` when a bounded search finds
    one that does, else the least found.

    More of the longest pieces are preferred. `forced` is the index of a size to be in it. Sums that the
    rest of the sizes can reach, on a coarse grid, guide the search.
    """
    fill = [0] * len(sizes)
    room = cap
    if forced is not None:
        fill[forced], room = 1, cap - sizes[forced]
    kinds = [i for i, n in enumerate(left) if n - fill[i] > 0 and sizes[i] <= room]
    have = [left[i] - fill[i] for i in kinds]
    search = _Filling([sizes[i] for i in kinds], have, cap)
    least = search.least_left(room)
    for allowed in (enough, least + cap // 2_000, least + cap // 200):
        if allowed >= enough and search.find(room, allowed):
            break
    else:
        search.find(room, None)
    for i, k in zip(kinds, search.best, strict=True):
        fill[i] += k
    return fill


class _Filling:
    """Sizes, longest first, with the sums that each rest of them can reach."""

    def __init__(self, sizes: list[int], have: list[int], cap: int) -> None:
        self._sizes = sizes
        self._have = have
        self._grid = max(1, cap // _CELLS)
        self._margin = cap // min(sizes, default=1) + 1 if self._grid > 1 else 0
        mask = (1 << (cap // self._grid + 1)) - 1
        self._sums = [1]
        for size, count in zip(reversed(sizes), reversed(have), strict=True):
            self._sums.append(extend_sums(self._sums[-1], size // self._grid, count, mask))
        self._sums.reverse()
        self.best = [0] * len(sizes)
        self._best_room: int | None = None

    def least_left(self, room: int) -> int:
        """A guess at what must be left of `room`, from the sums on the coarse grid."""
        reached = (self._sums[0] & ((1 << (room // self._grid + 1)) - 1)).bit_length() - 1
        return max(0, room - (reached + 1) * self._grid)

    def find(self, room: int, allowed: int | None) -> bool:
        """Look for a selection that leaves at most `allowed` (None: as little as can be); the best one seen
        is kept in any case."""
        chosen = [0] * len(self._sizes)
        steps = 0

        def visit(j: int, rest: int) -> bool:
            nonlocal steps
            steps += 1
            if self._best_room is None or rest < self._best_room:
                self._best_room, self.best = rest, chosen[:]
            if allowed is not None and rest <= allowed:
                return True
            if j == len(self._sizes) or steps > _STEPS or not self._hope(j, rest, allowed):
                return False
            for k in range(min(self._have[j], rest // self._sizes[j]), -1, -1):
                chosen[j] = k
                if visit(j + 1, rest - k * self._sizes[j]):
                    return True
            chosen[j] = 0
            return False

        return visit(0, room)

    def _hope(self, j: int, rest: int, allowed: int | None) -> bool:
        """Whether sizes j, j + 1, ... may reach a sum that leaves at most `allowed` of `rest`."""
        if allowed is None:
            return True
        high = rest // self._grid
        low = max(0, (rest - allowed) // self._grid - self._margin)
        return (self._sums[j] >> low) & ((1 << (high - low + 1)) - 1) != 0
