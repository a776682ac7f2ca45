"""The budget as a check, with the cheapest change that would mend it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from decimal import Decimal

from hoopwright.shape.model import Shape
from hoopwright.source.printed import money_text
from hoopwright.spec.check import Check, Result
from hoopwright.spec.model import Spec
from hoopwright.supply.cloths import Laid, lay_need
from hoopwright.supply.lengths import Cut, cut_need
from hoopwright.supply.model import Cost, ShoppingLine
from hoopwright.supply.needs import ClothNeed, LengthNeed, cloth_needs, hoop_need, length_needs

SMALL_STUFF = ("fastening", "consumable")
"""Kinds whose missing price leaves the budget judged as long as some room is left for them."""

ROOM = Decimal("0.10")
"""Share of the budget that must be left when small stuff has no price: our judgement."""


@dataclass(frozen=True, slots=True)
class Saving:
    """A change and what it saves on the list, before the reserve."""

    words: str
    amount: Decimal


def budget_check(spec: Spec, shape: Shape, cost: Cost, lines: tuple[ShoppingLine, ...]) -> Check | None:
    """Total and reserve against the budget; None when no budget is stated.

    Goods without a price: a list that is too dear without them fails; otherwise it is not assessed, unless
    only small stuff lacks a price - then it holds with a tenth of the budget left for it, and is marginal
    with less.
    """
    if cost.budget is None:
        return None
    spent = cost.total + cost.reserve
    result = _judge(cost, lines)
    return Check(
        "budget",
        "",
        float(spent),
        float(cost.budget),
        "money",
        "at most",
        result,
        _remedy(spec, shape, cost, result),
        "sum of the shopping list and the reserve against limits.budget (common practice, no source)",
        "what has to be bought, with its reserve, against the budget",
    )


def _judge(cost: Cost, lines: tuple[ShoppingLine, ...]) -> Result:
    assert cost.budget is not None
    left = cost.budget - cost.total - cost.reserve
    if left < 0:
        return "fails"
    if not cost.partial:
        return "holds"
    if any(line.cost is None and line.kind not in SMALL_STUFF for line in lines):
        return "not assessed"
    return "holds" if left >= ROOM * cost.budget else "marginal"


def _remedy(spec: Spec, shape: Shape, cost: Cost, result: Result) -> str:
    if result == "holds":
        return ""
    if result in ("not assessed", "marginal"):
        return f"find the price of {', '.join(cost.missing)}"
    assert cost.budget is not None
    currency = spec.currency or ""
    over = cost.total + cost.reserve - cost.budget
    found = savings(spec, shape)
    if not found:
        return f"raise the budget by {money_text(over, currency)}, or find cheaper goods"
    share = 1 + cost.reserve / cost.total
    enough = [saving for saving in found if saving.amount * share >= over]
    best = (
        min(enough, key=lambda saving: saving.amount)
        if enough
        else max(found, key=lambda saving: saving.amount)
    )
    said = f"it is {money_text(over, currency)} over; {best.words} saves {money_text(best.amount, currency)}"
    return said if enough else f"{said}, which is not enough alone"


def savings(spec: Spec, shape: Shape) -> tuple[Saving, ...]:
    """What single changes would save, each worked out by buying and cutting again."""
    hoops = hoop_need(spec, shape)
    now = _cost(cut_need(hoops, spec))
    found: list[Saving] = []
    if now is not None:
        found.extend(_other_stocks(spec, shape, now))
        fewer = _without_one(hoops, spec, shape, now)
        found.extend([fewer] if fewer else [])
    found.extend(_bare_hoops(spec, shape))
    found.extend(_no_band(spec, shape))
    return tuple(saving for saving in found if saving.amount > 0)


def _cost(found: object) -> Decimal | None:
    """Money for one material; None when it cannot be had or a price is missing."""
    if isinstance(found, Cut):
        return found.cost
    if isinstance(found, Laid):
        return Decimal(0) if found.line is None else found.line.cost
    return None


def _other_stocks(spec: Spec, shape: Shape, now: Decimal) -> Iterable[Saving]:
    """Every other stock of the spec that has a price."""
    for name in sorted(spec.stocks):
        stock = spec.stocks[name]
        if stock.name == spec.build.hoops.material.name or not stock.sold:
            continue
        cost = _cost(cut_need(hoop_need(spec, shape, stock), spec))
        if cost is not None:
            yield Saving(f"hoops of `{stock.name}`, if it is strong enough,", now - cost)


def _without_one(need: LengthNeed, spec: Spec, shape: Shape, now: Decimal) -> Saving | None:
    """One hoop fewer between the top and the hem: the longest that may go."""
    middle = [hoop for hoop in shape.hoops if hoop.place == "body"]
    if not middle:
        return None
    longest = max(middle, key=lambda hoop: (hoop.cut, hoop.id))
    rest = tuple(piece for piece in need.pieces if piece.part != longest.id)
    cost = _cost(cut_need(replace(need, pieces=rest), spec))
    return None if cost is None else Saving("one hoop fewer", now - cost)


def _bare_hoops(spec: Spec, shape: Shape) -> Iterable[Saving]:
    """Hoops without their casing, painted or taped instead."""
    casing = spec.build.hoops.casing
    if casing is None or casing.name in (spec.build.tapes.material.name, spec.build.waistband.material.name):
        return
    needs = [need for need in length_needs(spec, shape) if need.item == casing.name]
    costs = [_cost(cut_need(need, spec)) for need in needs]
    saved = sum((cost for cost in costs if cost is not None), Decimal(0))
    yield Saving(f"bare hoops without `{casing.name}`, bound with tape you have,", saved)


def _no_band(spec: Spec, shape: Shape) -> Iterable[Saving]:
    """The cage without its hem band: the cloth is not bought."""
    if shape.band is None:
        return
    for need in cloth_needs(spec, shape):
        if any(part.part == "band" for part in need.parts):
            now = _cost(lay_need(need, spec))
            rest = ClothNeed(need.goods, tuple(part for part in need.parts if part.part != "band"))
            then = _cost(lay_need(rest, spec)) if rest.parts else Decimal(0)
            if now is not None and then is not None:
                yield Saving(f"no hem band of `{need.goods.name}`", now - then)
