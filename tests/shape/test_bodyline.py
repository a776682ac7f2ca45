"""Chords, lacings and straps go straight where the body leaves room; else the check tells their length round it."""

from math import asin, cos, pi, sqrt

import pytest

from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.draw import draw
from hoopwright.shape.model import Tie
from hoopwright.shape.tying.bodyline import round_body


def tie(kind="chord", length=1.0):
    return Tie("H1-tie-1", "H1", kind, 0.25, 0.75, length, length, 1.0, "tape")


def clear(shape):
    return next(check for check in shape.checks if check.code == "tie-clear")


@pytest.mark.parametrize(("kind", "side"), [("chord", -1.0), ("strap", 1.0)])
def test_the_way_round_a_circle_by_hand(kind, side):
    """From 2 beside the middle of a circle of radius 1: two tangents of sqrt 3 and the arc between them. Level with its
    back it is straight."""
    laid = round_body(tie(kind), ((2.0, 0.0), (-2.0, 0.0)), Ellipse(1.0, 1.0))
    assert laid.by == pytest.approx(1.0, abs=1e-4)
    assert laid.length == pytest.approx(2 * sqrt(3) + pi / 3, abs=1e-4)
    past = round_body(tie(kind), ((2.0, side * 1.01), (-2.0, side * 1.01)), Ellipse(1.0, 1.0))
    assert (past.by, past.length) == (0.0, 4.0)


def test_ends_on_the_body_lie_along_it():
    half = 0.6
    back = -cos(asin(half))
    laid = round_body(tie(), ((half, back), (-half, back)), Ellipse(1.0, 1.0))
    assert laid.length == pytest.approx(2 * asin(half), abs=2e-3)
    assert laid.by == pytest.approx(1 + back, abs=1e-4)


def test_a_chord_through_the_wearer_is_told_with_its_length_round_her(make, bustle_text):
    found = clear(draw(make.yaml(bustle_text))[0])
    assert (found.part, found.result) == ("H5", "marginal")
    assert found.value == pytest.approx(0.1235, abs=1e-3)  # the hips are 24.7 cm deep, the chord lies at their middle
    assert "round behind her, so long between its ends 33.7 cm at H1" in found.remedy
    assert "49.2 cm at H5" in found.remedy


def test_a_lacing_through_the_wearer_is_told_with_wider_panels(make, bustle_text):
    laced = bustle_text.replace("count: 5}}", "count: 5}, lacing: {gap: 4 cm, spacing: 25 mm}}")
    found = clear(draw(make.yaml(laced))[0])
    assert found.result == "marginal"
    assert "cut each panel wider by 1.9 cm at H1" in found.remedy
    assert "5.6 cm at H5" in found.remedy


def test_chords_behind_the_body_are_clear(make, bustle_text):
    text = bustle_text.replace("reach: {top: 7", "set_back: 13 cm, reach: {top: 7")
    found = clear(draw(make.yaml(text))[0])
    assert (found.result, found.value, found.remedy) == ("holds", 0.0, "")
