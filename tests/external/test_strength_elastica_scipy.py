"""Droop and doorway against scipy's own integrators and special functions: the same equations of the
elastica, solved by an implementation outside this project."""

from math import pi

import numpy as np
import pytest
from scipy.integrate import quad, solve_bvp, solve_ivp
from scipy.optimize import brentq
from scipy.special import beta

from hoopwright.strength.forms.doorway import FLAT_BELOW, ONE_OVER_ROOT, SQUARE_ROOT_OF_SINE, squeezed
from hoopwright.strength.forms.droop import droop, stiffness_from_droop
from hoopwright.strength.gravity import GRAVITY


def droop_by_bvp(tip, own):
    """theta'' = -(p + w (1 - u)) cos theta, theta(0) = theta'(1) = 0, by collocation."""
    u = np.linspace(0, 1, 41)
    guess = np.vstack([0.8 * (1 - (1 - u) ** 2), 1.6 * (1 - u)])

    def bent(u, y):
        return np.vstack([y[1], -(tip + own * (1 - u)) * np.cos(y[0])])

    solved = solve_bvp(bent, lambda a, b: np.array([a[0], b[1]]), u, guess, tol=1e-9, max_nodes=20000)
    assert solved.success
    return (quad(lambda s: np.sin(solved.sol(s)[0]), 0, 1, limit=200)[0],
            quad(lambda s: np.cos(solved.sol(s)[0]), 0, 1, limit=200)[0])


@pytest.mark.parametrize(("tip", "own"), [(1, 0), (5, 0), (0, 1), (0, 8), (2, 3), (10, 4)])
def test_droop(tip, own):
    assert droop(tip, own) == pytest.approx(droop_by_bvp(tip, own), abs=1e-5)


def test_bench_sample():
    weight, own = 0.1 * GRAVITY, 0.1225 * GRAVITY

    def miss(stiffness):
        return droop_by_bvp(weight * 0.25 / stiffness, own * 0.125 / stiffness)[0] * 0.5 - 0.150

    stiffness = brentq(miss, 0.1, 1.0)
    assert stiffness_from_droop(0.5, weight, own, 0.150) == pytest.approx(stiffness, rel=1e-5)


def quarter(force):
    """A quarter of a hoop of radius 1 pressed by ``force`` F R^2/A: shoot from the wall, where it lies
    along it, for the curvature that turns it by a right angle over pi/2. Gives (half gap, half length,
    greatest curvature)."""

    def run(start):
        def bent(s, y):
            return [y[1], force / 2 * np.cos(y[0]), np.sin(y[0]), np.cos(y[0])]

        return solve_ivp(bent, (0, pi / 2), [0, start, 0, 0], rtol=1e-11, atol=1e-12).y[:, -1]

    start = brentq(lambda k: run(k)[0] - pi / 2, 0.0, 1.0)
    _, curvature, half_gap, half_length = run(start)
    return half_gap, half_length, curvature


@pytest.mark.parametrize("gap", [0.95, 0.80, 0.72])
def test_doorway_with_two_contacts(gap):
    got = squeezed(gap)
    half_gap, half_length, curvature = quarter(got.force)
    expected = (gap, got.length, got.least_radius)
    assert (half_gap, half_length, 1 / curvature) == pytest.approx(expected, rel=1e-6)


def test_doorway_lying_flat():
    """From the end of the flat the curvature starts at 0; the curved part is pi/2 less the flat part."""
    got = squeezed(0.5)

    def along(part):
        """Integral of part(theta) ds over the curved quarter, with theta = t^2 to be smooth at the flat."""
        return quad(lambda t: part(t * t) * 2 * t / np.sqrt(got.force * np.sin(t * t)), 0, np.sqrt(pi / 2))[0]

    curved, half_gap, across = along(lambda t: 1.0), along(np.sin), along(np.cos)
    assert half_gap == pytest.approx(0.5, rel=1e-6)
    assert pi / 2 - curved + across == pytest.approx(got.length, rel=1e-6)


def test_constants_of_the_lemniscate():
    """Integrals of sin^p over a quarter turn are half a beta function."""
    assert beta(0.75, 0.5) / 2 == pytest.approx(SQUARE_ROOT_OF_SINE, rel=1e-12)
    assert beta(0.25, 0.5) / 2 == pytest.approx(ONE_OVER_ROOT, rel=1e-12)
    assert beta(0.75, 0.5) / beta(0.25, 0.5) * pi / 2 == pytest.approx(FLAT_BELOW, rel=1e-12)
