"""The droop test of a sample on the bench."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.strength.forms.droop import droop, stiffness_from_droop
from hoopwright.strength.gravity import GRAVITY

TIP = ((1, 0.30172, 0.94357), (2, 0.49346, 0.83936), (3, 0.60325, 0.74558), (5, 0.71379, 0.61237),
       (10, 0.81061, 0.44500))
"""P L^2/EI, drop/L, reach/L: from memory of Bisshopp and Drucker, "Large deflection of cantilever beams",
Quarterly of Applied Mathematics 3, 1945."""
OWN = ((1, 0.12347), (2, 0.23851), (4, 0.42516), (8, 0.64063))
"""q L^3/EI, drop/L under its own weight: derived, integrated anew in tests/external."""


@pytest.mark.parametrize("row", TIP)
def test_hung_weight(row):
    assert droop(row[0], 0.0) == pytest.approx(row[1:], abs=1.2e-5)


@pytest.mark.parametrize("row", OWN)
def test_own_weight(row):
    assert droop(0.0, row[0])[0] == pytest.approx(row[1], abs=1e-5)


def test_sample_of_half_a_metre():
    """0.5 m, 100 g hung, 0.1225 kg/m, drop 150 mm: EI = 0.3052 N m2 (integrated anew in tests/external)."""
    found = stiffness_from_droop(0.5, 0.1 * GRAVITY, 0.1225 * GRAVITY, 0.150)
    assert found == pytest.approx(0.3052, abs=5e-5)


@given(st.floats(1e-4, 1e-3))
def test_small_droop_is_the_beam_formula(load):
    """P L^3/3EI and q L^4/8EI."""
    assert droop(load, 0.0)[0] == pytest.approx(load / 3, rel=1e-5)
    assert droop(0.0, load)[0] == pytest.approx(load / 8, rel=1e-5)


@settings(max_examples=15, deadline=None)
@given(st.floats(0.1, 2.0), st.floats(0.3, 0.7), st.floats(0.02, 0.3), st.floats(0.0, 0.3))
def test_stiffness_comes_back_from_its_own_droop(stiffness, overhang, hang, line):
    weight, own = hang * GRAVITY, line * GRAVITY
    drop = droop(weight * overhang**2 / stiffness, own * overhang**3 / stiffness)[0] * overhang
    if drop < 0.9 * overhang:
        assert stiffness_from_droop(overhang, weight, own, drop) == pytest.approx(stiffness, rel=1e-5)


def test_a_limp_sample_has_next_to_no_stiffness():
    limp, limper = (stiffness_from_droop(0.5, 1.0, 0.1, share * 0.5) for share in (0.90, 0.96))
    assert 0 < limper < limp < 0.01
    assert stiffness_from_droop(0.5, 1.0, 0.1, 0.5) == stiffness_from_droop(0.5, 1.0, 0.1, 0.97 * 0.5)


def test_impossible_tests_are_refused():
    with pytest.raises(ValueError, match="droop test"):
        stiffness_from_droop(0.5, 1.0, 0.0, 0.51)
    with pytest.raises(ValueError, match="droop test"):
        stiffness_from_droop(0.5, 0.0, 0.0, 0.1)
    assert droop(0.0, 0.0) == (0.0, 1.0)


def test_what_is_remembered_of_droop_tests_is_bounded() -> None:
    """A design of many samples, tried over and over, does not fill the memory."""
    assert stiffness_from_droop.cache_parameters()["maxsize"] is not None
