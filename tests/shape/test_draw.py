"""The whole shape stage on the worked example, and what it refuses."""

from math import cos, pi, sin

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


def test_the_spec_in_the_repository_gives_the_same_numbers(drawn, harbour_text, make):
    """The worked example as a maker writes it, read and resolved: the hand check again, and what is cut."""
    cage = drawn(harbour_text).shape
    assert [hoop.height / make.inch for hoop in cage.hoops] == pytest.approx(
        [35.50, 31.88, 28.13, 24.26, 20.29, 16.19, 7.19], abs=0.005)
    assert [hoop.girth / make.inch for hoop in cage.hoops] == pytest.approx(
        [58.6, 72.3, 84.3, 94.9, 103.9, 110, 110], abs=0.05)
    assert cage.total_hoop_length / make.inch == pytest.approx(53 * 12 + 5, abs=0.5)
    assert {tape.start[2] < 41 * make.inch for tape in cage.tapes} == {True}
    assert cage.waistband.cut / make.inch == pytest.approx(28 + 2 + 1)


def test_a_short_spec_draws_with_its_assumed_values(drawn):
    cage = drawn("spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\n"
                 "shape: {hem: {girth: 2.8 m}}\n").shape
    assert cage.hoops[-1].girth == pytest.approx(2.8)
    assert [check.code for check in cage.checks if check.result == "fails"] == []


@pytest.mark.parametrize("line", ["{kind: cone}", "{kind: bell}", "{kind: dome, swell: 2}"])
@pytest.mark.parametrize("waist", ["{front: 106 cm, side: 108 cm, back: 105 cm}",
                                   "{front: 106 cm, left: 108 cm, right: 107 cm, back: 105 cm}"])
def test_unlevel_waists_and_every_line_are_drawn_from_text(drawn, line, waist):
    cage = drawn("spec: 1\nunits: centimetres\n"
                 f"wearer: {{stature: 170 cm, waist: 70 cm, waist_height: {waist}}}\n"
                 f"shape: {{hem: {{girth: 2.9 m}}, line: {line}}}\n").shape
    rising = [mark.at for mark in cage.tapes[0].marks]
    assert rising == sorted(rising)
    for tape in cage.tapes:
        edge = _waist_height(cage, tape.waist_fraction) - cage.waistband.width / 2
        assert tape.start[2] == pytest.approx(edge)


def _waist_height(cage, fraction):
    """h(f) = c0 + c1 cos 2 pi f + c2 cos 4 pi f + s1 sin 2 pi f through front, left, back and right."""
    front, left, back, right = cage.waist_heights
    turn = 2 * pi * fraction
    return ((front + back + left + right) / 4 + (front - back) / 2 * cos(turn)
            + (front + back - left - right) / 4 * cos(2 * turn) + (left - right) / 2 * sin(turn))
