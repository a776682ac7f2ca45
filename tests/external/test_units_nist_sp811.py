"""Unit factors against NIST Special Publication 811 (2008), appendix B.8, A. Thompson and B. N. Taylor.

The figures are copied from memory of that appendix's table; exact ones are marked there in bold. The table
prints seven significant digits for the others, hence the tolerance of 1e-6.
"""

from __future__ import annotations

import pytest

from hoopwright.source.units import UNITS

EXACT = {
    "in": 2.54e-2,
    "ft": 3.048e-1,
    "yd": 9.144e-1,
    "lb": 4.5359237e-1,
    "in2": 6.4516e-4,
    "ft2": 9.290304e-2,
    "h": 60.0,
}
SEVEN_DIGITS = {
    "oz": 2.834952e-2,
    "yd2": 8.361274e-1,
    "oz/yd2": 3.390575e-2,
    "oz/ft2": 3.051517e-1,
    "lb/ft": 1.488164,
    "lb/yd": 4.960546e-1,
    "psi": 6.894757e3,
    "ksi": 6.894757e6,
    "lbf": 4.448222,
}


@pytest.mark.parametrize(("symbol", "factor"), EXACT.items())
def test_exact_factors(symbol: str, factor: float) -> None:
    assert float(UNITS[symbol].factor) == factor


@pytest.mark.parametrize(("symbol", "factor"), SEVEN_DIGITS.items())
def test_factors_printed_to_seven_digits(symbol: str, factor: float) -> None:
    assert float(UNITS[symbol].factor) == pytest.approx(factor, rel=1e-6)
