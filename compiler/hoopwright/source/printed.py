"""How quantities are printed: rounded once, in the maker's units.

Inches go to the nearest 1/8 and are never decimal; centimetres to the nearest 0.1. Ties go away from
zero, after noise below a millionth of a step is removed, so that 11 15/16 in prints as 12 in.
"""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from hoopwright.source.units import INCH, OUNCE, YARD

Units = Literal["inches", "centimetres"]

_EIGHTH = float(INCH / 8)
_MILLIMETRE = 0.001


def nearest(value: float, step: float) -> int:
    """How many whole steps come nearest to ``value``; ties away from zero."""
    steps = round(abs(value) / step, 6)
    count = math.floor(steps + 0.5)
    return -count if value < 0 else count


def printed_length(metres: float, units: Units) -> float:
    """The length in metres that :func:`length_text` prints; check sums add these."""
    if units == "inches":
        return float(nearest(metres, _EIGHTH) * INCH / 8)
    return nearest(metres, _MILLIMETRE) / 1000


def length_text(metres: float, units: Units) -> str:
    """``10 1/2 in`` or ``26.7 cm``."""
    if units == "inches":
        return f"{_mixed(nearest(metres, _EIGHTH), 8)} in"
    return f"{_trim(Decimal(nearest(metres, _MILLIMETRE)) / 10)} cm"


def long_length_text(metres: float, units: Units) -> str:
    """``53 ft 5 in`` (to the nearest 1/8 in) or ``16.28 m``; below a foot or a metre as ``length_text``."""
    if units == "inches":
        eighths = nearest(metres, _EIGHTH)
        if abs(eighths) < 96:
            return length_text(metres, units)
        feet, rest = divmod(abs(eighths), 96)
        sign = "-" if eighths < 0 else ""
        return f"{sign}{feet} ft" + (f" {_mixed(rest, 8)} in" if rest else "")
    if abs(nearest(metres, 0.01)) < 100:
        return length_text(metres, units)
    return f"{Decimal(nearest(metres, 0.01)) / 100:.2f} m"


def mass_text(kilograms: float, units: Units) -> str:
    """``3 lb 11 oz`` or ``1.68 kg``; below a pound to 1/4 oz, below a kilogram in grams."""
    if units == "inches":
        quarters = nearest(kilograms, float(OUNCE / 4))
        if abs(quarters) < 64:
            return f"{_mixed(quarters, 4)} oz"
        ounces = nearest(kilograms, float(OUNCE))
        pounds, rest = divmod(abs(ounces), 16)
        return f"{'-' if ounces < 0 else ''}{pounds} lb" + (f" {rest} oz" if rest else "")
    if abs(nearest(kilograms, 0.0001)) < 100:
        return f"{_trim(Decimal(nearest(kilograms, 0.0001)) / 10)} g"
    if abs(nearest(kilograms, 0.001)) < 1000:
        return f"{nearest(kilograms, 0.001)} g"
    return f"{Decimal(nearest(kilograms, 0.01)) / 100:.2f} kg"


def area_text(square_metres: float, units: Units) -> str:
    """``4.3 yd2`` or ``3.6 m2``."""
    unit, step = ("yd2", float(YARD**2) / 10) if units == "inches" else ("m2", 0.1)
    return f"{_trim(Decimal(nearest(square_metres, step)) / 10)} {unit}"


def areal_density_text(density: float, units: Units) -> str:
    """``4.1 oz/yd2`` or ``140 g/m2``, from kg/m2."""
    if units == "inches":
        return f"{_trim(Decimal(nearest(density, float(OUNCE / YARD**2) / 10)) / 10)} oz/yd2"
    return f"{nearest(density, 0.001)} g/m2"


def linear_density_text(density: float, units: Units) -> str:
    """``1.6 oz/yd`` or ``50.6 g/m``, from kg/m."""
    if units == "inches":
        return f"{_trim(Decimal(nearest(density, float(OUNCE / YARD) / 100)) / 100)} oz/yd"
    return f"{_trim(Decimal(nearest(density, 0.0001)) / 10)} g/m"


def force_text(newtons: float) -> str:
    """``4.5 N`` or ``3 kN``."""
    if abs(nearest(newtons, 0.1)) >= 10_000:
        return f"{_trim(Decimal(nearest(newtons, 10.0)) / 100)} kN"
    return f"{_trim(Decimal(nearest(newtons, 0.1)) / 10)} N"


def stress_text(pascals: float) -> str:
    """``205 GPa`` from 10 GPa up, else ``234 MPa``."""
    if abs(pascals) >= 1e10:
        return f"{_trim(Decimal(nearest(pascals, 1e8)) / 10)} GPa"
    return f"{_trim(Decimal(nearest(pascals, 1e5)) / 10)} MPa"


def money_text(amount: Decimal, currency: str) -> str:
    """``24.50 USD``: two places, more only when the amount has them."""
    places = max(2, -int(amount.normalize().as_tuple().exponent))
    return f"{amount:.{places}f} {currency}"


def minutes_text(minutes: float) -> str:
    """``2 h 5 min``, ``45 min``, ``3 h``."""
    whole = nearest(minutes, 1.0)
    hours, rest = divmod(abs(whole), 60)
    parts = ([f"{hours} h"] if hours else []) + ([f"{rest} min"] if rest or not hours else [])
    words = " ".join(parts)
    return f"-{words}" if whole < 0 else words


def share_text(share: float) -> str:
    """``10 %``; one decimal only when there is one."""
    return f"{_trim(Decimal(nearest(share, 0.001)) / 10)} %"


def angle_text(radians: float) -> str:
    """``32 degrees``, to the nearest degree."""
    whole = nearest(math.degrees(radians), 1.0)
    return f"{whole} degree{'' if abs(whole) == 1 else 's'}"


def _mixed(count: int, parts: int) -> str:
    """``count`` parts of ``1/parts`` as a mixed number: 85 eighths are ``10 5/8``."""
    sign, (whole, rest) = "-" if count < 0 else "", divmod(abs(count), parts)
    if not rest:
        return f"{sign}{whole}"
    fraction = Fraction(rest, parts)
    part = f"{fraction.numerator}/{fraction.denominator}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def _trim(number: Decimal) -> str:
    """A decimal without trailing zeros."""
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
