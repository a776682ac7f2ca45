"""Quantities of a spec: each read where the schema says one stands, each mistake one finding."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import partial
from types import MappingProxyType
from typing import Any

from hoopwright.source import quantity
from hoopwright.source.diagnostic import Finding, error
from hoopwright.source.quantity import QuantityError
from hoopwright.spec.checking.meant import meant
from hoopwright.spec.checking.walk import titled

PRICE = "price"
DELIVERY = "price, zero allowed"


def parse_fraction(value: object) -> float:
    """A place round a girth, 0 up to 1: a number, or text such as ``1/12``. Raises QuantityError."""
    mend = "write a number from 0 up to 1, or a fraction such as `1/12`"
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise QuantityError("quantity-unreadable", "a fraction of the girth is wanted here", mend)
    try:
        found = float(Fraction(value.replace(" ", "")) if isinstance(value, str) else value)
    except (ValueError, ZeroDivisionError, OverflowError):
        raise QuantityError("quantity-unreadable", "this does not read as a fraction of the girth",
                            mend) from None
    if not 0 <= found < 1:
        raise QuantityError("number-out-of-range", "a place round the girth lies from 0 up to 1", mend)
    return found


PARSERS: Mapping[str, Callable[[object], object]] = MappingProxyType({
    "length": quantity.parse_length,
    "length, zero allowed": partial(quantity.parse_length, zero=True),
    "weight": quantity.parse_mass,
    "weight, zero allowed": partial(quantity.parse_mass, zero=True),
    "area": quantity.parse_area,
    "weight of cloth": quantity.parse_areal_density,
    "weight for length": quantity.parse_linear_density,
    "density": quantity.parse_density,
    "stress": quantity.parse_stress,
    "force": quantity.parse_force,
    "time": quantity.parse_minutes,
    "share": quantity.parse_share,
    "angle": quantity.parse_angle,
    PRICE: quantity.parse_money,
    DELIVERY: partial(quantity.parse_money, zero=True),
    "fraction of the girth": parse_fraction,
})
"""The reader for each title the schema gives to a quantity."""


_GUESSED = ("quantity-unreadable", "unit-unknown", "unit-wrong")
"""Codes for which a guess at what is meant is better than the general mend."""


def quantity_findings(value: object, schema: Mapping[str, Any]) -> tuple[Finding, ...]:
    """What is wrong with the quantities of a spec, each at its value, in the order of the spec."""
    found: list[Finding] = []
    for path, title, item in titled(value, schema):
        parser = PARSERS.get(title)
        if parser is None or item is None:
            continue
        try:
            parser(item)
        except QuantityError as wrong:
            mend = meant(item, parser) if wrong.code in _GUESSED else ""
            found.append(error(wrong.code, path, wrong.message, mend or wrong.help))
    return tuple(found)
