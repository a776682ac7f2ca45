"""The units a spec may use: names, dimensions and exact factors to SI.

Factors are exact fractions. The inch is 25.4 mm and the pound 0.45359237 kg by the agreement of 1959;
the pound-force uses the standard acceleration 9.80665 m/s2 (all three: NIST Special Publication 811,
appendix B).
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

INCH = Fraction(254, 10_000)
FOOT = 12 * INCH
YARD = 3 * FOOT
POUND = Fraction(45_359_237, 100_000_000)
OUNCE = POUND / 16
GRAVITY = Fraction(980_665, 100_000)


class Unit(NamedTuple):
    """One unit: the dimension it measures and how much of the SI unit it is.

    ``system`` is ``inches``, ``metric`` or empty; two systems are not mixed within one quantity.
    """

    symbol: str
    dimension: str
    factor: Fraction
    system: str = ""


def _units(dimension: str, system: str, factors: dict[str, Fraction]) -> dict[str, Unit]:
    """Units of one dimension and system, by symbol."""
    return {symbol: Unit(symbol, dimension, factor, system) for symbol, factor in factors.items()}


_LENGTH = {"mm": Fraction(1, 1000), "cm": Fraction(1, 100), "m": Fraction(1)}
_LENGTH_INCHES = {"in": INCH, "ft": FOOT, "yd": YARD}
_MASS = {"g": Fraction(1, 1000), "kg": Fraction(1)}
_MASS_POUNDS = {"oz": OUNCE, "lb": POUND}

UNITS: dict[str, Unit] = {
    **_units("length", "metric", _LENGTH),
    **_units("length", "inches", _LENGTH_INCHES),
    **_units("mass", "metric", _MASS),
    **_units("mass", "inches", _MASS_POUNDS),
    **_units("area", "metric", {f"{name}2": factor**2 for name, factor in _LENGTH.items()}),
    **_units("area", "inches", {f"{name}2": factor**2 for name, factor in _LENGTH_INCHES.items()}),
    **_units("areal density", "metric", {"g/m2": Fraction(1, 1000), "kg/m2": Fraction(1)}),
    **_units("areal density", "inches", {"oz/yd2": OUNCE / YARD**2, "oz/ft2": OUNCE / FOOT**2}),
    **_units("linear density", "metric", {"g/m": Fraction(1, 1000), "kg/m": Fraction(1)}),
    **_units("linear density", "inches",
             {"oz/yd": OUNCE / YARD, "oz/ft": OUNCE / FOOT, "lb/ft": POUND / FOOT, "lb/yd": POUND / YARD}),
    **_units("density", "metric", {"kg/m3": Fraction(1), "g/cm3": Fraction(1000)}),
    **_units("stress", "metric",
             {"Pa": Fraction(1), "kPa": Fraction(10**3), "MPa": Fraction(10**6), "GPa": Fraction(10**9),
              "N/mm2": Fraction(10**6)}),
    **_units("stress", "inches",
             {"psi": POUND * GRAVITY / INCH**2, "ksi": 1000 * POUND * GRAVITY / INCH**2}),
    **_units("force", "metric", {"N": Fraction(1), "kN": Fraction(1000)}),
    **_units("force", "inches", {"lbf": POUND * GRAVITY}),
    **_units("time", "", {"s": Fraction(1, 60), "min": Fraction(1), "h": Fraction(60)}),
    **_units("angle", "", {"degrees": Fraction(1)}),
    **_units("share", "", {"%": Fraction(1, 100)}),
}
"""Every unit by its symbol. Times are in minutes and angles in degrees here; the rest is SI."""

_SYNONYMS = {
    "mm": "millimetre millimetres millimeter millimeters",
    "cm": "centimetre centimetres centimeter centimeters cms",
    "m": "metre metres meter meters",
    "in": 'inch inches ins " \'\'',
    "ft": "foot feet '",
    "yd": "yard yards yds",
    "g": "gram grams gramme grammes gm gms",
    "kg": "kilo kilos kilogram kilograms kilogramme kilogrammes kgs",
    "oz": "ounce ounces",
    "lb": "pound pounds lbs",
    "s": "sec secs second seconds",
    "min": "mins minute minutes",
    "h": "hr hrs hour hours",
    "degrees": "deg degs degree °",
    "%": "percent",
    "g/m2": "gsm",
}

SYMBOLS: dict[str, str] = {
    **{atom: atom for symbol in UNITS for atom in (symbol, *symbol.split("/"))},
    **{word: symbol for symbol, words in _SYNONYMS.items() for word in words.split()},
}
"""What a maker may write for a unit, or for one side of a quotient, to its symbol."""

_LOWER: dict[str, str] = {written.lower(): symbol for written, symbol in SYMBOLS.items()}


def symbol_of(written: str) -> str | None:
    """The symbol for a written unit such as ``inches``, ``sq`` forms excepted; None when unknown.

    Quotients and powers are read part by part: ``ounces/yard^2`` is ``oz/yd2``. Capitals do not
    matter except where the exact spelling is itself a unit.
    """
    parts = []
    for part in written.replace("^", "").replace(" ", "").split("/"):
        atom = part.rstrip(".")
        power = atom[-1:] if atom[-1:] in ("2", "3") else ""
        atom = atom[: len(atom) - len(power)].rstrip(".")
        found = SYMBOLS.get(atom) or _LOWER.get(atom.lower())
        if found is None:
            return None
        parts.append(found + power)
    return "/".join(parts)


def names_of(dimension: str) -> list[str]:
    """Every way to write a unit of one dimension, sorted; for offering the nearest."""
    symbols = {symbol for symbol, unit in UNITS.items() if unit.dimension == dimension}
    return sorted(symbols | {written for written, symbol in SYMBOLS.items() if symbol in symbols})


SHOWN: dict[str, tuple[str, ...]] = {
    "length": ("in", "cm"),
    "mass": ("lb", "kg"),
    "area": ("yd2", "m2"),
    "areal density": ("oz/yd2", "g/m2"),
    "linear density": ("oz/yd", "g/m"),
    "density": ("kg/m3",),
    "stress": ("MPa", "GPa"),
    "force": ("N", "kN"),
    "time": ("min", "h"),
    "angle": ("degrees",),
    "share": ("%",),
}
"""The units offered when one is missing, per dimension."""

CALLED: dict[str, str] = {
    "length": "a length", "mass": "a weight", "area": "an area", "areal density": "a weight of cloth",
    "linear density": "a weight per length", "density": "a density", "stress": "a stress",
    "force": "a force", "time": "a time", "angle": "an angle", "share": "a share in per cent",
    "money": "a price",
}
"""The dimensions in a maker's words."""

BOUNDS: dict[str, tuple[Fraction, Fraction]] = {
    dimension: (Fraction(least), Fraction(most)) for dimension, (least, most) in {
        "length": ("1/100000", "1000"), "mass": ("1/1000000", "100000"), "area": ("1/100000000", "1000000"),
        "areal density": ("1/10000", "1000"), "linear density": ("1/1000000", "1000"),
        "density": ("1/10", "100000"), "stress": ("1/10", "10000000000000"), "force": ("1/1000", "100000000"),
        "time": ("1/1000", "1000000"), "angle": ("1/1000", "360"), "share": ("1/100000", "100"),
    }.items()
}
"""The smallest and the largest amount of use to a maker, in base units: from a hundredth of a millimetre
to a kilometre, from a milligram to a hundred tonnes. What lies outside is a slip of the pen."""
