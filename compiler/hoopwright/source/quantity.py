"""Quantities: a number and its unit, read from text into SI and printed back.

Readers: ``parse_length`` (m), ``parse_mass`` (kg), ``parse_area`` (m2), ``parse_areal_density`` (kg/m2),
``parse_linear_density`` (kg/m), ``parse_density`` (kg/m3), ``parse_stress`` (Pa), ``parse_force`` (N),
``parse_minutes`` (minutes), ``parse_angle`` (rad), ``parse_share`` (of 1), ``parse_money`` (Decimal and
currency). Each takes whatever the spec holds - text, or a bare number or list put there by mistake - and
raises :class:`QuantityError`, nothing else. Arithmetic is exact until the final float.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from hoopwright.source.amount import (
    LONGEST,
    QuantityError,
    comma_trouble,
    number_text,
    shown,
    take_number,
    tidy,
)
from hoopwright.source.money import parse_money
from hoopwright.source.printed import (
    Units,
    angle_text,
    area_text,
    areal_density_text,
    force_text,
    length_text,
    linear_density_text,
    long_length_text,
    mass_text,
    minutes_text,
    money_text,
    printed_length,
    share_text,
    stress_text,
)
from hoopwright.source.units import BOUNDS, CALLED, SHOWN, UNITS, Unit, names_of, symbol_of

__all__ = [
    "QuantityError",
    "Units",
    "angle_text",
    "area_text",
    "areal_density_text",
    "force_text",
    "length_text",
    "linear_density_text",
    "long_length_text",
    "mass_text",
    "minutes_text",
    "money_text",
    "parse_angle",
    "parse_area",
    "parse_areal_density",
    "parse_density",
    "parse_force",
    "parse_length",
    "parse_linear_density",
    "parse_mass",
    "parse_minutes",
    "parse_money",
    "parse_share",
    "parse_stress",
    "printed_length",
    "share_text",
    "stress_text",
]

_UNIT = re.compile(r"""\s*(?P<unit>''|["'%°]|[^\W\d_]+\.?(?:\s*/\s*[^\W\d_]+\.?)?(?:\s*\^?\s*[23](?=\s*$))?
                       (?:\s*/\s*[^\W\d_]+\.?(?:\^?[23](?=\s*$))?)?)\s*""", re.VERBOSE)
_ENDLESS = re.compile(r"[+-]?\s*\.?(?:nan|inf|infinity)\b|[+-]?∞", re.IGNORECASE)
_COMPOUND = ("length", "mass", "time")
_SMALLER = {"ft": "in", "yd": "in", "lb": "oz", "h": "min", "m": "cm", "kg": "g"}
_ABOVE = "write an amount above zero"


def parse_length(value: object, *, zero: bool = False, signed: bool = False) -> float:
    """A length in metres: ``10 1/2 in``, ``5 ft 4 in``, ``93 cm``. ``zero`` allows 0, ``signed`` any sign."""
    return _parse(value, "length", zero, signed)


def parse_mass(value: object, *, zero: bool = False) -> float:
    """A weight in kilograms: ``1.4 kg``, ``2 lb 3 oz``."""
    return _parse(value, "mass", zero)


def parse_area(value: object, *, zero: bool = False) -> float:
    """An area in square metres: ``4 yd2``, ``3 m2``, ``12 sq ft``."""
    return _parse(value, "area", zero)


def parse_areal_density(value: object, *, zero: bool = False) -> float:
    """A weight of cloth in kg/m2: ``140 g/m2``, ``4.1 oz/yd2``."""
    return _parse(value, "areal density", zero)


def parse_linear_density(value: object, *, zero: bool = False) -> float:
    """A weight per length in kg/m: ``50 g/m``."""
    return _parse(value, "linear density", zero)


def parse_density(value: object) -> float:
    """A density in kg/m3: ``7850 kg/m3``, ``7.85 g/cm3``."""
    return _parse(value, "density", False)


def parse_stress(value: object, *, zero: bool = False) -> float:
    """A stress or modulus in pascals: ``205 GPa``, ``250 MPa``."""
    return _parse(value, "stress", zero)


def parse_force(value: object, *, zero: bool = False) -> float:
    """A force in newtons: ``3 kN``, ``500 N``."""
    return _parse(value, "force", zero)


def parse_minutes(value: object, *, zero: bool = False) -> float:
    """A time in minutes: ``90 min``, ``2 h``, ``2 h 30 min``."""
    return _parse(value, "time", zero)


def parse_angle(value: object, *, zero: bool = True, signed: bool = True) -> float:
    """An angle in radians: ``10 degrees``, ``-4 deg``."""
    return math.radians(_parse(value, "angle", zero, signed))


def parse_share(value: object, *, zero: bool = True) -> float:
    """A share of one: ``10 %`` is 0.1."""
    return _parse(value, "share", zero)


def _parse(value: object, dimension: str, zero: bool, signed: bool = False) -> float:
    """The value in the dimension's base unit, its sign checked."""
    called = CALLED[dimension]
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise QuantityError("quantity-unreadable", f"{called} is wanted here", _as_in(dimension))
    if not isinstance(value, str) and not abs(value) < 1e300:
        raise QuantityError("number-not-finite", f"this is no number for {called}", _as_in(dimension))
    text = str(value).strip()
    if len(text) > LONGEST:
        raise QuantityError("quantity-unreadable", f"this is too long to be {called}", _as_in(dimension))
    said = shown(text)
    total = _total(tidy(text), said, dimension)
    if total < 0 and not signed:
        raise QuantityError("amount-not-positive", f"`{said}` is below zero", _ABOVE)
    if total == 0 and not (zero or signed):
        raise QuantityError("amount-not-positive", f"`{said}` is nothing at all", _ABOVE)
    least, most = BOUNDS[dimension]
    if total and not least <= abs(total) <= most:
        side = "larger" if abs(total) > most else "smaller"
        raise QuantityError("amount-beyond-use", f"`{said}` is {side} than {called} of any use",
                            f"look for a slip in the number or its unit; {_as_in(dimension)}")
    return total


@lru_cache(maxsize=1024)
def _total(plain: str, text: str, dimension: str) -> float:
    """The sum of the parts, ``5 ft`` and ``4 in``, in the base unit. Remembered: the check of a spec's form,
    of each variant and the reading of values all ask for the same texts."""
    _refuse_odd_numbers(plain, text, dimension)
    parts: list[tuple[Fraction, Unit]] = []
    at = 0
    while at < len(plain):
        number = take_number(plain, at, text)
        if number is None:
            raise _unreadable(text, dimension)
        amount, at = number
        found = _UNIT.match(plain, at)
        if found is None:
            if plain[at:].strip():
                raise _unreadable(text, dimension)
            raise _unit_missing(amount, parts, text, dimension)
        parts.append((amount, _unit(found["unit"], text, dimension)))
        at = found.end()
    if not parts:
        raise _unreadable(text, dimension)
    _refuse_odd_parts(parts, text, dimension)
    return float(sum((amount * unit.factor for amount, unit in parts), Fraction(0)))


def _refuse_odd_numbers(plain: str, text: str, dimension: str) -> None:
    """NaN, infinity and numbers with a comma, each told apart from mere nonsense."""
    if _ENDLESS.match(plain):
        raise QuantityError("number-not-finite", f"`{text}` is no number that could be measured",
                            _as_in(dimension))
    trouble = comma_trouble(plain)
    if trouble is not None:
        raise trouble


def _unit(written: str, text: str, dimension: str) -> Unit:
    """The unit of the wanted dimension, or the reason why it is none."""
    symbol = symbol_of(written)
    unit = UNITS.get(symbol) if symbol else None
    if unit is not None and unit.dimension == dimension:
        return unit
    wanted = _either([unit.symbol for unit in UNITS.values() if unit.dimension == dimension])
    called = CALLED[dimension]
    if unit is None:
        from difflib import get_close_matches

        near = get_close_matches(written.lower(), names_of(dimension), n=1, cutoff=0.5)
        nearest = f"the nearest unit is `{symbol_of(near[0])}`; " if near else ""
        raise QuantityError("unit-unknown", f"`{written}` is no unit known here",
                            f"{nearest}{called} takes {wanted}")
    raise QuantityError("unit-wrong",
                        f"`{text}` is {CALLED[unit.dimension]}, but {called} is wanted here",
                        f"write it in {wanted}")


def _refuse_odd_parts(parts: list[tuple[Fraction, Unit]], text: str, dimension: str) -> None:
    """Parts must be whole but for the last, of one system, and each below one of the unit before."""
    if len(parts) == 1:
        return
    if dimension not in _COMPOUND or any(amount < 0 for amount, _ in parts[1:]):
        raise _unreadable(text, dimension)
    for (amount, unit), (smaller, small) in pairwise(parts):
        if unit.system != small.system:
            raise QuantityError("quantity-unreadable", f"`{text}` mixes two systems of units",
                                "write it in inches and feet, or in centimetres and metres, not in both")
        if small.factor >= unit.factor or amount.denominator != 1:
            raise _unreadable(text, dimension)
        if smaller * small.factor >= unit.factor:
            whole = amount * unit.factor + smaller * small.factor
            ones, rest = divmod(whole, unit.factor)
            mend = f"{number_text(Fraction(ones))} {unit.symbol}"
            if rest:
                mend += f" {number_text(rest / small.factor)} {small.symbol}"
            raise QuantityError("quantity-unreadable",
                                f"`{number_text(smaller)} {small.symbol}` is not less than 1 {unit.symbol}",
                                f"write `{mend}` if that is meant")


def _unit_missing(amount: Fraction, parts: list[tuple[Fraction, Unit]], text: str,
                  dimension: str) -> QuantityError:
    """A number without a unit; the mend spells the quantity out."""
    if parts:
        last = _SMALLER.get(parts[-1][1].symbol)
        before = " ".join(f"{number_text(count)} {unit.symbol}" for count, unit in parts)
        mend = f"write `{before} {number_text(amount)} {last}`" if last else f"write `{before}`"
        return QuantityError("unit-missing", f"`{number_text(amount)}` at the end has no unit", mend)
    return QuantityError("unit-missing", f"`{text}` has no unit", f"write {_example(text, dimension)}")


def _unreadable(text: str, dimension: str) -> QuantityError:
    """Nothing that looks like a quantity."""
    called = CALLED[dimension]
    said = f"`{text}` does not read as {called}" if text else f"{called} is wanted here, and there is nothing"
    return QuantityError("quantity-unreadable", said, _as_in(dimension))


def _as_in(dimension: str) -> str:
    """The general mend: how a quantity of this dimension is written."""
    return f"write a number and its unit, as in {_example('28', dimension)}"


def _example(number: str, dimension: str) -> str:
    """The number with each unit offered for the dimension."""
    return " or ".join(f"`{number} {symbol}`" for symbol in SHOWN[dimension])


def _either(names: list[str]) -> str:
    """``in, ft or yd``."""
    return " or ".join(filter(None, [", ".join(names[:-1]), names[-1]]))
