"""Delivery: once for each shop from which anything is bought."""

from __future__ import annotations

from collections.abc import Iterable

from hoopwright.spec.model import Spec
from hoopwright.supply.model import ShoppingLine

DELIVERY = "delivery"
"""The kind of a line that pays for a delivery."""


def shop_of(item: str, spec: Spec) -> str:
    """Where an item is bought; blank when nothing is said."""
    found = spec.stocks.get(item) or spec.goods.get(item)
    return found.shop if found is not None else ""


def delivery_lines(lines: Iterable[ShoppingLine], spec: Spec) -> tuple[ShoppingLine, ...]:
    """A line for each shop that asks for a delivery and from which ``lines`` buy, in the maker's order."""
    bought: dict[str, list[str]] = {}
    for line in lines:
        bought.setdefault(shop_of(line.item, spec), []).append(line.item)
    return tuple(
        ShoppingLine(
            f"delivery from {shop}",
            DELIVERY,
            1,
            0.0,
            1,
            price,
            price,
            1.0,
            0.0,
            tuple(dict.fromkeys(bought[shop])),
        )
        for shop, price in spec.shops.items()
        if price > 0 and shop in bought
    )
