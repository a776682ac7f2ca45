"""Every unit in every spelling, every sign for a fraction, every currency: read as exact arithmetic says."""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from functools import partial

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.source import quantity as q
from hoopwright.source.money import CURRENCIES
from hoopwright.source.units import _SYNONYMS, BOUNDS, UNITS

READERS: dict[str, Callable[[str], float]] = {
    "length": q.parse_length, "mass": q.parse_mass, "area": q.parse_area,
    "areal density": q.parse_areal_density, "linear density": q.parse_linear_density, "density": q.parse_density,
    "stress": q.parse_stress, "force": q.parse_force, "time": q.parse_minutes, "angle": q.parse_angle,
    "share": q.parse_share,
}
SPELLED = [(word, symbol) for symbol in UNITS for word in (symbol, *_SYNONYMS.get(symbol, "").split())]
FRACTIONS = [chr(code) for code in range(0xBC, 0x2200) if unicodedata.category(chr(code)) == "No"
             and re.fullmatch("[1-9]+⁄[1-9]+", unicodedata.normalize("NFKC", chr(code)))]
SPACES = st.sampled_from(["", " ", "  ", "\u00a0", "\u2009", "\u202f"])


def exact(symbol: str, amount: Fraction) -> float:
    """An amount of a unit in the reader's own unit."""
    value = float(amount * UNITS[symbol].factor)
    return math.radians(value) if UNITS[symbol].dimension == "angle" else value


def of_use(symbol: str, amount: Fraction) -> bool:
    least, most = BOUNDS[UNITS[symbol].dimension]
    return least <= abs(amount * UNITS[symbol].factor) <= most


@settings(deadline=None)
@given(st.sampled_from(SPELLED), st.integers(1, 400), st.integers(0, 3), SPACES)
def test_a_decimal_of_every_unit_in_every_spelling(
    unit: tuple[str, str], digits: int, places: int, space: str
) -> None:
    word, symbol = unit
    amount = Fraction(digits, 10**places)
    if of_use(symbol, amount):
        said = f"{Decimal(digits) / 10**places}{space}{word}"
        assert READERS[UNITS[symbol].dimension](said) == exact(symbol, amount), said


@settings(deadline=None)
@given(st.sampled_from(sorted(UNITS)), st.integers(0, 200), st.integers(1, 63), st.sampled_from([2, 3, 4, 8, 16, 64]),
       st.sampled_from(["{w} {n}/{d} {u}", "{w}-{n}/{d} {u}", "{w} {n}⁄{d} {u}", "{w} {n} / {d} {u}"]))
def test_a_mixed_number_of_every_unit(symbol: str, whole: int, top: int, under: int, form: str) -> None:
    amount = whole + Fraction(top % under or 1, under)
    if of_use(symbol, amount):
        said = form.format(w=whole, n=top % under or 1, d=under, u=symbol)
        assert READERS[UNITS[symbol].dimension](said) == exact(symbol, amount), said


@settings(deadline=None)
@given(st.sampled_from(FRACTIONS), st.integers(0, 99), SPACES, st.sampled_from(["in", "lb", "h", "yd2", "kN"]))
def test_every_sign_for_a_fraction(sign: str, whole: int, space: str, symbol: str) -> None:
    above, under = unicodedata.normalize("NFKC", sign).split("⁄")
    amount = Fraction(int(above), int(under)) + whole
    said = f"{whole or ''}{space}{sign}{space}{symbol}"
    assert READERS[UNITS[symbol].dimension](said) == exact(symbol, amount), said


@settings(deadline=None)
@given(st.integers(1, 30), st.integers(0, 11), st.integers(0, 7))
def test_feet_inches_and_eighths(feet: int, inches: int, eighths: int) -> None:
    part = f" {eighths}/8" if eighths else ""
    wanted = float((feet * 12 + inches + Fraction(eighths, 8)) * UNITS["in"].factor)
    for said in (f"{feet} ft {inches}{part} in", f"{feet}' {inches}{part}\"", f"{feet} feet {inches}{part} inches"):
        assert q.parse_length(said) == wanted, said


@settings(deadline=None)
@given(st.sampled_from([("lb", "oz", 16, q.parse_mass), ("h", "min", 60, q.parse_minutes),
                        ("kg", "g", 1000, q.parse_mass), ("m", "cm", 100, q.parse_length),
                        ("yd", "ft", 3, q.parse_length)]), st.integers(1, 40), st.integers(0, 5000))
def test_two_units_together(pair: tuple[str, str, int, Callable[[str], float]], large: int, small: int) -> None:
    one, other, each, reader = pair
    amount = large * UNITS[one].factor + small % each * UNITS[other].factor
    assert reader(f"{large} {one} {small % each} {other}") == float(amount)


@settings(deadline=None)
@given(st.floats(-5000, 5000), st.sampled_from(["mm", "cm", "m", "in", "ft", "yd"]))
def test_a_length_of_either_sign_is_read_where_signs_are_allowed(amount: float, unit: str) -> None:
    said = f"{amount:.3f} {unit}".replace("-", "−")
    wanted = Fraction(f"{amount:.3f}") * UNITS[unit].factor
    if not wanted or BOUNDS["length"][0] <= abs(wanted) <= BOUNDS["length"][1]:
        assert q.parse_length(said, signed=True) == float(wanted)
    if wanted < 0:
        with pytest.raises(q.QuantityError) as refusal:
            q.parse_length(said, zero=True)
        assert refusal.value.code == "amount-not-positive"


@settings(deadline=None)
@given(st.sampled_from(sorted(CURRENCIES)), st.decimals("0.01", "999999", places=2), SPACES, st.booleans(),
       st.booleans())
def test_every_currency_before_or_behind_its_amount(
    code: str, amount: Decimal, space: str, before: bool, small: bool
) -> None:
    word = code.lower() if small else code
    said = f"{word}{space}{amount}" if before else f"{amount}{space}{word}"
    assert q.parse_money(said) == (amount, code)
    assert q.parse_money(q.money_text(amount, code)) == (amount, code)


PRINTED: list[tuple[Callable[[float, q.Units], str], Callable[..., float]]] = [
    (q.length_text, partial(q.parse_length, signed=True)), (q.long_length_text, partial(q.parse_length, signed=True)),
    (q.mass_text, partial(q.parse_mass, zero=True)), (q.area_text, partial(q.parse_area, zero=True)),
    (q.areal_density_text, partial(q.parse_areal_density, zero=True)),
    (q.linear_density_text, partial(q.parse_linear_density, zero=True)),
    (lambda value, _: q.force_text(value), partial(q.parse_force, zero=True)),
    (lambda value, _: q.stress_text(value * 1e6), lambda said: q.parse_stress(said, zero=True) / 1e6),
    (lambda value, _: q.minutes_text(value), partial(q.parse_minutes, zero=True)),
    (lambda value, _: q.share_text(value), q.parse_share),
    (lambda value, _: q.angle_text(value), q.parse_angle),
]


@settings(deadline=None)
@given(st.sampled_from(PRINTED), st.floats(0, 6), st.sampled_from(["inches", "centimetres"]))
def test_what_is_printed_reads_back_and_prints_the_same(
    pair: tuple[Callable[[float, q.Units], str], Callable[..., float]], value: float, units: q.Units
) -> None:
    say, read = pair
    said = say(value, units)
    assert say(read(said), units) == said
