"""Improving a packing that is too large to be searched through: pieces change places between two lengths."""

from __future__ import annotations

from collections import Counter
from itertools import combinations

from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.tidy import Bench, Score, add

Cut = tuple[int, ...]
"""Size indices on one bin, ascending (longest piece first)."""

_FEW = 9


def improve(bench: Bench, fills: list[Fill], budget: Budget) -> list[Fill]:
    """A packing with the same bins whose score is at least as good.

    Pairs of bins of which one has waste or the longest remainder are re-cut - all ways when both hold at
    most nine pieces together, else by moving one piece or exchanging two - until no pair gains or the
    budget ends.
    """
    cuts = [tuple(i for i, n in enumerate(fill) for _ in range(n)) for fill in fills]
    scores = [_score(bench, b, cut) for b, cut in enumerate(cuts)]
    gained = True
    while gained and budget.left > 0:
        gained = False
        for a, b in combinations(range(len(cuts)), 2):
            if budget.left <= 0:
                break
            longest = min(s[1] for s in scores)
            idle = scores[a][0] + scores[b][0] == 0 and longest not in (scores[a][1], scores[b][1])
            if not idle and _recut(bench, cuts, scores, a, b, budget):
                gained = True
    return [_fill(len(bench.sizes), cut) for cut in cuts]


def _recut(bench: Bench, cuts: list[Cut], scores: list[Score], a: int, b: int, budget: Budget) -> bool:
    """Re-cut bins a and b in the best way when that improves the whole score."""
    others: Score = (0, 0, 0, 0)
    for c, known in enumerate(scores):
        if c not in (a, b):
            others = add(others, known)
    best = add(others, add(scores[a], scores[b]))
    found: tuple[Cut, Cut] | None = None
    for cut_a, cut_b in _ways(cuts[a], cuts[b]):
        if not budget.take():
            break
        if _sum(bench, cut_a) > bench.caps[a] or _sum(bench, cut_b) > bench.caps[b]:
            continue
        new = add(others, add(_score(bench, a, cut_a), _score(bench, b, cut_b)))
        if new < best:
            best, found = new, (cut_a, cut_b)
    if found is None:
        return False
    cuts[a], cuts[b] = found
    scores[a], scores[b] = _score(bench, a, found[0]), _score(bench, b, found[1])
    return True


def _ways(a: Cut, b: Cut) -> list[tuple[Cut, Cut]]:
    """Other ways to share the pieces of two bins."""
    both = tuple(sorted(a + b))
    if len(both) <= _FEW:
        shares = sorted({c for n in range(len(both) + 1) for c in combinations(both, n)})
        return [(c, _without(both, c)) for c in shares]
    moves = [(_without(a, (i,)), _with(b, i)) for i in sorted(set(a))]
    moves += [(_with(a, j), _without(b, (j,))) for j in sorted(set(b))]
    moves += [
        (_with(_without(a, (i,)), j), _with(_without(b, (j,)), i))
        for i in sorted(set(a))
        for j in sorted(set(b))
        if i != j
    ]
    return moves


def _score(bench: Bench, b: int, cut: Cut) -> Score:
    return bench.score_sum(b, _sum(bench, cut))


def _sum(bench: Bench, cut: Cut) -> int:
    return sum(bench.sizes[i] for i in cut)


def _without(cut: Cut, taken: Cut) -> Cut:
    rest = Counter(cut)
    rest.subtract(taken)
    return tuple(sorted(rest.elements()))


def _with(cut: Cut, more: int) -> Cut:
    return tuple(sorted((*cut, more)))


def _fill(width: int, cut: Cut) -> Fill:
    fill = [0] * width
    for i in cut:
        fill[i] += 1
    return tuple(fill)
