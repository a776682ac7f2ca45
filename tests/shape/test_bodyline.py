"""Chords, lacings and straps go straight where the body leaves room; else their length is that of the way round it."""

from itertools import pairwise
from math import asin, cos, dist, pi, sqrt

import pytest

from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.draw import draw
from hoopwright.shape.model import Tie
from hoopwright.shape.tying.bodyline import long, round_body
from hoopwright.strength.problem import pose
from hoopwright.strength.whole import model

LACED = "count: 5}, lacing: {gap: 4 cm, spacing: 25 mm}}"


def clear(shape):
    (found,) = [check for check in shape.checks if check.code == "tie-clear"]
    return found


@pytest.mark.parametrize(("kind", "side"), [("chord", -1.0), ("lacing", -1.0), ("strap", 1.0)])
def test_the_way_round_a_circle_by_hand(kind, side):
    """From 2 beside the middle of a circle of radius 1: two tangents of sqrt 3 and the arc between them. Level with its
    back it is straight."""
    way = round_body(kind, ((2.0, 0.0), (-2.0, 0.0)), Ellipse(1.0, 1.0))
    assert long(way) == pytest.approx(2 * sqrt(3) + pi / 3, abs=1e-4)
    assert (way[0], way[-1]) == ((2.0, 0.0), (-2.0, 0.0))
    assert way[len(way) // 2] == pytest.approx((0.0, side), abs=1e-9)
    assert max(dist(a, b) for a, b in pairwise(way)) == pytest.approx(sqrt(3), abs=0.03)  # the tangents
    assert round_body(kind, ((2.0, side * 1.01), (-2.0, side * 1.01)), Ellipse(1.0, 1.0)) == ()


@pytest.mark.parametrize(("kind", "side"), [("chord", -1.0), ("strap", 1.0)])
def test_a_body_farther_back_is_gone_round_where_it_stands(kind, side):
    """The same circle and ends, all half its radius farther back: the same way, half a radius farther back."""
    way = round_body(kind, ((2.0, -0.5), (-2.0, -0.5)), Ellipse(1.0, 1.0, 0.5))
    assert long(way) == pytest.approx(2 * sqrt(3) + pi / 3, abs=1e-4)
    assert way[len(way) // 2] == pytest.approx((0.0, side - 0.5), abs=1e-9)


def test_ends_on_the_body_lie_along_it():
    half = 0.6
    back = -cos(asin(half))
    way = round_body("chord", ((half, back), (-half, back)), Ellipse(1.0, 1.0))
    assert long(way) == pytest.approx(2 * asin(half), abs=2e-3)


def test_a_tie_tells_its_span_and_how_far_the_body_stands_beyond_it():
    way = round_body("chord", ((2.0, 0.0), (-2.0, 0.0)), Ellipse(1.0, 1.0))
    laid = Tie("H1-tie-1", "H1", "chord", 0.25, 0.75, long(way), 5.0, 1.0, "tape", way=way)
    assert (laid.span, laid.beyond) == pytest.approx((4.0, 1.0))
    straight = Tie("H1-tie-1", "H1", "chord", 0.25, 0.75, 4.0, 5.0, 1.0, "tape")
    assert (straight.span, straight.beyond) == (4.0, 0.0)


def test_a_chord_through_the_wearer_is_as_long_as_the_way_round_her(make, bustle_text):
    """The lowest hoop's ends lie beside the middle of hips 24.7 cm deep, 38 cm apart."""
    spec = make.yaml(bustle_text)
    shape = draw(spec)[0]
    tie = shape.ties[-1]
    assert (tie.span, tie.beyond) == pytest.approx((0.38, 0.1235), abs=1e-3)
    assert [round(one.length, 3) for one in shape.ties] == [0.337, 0.399, 0.432, 0.463, 0.492]
    assert tie.cut == pytest.approx(tie.length + 2 * spec.allowances.tape_hem)
    found = clear(shape)
    assert (found.part, found.result, found.value) == ("H5", "marginal", pytest.approx(0.1235, abs=1e-3))
    assert found.remedy.startswith("the ties lie against her behind from H1 to H5")
    assert "at H1 the way round her is as long as the hoop" in found.remedy
    assert "H5 spreads from 38 cm to 49.2 cm from end to end" in found.remedy


def test_the_solver_holds_the_ends_of_such_a_hoop_as_far_apart_as_they_are_wished(make, bustle_text):
    spec = make.yaml(bustle_text)
    shape = draw(spec)[0]
    assert [tie.length for tie in model(pose(spec, shape)).ties] == pytest.approx([tie.span for tie in shape.ties])


def test_lacing_panels_reach_round_the_wearer(make, bustle_text):
    """Each is half of what the lacing leaves of the way round her, with its fold and its seam."""
    spec = make.yaml(bustle_text.replace("count: 5}}", LACED))
    shape = draw(spec)[0]
    low = shape.ties[-1]
    assert (low.kind, low.cut, round(low.length, 3)) == ("lacing", 0.0, 0.492)
    panel = shape.panels[0]
    assert panel.width == pytest.approx((low.length - 0.04) / 2 + 0.0381 + spec.allowances.seam)
    assert clear(shape).remedy.startswith("the lacing lies against her behind from H1 to H5")


def test_chords_behind_the_body_are_straight(make, bustle_text):
    shape = draw(make.yaml(bustle_text.replace("reach: {top: 7", "set_back: 13 cm, reach: {top: 7")))[0]
    found = clear(shape)
    assert (found.result, found.value, found.remedy) == ("holds", 0.0, "")
    assert all(tie.way == () and tie.length == tie.span for tie in shape.ties)
    assert shape.ties[-1].length == pytest.approx(0.38)
