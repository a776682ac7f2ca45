"""A hoop squeezed between two walls."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.strength.forms.doorway import FLAT_BELOW, squeezed

TABLE = ((0.95, 0.6254, 0.8918, 1.044), (0.80, 2.115, 0.6769, 1.152), (0.7178, 2.786, 0.5991, 1.198),
         (0.50, 5.742, 0.4173, 1.311))
"""gap/2R, F R^2/A, r_min/R, length/2R: the elastica derived in the module; tests/external integrates it
anew."""


@pytest.mark.parametrize("row", TABLE)
def test_table(row):
    got = squeezed(row[0])
    assert (got.force, got.least_radius, got.length) == pytest.approx(row[1:], rel=5e-4)


def test_lies_flat_below_0_7178():
    assert pytest.approx(0.7178, abs=5e-5) == FLAT_BELOW
    assert squeezed(FLAT_BELOW - 1e-6).flat
    assert not squeezed(FLAT_BELOW + 1e-6).flat


def test_both_solutions_meet_where_it_begins_to_lie_flat():
    above, below = squeezed(FLAT_BELOW + 1e-8), squeezed(FLAT_BELOW - 1e-8)
    assert (above.force, above.least_radius, above.length) == pytest.approx(
        (below.force, below.least_radius, below.length), rel=1e-3)


def test_small_squeeze_follows_the_ring_formula():
    """The diameter shortens by 0.1488 F R^3/A (Roark, from memory): force = (1 - g) 2/0.1488."""
    assert squeezed(0.9999).force == pytest.approx(2e-4 / 0.14878, rel=1e-3)


def test_wide_door_leaves_it_alone():
    assert squeezed(1.0) == squeezed(3.0)
    assert squeezed(1.2).least_radius == 1.0


@given(st.floats(0.05, 0.98), st.floats(0.001, 0.02))
def test_a_narrower_door_bends_it_more(gap, less):
    narrow, wide = squeezed(gap), squeezed(gap + less)
    assert narrow.force > wide.force
    assert narrow.least_radius < wide.least_radius
    assert narrow.length > wide.length
    assert narrow.least_radius <= gap


def test_flat_bends_are_a_fixed_share_of_the_gap():
    for gap in (0.1, 0.3, 0.6):
        assert squeezed(gap).least_radius / (2 * gap) == pytest.approx(0.4173, abs=5e-5)


def test_nothing_goes_through_no_gap():
    with pytest.raises(ValueError, match="wider than nothing"):
        squeezed(0.0)
