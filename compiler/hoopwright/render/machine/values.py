"""SI values as the numbers of ``plan.json``: one function to a kind of value, rounding included."""

from __future__ import annotations

from decimal import Decimal
from math import degrees
from typing import TypeAlias

Json: TypeAlias = "bool | int | float | str | list[Json] | dict[str, Json] | None"


def rounded(value: float, digits: int) -> float:
    """``value`` to ``digits`` decimals, minus zero made zero."""
    return round(float(value), digits) + 0.0


def mm(metres: float) -> float:
    """Metres as millimetres, to 0.01."""
    return rounded(metres * 1000, 2)


def mm_or_none(metres: float | None) -> float | None:
    """As :func:`mm`, None for what was not assessed or not stated."""
    return None if metres is None else mm(metres)


def grams(kilograms: float) -> float:
    """Kilograms as grams, to 0.1."""
    return rounded(kilograms * 1000, 1)


def newtons(force: float) -> float:
    """Newtons, or newtons to the metre, to 0.001."""
    return rounded(force, 3)


def megapascals(stress: float) -> float:
    """Pascals as megapascals, to 0.1."""
    return rounded(stress / 1e6, 1)


def megapascals_or_none(stress: float | None) -> float | None:
    """As :func:`megapascals`, None for what was not assessed."""
    return None if stress is None else megapascals(stress)


def degree(radians: float) -> float:
    """Radians as degrees, to 0.01."""
    return rounded(degrees(radians), 2)


def fraction(share: float) -> float:
    """A fraction of one, to 0.000001."""
    return rounded(share, 6)


def ratio(value: float) -> float:
    """A plain number, to 0.0001."""
    return rounded(value, 4)


def stiffness(value: float) -> float:
    """A stiffness in N m2, to four significant figures."""
    return float(f"{value:.4g}") + 0.0


def minutes(value: float) -> float:
    """Minutes, to 0.1."""
    return rounded(value, 1)


def money(amount: Decimal | None) -> str | None:
    """An amount as a decimal string with at least two decimals, never in powers of ten."""
    if amount is None:
        return None
    places = max(2, -int(amount.normalize().as_tuple().exponent))
    return f"{amount:.{places}f}"
