"""Sections: tabulated values, limits, symmetry."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.library.model import Section
from hoopwright.strength.forms.section import properties, strip_torsion

MM4 = 1e-12


def test_strip_13_by_1_2_mm():
    """b t^3/12 and t b^3/12 by arithmetic, J by Saint-Venant's series."""
    got = properties(Section("flat", width=0.013, thickness=0.0012))
    in_mm4 = [value / MM4 for value in (got.weak, got.strong, got.torsion)]
    assert in_mm4 == pytest.approx([1.872, 219.7, 7.052], rel=2e-4)


def test_square_10_mm():
    """J = 0.1406 a^4, from memory of Timoshenko and Goodier, Theory of Elasticity."""
    assert strip_torsion(0.010, 0.010) / MM4 == pytest.approx(1406, rel=3e-4)


def test_tube_10_by_1_5_mm():
    """pi (10^4 - 7^4)/64 = 373.0 mm4 by arithmetic."""
    tube = properties(Section("tube", diameter=0.010, wall=0.0015))
    assert tube.weak / MM4 == pytest.approx(373.0, abs=0.05)


def test_thin_strip_tends_to_b_t3_over_3():
    assert strip_torsion(1.0, 1e-4) == pytest.approx(1e-12 / 3, rel=1e-4)


def test_round_twists_twice_as_stiffly_as_it_bends():
    got = properties(Section("round", diameter=0.006))
    assert got.weak == got.strong == pytest.approx(pi * 0.006**4 / 64)
    assert got.torsion == pytest.approx(2 * got.weak)


@given(st.floats(1e-3, 2e-2), st.floats(1e-4, 2e-2))
def test_torsion_does_not_mind_which_side_is_the_width(b, t):
    assert strip_torsion(b, t) == pytest.approx(strip_torsion(t, b))


def test_bending_both_ways_adds_at_a_corner_and_as_vectors_on_a_round():
    strip = properties(Section("flat", width=0.010, thickness=0.001))
    wire = properties(Section("round", diameter=0.003))
    assert strip.combined(3.0, -4.0) == 7.0
    assert wire.combined(3.0, -4.0) == 5.0
