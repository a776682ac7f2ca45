"""Tests of samples: the clamp's angle, both faces, several tests together, and those that clash."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.library.model import Droop, Weigh, Wrap
from hoopwright.strength.forms.droop import droop, stiffness_from_droop
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.material import material_strength
from hoopwright.strength.samples.bench import droop_stiffnesses, evidence, spread_of


def test_a_stiff_sample_points_along_its_clamp():
    assert droop(0.0, 0.0, radians(10)) == pytest.approx((sin(radians(10)), cos(radians(10))))
    assert droop(1e-6, 0.0, radians(-10))[0] == pytest.approx(-sin(radians(10)), abs=1e-5)


def test_a_small_droop_in_a_tilted_clamp_is_the_beam_formula_of_the_load_across_it():
    """P cos a L^3/3EI across the sample, whose part downward is cos a of it."""
    slope = radians(20)
    moved = droop(1e-4, 0.0, slope)[0] - sin(slope)
    assert moved == pytest.approx(1e-4 / 3 * cos(slope) ** 2, rel=1e-3)


@settings(max_examples=20, deadline=None)
@given(st.floats(0.1, 2.0), st.floats(0.3, 0.7), st.floats(0.02, 0.3), st.floats(-0.4, 0.4))
def test_stiffness_comes_back_whatever_the_clamp(stiffness, overhang, hang, slope):
    weight = hang * 9.80665
    drop = droop(weight * overhang**2 / stiffness, 0.05 * overhang**3 / stiffness, slope)[0] * overhang
    if sin(slope) * overhang < drop < 0.9 * overhang:
        found = stiffness_from_droop(overhang, weight, 0.05, drop, slope)
        assert found == pytest.approx(stiffness, rel=1e-4)


def test_both_faces_are_averaged(make):
    both = replace(make.strip, bench=(Droop(0.45, 0.1, 0.16, turned=0.18),))
    mean = replace(make.strip, bench=(Droop(0.45, 0.1, 0.17),))
    assert evidence(both).stiffness == pytest.approx(evidence(mean).stiffness)


def test_several_tests_are_combined_and_their_spread_is_told(make):
    stock = replace(make.strip, bench=(Droop(0.45, 0.1, 0.16), Droop(0.40, 0.1, 0.125)))
    stiff = droop_stiffnesses(stock.bench, stock.linear_density * GRAVITY)
    got, _ = material_strength(stock)
    assert got.ei_weak == pytest.approx(sum(stiff) / 2)
    assert (got.tests, got.spread) == (2, pytest.approx((max(stiff) - min(stiff)) / got.ei_weak))
    assert spread_of([1.0]) is None
    assert evidence(stock).clashes == ()


@pytest.mark.parametrize(("tests", "what"), [
    ((Droop(0.45, 0.1, 0.17), Droop(0.45, 0.1, 0.11)), "stiffness"),
    ((Wrap(0.10, True), Wrap(0.20, False)), "elastic limit"),
    ((Wrap(0.10, True), Wrap(0.08, False, keeps=0.12)), "elastic limit"),
    ((Weigh(3.0, 0.228), Weigh(3.0, 0.330)), "weight"),
])
def test_tests_that_clash_are_found(make, tests, what):
    assert evidence(replace(make.strip, bench=tests)).clashes == (what,)
    assert evidence(replace(make.strip, bench=tests[:1])).clashes == ()


def test_wraps_that_only_bound_do_not_clash(make):
    assert evidence(replace(make.strip, bench=(Wrap(0.20, True), Wrap(0.10, False)))).clashes == ()


def test_a_weighing_checks_section_and_grade(make):
    plain = make.strip.linear_density
    _, disagree = material_strength(replace(make.strip, bench=(Weigh(2.0, 2.0 * plain * 1.4),)))
    assert disagree == ("weight",)
    _, disagree = material_strength(replace(make.strip, bench=(Weigh(2.0, 2.0 * plain * 1.2),)))
    assert disagree == ()
