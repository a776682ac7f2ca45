"""Prices for a unit: a foot or a metre, a yard of what is sold by the yard, one piece."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from hoopwright.render.quantities import Printer
from hoopwright.supply.model import ShoppingLine

_BY_YARD = ("tape", "braid", "cloth")
_FOOT, _YARD = Decimal("0.3048"), Decimal("0.9144")
_NEAR = Decimal("0.000001")


def unit_price(line: ShoppingLine, p: Printer) -> str:
    """``0.38 USD a foot``; blank without a price, or when one of what is bought is one unit.

    Shown to the hundredth, to the thousandth below a tenth.
    """
    if line.price is None:
        return ""
    if line.pack_length > 0:
        length = Decimal(repr(round(line.pack_length, 9)))
        name, unit = ("metre", Decimal(1)) if p.units == "centimetres" else (
            ("yard", _YARD) if line.kind in _BY_YARD else ("foot", _FOOT)
        )
        count = length / unit
    else:
        name, count = "piece", Decimal(line.pack_count)
    if count <= 0 or abs(count - 1) < _NEAR:
        return ""
    each = line.price / count
    places = Decimal("0.01") if each >= Decimal("0.1") else Decimal("0.001")
    return f"{p.money(each.quantize(places, ROUND_HALF_UP))} a {name}"
