"""Improving a packing that is too large to be searched through: pieces change places between two lengths."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.tidy import Bench, Score, add

Cut = tuple[int, ...]
"""Size indices on one bin, ascending (longest piece first)."""

Way = tuple[int, Cut, Cut]
"""What the first of two bins gains in units, and the pieces it gives away and takes."""

_FEW = 9


def improve(bench: Bench, fills: list[Fill], budget: Budget) -> list[Fill]:
    """A packing with the same bins whose score is at least as good.

    Pairs of bins of which one has waste or the longest remainder are re-cut - all ways when both hold at most
    nine pieces together, else by moving one piece or exchanging two - until no pair gains or the budget ends.
    """
    cuts = [tuple(i for i, n in enumerate(fill) for _ in range(n)) for fill in fills]
    sums = [bench.filled(fill) for fill in fills]
    scores = [bench.score_sum(b, total) for b, total in enumerate(sums)]
    longest = min((s[1] for s in scores), default=0)
    gained = True
    while gained and budget.left > 0:
        gained = False
        for a, b in combinations(range(len(cuts)), 2):
            if budget.left <= 0:
                break
            idle = scores[a][0] + scores[b][0] == 0 and longest not in (scores[a][1], scores[b][1])
            way = None if idle else _best_way(bench, cuts, sums, scores, a, b, budget)
            if way is not None:
                gained = True
                cuts[a], cuts[b] = _swap(cuts[a], way[1], way[2]), _swap(cuts[b], way[2], way[1])
                sums[a], sums[b] = sums[a] + way[0], sums[b] - way[0]
                scores[a], scores[b] = bench.score_sum(a, sums[a]), bench.score_sum(b, sums[b])
                longest = min(s[1] for s in scores)
    return [_fill(len(bench.sizes), cut) for cut in cuts]


def _best_way(
    bench: Bench, cuts: list[Cut], sums: list[int], scores: list[Score], a: int, b: int, budget: Budget
) -> Way | None:
    """The exchange between bins a and b that improves the whole score most, the first of equals."""
    others = _others(scores, a, b)
    best = add(others, add(scores[a], scores[b]))
    lowest, highest = sums[b] - bench.caps[b], bench.caps[a] - sums[a]
    found: Way | None = None
    seen: set[int] = set()
    for way in _ways(bench.sizes, cuts[a], cuts[b]):
        gain = way[0]
        if gain < lowest or gain > highest or gain in seen:
            continue
        seen.add(gain)
        if not budget.take():
            break
        new = add(others, add(bench.score_sum(a, sums[a] + gain), bench.score_sum(b, sums[b] - gain)))
        if new < best:
            best, found = new, way
    return found


def _others(scores: list[Score], a: int, b: int) -> Score:
    """Score of all bins but two."""
    rest = [s for c, s in enumerate(scores) if c not in (a, b)]
    return (
        sum(s[0] for s in rest),
        min((s[1] for s in rest), default=0),
        sum(s[2] for s in rest),
        sum(s[3] for s in rest),
    )


def _ways(sizes: tuple[int, ...], a: Cut, b: Cut) -> Iterator[Way]:
    """Other ways to share the pieces of two bins."""
    if len(a) + len(b) <= _FEW:
        gives = sorted({c for n in range(len(a) + 1) for c in combinations(a, n)})
        takes = sorted({c for n in range(len(b) + 1) for c in combinations(b, n)})
    else:
        gives = [(), *((i,) for i in sorted(set(a)))]
        takes = [(), *((j,) for j in sorted(set(b)))]
    worth = [(sum(sizes[j] for j in take), take) for take in takes]
    for give in gives:
        less = sum(sizes[i] for i in give)
        for more, take in worth:
            yield more - less, give, take


def _swap(cut: Cut, give: Cut, take: Cut) -> Cut:
    rest = list(cut)
    for i in give:
        rest.remove(i)
    return tuple(sorted([*rest, *take]))


def _fill(width: int, cut: Cut) -> Fill:
    fill = [0] * width
    for i in cut:
        fill[i] += 1
    return tuple(fill)
