"""Prices: a spec keeps to one currency, because sums of two mean nothing."""

from __future__ import annotations

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.source.quantity import QuantityError, parse_money
from hoopwright.spec.checking.quantities import DELIVERY, PRICE
from hoopwright.spec.checking.schema import whole_schema
from hoopwright.spec.checking.walk import titled


def currency_of(value: object) -> tuple[str | None, tuple[Finding, ...]]:
    """The one currency of all prices and the budget (None without any), and a finding for each other one."""
    first: tuple[str, Path] | None = None
    others: dict[str, Finding] = {}
    for path, title, item in titled(value, whole_schema("spec")):
        if title not in (PRICE, DELIVERY) or path[0] == "variants":
            continue
        try:
            _, currency = parse_money(item, zero=title == DELIVERY)
        except QuantityError:
            continue
        if first is None:
            first = (currency, path)
        elif currency != first[0] and currency not in others:
            others[currency] = error(
                "currency-mixed", path, f"this price is in {currency}, another is in {first[0]}",
                "keep to one currency; change the amounts yourself at the rate you pay",
                related=((first[1], f"a price in {first[0]}"),))
    return (first[0] if first else None), tuple(others.values())
