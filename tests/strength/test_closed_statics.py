"""Statics of a round cage."""

from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.strength.forms.statics import tape_forces

RADII = (0.22, 0.33, 0.415, 0.475, 0.51, 0.5252)
DEPTHS = (0.06, 0.16, 0.30, 0.47, 0.68, 0.92)
WAIST = 0.105
LINE = 3.0 * 9.80665 / (2 * pi * sum(RADII))


def dome():
    """Six hoops of a dome on six tapes, 3.0 kg spread evenly along them: 1.892 N/m."""
    radii, depths = (WAIST, *RADII), (0.0, *DEPTHS)
    slopes = [(radii[k + 1] - radii[k]) / (depths[k + 1] - depths[k]) for k in range(6)]
    return tape_forces([LINE * 2 * pi * r / 6 for r in RADII], slopes, [sqrt(1 + s * s) for s in slopes])


def test_dome_table():
    """Statics of each hoop's slice, derived; the same numbers came from an independent finite-element
    model."""
    forces = dome()
    assert forces.tension == pytest.approx((10.60, 6.642, 4.462, 3.173, 2.079, 1.042), rel=5e-4)
    assert forces.pull == pytest.approx((4.484, 2.599, 1.260, 0.7141, 0.2759, 0.0659), rel=5e-4)


def test_the_load_is_three_kilograms():
    assert pytest.approx(1.892, abs=5e-4) == LINE
    assert 6 * dome().carried[0] / 9.80665 == pytest.approx(3.0)


def test_pulls_add_up_to_the_pull_on_the_waistband():
    forces = dome()
    assert forces.waist_pull == pytest.approx(forces.carried[0] * (RADII[0] - WAIST) / DEPTHS[0])


@given(st.lists(st.tuples(st.floats(0.0, 9.0), st.floats(-1.0, 3.0)), min_size=1, max_size=8))
def test_equilibrium_whatever_the_shape(rows):
    """Upward: each stretch carries all below it. Outward: the pulls balance the waistband's."""
    loads, slopes = [row[0] for row in rows], [row[1] for row in rows]
    forces = tape_forces(loads, slopes, [sqrt(1 + s * s) for s in slopes])
    assert forces.carried[0] == pytest.approx(sum(loads))
    assert forces.waist_pull == pytest.approx(forces.carried[0] * slopes[0], abs=1e-9)
    for v, s, t in zip(forces.carried, slopes, forces.tension, strict=True):
        assert t**2 == pytest.approx(v**2 + (v * s) ** 2, rel=1e-12, abs=1e-12)


def test_a_cone_pulls_only_by_what_each_hoop_adds_and_a_flare_pulls_outward():
    cone = tape_forces([1.0, 1.0], [0.5, 0.5], [1.1, 1.1])
    flare = tape_forces([1.0, 1.0], [0.1, 0.9], [1.0, 1.3])
    assert cone.pull == pytest.approx((0.5, 0.5))
    assert flare.pull[0] < 0
