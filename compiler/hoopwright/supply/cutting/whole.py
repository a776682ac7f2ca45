"""The best plan of an order that allows no splices."""

from __future__ import annotations

from dataclasses import replace
from math import fsum

from hoopwright.supply.cutting.finish import finish
from hoopwright.supply.cutting.model import CuttingFailure, CuttingOrder, CuttingPlan, NotEnough, WorkLimits
from hoopwright.supply.cutting.outcome import NoFit, Optimum
from hoopwright.supply.cutting.report import bought_packs, cut_packs, plan_of
from hoopwright.supply.cutting.search import least_cost
from hoopwright.supply.cutting.stock import Stock, to_stock


def cut_whole(order: CuttingOrder, limits: WorkLimits) -> CuttingPlan | CuttingFailure:
    """The best plan for a checked order without splices."""
    stock = to_stock(order)
    best = least_cost(stock, limits)
    if isinstance(best, NoFit):
        return CuttingFailure((_not_enough(order, stock, best),))
    return _to_plan(order, stock, best)


def _to_plan(order: CuttingOrder, stock: Stock, best: Optimum) -> CuttingPlan:
    done = finish(stock, best)
    packs = cut_packs(order, stock, done.mix, done.fills)
    plan = plan_of(order, stock, packs, bought_packs(stock, done.mix), (best.lower, best.cost))
    return replace(plan, waste_proven=plan.proven and done.exact, method=best.method, steps=best.steps)


def _not_enough(order: CuttingOrder, stock: Stock, short: NoFit) -> NotEnough:
    needed = fsum(p.length for p in order.pieces)
    have = fsum(order.on_hand) + fsum(p.length * n for p, n in zip(stock.packs, stock.avail, strict=True))
    return NotEnough(needed, have, short.missing * stock.unit)
