"""The waistline through its four heights, and the waistband's lower edge."""

import pytest

from hoopwright.shape.waist import waist_of


def test_passes_through_front_left_back_right(make):
    waist = waist_of(make.spec(heights=(41.0, 42.0, 41.4, 40.5)))
    got = [waist.height(f) / make.inch for f in (0.0, 0.25, 0.5, 0.75)]
    assert got == pytest.approx([41.0, 42.0, 40.5, 41.4])


def test_side_is_the_mean_and_tapes_start_half_a_band_lower(make):
    waist = waist_of(make.spec(heights=(41.0, 42.0, 41.4, 40.5)))
    assert waist.side / make.inch == pytest.approx(41.7)
    assert waist.side_start[0] / make.inch == pytest.approx(41.2)
    assert waist.start(0.25)[2] / make.inch == pytest.approx(41.5)


def test_level_waist_is_level_everywhere(make):
    waist = waist_of(make.spec(heights=(41.0,) * 4))
    assert [waist.height(k / 13) for k in range(13)] == pytest.approx([41.0 * make.inch] * 13)


def test_equal_sides_leave_no_tilt(make):
    assert waist_of(make.spec(heights=(41.0, 41.5, 41.5, 40.0))).s1 == 0.0
