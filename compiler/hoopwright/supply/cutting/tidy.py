"""Among packings of the same cost: least waste, then the longest single remainder, then a stated order.

A packing is scored by (waste, -longest remainder, -length cut from stock on hand, number of lengths cut
into), smaller is better. What is left of a length that is cut into counts, and so does a length on hand
that stays untouched. Equal scores are settled by the packing itself: bins in a fixed order, the one with
more of the longest pieces on earlier bins.
"""

from __future__ import annotations

from math import prod
from operator import sub

from hoopwright.source.record import record
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.packing import Fill

Score = tuple[int, int, int, int]

_MANY_SELECTIONS = 5_000


@record(frozen=True, slots=True)
class Bench:
    """The lengths laid out: `sizes` (kerf included), capacity, untouched length and on-hand flag of every
    bin, shortest on hand first, then bought ones shortest first; `kerf` and `useful` as in Stock."""

    sizes: tuple[int, ...]
    caps: tuple[int, ...]
    whole: tuple[int, ...]
    on_hand: tuple[bool, ...]
    kerf: int
    useful: int

    def filled(self, fill: Fill) -> int:
        """Sum of the sizes on one bin."""
        return sum(s * n for s, n in zip(self.sizes, fill, strict=True))

    def score_bin(self, b: int, fill: Fill) -> Score:
        """Score of one bin; scores of several combine by `add`."""
        return self.score_sum(b, self.filled(fill))

    def score_sum(self, b: int, total: int) -> Score:
        """Score of one bin by the sum of the sizes on it."""
        left = max(0, self.caps[b] - self.kerf - total) if total else self.whole[b]
        return (left if left < self.useful else 0, -left, -total if self.on_hand[b] else 0, int(total > 0))


def add(a: Score, b: Score) -> Score:
    """Scores of two sets of bins together."""
    return (a[0] + b[0], min(a[1], b[1]), a[2] + b[2], a[3] + b[3])


def score(bench: Bench, fills: list[Fill]) -> Score:
    """Score of a whole packing."""
    result: Score = (0, 0, 0, 0)
    for b, fill in enumerate(fills):
        result = add(result, bench.score_bin(b, fill))
    return result


def is_searchable(counts: tuple[int, ...]) -> bool:
    """Whether the selections of the pieces are few enough to list."""
    return prod(n + 1 for n in counts) <= _MANY_SELECTIONS


def best_packing(bench: Bench, counts: tuple[int, ...], budget: Budget) -> list[Fill] | None:
    """The best packing of all pieces by exhaustive search with memory; None when the budget runs out or
    nothing fits.

    First the least waste and the longest remainder that goes with it: waste adds up and the longest is a
    maximum, so the best of a sub-problem (bin, pieces left) is part of the best of the whole. Then, with
    both given, the rest of the score, which adds up; a sub-problem then also says whether the longest
    remainder is still to be made.
    """
    if not bench.caps:
        return [] if not any(counts) else None
    if not is_searchable(counts):
        return None
    first = _Exhaustive(bench, budget, None).solve(0, counts, False)
    if first is None or budget.left < 0:
        return None
    second = _Exhaustive(bench, budget, first[0][1]).solve(0, counts, True)
    return list(second[1]) if second is not None and budget.left >= 0 else None


_Part = tuple[Score, tuple[Fill, ...]] | None


class _Exhaustive:
    """Search with memory: for waste and longest remainder, or - given the `longest` - for the other terms."""

    def __init__(self, bench: Bench, budget: Budget, longest: int | None) -> None:
        self._bench = bench
        self._budget = budget
        self._longest = longest
        self._memory: dict[tuple[int, tuple[int, ...], bool], _Part] = {}
        self._later = tuple(sum(bench.caps[b + 1:]) for b in range(len(bench.caps)))

    def solve(self, b: int, left: tuple[int, ...], wanted: bool) -> _Part:
        """The best packing of `left` on the bins from `b` on; `wanted`: one of them must give the longest."""
        bench = self._bench
        if b == len(bench.caps) - 1:
            self._budget.take()
            if (total := bench.filled(left)) > bench.caps[b]:
                return None
            own = bench.score_sum(b, total)
            return None if wanted and own[1] != self._longest else (self._counted(own), (left,))
        key = (b, left, wanted)
        if key in self._memory:
            return self._memory[key]
        best: _Part = None
        least = bench.filled(left) - self._later[b]
        for fill, total in _selections(bench.sizes, left, bench.caps[b], least):
            if not self._budget.take():
                return None
            own = bench.score_sum(b, total)
            if best is not None and own[0] > best[0][0]:
                continue  # more waste here than the best has in all
            rest_left = tuple(map(sub, left, fill))
            rest = self.solve(b + 1, rest_left, wanted and own[1] != self._longest)
            if rest is None:
                continue
            found = add(self._counted(own), rest[0])
            if best is None or found < best[0]:
                best = (found, (fill, *rest[1]))
        self._memory[key] = best
        return best

    def _counted(self, own: Score) -> Score:
        """What this search adds up of a bin's score."""
        waste, longest, on_hand, used = own
        return (waste, longest, 0, 0) if self._longest is None else (waste, 0, on_hand, used)


def _selections(sizes: tuple[int, ...], counts: tuple[int, ...], cap: int, least: int) -> list[tuple[Fill, int]]:
    """All selections that fit and are not less than ``least``, each with its sum, more of the longest pieces first."""
    found: list[tuple[Fill, int]] = []
    chosen = [0] * len(sizes)
    behind = [0] * (len(sizes) + 1)
    for i in reversed(range(len(sizes))):
        behind[i] = behind[i + 1] + sizes[i] * counts[i]

    def visit(i: int, total: int) -> None:
        if total + behind[i] < least:
            return
        if i == len(sizes):
            found.append((tuple(chosen), total))
            return
        for k in range(min(counts[i], max(0, cap - total) // sizes[i]), -1, -1):
            chosen[i] = k
            visit(i + 1, total + k * sizes[i])
        chosen[i] = 0

    visit(0, 0)
    return found
