"""Splices: what a spec allows, and what one of them uses up."""

from __future__ import annotations

from decimal import ROUND_UP, Decimal

from hoopwright.library.goods import GOODS
from hoopwright.library.model import ByMeasure, Consumption, Goods, Offer, Pieces
from hoopwright.spec.model import Spec
from hoopwright.supply.cutting.model import SpliceRule

_CENT = Decimal("0.01")


def splice_rule(spec: Spec) -> SpliceRule | None:
    """The rule for the cutting of hoops, or None when none may be spliced.

    A splice is one more join of the hoops' own kind: its lap, its minutes, and its share of the price of what
    it uses up (nothing for what has no price).
    """
    hoops = spec.build.hoops
    if hoops.splices < 1:
        return None
    cost = sum((_use_price(spec, use) for use in hoops.join.consumes), Decimal(0))
    shortest = max(spec.allowances.splice_shortest, 2 * hoops.lap)
    return SpliceRule(hoops.lap, cost.quantize(_CENT, ROUND_UP), hoops.join.minutes, hoops.splices, shortest)


def _use_price(spec: Spec, use: Consumption) -> Decimal:
    """What one use costs at the offer that is cheapest for it."""
    goods = spec.goods.get(use.goods) or GOODS.get(use.goods) or Goods(use.goods, "consumable")
    prices = [price for offer in goods.sold if (price := _per_use(offer, use)) is not None]
    return min(prices, default=Decimal(0))


def _per_use(offer: Offer, use: Consumption) -> Decimal | None:
    if offer.price is None:
        return None
    if isinstance(offer, Pieces):
        serves = offer.count * use.per_piece
    elif isinstance(offer, ByMeasure):
        serves = offer.per
    else:
        serves = offer.length
    return offer.price.amount * Decimal(repr(use.amount)) / Decimal(repr(serves))
