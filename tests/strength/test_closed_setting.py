"""Spring-back and set."""

from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.strength.forms.setting import (
    closing_stress,
    curved_stress,
    kept_ratio,
    least_radius,
    wrap_bound,
    wrap_estimate,
)

E = 205e9


def test_closing_stress_and_least_radius():
    """E t/(2R) with R = G/2 pi: 1.2 mm at 3.3 m carries 234.2 MPa; with 1500 MPa no set above R = 82.00
    mm."""
    assert closing_stress(E, 0.0012, 3.3) / 1e6 == pytest.approx(234.2, abs=0.05)
    assert least_radius(E, 0.0012, 1500e6) * 1000 == pytest.approx(82.00, abs=0.005)


def test_closing_is_curving_to_the_hoop():
    assert closing_stress(E, 0.001, 2.0) == pytest.approx(curved_stress(E, 0.001, 2 * pi / 2.0))


def test_wrap_bound():
    """1.2 mm round 100 mm: 1.2/101.2 = 0.01186."""
    assert wrap_bound(0.0012, 0.1) == pytest.approx(0.01186, abs=5e-6)


def test_nothing_is_kept_at_first_yield_and_all_of_it_by_a_strip_without_strength():
    assert kept_ratio(0.5) == pytest.approx(0.0)
    assert kept_ratio(0.0) == 1.0


@settings(max_examples=25, deadline=None)
@given(st.floats(0.02, 0.49))
def test_kept_ratio_is_spring_back_of_an_elastic_plastic_strip(x):
    """Integrate the stress of a unit strip bent to radius R: E y/R in the core, sigma_y outside; unload by
    M/EI."""
    steps, t, sigma = 4000, 1.0, 1.0
    radius = x / sigma  # E = 1
    moment = 0.0
    for k in range(steps):
        y = (k + 0.5) / steps * t / 2
        moment += 2 * min(y / radius, sigma) * y * t / 2 / steps
    kept = 1 / radius - 12 * moment / t**3
    assert kept * radius == pytest.approx(kept_ratio(x), abs=2e-4)


@settings(max_examples=25, deadline=None)
@given(st.floats(0.02, 0.45))
def test_estimate_finds_the_strength_that_keeps_such_a_curve(x):
    depth, around = 0.001, 0.05
    keeps = (around + depth) / kept_ratio(x) - depth
    assert wrap_estimate(depth, around, keeps) == pytest.approx(2 * x * depth / (around + depth), rel=1e-9)


def test_keeping_hardly_anything_comes_near_the_bound():
    assert wrap_estimate(0.001, 0.05, 1e4) == pytest.approx(wrap_bound(0.001, 0.05), rel=1e-2)
