"""Buckling of a hoop under an inward line load."""

from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.strength.forms import buckle


def test_in_plane_factors():
    """3 hydrostatic, 4 dead, 4.5 to the centre: from memory of Timoshenko and Gere, Theory of Elastic
    Stability."""
    assert [buckle.in_plane(2.0, 0.5, k) for k in (3, 4, 4.5)] == pytest.approx([48.0, 64.0, 72.0])


@settings(max_examples=20, deadline=None)
@given(st.floats(0.1, 100.0), st.floats(0.1, 100.0))
def test_sideways_is_the_least_energy_of_a_wave_of_two(strong, torsion):
    """Search the turn b that leaves the least energy for v = cos 2 theta, R = 1; the thrust's work is 4 q."""
    turns = [-4 + k * 3e-3 for k in range(1001)]
    energy = min(strong * (b + 4) ** 2 + torsion * 4 * (b + 1) ** 2 for b in turns)
    assert buckle.sideways(strong, torsion, 1.0) == pytest.approx(energy / 4, rel=1e-2)


def test_sideways_limits():
    assert buckle.sideways(1e12, 2.0, 1.0) == pytest.approx(18.0)
    assert buckle.sideways(2.0, 1e12, 1.0) == pytest.approx(4.5)


def test_round_wire_is_governed_by_buckling_sideways():
    """A = B and C = A/1.3 (Poisson's ratio 0.3): 9/1.3/(1 + 4/1.3) = 1.70 A/R^3, less than 3."""
    wire = 1.0
    assert buckle.screen(wire, wire, wire / 1.3, 1.0) == pytest.approx(9 / 1.3 / (1 + 4 / 1.3))


def test_strip_on_edge_is_governed_in_its_plane():
    assert buckle.screen(0.2, 15.0, 0.27, 1.0) == pytest.approx(0.6)


def test_strip_soft_in_twist_is_governed_sideways():
    assert buckle.screen(0.2, 15.0, 0.05, 1.0) == pytest.approx(9 * 15 * 0.05 / 15.2)


def test_screen_lies_below_a_ring_held_by_a_few_tapes():
    """4.8 A/R^3 for six tapes and 3.9 for four were found by finite elements of the whole hoop: derived
    elsewhere, kept here as the margin that a marginal result rests on."""
    from hoopwright.strength.checks import SCREEN

    assert pytest.approx(SCREEN) == 3.9 / 3


def test_pressure_is_thrust_over_radius():
    from hoopwright.strength.forms.statics import thrust

    assert thrust([1.0] * 6) == pytest.approx(6 / (2 * pi))
