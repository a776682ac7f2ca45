"""The skirt over the cage: over the convex outline, bridging hollows, then straight down."""

from math import hypot, pi

import pytest

from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.curves.hull import upper_hull
from hoopwright.shape.draw import draw
from hoopwright.shape.outline import Oval
from hoopwright.shape.skirt import skirt_over
from hoopwright.shape.waist import Waist, waist_of
from hoopwright.spec.model import Line


def test_over_a_single_hoop_it_is_two_straight_runs(make):
    shape = draw(make.spec(count=1, band=None, heights=(41.0,) * 4, waist_oval=1.0))[0]
    r, hem = 110 / (2 * pi), 7.1875
    expected = hypot(r - 28 / (2 * pi), 41 - hem) + hem - 1
    for length in (shape.skirt.front, shape.skirt.side, shape.skirt.back):
        assert length / make.inch == pytest.approx(expected)
    assert shape.skirt.hem_girth / make.inch == pytest.approx(110.0)


def test_over_a_level_wheel_by_hand():
    """A wheel 36 in across thrown back 4 at the height of a round waist of 28 in, rim 0 below: front 9.5 +
    40 = 49.5 in and back 17.5 + 40 = 57.5 in down to 1 in off the floor from 41."""
    waist = Waist(Ellipse(28 / (2 * pi), 28 / (2 * pi)), 41.0, 0.0, 0.0, 0.0, 0.0)
    skirt = skirt_over(waist, [(41.0 - 1e-9, Oval(Ellipse(18.0, 18.0, 4.0)))], Body(()), 1.0)
    assert skirt.front == pytest.approx(9.54 + 40, abs=0.01)
    assert skirt.side == pytest.approx(13.1 + 40, abs=0.01)
    assert skirt.back == pytest.approx(17.54 + 40, abs=0.01)


def test_a_bell_is_bridged_by_the_straight_way(make):
    bell = draw(make.spec(line=Line("bell", 2.0), band=None))[0]
    only = draw(make.spec(count=1, band=None))[0]
    assert bell.skirt.side == pytest.approx(only.skirt.side)


def test_a_dome_is_longer_than_the_straight_way_and_shorter_than_its_tape(make):
    dome, only = draw(make.spec(band=None))[0], draw(make.spec(count=1, band=None))[0]
    assert only.skirt.side < dome.skirt.side


def test_unlevel_waist_changes_front_and_back_by_about_its_tilt(make):
    level, tilted = (draw(make.spec(heights=h))[0] for h in ((41.0,) * 4, (42.0, 41.0, 41.0, 40.0)))
    assert tilted.skirt.front > level.skirt.front > tilted.skirt.back
    assert waist_of(make.spec(heights=(42.0, 41.0, 41.0, 40.0))).c1 == pytest.approx(make.inch)


def test_hull_drops_inner_points():
    assert upper_hull([(3.0, 0.0), (2.0, 0.5), (1.0, 2.0), (0.0, 2.0)]) == ((3.0, 0.0), (1.0, 2.0), (0.0,
    2.0))
