"""The whole shape stage on the worked example, and what it refuses."""

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.diagnostic import Severity


@pytest.fixture(scope="module")
def shape(make):
    drawn, findings = draw(make.spec())
    assert drawn is not None
    assert [found.severity for found in findings] == [Severity.NOTE]
    return drawn


def test_heights_girths_and_strip_agree_with_the_hand_check(shape, make):
    """Done by hand for a dome of swell 1.3, waist 28 in, seven hoops, a band 9 in deep; inches."""
    assert [hoop.height / make.inch for hoop in shape.hoops] == pytest.approx(
        [35.50, 31.88, 28.13, 24.26, 20.29, 16.19, 7.19], abs=0.005
    )
    assert [hoop.girth / make.inch for hoop in shape.hoops] == pytest.approx(
        [58.6, 72.3, 84.3, 94.9, 103.9, 110, 110], abs=0.05
    )
    assert shape.total_hoop_length / make.inch == pytest.approx(53 * 12 + 5, abs=0.5)


def test_places_are_named_from_the_top(shape):
    assert [hoop.place for hoop in shape.hoops] == ["top", *["body"] * 4, "band top", "hem"]
    assert [hoop.id for hoop in shape.hoops] == [f"H{k}" for k in range(1, 8)]


def test_band_hoops_have_no_casing_and_the_others_have(shape, make):
    assert [hoop.cased for hoop in shape.hoops] == [True] * 5 + [False] * 2
    assert shape.hoops[0].casing == pytest.approx(shape.hoops[0].girth * 1.08 + make.inch)


def test_left_and_right_mirror_each_other(shape):
    for left, right in zip(shape.tapes[:3], reversed(shape.tapes[3:]), strict=True):
        assert [mark.at for mark in left.marks] == pytest.approx([mark.at for mark in right.marks])
        assert left.start[0] == pytest.approx(-right.start[0])
        assert left.waist_angle == pytest.approx(-right.waist_angle)
