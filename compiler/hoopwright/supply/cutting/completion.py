"""Exact decision whether all pieces fit into given lengths, by completing one bin at a time.

The longest piece left must lie somewhere: for every distinct length it fits on, that bin is completed with
every maximal selection of the other pieces, and the search goes on with what is left. A selection to which
another piece could be added need not be tried, for adding it never hurts. What the selections may leave
unused in all is bounded by the total slack, and states that failed once are remembered. (Bin completion
after Martello and Toth; Korf.)
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from hoopwright.supply.cutting.packing import Fill


@dataclass
class Budget:
    """Steps left for exact search; shared between calls, so that the sum is bounded and the same
    everywhere."""

    left: int
    spent: int = 0

    def take(self) -> bool:
        """Take one step; False when none is left."""
        self.left -= 1
        self.spent += 1
        return self.left >= 0


@dataclass
class Decision:
    """`known` tells whether the search finished; `fills` is a packing (one Fill per bin) or None when there
    is none."""

    known: bool
    fills: list[Fill] | None = None


@dataclass
class _State:
    sizes: tuple[int, ...]
    kinds: tuple[int, ...]
    budget: Budget
    failed: set[tuple[tuple[int, ...], tuple[int, ...]]] = field(default_factory=set)


def decide(sizes: Sequence[int], counts: Sequence[int], bins: Sequence[int], budget: Budget) -> Decision:
    """Whether all pieces fit into `bins` (capacities; sizes longest first), within the step budget."""
    kinds = tuple(sorted({b for b in bins if b > 0}))
    free = tuple(sum(1 for b in bins if b == cap) for cap in kinds)
    state = _State(tuple(sizes), kinds, budget)
    used: list[tuple[int, Fill]] = []
    slack = sum(k * n for k, n in zip(kinds, free, strict=True)) - sum(
        s * c for s, c in zip(sizes, counts, strict=True)
    )
    answer = slack >= 0 and _search(state, tuple(counts), free, slack, used)
    if answer is None:
        return Decision(known=False)
    return Decision(known=True, fills=_to_bins(len(state.sizes), bins, used) if answer else None)


def _search(
    state: _State, counts: tuple[int, ...], free: tuple[int, ...], slack: int, used: list[tuple[int, Fill]]
) -> bool | None:
    """True when the rest fits (appended to `used`), False when it cannot, None when the budget ran out."""
    first = next((i for i, n in enumerate(counts) if n), None)
    if first is None:
        return True
    if (counts, free) in state.failed:
        return False
    longest = state.sizes[first]
    if sum(cap // longest * n for cap, n in zip(state.kinds, free, strict=True)) < counts[first]:
        return False
    for k, cap in enumerate(state.kinds):
        if not free[k] or cap < longest:
            continue
        rest_free = (*free[:k], free[k] - 1, *free[k + 1 :])
        for fill, waste in completions(state.sizes, counts, cap, first, slack, state.budget):
            if fill is None:
                return None
            rest = tuple(n - m for n, m in zip(counts, fill, strict=True))
            used.append((cap, fill))
            answer = _search(state, rest, rest_free, slack - waste, used)
            if answer is not False:
                return answer
            used.pop()
    state.failed.add((counts, free))
    return False


def completions(
    sizes: tuple[int, ...], counts: tuple[int, ...], cap: int, first: int, slack: int, budget: Budget
) -> Iterator[tuple[Fill | None, int]]:
    """All maximal selections holding one piece of size index `first`, each with what it leaves, at most
    `slack`.

    Those with more of the longest pieces come first. Yields (None, 0) when the budget runs out.
    """
    chosen = [0] * len(sizes)
    chosen[first] = 1
    have = list(counts)
    have[first] -= 1
    tail = [0] * (len(sizes) + 1)
    for i in range(len(sizes) - 1, first - 1, -1):
        tail[i] = tail[i + 1] + sizes[i] * have[i]

    def visit(i: int, room: int, skipped: int) -> Iterator[tuple[Fill | None, int]]:
        """`skipped` is the smallest size of which a piece was left out so far (0: none was)."""
        if not budget.take():
            yield None, 0
            return
        while i < len(sizes) and (not have[i] or sizes[i] > room):
            i += 1
        if i == len(sizes):
            if room <= slack and (skipped == 0 or skipped > room):
                yield tuple(chosen), room
            return
        if room - tail[i] > slack or (skipped and room - tail[i] >= skipped):
            return
        most = min(have[i], room // sizes[i])
        for k in range(most, -1, -1):
            chosen[i] = k + int(i == first)
            yield from visit(i + 1, room - k * sizes[i], skipped if k == have[i] else sizes[i])
        chosen[i] = int(i == first)

    yield from visit(first, cap - sizes[first], 0)


def _to_bins(width: int, bins: Sequence[int], used: list[tuple[int, Fill]]) -> list[Fill]:
    """Used fills put back on the bins in their given order; unused bins stay empty."""
    fills: list[Fill] = [tuple(0 for _ in range(width)) for _ in bins]
    open_bins: dict[int, list[int]] = {}
    for b, cap in enumerate(bins):
        open_bins.setdefault(cap, []).append(b)
    for cap, fill in used:
        fills[open_bins[cap].pop(0)] = fill
    return fills
