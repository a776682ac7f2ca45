"""Money: prices of shop steps, and the sum of a shopping list with its reserve. Decimal throughout."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from hoopwright.library.model import ByMeasure
from hoopwright.spec.model import Spec
from hoopwright.supply.model import Cost, ShoppingLine

_CENT = Decimal("0.01")


def cents(amount: Decimal) -> Decimal:
    """Rounded to the currency's hundredth, halves up, as a till does."""
    return amount.quantize(_CENT, rounding=ROUND_HALF_UP)


def step_price(offer: ByMeasure) -> Decimal | None:
    """The price of one shop step, exact."""
    if offer.price is None:
        return None
    share = Fraction(offer.step / offer.per).limit_denominator(10_000)
    return offer.price.amount * share.numerator / share.denominator


def measured_cost(offer: ByMeasure, steps: int) -> Decimal | None:
    """The price of so many shop steps, rounded once."""
    price = step_price(offer)
    return None if price is None else cents(price * steps)


def with_reserve(amount: Decimal, spec: Spec) -> Decimal:
    """An amount with the spec's reserve on top."""
    return amount + cents(amount * Decimal(str(spec.allowances.money_reserve)))


def add_up(lines: Iterable[ShoppingLine], spec: Spec) -> Cost:
    """The sum of the list, the reserve on top of it, and which items have no price."""
    lines = tuple(lines)
    total = sum((line.cost for line in lines if line.cost is not None), Decimal(0))
    reserve = with_reserve(total, spec) - total
    missing = tuple(dict.fromkeys(line.item for line in lines if line.cost is None))
    return Cost(total, reserve, spec.limits.budget, spec.currency, missing)
