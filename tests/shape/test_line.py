"""The line's profiles: ends, limiting powers, and the maker's own table."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.shape.line import GirthLine, table_line
from hoopwright.spec.model import TableRow

shares = st.floats(0.0, 1.0)


def line(kind, power=1.0):
    return GirthLine(kind, power, 1.0, 0.7, 0.2, 2.8)


@pytest.mark.parametrize("kind", ["cone", "dome", "bell"])
def test_starts_at_the_anchor_and_ends_at_full_girth(kind):
    drawn = line(kind, 1.7)
    assert drawn.girth(1.0) == pytest.approx(0.7)
    assert drawn.girth(0.2) == pytest.approx(2.8)
    assert drawn.girth(0.05) == pytest.approx(2.8)


@given(shares)
def test_dome_of_swell_two_is_a_quarter_ellipse(s):
    got = line("dome", 2.0).girth(1.0 - 0.8 * s)
    assert got == pytest.approx(0.7 + 2.1 * sqrt(max(0.0, 1 - (1 - s) ** 2)), abs=1e-7)


@given(shares, st.sampled_from(["dome", "bell"]))
def test_power_one_is_the_cone(s, kind):
    height = 1.0 - 0.8 * s
    assert line(kind, 1.0).girth(height) == pytest.approx(line("cone").girth(height), abs=1e-12)


@given(st.floats(0.01, 0.99), st.floats(1.05, 4.0))
def test_dome_bulges_out_and_bell_hollows_in(s, power):
    height = 1.0 - 0.8 * s
    assert line("bell", power).girth(height) < line("cone").girth(height) < line("dome", power).girth(height)


def test_drum_is_full_everywhere():
    assert line("drum").girth(0.9) == 2.8


def test_table_goes_through_its_rows_and_ends():
    drawn = table_line((TableRow(0.8, 1.0), TableRow(0.5, 2.0)), (1.0, 0.7), (0.2, 2.8))
    assert [drawn.girth(h) for h in (1.0, 0.8, 0.5, 0.2)] == pytest.approx([0.7, 1.0, 2.0, 2.8])


def test_table_never_dips_between_rising_rows():
    drawn = table_line((TableRow(0.8, 1.0), TableRow(0.5, 1.01), TableRow(0.3, 2.7)), (1.0, 0.7), (0.2, 2.8))
    girths = [drawn.girth(1.0 - 0.8 * k / 200) for k in range(201)]
    assert girths == sorted(girths)


def test_table_out_of_order_is_refused():
    with pytest.raises(ValueError, match="strict order"):
        table_line((TableRow(0.5, 1.0), TableRow(0.8, 2.0)), (1.0, 0.7), (0.2, 2.8))
