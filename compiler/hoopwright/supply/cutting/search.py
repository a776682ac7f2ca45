"""The least cost: mixes of packs in order of cost, each packed or refuted; the solver only for what stays
open."""

from __future__ import annotations

from dataclasses import dataclass

from hoopwright.supply.cutting.bounds import Row, cover_rows
from hoopwright.supply.cutting.completion import Budget, decide
from hoopwright.supply.cutting.greedy import open_as_needed
from hoopwright.supply.cutting.mixes import cheapest_cover, cost_of, in_order
from hoopwright.supply.cutting.model import WorkLimits
from hoopwright.supply.cutting.outcome import NoFit, Optimum, bench_of
from hoopwright.supply.cutting.packing import pack_quickly
from hoopwright.supply.cutting.stock import Stock

_TRIES = 48


def least_cost(stock: Stock, limits: WorkLimits) -> Optimum | NoFit:
    """A plan of least cost, proven so when its `lower` equals its `cost`."""
    rows = cover_rows(stock)
    low = cheapest_cover(stock, rows)
    if low is None:
        return NoFit(max(row.need - row.held(stock.avail) for row in rows))
    budget = Budget(limits.nodes)
    upper = open_as_needed(stock)
    best = None if upper is None else Optimum(upper[0], upper[1], cost_of(stock, upper[0]), low, "bound", 0)
    if best is not None and best.cost == low:
        return best
    high = cost_of(stock, stock.avail) if best is None else best.cost - 1
    trial = _try_mixes(stock, rows, low, high, budget)
    best = trial.found or best
    if best is None and trial.exhausted and trial.open is None:
        return NoFit(0)
    known = (trial.open, trial.reached, best.cost if best else None)
    lower = min(x for x in known if x is not None)
    if best is not None and lower >= best.cost:
        method = "bound" if best.cost == low else "search"
        return Optimum(best.mix, best.fills, best.cost, best.cost, method, budget.spent)
    from hoopwright.supply.cutting.columns import by_columns

    return by_columns(stock, rows, lower, best, limits, budget.spent)


@dataclass(frozen=True)
class _Trial:
    """`open`: cost of the cheapest undecided mix; `reached`: no mix cheaper than this is left untried
    (None: all were tried, `exhausted`)."""

    found: Optimum | None
    open: int | None
    reached: int | None
    exhausted: bool


def _try_mixes(stock: Stock, rows: tuple[Row, ...], low: int, high: int, budget: Budget) -> _Trial:
    """Pack or refute the mixes from `low` to `high`, cheapest first, up to a number of tries."""
    undecided: int | None = None
    for tries, mix in enumerate(in_order(stock, rows, low, high)):
        if mix is None or tries == _TRIES or budget.left <= 0:
            reached = low if mix is None else cost_of(stock, mix)
            return _Trial(None, undecided, reached, False)
        bins = bench_of(stock, mix).caps
        cost = cost_of(stock, mix)
        fills = pack_quickly(stock.sizes, stock.counts, bins)
        if fills is None:
            share = Budget(max(0, min(budget.left, budget.left // 4 + 500)))
            decision = decide(stock.sizes, stock.counts, bins, share)
            budget.left -= share.spent
            budget.spent += share.spent
            fills = decision.fills
            if not decision.known:
                undecided = cost if undecided is None else undecided
        if fills is not None:
            return _Trial(Optimum(mix, fills, cost, low, "search", budget.spent), undecided, None, False)
    return _Trial(None, undecided, None, True)
