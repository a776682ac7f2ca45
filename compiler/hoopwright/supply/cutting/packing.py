"""Quick ways to pack all pieces into given lengths. They may fail; when they succeed the packing is sound."""

from __future__ import annotations

from collections.abc import Sequence

Fill = tuple[int, ...]
"""How many pieces of each size lie on one length (same order as the sizes)."""


def pack_quickly(sizes: Sequence[int], counts: Sequence[int], bins: Sequence[int]) -> list[Fill] | None:
    """A packing of all pieces into `bins` (capacities), one Fill per bin in the same order, or None when no
    quick way finds one.

    Tried in turn: best fit decreasing, then filling bin after bin as full as can be (shortest bins first,
    then longest first, each with and without the largest remaining piece forced in).
    """
    if sum(s * c for s, c in zip(sizes, counts, strict=True)) > sum(max(0, b) for b in bins):
        return None
    found = best_fit(sizes, counts, bins)
    if found is not None:
        return found
    for longest_first in (False, True):
        for forced in (True, False):
            found = fill_in_turn(sizes, counts, bins, longest_first, forced)
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
    sizes: Sequence[int], counts: Sequence[int], bins: Sequence[int], longest_first: bool, forced: bool
) -> list[Fill] | None:
    """Fill one bin after the other as full as a bounded search can (after Gupta and Ho's minimum bin
    slack)."""
    order = sorted(range(len(bins)), key=lambda b: (-bins[b] if longest_first else bins[b], b))
    left = list(counts)
    fills: list[Fill] = [tuple(0 for _ in sizes)] * len(bins)
    for b in order:
        if not any(left):
            break
        first = next((i for i, n in enumerate(left) if n and sizes[i] <= bins[b]), None)
        if first is None:
            continue
        fill = fullest(sizes, left, bins[b], first if forced else None)
        fills[b] = tuple(fill)
        left = [n - k for n, k in zip(left, fill, strict=True)]
    return None if any(left) else fills


def fullest(
    sizes: Sequence[int], left: Sequence[int], cap: int, forced: int | None, nodes: int = 400
) -> list[int]:
    """The fullest selection found within `nodes` steps, longest pieces first; `forced` is the index of a
    size to be in it."""
    base = [0] * len(sizes)
    room = cap
    if forced is not None:
        base[forced], room = 1, cap - sizes[forced]
    have = [n - k for n, k in zip(left, base, strict=True)]
    kinds = [i for i, n in enumerate(have) if n and sizes[i] <= room]
    tail = [0] * (len(kinds) + 1)
    for j in range(len(kinds) - 1, -1, -1):
        tail[j] = tail[j + 1] + sizes[kinds[j]] * have[kinds[j]]
    best_room, best = room, [0] * len(kinds)
    chosen = [0] * len(kinds)
    spent = 0

    def visit(j: int, room_left: int) -> bool:
        nonlocal best_room, best, spent
        spent += 1
        if room_left < best_room:
            best_room, best = room_left, chosen[:]
        if best_room == 0 or spent > nodes:
            return True
        if j == len(kinds) or room_left - tail[j] >= best_room:
            return False
        size = sizes[kinds[j]]
        for k in range(min(have[kinds[j]], room_left // size), -1, -1):
            chosen[j] = k
            if visit(j + 1, room_left - k * size):
                chosen[j] = 0
                return True
        chosen[j] = 0
        return False

    visit(0, room)
    for j, k in enumerate(best):
        base[kinds[j]] += k
    return base
