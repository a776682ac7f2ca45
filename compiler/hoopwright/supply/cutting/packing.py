"""Quick ways to pack all pieces into given lengths. They may fail; when they succeed the packing is sound."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.supply.cutting.filling import Fill, fullest


def pack_quickly(
    sizes: Sequence[int], counts: Sequence[int], bins: Sequence[int], effort: int = 1
) -> list[Fill] | None:
    """A packing of all pieces into `bins` (capacities), one Fill per bin in the same order, or None when no
    quick way finds one.

    Tried in turn: best fit decreasing, then filling bin after bin as full as can be: shortest bins first,
    then longest first, each with and without the largest remaining piece forced in, leaving half of an even
    share of the slack; with more `effort`, also leaving none of it, all of it, and twice as much.
    """
    if sum(s * c for s, c in zip(sizes, counts, strict=True)) > sum(max(0, b) for b in bins):
        return None
    found = best_fit(sizes, counts, bins)
    if found is not None:
        return found
    for halves in (1, 0, 2, 4)[:effort]:
        for longest_first in (False, True):
            for forced in (True, False):
                found = fill_in_turn(sizes, counts, bins, longest_first, forced, halves)
                if found is not None:
                    return found
    return None


def best_fit(sizes: Sequence[int], counts: Sequence[int], bins: Sequence[int]) -> list[Fill] | None:
    """Best fit decreasing: the longest piece goes where it leaves least."""
    room = list(bins)
    fills = [[0] * len(sizes) for _ in bins]
    for i, (size, count) in enumerate(zip(sizes, counts, strict=True)):
        for _ in range(count):
            fitting = (b for b in range(len(room)) if room[b] >= size)
            best = min(fitting, key=lambda b: (room[b], b), default=-1)
            if best < 0:
                return None
            room[best] -= size
            fills[best][i] += 1
    return [tuple(f) for f in fills]


def fill_in_turn(
    sizes: Sequence[int],
    counts: Sequence[int],
    bins: Sequence[int],
    longest_first: bool,
    forced: bool,
    halves: int,
) -> list[Fill] | None:
    """Fill one bin after the other as full as a bounded search can (after Gupta and Ho's minimum bin slack).

    A filling is good enough when it leaves `halves` halves of an even share of the total slack.
    """
    order = sorted(range(len(bins)), key=lambda b: (-bins[b] if longest_first else bins[b], b))
    left = list(counts)
    slack = sum(max(0, b) for b in bins) - sum(s * n for s, n in zip(sizes, counts, strict=True))
    fills: list[Fill] = [tuple(0 for _ in sizes)] * len(bins)
    for b in order:
        if not any(left):
            break
        first = next((i for i, n in enumerate(left) if n and sizes[i] <= bins[b]), None)
        if first is None:
            continue
        fill = fullest(sizes, left, bins[b], first if forced else None, halves * slack // (2 * len(bins)))
        fills[b] = tuple(fill)
        left = [n - k for n, k in zip(left, fill, strict=True)]
    return None if any(left) else fills


__all__ = ["Fill", "best_fit", "fill_in_turn", "pack_quickly"]
