"""Ellipses against scipy.special's elliptic integrals (Cephes: S. L. Moshier, Methods and Programs for
Mathematical Functions, 1989), an implementation outside this project."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ellipe, ellipeinc

from hoopwright.shape.curves.ellipse import Ellipse, fraction_at, from_girth, parameter_at, perimeter

axes = st.floats(0.01, 3.0)


@given(axes, axes)
def test_perimeter(a, b):
    long, short = max(a, b), min(a, b)
    assert perimeter(a, b) == pytest.approx(4 * long * ellipe(1 - (short / long) ** 2), rel=1e-13)


@given(st.floats(0.3, 3.0), st.floats(0.0, pi / 2))
def test_fraction_of_the_girth_up_to_a_parameter(oval, t):
    """From the front, where y = b: a E(t | 1 - (b/a)^2), negative parameters (deeper than wide) included."""
    m = 1 - 1 / oval**2
    expected = ellipeinc(t, m) / (4 * ellipe(m))
    assert fraction_at(Ellipse(oval, 1.0), t) == pytest.approx(expected, rel=1e-11, abs=1e-15)


@given(st.floats(0.5, 3.0), st.floats(0.3, 3.0), st.floats(0.0, 0.999))
def test_parameter_is_the_inverse_of_the_fraction(girth, oval, fraction):
    ellipse = from_girth(girth, oval)
    assert fraction_at(ellipse, parameter_at(ellipse, fraction)) == pytest.approx(fraction, abs=1e-12)
