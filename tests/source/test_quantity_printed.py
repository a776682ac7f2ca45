"""Printing quantities: rounding, carrying, and that what is printed can be read back."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.source import quantity as q

INCH = 0.0254
UNITS = st.sampled_from(["inches", "centimetres"])


@pytest.mark.parametrize(("inches", "text"), [
    (10.5, "10 1/2 in"), (11.9375, "12 in"), (11.93, "11 7/8 in"), (0.125, "1/8 in"), (0.05, "0 in"),
    (28.0, "28 in"), (-2.5, "-2 1/2 in"), (-0.01, "0 in"), (3.0625, "3 1/8 in"), (110.0, "110 in"),
])
def test_inches_go_to_the_nearest_eighth(inches: float, text: str) -> None:
    assert q.length_text(inches * INCH, "inches") == text


@pytest.mark.parametrize(("text", "said"), [
    (q.length_text(0.2667, "centimetres"), "26.7 cm"), (q.length_text(0.93, "centimetres"), "93 cm"),
    (q.length_text(0.09996, "centimetres"), "10 cm"), (q.length_text(-0.0001, "centimetres"), "0 cm"),
    (q.long_length_text(641 * INCH, "inches"), "53 ft 5 in"),
    (q.long_length_text(16.28, "centimetres"), "16.28 m"),
    (q.long_length_text(641.375 * INCH, "inches"), "53 ft 5 3/8 in"),
    (q.long_length_text(11.9375 * INCH, "inches"), "1 ft"), (q.long_length_text(0.9, "centimetres"), "90 cm"),
    (q.long_length_text(0.9996, "centimetres"), "1.00 m"), (q.long_length_text(11 * INCH, "inches"), "11 in"),
    (q.mass_text(1.68, "inches"), "3 lb 11 oz"), (q.mass_text(1.68, "centimetres"), "1.68 kg"),
    (q.mass_text(0.38, "centimetres"), "380 g"), (q.mass_text(0.9997, "centimetres"), "1.00 kg"),
    (q.mass_text(0.0063, "centimetres"), "6.3 g"), (q.mass_text(0.4535, "inches"), "1 lb"),
    (q.mass_text(0.1, "inches"), "3 1/2 oz"), (q.mass_text(15.97 / 16 * 0.45359237, "inches"), "1 lb"),
    (q.area_text(3.34450944, "inches"), "4 yd2"), (q.area_text(3.62, "centimetres"), "3.6 m2"),
    (q.areal_density_text(0.139, "inches"), "4.1 oz/yd2"),
    (q.areal_density_text(0.14, "centimetres"), "140 g/m2"),
    (q.linear_density_text(0.0506, "centimetres"), "50.6 g/m"),
    (q.linear_density_text(0.05, "inches"), "1.61 oz/yd"),
    (q.force_text(4.484), "4.5 N"), (q.force_text(3000.0), "3 kN"), (q.stress_text(205e9), "205 GPa"),
    (q.stress_text(234.2e6), "234.2 MPa"), (q.money_text(Decimal("24.5"), "USD"), "24.50 USD"),
    (q.money_text(Decimal("0.125"), "USD"), "0.125 USD"), (q.money_text(Decimal(100), "JPY"), "100.00 JPY"),
    (q.minutes_text(125), "2 h 5 min"), (q.minutes_text(45.4), "45 min"), (q.minutes_text(180), "3 h"),
    (q.minutes_text(0), "0 min"), (q.minutes_text(59.7), "1 h"), (q.share_text(0.1), "10 %"),
    (q.share_text(0.125), "12.5 %"), (q.angle_text(0.5585), "32 degrees"), (q.angle_text(0.0175), "1 degree"),
])
def test_examples(text: str, said: str) -> None:
    assert text == said


@given(st.floats(-100, 100), UNITS)
def test_a_printed_length_reads_back_as_the_printed_value(metres: float, units: q.Units) -> None:
    printed = q.printed_length(metres, units)
    back = q.parse_length(q.length_text(metres, units), zero=True, signed=True)
    assert back == pytest.approx(printed, abs=1e-12)
    assert abs(printed - metres) <= (INCH / 16 if units == "inches" else 0.0005) + 1e-8
    assert q.length_text(printed, units) == q.length_text(metres, units)
    assert "." not in q.length_text(metres, "inches")


@given(st.floats(0, 999), UNITS)
def test_a_long_length_reads_back(metres: float, units: q.Units) -> None:
    text = q.long_length_text(metres, units)
    step = INCH / 8 if units == "inches" else 0.01
    back = q.parse_length(text, zero=True)
    assert abs(back - metres) <= step / 2 + 1e-7
    assert q.long_length_text(back, units) == text


@given(st.floats(0, 500), UNITS)
def test_a_weight_reads_back(kilograms: float, units: q.Units) -> None:
    text = q.mass_text(kilograms, units)
    back = q.parse_mass(text, zero=True)
    assert abs(back - kilograms) <= (0.45359237 / 32 if units == "inches" else 0.005) + 1e-7
    assert q.mass_text(back, units) == text


@given(st.floats(0, 999), UNITS)
def test_areas_and_densities_read_back(value: float, units: q.Units) -> None:
    for say, read in [(q.area_text, q.parse_area), (q.areal_density_text, q.parse_areal_density),
                      (q.linear_density_text, q.parse_linear_density)]:
        text = say(value, units)
        assert say(read(text, zero=True), units) == text


@given(st.decimals(0, 10**6, places=2), st.sampled_from(["USD", "EUR", "GBP"]))
def test_money_reads_back_exactly(amount: Decimal, currency: str) -> None:
    assert q.parse_money(q.money_text(amount, currency), zero=True) == (amount, currency)


@given(st.integers(0, 10**5), st.floats(0, 2), st.floats(-6.28, 6.28))
def test_times_shares_and_angles_read_back(minutes: int, share: float, angle: float) -> None:
    assert q.parse_minutes(q.minutes_text(minutes), zero=True) == minutes
    assert q.parse_share(q.share_text(share)) == pytest.approx(share, abs=0.0005000001)
    assert q.parse_angle(q.angle_text(angle)) == pytest.approx(angle, abs=0.00873)


@given(st.floats(0, 1e13))
def test_stress_and_force_read_back(value: float) -> None:
    assert q.parse_stress(q.stress_text(value), zero=True) == pytest.approx(value, rel=0.01, abs=5e4)
    force = value / 1e6
    assert q.parse_force(q.force_text(force), zero=True) == pytest.approx(force, rel=0.01, abs=0.05)
