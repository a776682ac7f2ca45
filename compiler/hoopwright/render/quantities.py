"""Quantities as the page prints them: in the spec's units, rounded once.

Everything goes through the printing functions of ``source.quantity``; this module only chooses among
them. A :class:`Printer` is bound to one spec's units and currency.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal

from hoopwright.source import quantity
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import Assumed, Spec, Units

_INCH = 0.0254


@record(frozen=True, slots=True)
class Printer:
    """Prints SI values for one plan. ``currency`` may be None when nothing has a price."""

    units: Units
    currency: str | None

    @staticmethod
    def of(spec: Spec) -> Printer:
        """The printer for a spec."""
        return Printer(spec.units, spec.currency)

    def length(self, metres: float) -> str:
        """``10 1/2 in`` or ``26.7 cm``."""
        return quantity.length_text(metres, self.units)

    def small(self, metres: float) -> str:
        """As :meth:`length`; what would print as nothing is called less than the smallest step."""
        if metres and not self.printed(metres):
            return "under 1/8 in" if self.units == "inches" else "under 0.1 cm"
        return self.length(metres)

    @property
    def unit(self) -> str:
        """``in`` or ``cm``."""
        return "in" if self.units == "inches" else "cm"

    def long(self, metres: float) -> str:
        """``53 ft 5 in`` or ``16.28 m``."""
        return quantity.long_length_text(metres, self.units)

    def printed(self, metres: float) -> float:
        """The length that :meth:`length` shows, m."""
        return quantity.printed_length(metres, self.units)

    def shop(self, metres: float) -> str:
        """A length of goods as a shop measures it: ``1 3/4 yd`` when it is whole eighths of a yard, else
        as :meth:`long`."""
        eighths = metres / (36 * _INCH / 8)
        if self.units == "inches" and abs(eighths - round(eighths)) < 1e-6 and round(eighths) > 0:
            text = quantity.length_text(round(eighths) * _INCH / 8, "inches")
            return text.removesuffix(" in") + " yd"
        return self.long(metres)

    def mass(self, kilograms: float) -> str:
        """``3 lb 11 oz`` or ``1.68 kg``."""
        return quantity.mass_text(kilograms, self.units)

    def money(self, amount: Decimal | None) -> str:
        """``24.50 USD``; ``?`` for what has no price."""
        return "?" if amount is None else quantity.money_text(amount, self.currency or "").strip()

    def minutes(self, minutes: float) -> str:
        """``2 h 5 min``."""
        return quantity.minutes_text(minutes)

    def by(self, value: float | None, dimension: str) -> str:
        """A value of any dimension of :class:`Check`; a dash for None."""
        if value is None:
            return "–"
        if dimension == "money":
            return self.money(Decimal(str(round(value, 2))))
        if dimension == "length":
            return self.small(value)
        return _PLAIN.get(dimension, _number)(value) if dimension != "mass" else self.mass(value)

    def check_value(self, check: Check) -> str:
        """The value of a check. Where it misses its limit, or only just keeps it, and both print alike, it says
        on which side it lies."""
        said = self.by(check.value, check.dimension)
        if check.result not in ("fails", "marginal") or check.value in (None, check.limit):
            return said
        if said != self.by(check.limit, check.dimension):
            return said
        return f"just {'over' if check.beyond == (check.sense == 'at most') else 'under'} {said}"

    def check_limit(self, check: Check) -> str:
        """The limit of a check with its sense: ``at most 32 in``."""
        return f"{check.sense} {self.by(check.limit, check.dimension)}" if check.limit is not None else "none"


def _number(value: float) -> str:
    """A plain number to two decimals without trailing zeros; four significant figures when small."""
    if value and abs(value) < 0.1:
        return f"{value:.2g}"
    text = f"{value + 0.0:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


_PLAIN: dict[str, Callable[[float], str]] = {
    "share": quantity.share_text,
    "stress": quantity.stress_text,
    "force": quantity.force_text,
    "angle": quantity.angle_text,
    "count": lambda value: str(round(value)),
    "temperature": lambda value: f"{value:.0f} °C",
    "ratio": _number,
}


def assumed_text(assumed: Assumed, units: Units) -> str:
    """An assumed value as a maker would write it into the spec, exactly enough to give it back."""
    value = assumed.value
    if isinstance(value, str):
        return value
    if assumed.dimension == "length":
        return exact_length(value, units)
    printers: dict[str, Callable[[float], str]] = {
        "mass": lambda it: quantity.mass_text(it, units),
        "area": lambda it: quantity.area_text(it, units),
        "areal density": lambda it: quantity.areal_density_text(it, units),
        "areal_density": lambda it: quantity.areal_density_text(it, units),
        "linear density": lambda it: quantity.linear_density_text(it, units),
        "linear_density": lambda it: quantity.linear_density_text(it, units),
        "density": lambda it: f"{_number(it)} kg/m3",
        "time": quantity.minutes_text,
        "minutes": quantity.minutes_text,
    }
    return printers.get(assumed.dimension, _PLAIN.get(assumed.dimension, _number))(value)


def exact_length(metres: float, units: Units) -> str:
    """A length without rounding it away: 1/16 in stays ``1/16 in``, 1.6 mm stays ``0.16 cm``."""
    if abs(quantity.printed_length(metres, units) - metres) < 1e-7:
        return quantity.length_text(metres, units)
    if units == "inches":
        for parts in (16, 32, 64):
            steps = metres / _INCH * parts
            if abs(steps - round(steps)) < 1e-4:
                whole, rest = divmod(round(steps), parts)
                return f"{whole} {rest}/{parts} in" if whole else f"{rest}/{parts} in"
        return quantity.length_text(metres, units)
    digits = max(2, 1 - math.floor(math.log10(abs(metres) * 100)))
    return f"{metres * 100:.{digits}f}".rstrip("0").rstrip(".") + " cm"
