"""Reading quantities: every form a maker types, and every refusal with its mend."""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.source import quantity
from hoopwright.source.amount import QuantityError
from hoopwright.source.units import BOUNDS, UNITS

READERS: dict[str, Callable[..., object]] = {
    name: getattr(quantity, name) for name in quantity.__all__ if name.startswith("parse_")
}


@pytest.mark.parametrize(("text", "metres"), [
    ("10 1/2 in", 10.5 * 0.0254), ("5 ft 4 in", 64 * 0.0254), ("1/4 yd", 0.2286), ("93 cm", 0.93),
    ("2.8 m", 2.8), ("12 mm", 0.012), ("10-1/2 in", 10.5 * 0.0254), ("10.5in", 10.5 * 0.0254),
    ("10½ in", 10.5 * 0.0254), ("½ in", 0.0127), ("1⅛ in", 0.028575), ("5' 4\"", 64 * 0.0254),
    ("5′ 4″", 64 * 0.0254), ("5’4”", 64 * 0.0254), ("5 feet 4 inches", 64 * 0.0254), ("3 yards", 2.7432),
    ("10\u00a01/2\u00a0in", 10.5 * 0.0254), ("10 in.", 0.254), ("2 M", 2.0), ("28 IN", 28 * 0.0254),
    ("1 m 20 cm", 1.2), ("1 yd 2 ft 3 in", 63 * 0.0254), ("0.042 in", 0.0010668), ("1⁄4 in", 0.00635),
    ("  93 centimetres ", 0.93), (".5 m", 0.5), ("5 ft 10 1/2 in", 70.5 * 0.0254),
])
def test_lengths(text: str, metres: float) -> None:
    assert quantity.parse_length(text) == pytest.approx(metres, rel=1e-15)


@pytest.mark.parametrize(("reader", "text", "value"), [
    ("parse_mass", "1.4 kg", 1.4), ("parse_mass", "2 lb 3 oz", 35 * 0.45359237 / 16),
    ("parse_mass", "380 g", 0.38),
    ("parse_mass", "4 oz", 0.45359237 / 4),
    ("parse_areal_density", "140 g/m2", 0.14), ("parse_areal_density", "140 g/m²", 0.14),
    ("parse_areal_density", "140 gsm", 0.14), ("parse_areal_density", "140 grams per square metre", 0.14),
    ("parse_areal_density", "4.1 oz/yd2", 4.1 * (0.45359237 / 16) / 0.9144**2),
    ("parse_areal_density", "4.1 oz / sq yd", 4.1 * (0.45359237 / 16) / 0.9144**2),
    ("parse_linear_density", "50 g/m", 0.05), ("parse_density", "7850 kg/m3", 7850.0),
    ("parse_density", "7.85 g/cm3", 7850.0),
    ("parse_stress", "205 GPa", 205e9), ("parse_stress", "250 MPa", 250e6),
    ("parse_stress", "250 N/mm2", 250e6),
    ("parse_minutes", "90 min", 90.0), ("parse_minutes", "2 h", 120.0),
    ("parse_minutes", "2 h 30 min", 150.0),
    ("parse_minutes", "1 1/2 hours", 90.0),
    ("parse_area", "4 yd2", 4 * 0.9144**2), ("parse_area", "3 m2", 3.0),
    ("parse_area", "12 ft2", 12 * 0.3048**2),
    ("parse_area", "12 square feet", 12 * 0.3048**2), ("parse_area", "12 ft^2", 12 * 0.3048**2),
    ("parse_force", "3 kN", 3000.0), ("parse_force", "500 N", 500.0),
    ("parse_share", "10 %", 0.1), ("parse_share", "10%", 0.1), ("parse_share", "10 per cent", 0.1),
    ("parse_share", "0 %", 0.0),
    ("parse_angle", "10 degrees", math.radians(10)), ("parse_angle", "-4 deg", math.radians(-4)),
    ("parse_angle", "10°", math.radians(10)), ("parse_angle", "0 degrees", 0.0),
])
def test_other_dimensions(reader: str, text: str, value: float) -> None:
    assert READERS[reader](text) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize(("text", "amount", "currency"), [
    ("24.50 USD", "24.50", "USD"), ("19 eur", "19", "EUR"), ("GBP 0.60", "0.60", "GBP"),
    (".6 CHF", "0.6", "CHF"),
])
def test_money_is_exact(text: str, amount: str, currency: str) -> None:
    read = quantity.parse_money(text)
    assert read == (Decimal(amount), currency)
    assert isinstance(read[0], Decimal)


@pytest.mark.parametrize(("text", "code", "mend"), [
    ("28", "unit-missing", "write `28 in` or `28 cm`"),
    (28, "unit-missing", "write `28 in` or `28 cm`"),
    (10.5, "unit-missing", "write `10.5 in` or `10.5 cm`"),
    ("10 1/2", "unit-missing", "write `10 1/2 in` or `10 1/2 cm`"),
    ("5 ft 4", "unit-missing", "write `5 ft 4 in`"),
    ("5'4", "unit-missing", "write `5 ft 4 in`"),
    ("28 inchs", "unit-unknown", "the nearest unit is `in`"),
    ("28 cubits", "unit-unknown", "a length takes mm, cm, m, in, ft or yd"),
    ("3 kg", "unit-wrong", "write it in mm, cm, m, in, ft or yd"),
    ("4 yd2", "unit-wrong", "write it in"),
    ("10,5 cm", "quantity-unreadable", "write `10.5 cm`"),
    ("2,640 in", "quantity-unreadable", "write `2.640 in`, or `2640 in` if thousands are meant"),
    ("5 ft 14 in", "quantity-unreadable", "write `6 ft 2 in` if that is meant"),
    ("1 3/2 in", "quantity-unreadable", "as in `10 1/2 in`"),
    ("2 m 10 in", "quantity-unreadable", "not in both"),
    ("4 in 5 ft", "quantity-unreadable", "as in `28 in`"),
    ("5 1/2 ft 4 in", "quantity-unreadable", "as in `28 in`"),
    ("10-12 in", "quantity-unreadable", "as in `28 in`"),
    ("about ten", "quantity-unreadable", "as in `28 in`"),
    ("", "quantity-unreadable", "as in `28 in`"),
    ("9" * 200 + " in", "quantity-unreadable", "as in `28 in`"),
    (None, "quantity-unreadable", "as in `28 in`"),
    (True, "quantity-unreadable", "as in `28 in`"),
    (["28 in"], "quantity-unreadable", "as in `28 in`"),
    ("nan in", "number-not-finite", "as in `28 in`"),
    ("-.inf", "number-not-finite", "as in `28 in`"),
    ("infinity cm", "number-not-finite", "as in `28 in`"),
    ("∞ cm", "number-not-finite", "as in `28 in`"),
    ("1e400 in", "number-not-finite", "write the number out"),
    ("1e99999999999 in", "number-not-finite", "write the number out"),
    ("1/0 in", "number-not-finite", "lower number"),
    (float("inf"), "number-not-finite", "as in `28 in`"),
    (10**400, "number-not-finite", "as in `28 in`"),
    ("1e299 m", "amount-beyond-use", "slip"),
    ("1001 m", "amount-beyond-use", "slip"),
    ("1e-300 in", "amount-beyond-use", "slip"),
    ("0.001 mm", "amount-beyond-use", "slip"),
    ("-3 in", "amount-not-positive", "above zero"),
    ("0 in", "amount-not-positive", "above zero"),
    ("1e-400 in", "amount-not-positive", "write the number out"),
])
def test_refused_lengths(text: object, code: str, mend: str) -> None:
    with pytest.raises(QuantityError) as refusal:
        quantity.parse_length(text)
    assert refusal.value.code == code
    assert mend in refusal.value.help


@pytest.mark.parametrize(("text", "code", "mend"), [
    ("24.50", "currency-missing", "`24.50 USD`"), (24.5, "currency-missing", "`24.50 USD`"),
    ("£24.50", "currency-missing", "`24.50 GBP`"), ("24.50 USB", "unit-unknown", "`24.50 USD`"),
    ("24.50 kg", "unit-wrong", "`24.50 USD`"), ("24,50 EUR", "quantity-unreadable", "`24.50 EUR`"),
    ("1,240 EUR", "quantity-unreadable", "`1.240 EUR`, or `1240 EUR`"),
    ("USD 3 EUR", "quantity-unreadable", "24.50 USD"),
    ("1e3 USD", "quantity-unreadable", "24.50 USD"), ("9" * 40 + " USD", "amount-beyond-use", "24.50 USD"),
    ("0." + "0" * 40 + "1 USD", "amount-beyond-use", "24.50 USD"),
    ("-3 USD", "amount-not-positive", "costs"), ("0 USD", "amount-not-positive", "costs"),
    ("nan USD", "number-not-finite", "24.50 USD"), (None, "quantity-unreadable", "24.50 USD"),
])
def test_refused_prices(text: object, code: str, mend: str) -> None:
    with pytest.raises(QuantityError) as refusal:
        quantity.parse_money(text)
    assert refusal.value.code == code
    assert mend in refusal.value.help


def test_every_dimension_has_bounds_that_hold_its_units() -> None:
    assert set(BOUNDS) == {unit.dimension for unit in UNITS.values()}
    for unit in UNITS.values():
        least, most = BOUNDS[unit.dimension]
        assert least < unit.factor < most, unit.symbol


def test_zero_and_sign_are_the_callers_to_allow() -> None:
    assert quantity.parse_length("0 in", zero=True) == 0.0
    assert quantity.parse_length("-1/2 in", signed=True) == -0.0127
    assert quantity.parse_money("0 USD", zero=True) == (Decimal(0), "USD")
    with pytest.raises(QuantityError):
        quantity.parse_length("-1/2 in", zero=True)


def test_fractions_of_an_inch_are_exact() -> None:
    for eighths in range(1, 400):
        whole, part = divmod(eighths, 8)
        assert quantity.parse_length(f"{whole} {part}/8 in") == float(eighths * 254) / 80000


_LIKELY = st.text("0123456789 ./-+,'\"½⅛′″inftydcmkgozlbhGPa²23%°$€eE\u00a0^USD", max_size=24)


@given(st.one_of(st.text(max_size=60), _LIKELY, st.floats(), st.integers(), st.lists(st.text(), max_size=2)))
def test_any_value_is_read_or_refused_in_good_order(value: object) -> None:
    for name, reader in READERS.items():
        read = _answer(reader, value)
        if isinstance(read, QuantityError):
            assert read.message, name
            assert read.help, name
            assert not read.message.endswith((".", "?")), name
            assert "\n" not in read.message + read.help, name
        else:
            amount = read[0] if isinstance(read, tuple) else read
            assert math.isfinite(amount), name
            assert name == "parse_angle" or amount >= 0, name


def _answer(reader: Callable[..., object], value: object) -> object:
    try:
        return reader(value)
    except QuantityError as refusal:
        return refusal
