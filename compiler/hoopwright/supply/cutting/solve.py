"""The entry: an order in, a cutting plan or every reason why there is none out."""

from __future__ import annotations

from math import fsum

from hoopwright.supply.cutting.check import check_order
from hoopwright.supply.cutting.finish import finish
from hoopwright.supply.cutting.model import (
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    NotEnough,
    WorkLimits,
)
from hoopwright.supply.cutting.outcome import NoFit, Optimum
from hoopwright.supply.cutting.report import bought_packs, cut_packs, known_cost, money
from hoopwright.supply.cutting.search import least_cost
from hoopwright.supply.cutting.stock import Stock, to_stock


def cut_lengths(order: CuttingOrder, limits: WorkLimits | None = None) -> CuttingPlan | CuttingFailure:
    """The best way to buy and cut what an order asks for; see the package for what "best" means.

    Lengths in m, money in Decimal. Pure: neither the order in which pieces, packs and stock on hand are
    given nor anything outside the arguments changes the plan. Never raises for a bad order: it returns a
    CuttingFailure.
    """
    limits = limits or WorkLimits()
    problems = check_order(order)
    if problems:
        return CuttingFailure(problems)
    if order.rules.splice is not None:
        from hoopwright.supply.cutting.splice import cut_with_splices

        return cut_with_splices(order, limits)
    return cut_whole(order, limits)


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
    bought = bought_packs(stock, done.mix)
    proven = best.lower >= best.cost
    used = [p.length for p in packs if p.source == "on hand"]
    untouched = list(order.on_hand)
    for length in used:
        untouched.remove(length)
    lefts = [p.left for p in packs] + untouched
    cost = known_cost(bought)
    return CuttingPlan(
        packs=packs,
        bought=bought,
        cost=cost,
        partial=any(b.cost is None for b in bought),
        measure="cost" if stock.measure_cost else "length",
        objective=money(stock, best.cost),
        lower_bound=money(stock, best.lower),
        proven=proven,
        gap=0.0 if proven or not best.cost else (best.cost - best.lower) / best.cost,
        waste=round(sum((x for x in lefts if x < order.rules.useful), 0.0), 7),
        longest_left=max(lefts, default=0.0),
        waste_proven=proven and done.exact,
        method=best.method,
        steps=best.steps,
    )


def _not_enough(order: CuttingOrder, stock: Stock, short: NoFit) -> NotEnough:
    needed = fsum(p.length for p in order.pieces)
    have = fsum(order.on_hand) + fsum(p.length * n for p, n in zip(stock.packs, stock.avail, strict=True))
    return NotEnough(needed, have, short.missing * stock.unit)
