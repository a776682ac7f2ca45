"""Ellipses: limiting cases, symmetry, and ovals worked by hand."""

from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.shape.curves.ellipse import (
    Ellipse,
    from_girth,
    parameter_at,
    perimeter,
    point_at,
    reach,
)


def test_circle_and_flat_line_are_the_limits():
    assert perimeter(0.5, 0.5) == pytest.approx(pi, rel=1e-15)
    assert perimeter(0.5, 0.0) == 2.0


def test_oval_of_a_waist_and_of_a_hem():
    """Plain geometry by hand, inches: waist 28 at 1.4 is 10.3 x 7.4; girth 110 at 1.2 is 38.1 x 31.8."""
    waist, hem = from_girth(28.0, 1.4), from_girth(110.0, 1.2)
    assert (2 * waist.a, 2 * waist.b) == pytest.approx((10.3, 7.4), abs=0.05)
    assert (2 * hem.a, 2 * hem.b) == pytest.approx((38.1, 31.8), abs=0.06)


def test_thrown_back_hoop_reaches_farther_behind():
    """That hem thrown back 5 in: reach 10.9 in front and 20.9 behind, by hand."""
    hem = from_girth(110.0, 1.2, 5.0)
    assert reach(hem, 0.0) == pytest.approx(10.9, abs=0.05)
    assert reach(hem, pi) == pytest.approx(20.9, abs=0.05)


def test_straight_tapes_to_a_thrown_back_hoop():
    """That hoop 33 1/2 in below that waist: front 34.3, quarter girth 36.6, back 37.7 in, by hand."""
    waist, hem = from_girth(28.0, 1.4), from_girth(110.0, 1.2, 5.0)
    for fraction, expected in ((0.0, 34.3), (0.25, 36.6), (0.5, 37.7)):
        (x0, y0), (x1, y1) = point_at(waist, fraction), point_at(hem, fraction)
        assert hypot(x1 - x0, y1 - y0, 33.5) == pytest.approx(expected, abs=0.06)


def test_girth_of_surviving_ovals():
    """112 x 32 cm is 2.44 m round, 75 x 45 cm 1.91 m: V&A O1318194 and O13863, outlines taken as ellipses."""
    assert perimeter(0.56, 0.16) == pytest.approx(2.44, abs=0.005)
    assert perimeter(0.375, 0.225) == pytest.approx(1.91, abs=0.005)


@given(st.floats(0.4, 2.5), st.floats(0.0, 0.25))
def test_points_mirror_left_and_right_front_and_back(oval, fraction):
    ellipse = from_girth(1.0, oval)
    x, y = point_at(ellipse, fraction)
    assert point_at(ellipse, 1 - fraction) == pytest.approx((-x, y), abs=1e-12)
    assert point_at(ellipse, 0.5 - fraction) == pytest.approx((x, -y), abs=1e-12)


@given(st.floats(0.4, 2.5), st.floats(-3.0, 3.0), st.floats(-0.04, 0.04))
def test_reach_meets_the_outline(oval, angle, offset):
    from math import cos, sin

    ellipse = from_girth(1.0, oval, offset)
    r = reach(ellipse, angle)
    on = (r * sin(angle) / ellipse.a) ** 2 + ((r * cos(angle) + offset) / ellipse.b) ** 2
    assert r > 0
    assert on == pytest.approx(1.0, rel=1e-12)


def test_a_fraction_runs_by_the_wearers_left():
    ellipse = Ellipse(2.0, 1.0)
    assert point_at(ellipse, 0.0) == pytest.approx((0.0, 1.0))
    assert point_at(ellipse, 0.25) == pytest.approx((2.0, 0.0), abs=1e-12)
    assert point_at(ellipse, 0.75) == pytest.approx((-2.0, 0.0), abs=1e-12)
    assert parameter_at(ellipse, 0.5) == pytest.approx(pi)
