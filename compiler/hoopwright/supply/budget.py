"""The budget as a check, with the cheapest change that would mend it."""

from __future__ import annotations

from decimal import Decimal

from hoopwright.source.printed import money_text
from hoopwright.spec.check import Check, Result
from hoopwright.spec.model import Spec
from hoopwright.supply.model import Cost, ShoppingLine
from hoopwright.supply.saving import SMALL_STUFF, savings

ROOM = Decimal("0.10")
"""Share of the budget that must be left when small stuff has no price: our judgement."""


def budget_check(spec: Spec, cost: Cost, lines: tuple[ShoppingLine, ...]) -> Check | None:
    """Total and reserve against the budget; None when no budget is stated.

    Goods without a price: a list that is too dear without them fails; otherwise it is not assessed, unless
    only small stuff lacks a price - then it holds with a tenth of the budget left for it, and is marginal
    with less.
    """
    if cost.budget is None:
        return None
    spent = cost.total + cost.reserve
    result = _judge(cost, cost.budget - spent, lines)
    return Check(
        "budget",
        "",
        float(spent),
        float(cost.budget),
        "money",
        "at most",
        result,
        _remedy(spec, cost, spent - cost.budget, lines, result),
        "sum of the shopping list and the reserve against limits.budget (common practice, no source)",
        "what has to be bought, with its reserve, against the budget",
    )


def _judge(cost: Cost, left: Decimal, lines: tuple[ShoppingLine, ...]) -> Result:
    if left < 0:
        return "fails"
    if not cost.partial:
        return "holds"
    if any(line.cost is None and line.kind not in SMALL_STUFF for line in lines):
        return "not assessed"
    return "holds" if cost.budget is not None and left >= ROOM * cost.budget else "marginal"


def _remedy(spec: Spec, cost: Cost, over: Decimal, lines: tuple[ShoppingLine, ...], result: Result) -> str:
    """What to change: for a failure the smallest single change that suffices, else the largest there is."""
    if result == "holds":
        return ""
    if result in ("not assessed", "marginal"):
        return f"find the price of {', '.join(cost.missing)}"
    currency = spec.currency or ""
    found = savings(spec, lines)
    if not found:
        return f"raise the budget by {money_text(over, currency)}, or find cheaper goods"
    with_reserve = 1 + Decimal(str(spec.allowances.money_reserve))
    enough = [saving for saving in found if saving.amount * with_reserve >= over]
    best = (
        min(enough, key=lambda saving: saving.amount)
        if enough
        else max(found, key=lambda saving: saving.amount)
    )
    said = f"it is {money_text(over, currency)} over; {best.words} saves {money_text(best.amount, currency)}"
    return said if enough else f"{said}, which is not enough alone"
