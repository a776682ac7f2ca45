"""The least cost: bounds and trials first; the solver only for what they leave open."""

from __future__ import annotations

from hoopwright.supply.cutting.bounds import cover_rows
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.greedy import open_as_needed
from hoopwright.supply.cutting.mixes import cheapest_cover, cost_of
from hoopwright.supply.cutting.model import WorkLimits
from hoopwright.supply.cutting.outcome import NoFit, Optimum
from hoopwright.supply.cutting.stock import Stock
from hoopwright.supply.cutting.trials import improve

_MANY = 60
_FIRST_TRIES = 4


def least_cost(stock: Stock, limits: WorkLimits) -> Optimum | NoFit:
    """A plan of least cost, proven so when its `lower` equals its `cost`."""
    rows = cover_rows(stock)
    low = cheapest_cover(stock, rows)
    if low is None:
        return NoFit(max(row.need - row.held(stock.avail) for row in rows))
    many = sum(stock.counts) > _MANY
    budget = Budget(limits.nodes // 8 if many else limits.nodes)
    upper = open_as_needed(stock)
    best = None if upper is None else Optimum(upper[0], upper[1], cost_of(stock, upper[0]), low, "bound", 0)
    if best is not None and best.cost == low:
        return best
    best, lower = improve(stock, rows, best, low, budget, _FIRST_TRIES if many else None)
    if best is None and lower is None:
        return NoFit(0)
    if best is not None and (lower is None or lower >= best.cost):
        method = "bound" if best.cost == low else "search"
        return Optimum(best.mix, best.fills, best.cost, best.cost, method, budget.spent)
    from hoopwright.supply.cutting.columns import by_columns

    return by_columns(stock, rows, low if lower is None else lower, best, limits, budget.spent)
