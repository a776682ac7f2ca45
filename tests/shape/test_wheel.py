"""A wheel at the waist: worked numbers by plane geometry, its spokes, its way in, and what is impossible."""

from __future__ import annotations

from math import cos, dist, pi, radians, sin

import pytest

from hoopwright.shape.draw import draw

INCH = 0.0254
SPEC = """\
spec: 1
units: inches
wearer: {stature: 5 ft 7 in, waist: 28 in, hip: 40 in, waist_oval: 1,
  waist_height: {front: 41 in, side: 41 in, back: 41 in}}
shape: {line: {kind: drum}}
build: {carried_by: wheel, wheel: {width: 36 in, set_back: 4 in, tilt: 10 degrees}}
"""


def test_rim_reaches_and_skirt_of_a_wheel_36_in_across(drawn) -> None:
    """By hand: rim 36 pi; R = 18, r = 28/2 pi = 4.456, set back 4: front 14 - r, side sqrt(18^2 - 4^2) -
    r, back
    22 - r; tilted 10 degrees the front is 14 sin 10 lower and the back 22 sin 10 higher than the waist at
    41."""
    shape = drawn(SPEC).shape
    assert shape.wheel is not None
    assert shape.hoops[-1].girth == pytest.approx(113.1 * INCH, abs=0.05 * INCH)
    front, side, back = shape.wheel.rim[0], shape.wheel.rim[2], shape.wheel.rim[4]
    assert [point.reach / INCH for point in (front, side, back)] == pytest.approx(
        [9.54, 13.09, 17.54], abs=0.01
    )
    assert 41 - front.height / INCH == pytest.approx(2.43, abs=0.005)
    assert back.height / INCH - 41 == pytest.approx(3.82, abs=0.005)
    assert shape.skirt.front / INCH == pytest.approx(47.1, abs=0.05)
    assert shape.skirt.back / INCH == pytest.approx(61.36, abs=0.005)


def test_left_and_right_of_the_rim_are_alike_and_the_skirt_longest_behind(drawn) -> None:
    wheel = drawn(SPEC).shape.wheel
    assert wheel is not None
    skirts = [point.skirt for point in wheel.rim]
    assert len(skirts) == 8
    assert skirts[1:4] == pytest.approx(skirts[:4:-1])
    assert skirts[:5] == sorted(skirts[:5])


def test_spokes_meet_every_ring_at_equal_steps_and_end_on_the_rim_circle(drawn) -> None:
    shape = drawn(SPEC.replace("tilt: 10 degrees", "tilt: 10 degrees, rim_drop: 2 in, rings: 5")).shape
    assert shape.wheel is not None
    tilt, radius, back = radians(10), 18 * INCH, 4 * INCH
    for k, spoke in enumerate(shape.wheel.spokes):
        places = [at for _, at in spoke.marks]
        assert places == pytest.approx([places[-1] * step / 4 for step in range(5)])
        assert places[-1] == pytest.approx(dist(spoke.hole, spoke.rim))
        t = 2 * pi * (k + 0.5) / 8
        y, down = radius * cos(t) - back, 2 * INCH
        assert spoke.rim == pytest.approx(
            (radius * sin(t), y * cos(tilt) - down * sin(tilt), 41 * INCH - y * sin(tilt) - down * cos(tilt))
        )


def test_the_hips_pass_through_hole_and_slit_and_the_rings_it_crosses_are_open(drawn) -> None:
    shape = drawn(SPEC).shape
    assert shape.wheel is not None
    assert 28 * INCH + 2 * shape.wheel.slit >= 40 * INCH
    assert [hoop.closed for hoop in shape.hoops] == [False, False, True, True]
    assert shape.hoops[2].girth >= 40 * INCH


def test_a_flat_cover_has_no_dart_and_a_dished_one_is_a_cone_opened_flat(drawn) -> None:
    flat, dished = drawn(SPEC).shape.wheel, drawn(SPEC.replace("tilt:", "rim_drop: 5 in, tilt:")).shape.wheel
    assert flat is not None
    assert dished is not None
    assert flat.dart == pytest.approx(0.0, abs=1e-12)
    r, run = 28 / 2 / pi, 18 - 28 / 2 / pi
    radius = 18 * (run**2 + 25) ** 0.5 / run
    assert r > 0
    assert dished.cover / INCH == pytest.approx(2 * radius)
    assert dished.dart / INCH == pytest.approx(2 * pi * (radius - 18))


def test_a_cover_too_wide_for_its_cloth_is_cut_in_two_halves_that_fit(drawn) -> None:
    text = SPEC.replace("tilt:", "cover: {material: narrow}, tilt:") + (
        "materials: {narrow: {kind: cloth, weight: 150 g/m2, width: 30 in}}\n"
    )
    shape = drawn(text).shape
    half = shape.panels[0]
    assert (half.count, half.mirrored) == (2, True)
    assert half.width < 30 * INCH
    assert half.height == pytest.approx(shape.wheel.cover + 2 * shape.wheel.hem if shape.wheel else 0)


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ("width: 96 in, set_back: 2 in, tilt: 70 degrees", "rim-below-hem"),
        ("width: 24 in, set_back: 11 in", "wheel-off-body"),
        ("width: 36 in, set_back: 4 in, cover: {slit: 15 in}", "slit-too-long"),
        ("width: 24 in, set_back: 4 in, rings: 2", "wheel-without-way-in"),
    ],
)
def test_an_impossible_wheel_is_told(change: str, code: str, make) -> None:
    shape, found = draw(make.yaml(SPEC.replace("width: 36 in, set_back: 4 in, tilt: 10 degrees", change)))
    assert shape is None
    assert [finding.code for finding in found] == [code]
