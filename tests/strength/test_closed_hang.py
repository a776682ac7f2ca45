"""A hoop hung on n tapes."""

from math import pi

import pytest
from apparatus.hung import moment_over_tape
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.strength.forms import hang


@pytest.mark.parametrize(("n", "expected"), [(4, 1.338e-3), (5, 3.661e-4), (6, 1.322e-4), (8, 2.855e-5)])
def test_table(n, expected):
    """R = w = 1, B = 80, C = 1; derived as in the module, checked by a frame model in tests/external."""
    assert hang.sag(n, 1, 1, 80, 1) == pytest.approx(expected, rel=5e-4)


@pytest.mark.parametrize("n", [4, 5, 6, 8])
def test_first_wave_alone_is_close(n):
    first = 4 / (n * n - 1) ** 2 * (1 / n**2 + 1 / 80)
    assert first == pytest.approx(hang.sag(n, 1, 1, 80, 1), rel=0.02)


@given(st.floats(4.0, 10.0), st.floats(1.0, 100.0), st.floats(0.2, 2.0))
def test_scales_as_load_and_radius_to_the_fourth(n, strong, torsion):
    one = hang.sag(n, 1, 1, strong, torsion)
    assert hang.sag(n, 3, 2, strong, torsion) == pytest.approx(48 * one)
    assert hang.sag(n, 1, 1, 2 * strong, 2 * torsion) == pytest.approx(one / 2)


def straight_beam_sag(n: float, strong: float) -> float:
    """What a straight built-in beam of a bay's length would sag under a load and on a radius of one: w L^4/(384 B)."""
    return (2 * pi / n) ** 4 / (384 * strong)


def test_a_straight_built_in_beam_is_several_times_too_stiff():
    for n in (4, 5, 6, 8):
        assert hang.sag(n, 1, 1, 80, 1) > 2 * straight_beam_sag(n, 80)


def test_with_many_tapes_and_no_twist_it_becomes_the_straight_beam():
    """Stiff in twist, many tapes: a bay is short and nearly straight, built in by symmetry: w L^4/384 B."""
    assert hang.sag(200, 1, 1, 1, 1e9) == pytest.approx(straight_beam_sag(200, 1), rel=1e-3)


def test_moment_over_a_tape_of_a_short_bay_is_that_of_a_built_in_beam():
    """w L^2/12 with L = 2 pi R/n."""
    assert moment_over_tape(300, 1, 1) == pytest.approx((2 * pi / 300) ** 2 / 12, rel=1e-3)
