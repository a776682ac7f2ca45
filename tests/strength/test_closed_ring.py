"""A hoop in its plane under n equal inward loads."""

from math import cos, pi, sin

import pytest
from apparatus import ring
from hypothesis import given, settings
from hypothesis import strategies as st

TABLE = (
    (2, 0.3183, -0.1817, 0.07439, 0.06831),
    (4, 0.1366, -0.07049, 0.006079, 0.005386),
    (6, 0.08890, -0.04507, 0.001682, 0.001480),
    (8, 0.06613, -0.03332, 0.0006931, 0.0006084),
)
"""n, M_load/WR, M_mid/WR, inward A/WR^3, outward A/WR^3: derived as in the module, the same form as Roark's
Formulas for Stress and Strain, circular rings (from memory), and checked by a frame model in
tests/external."""


@pytest.mark.parametrize("row", TABLE)
def test_table(row):
    n = row[0]
    got = (ring.moment_at_load(n, 1, 1), ring.moment_midway(n, 1, 1),
           ring.inward_at_load(n, 1, 1, 1), ring.outward_midway(n, 1, 1, 1))
    assert got == pytest.approx(row[1:], rel=5e-4)


def test_two_loads_are_the_textbook_ring():
    """W/pi under the load, and W R^3 (pi/8 - 1/pi)... the diameter shortens by 0.1488 W R^3/A (Roark, from
    memory)."""
    assert 2 * ring.inward_at_load(2, 1, 1, 1) == pytest.approx(0.1488, abs=5e-5)
    assert ring.moment_at_load(2, 1, 1) == pytest.approx(1 / pi)


@settings(max_examples=25, deadline=None)
@given(st.floats(2.0, 20.0))
def test_ends_of_a_bay_do_not_turn(n):
    """The integral of M over a bay is 0."""
    a, steps = pi / n, 2000
    middle, total = ring.moment_midway(n, 1, 1), 0.0
    for k in range(steps):
        phi = (k + 0.5) / steps * a
        total += (middle + (1 - cos(phi)) / (2 * sin(a))) * a / steps
    assert total == pytest.approx(0.0, abs=1e-6)
    assert middle + (1 - cos(a)) / (2 * sin(a)) == pytest.approx(ring.moment_at_load(n, 1, 1), abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(st.floats(2.0, 20.0))
def test_movement_under_a_load_is_twice_the_energy_of_a_bay(n):
    """Castigliano: W times the movement = 2 x the bending energy of one whole bay."""
    a, steps, energy = pi / n, 2000, 0.0
    middle = ring.moment_midway(n, 1, 1)
    for k in range(steps):
        phi = (k + 0.5) / steps * a
        energy += 2 * (middle + (1 - cos(phi)) / (2 * sin(a))) ** 2 / 2 * a / steps
    assert ring.inward_at_load(n, 1, 1, 1) == pytest.approx(2 * energy, rel=1e-4)


@settings(max_examples=25, deadline=None)
@given(st.floats(2.5, 15.0))
def test_more_tapes_move_it_less(n):
    assert ring.inward_at_load(n + 1, 1, 1, 1) < ring.inward_at_load(n, 1, 1, 1)
    assert ring.outward_midway(n + 1, 1, 1, 1) < ring.outward_midway(n, 1, 1, 1)


def test_uneven_load_falls_with_the_square_of_k2_less_1():
    """A w'''' chain of a ring: p R^4/[A (k^2 - 1)^2]: derived; k = 2 gives a ninth, k = 3 a 64th."""
    assert ring.uneven_amplitude(1, 2, 1, 1) == pytest.approx(1 / 9)
    assert ring.uneven_amplitude(1, 3, 1, 1) == pytest.approx(1 / 64)


def test_amplification_grows_without_bound_up_to_the_critical_load():
    assert ring.amplified(1.0, 0.0, 2.0) == 1.0
    assert ring.amplified(1.0, 1.0, 2.0) == 2.0
    assert ring.amplified(1.0, 2.0, 2.0) == float("inf")
