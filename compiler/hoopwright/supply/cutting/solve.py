"""The entry: an order in, a cutting plan or every reason why there is none out."""

from __future__ import annotations

from hoopwright.supply.cutting.check import check_order
from hoopwright.supply.cutting.model import (
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    WorkLimits,
)
from hoopwright.supply.cutting.whole import cut_whole


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
