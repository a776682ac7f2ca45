"""Trying mixes of packs, cheapest first: each is packed, refuted, or stays undecided."""

from __future__ import annotations

from itertools import islice

from hoopwright.source.record import record
from hoopwright.supply.cutting.bounds import Row
from hoopwright.supply.cutting.completion import Budget, decide
from hoopwright.supply.cutting.mixes import Mix, cost_of, in_order
from hoopwright.supply.cutting.outcome import Optimum, bench_of
from hoopwright.supply.cutting.packing import Fill, pack_quickly
from hoopwright.supply.cutting.stock import Stock

_LISTED = 400
_PIECES_TRIED = 4_800
_IN_TURN = 12
_HARDER = 2


@record(frozen=True, slots=True)
class Trial:
    """The cheapest packing found, and `open`: no mix cheaper than this is feasible, this one may be (None:
    every mix in the range was refuted)."""

    found: tuple[Mix, list[Fill]] | None
    open: int | None


def try_mixes(stock: Stock, rows: tuple[Row, ...], low: int, high: int, budget: Budget, tries: int) -> Trial:
    """Pack or refute the mixes that cost from `low` to `high`, in at most `tries` tries.

    The first dozen are taken in turn; after that strides grow, to find some packing soon, and the ones
    passed over below it are taken up again, cheapest first. Refuting stops with the budget.
    """
    listed = list(islice(in_order(stock, rows, low, high), _LISTED))
    mixes = [m for m in listed if m is not None]
    whole = len(mixes) == len(listed) < _LISTED
    refuted: set[int] = set()
    found: tuple[int, list[Fill]] | None = None
    waiting = _visiting_order(len(mixes))
    tried: set[int] = set()
    while waiting and len(tried) < tries:
        i = waiting.pop(0)
        if i in tried or (found is not None and i >= found[0]):
            continue
        tried.add(i)
        fills, known = _try(stock, mixes[i], budget, 4 if i < _HARDER else 1)
        if fills is not None:
            found = (i, fills)
            waiting = [j for j in range(i) if j not in tried]
        elif known:
            refuted.add(i)
    end = len(mixes) if found is None else found[0]
    undecided = next((i for i in range(end) if i not in refuted), None)
    if undecided is not None:
        lowest: int | None = cost_of(stock, mixes[undecided])
    else:
        lowest = None if whole or found is not None else (cost_of(stock, mixes[-1]) if mixes else low)
    return Trial(None if found is None else (mixes[found[0]], found[1]), lowest)


def _visiting_order(count: int) -> list[int]:
    """0, 1, ... 11, then with strides growing by a quarter, to the end."""
    order, i = list(range(min(count, _IN_TURN))), _IN_TURN
    while i < count:
        order.append(i)
        i += max(1, (i - _IN_TURN) // 4 + 1)
    return order


def _try(stock: Stock, mix: Mix, budget: Budget, effort: int) -> tuple[list[Fill] | None, bool]:
    """A packing of one mix (or None), and whether None is certain."""
    bins = bench_of(stock, mix).caps
    fills = pack_quickly(stock.sizes, stock.counts, bins, effort)
    if fills is not None or budget.left <= 0:
        return fills, False
    share = Budget(min(budget.left, budget.left // 2 + 500))
    decision = decide(stock.sizes, stock.counts, bins, share)
    budget.left -= share.spent
    budget.spent += share.spent
    return decision.fills, decision.known



def improve(
    stock: Stock,
    rows: tuple[Row, ...],
    best: Optimum | None,
    low: int,
    budget: Budget,
    most: int | None = None,
) -> tuple[Optimum | None, int | None]:
    """The best plan after trying mixes from `low` on, and the cost of the cheapest mix that stays
    undecided."""
    high = cost_of(stock, stock.avail) if best is None else best.cost - 1
    tries = most if most is not None else max(8, _PIECES_TRIED // sum(stock.counts))
    trial = try_mixes(stock, rows, low, high, budget, tries)
    if trial.found is not None:
        mix, fills = trial.found
        best = Optimum(mix, fills, cost_of(stock, mix), low, "search", budget.spent)
    return best, trial.open
