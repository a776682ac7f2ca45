"""What a maker cuts and bends for a wheel, worked by hand in inches: a round waist of 28 (radius 4.456), a rim of 36
set back 4 and tilted 10 degrees, four rings, eight spokes, 3/8 in strip, 1/2 in seams."""

from __future__ import annotations

from collections.abc import Callable
from math import dist, hypot, pi, radians, sin
from types import SimpleNamespace

import pytest

from hoopwright.shape.model import Panel, Shape

INCH = 0.0254
HOLE = 28 / (2 * pi)
EDGE = 18 + 0.375 + 0.5
"""Radius of the cover as cut: the rim's, a strip's height and a seam round it."""
WHEEL = """\
spec: 1
units: inches
wearer: {stature: 5 ft 7 in, waist: 28 in, hip: 40 in, waist_oval: 1, waist_height: 41 in}
shape: {line: {kind: drum}}
build:
  carried_by: wheel
  hoops: {material: strip, join: lap bound, casing: none}
  wheel: {width: 36 in, set_back: 4 in, tilt: 10 degrees, rings: 4, spokes: 8,
    roll: {thickness: 3 in, length: 22 in}, cover: {material: CLOTH}}
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 3/8 in, thickness: 0.02 in}}
  wide: {kind: cloth, weight: 150 g/m2, width: 60 in}
  narrow: {kind: cloth, weight: 150 g/m2, width: 30 in}
"""
Drawn = Callable[[str], SimpleNamespace]


@pytest.fixture(scope="module")
def wheel(drawn: Drawn) -> Shape:
    return drawn(WHEEL.replace("CLOTH", "wide")).shape


def inches(*metres: float) -> list[float]:
    return [one / INCH for one in metres]


def test_rings_lie_even_from_hole_to_rim(wheel: Shape) -> None:
    """Radii 4.456, 8.971, 13.485, 18, each a third of 4 further back and of 4 sin 10 higher in its middle."""
    for third, hoop in enumerate(wheel.hoops):
        radius = HOLE + (18 - HOLE) * third / 3
        assert inches(hoop.plan.width, hoop.plan.depth) == pytest.approx([2 * radius] * 2)
        assert inches(hoop.plan.offset) == pytest.approx([4 * third / 3])
        assert inches(hoop.height, hoop.below_waist) == pytest.approx(
            [41 + 4 * third / 3 * sin(radians(10)), -4 * third / 3 * sin(radians(10))])
        assert hoop.plan.tilt == pytest.approx(radians(10))
        assert hoop.plan.kind == "round"
    assert [hoop.place for hoop in wheel.hoops] == ["top", "body", "body", "hem"]
    assert [hoop.id for hoop in wheel.hoops] == ["H1", "H2", "H3", "H4"]


def test_two_rings_are_open_by_an_inch_in_front_and_two_are_joined_with_4_in(wheel: Shape) -> None:
    """The slit goes from the hole to the third ring, two thirds of 18 - 4 - 4.456: 6.36, for hips of 40 need 6."""
    assert wheel.wheel is not None
    assert inches(wheel.wheel.slit) == pytest.approx([6.363], abs=0.001)
    assert inches(*(hoop.cut for hoop in wheel.hoops)) == pytest.approx(
        [27.0, 2 * pi * 8.9709 - 1, 2 * pi * 13.4855 + 4, 2 * pi * 18 + 4], abs=0.001)
    for hoop in wheel.hoops[:2]:
        (x, y), (x1, y1) = hoop.plan.path[0], hoop.plan.path[-1]
        radius = hoop.plan.width / 2
        assert x > 0 > x1
        assert (x, y) == pytest.approx((-x1, y1))
        assert dist((x, y), (x1, y1)) == pytest.approx(2 * radius * sin(INCH / 2 / radius))
        assert hoop.plan.arc == pytest.approx(2 * pi - INCH / radius)
        assert y == pytest.approx(radius - hoop.plan.offset, abs=0.04 * INCH)
        assert hoop.plan.path[18][0] == pytest.approx(radius, rel=5e-3)  # a quarter round, by the wearer's left
        assert hoop.plan.path[54][0] == pytest.approx(-radius, rel=5e-3)
        for point in hoop.plan.path:
            assert hypot(point[0], point[1] + hoop.plan.offset) == pytest.approx(radius)
        assert (hoop.start, hoop.end) == pytest.approx((INCH / 4 / pi / radius, 1 - INCH / 4 / pi / radius))
    for hoop in wheel.hoops[2:]:
        assert (hoop.start, hoop.end, hoop.plan.path, hoop.plan.arc) == (0.0, 1.0, (), 2 * pi)


def test_spokes_are_cut_half_an_inch_longer_at_each_end(wheel: Shape) -> None:
    """First at 22 1/2 degrees: across 13.544 sin, along 13.544 cos - 4: 9.967; last but four at 157 1/2: 17.307."""
    assert wheel.wheel is not None
    first, fourth = wheel.wheel.spokes[0], wheel.wheel.spokes[3]
    assert inches(first.marks[-1][1], first.cut) == pytest.approx([9.967, 10.967], abs=0.002)
    assert inches(fourth.marks[-1][1], fourth.cut) == pytest.approx([17.307, 18.307], abs=0.002)
    assert [ring for ring, _ in first.marks] == [hoop.id for hoop in wheel.hoops]
    assert [spoke.id for spoke in wheel.wheel.spokes] == [f"S{k}" for k in range(1, 9)]
    assert [fixing.tape for fixing in wheel.hoops[0].fixings] == [spoke.id for spoke in wheel.wheel.spokes]
    assert [fixing.fraction for fixing in wheel.hoops[3].fixings] == pytest.approx([(k + 0.5) / 8 for k in range(8)])
    assert wheel.wheel.fixings == 32


def test_the_skirt_at_the_sides_goes_over_the_rim_at_the_waists_height(wheel: Shape) -> None:
    """sqrt(18^2 - 4^2) - 4.456 = 13.09 along the wheel, then 41 - 1 down."""
    assert inches(wheel.skirt.side, wheel.skirt.hem_girth) == pytest.approx([53.09, 36 * pi], abs=0.005)


def test_the_roll_is_cut_as_long_and_as_wide_as_it_is_round_with_seams(wheel: Shape) -> None:
    """22 + 1 by 3 pi + 1; its stuffing fills pi/4 x 9 x 22 = 155.5 cubic inches."""
    assert wheel.wheel is not None
    roll = wheel.panels[1]
    assert inches(*wheel.wheel.roll_cut) == pytest.approx([23, 10.425], abs=0.001)
    assert (roll.width, roll.height) == wheel.wheel.roll_cut
    assert {*roll.outline} == {(0.0, 0.0), (roll.width, 0.0), (roll.width, roll.height), (0.0, roll.height)}
    assert [(seam.to, seam.corners) for seam in roll.seams] == [("itself", (0, 1)), ("closed end", (1, 2))]
    assert wheel.wheel.stuffing / INCH**3 == pytest.approx(155.5, abs=0.05)


def rule(panel: Panel, name: str) -> list[tuple[float, float]]:
    only, = [one for one in panel.rules if name in one.name]
    return [(x / INCH, y / INCH) for x, y in only.points]


def test_a_cover_in_one_is_a_round_with_hole_and_slit_towards_the_front(wheel: Shape) -> None:
    """37 3/4 across; the hole's middle 4 before the middle, the slit from its front edge forward."""
    cover = wheel.panels[0]
    assert (cover.part, cover.count) == ("cover", 1)
    assert inches(cover.width, cover.height) == pytest.approx([2 * EDGE] * 2)
    for x, y in cover.outline:
        assert hypot(x / INCH - EDGE, y / INCH - EDGE) == pytest.approx(EDGE)
    assert len(set(cover.outline)) == 72
    for x, y in rule(cover, "hole"):
        assert hypot(x - EDGE, y - EDGE - 4) == pytest.approx(HOLE)
    assert rule(cover, "slit") == [pytest.approx((EDGE, EDGE + 4 + HOLE)),
                                   pytest.approx((EDGE, EDGE + 4 + HOLE + 6.363), abs=0.001)]


def test_a_cover_in_halves_is_half_the_round_and_a_seam(drawn: Drawn) -> None:
    half = drawn(WHEEL.replace("CLOTH", "narrow")).shape.panels[0]
    assert (half.count, half.mirrored) == (2, True)
    assert inches(half.width, half.height) == pytest.approx([EDGE + 0.5, 2 * EDGE])
    bow = [(x / INCH, y / INCH) for x, y in half.outline if x > 0]
    assert all(hypot(x - 0.5, y - EDGE) == pytest.approx(EDGE) for x, y in bow)
    assert max(x for x, _ in bow) == pytest.approx(EDGE + 0.5)
    assert [(0.0, 0.0), (0.0, half.height)] == [point for point in half.outline if point[0] == 0]
    for x, y in rule(half, "hole"):
        assert x >= 0.5 - 1e-9
        assert hypot(x - 0.5, y - EDGE - 4) == pytest.approx(HOLE)
    assert rule(half, "hole")[0] == pytest.approx((0.5, EDGE + 4 + HOLE))
    assert rule(half, "hole")[-1] == pytest.approx((0.5, EDGE + 4 - HOLE))
    assert [point[1] for point in half.outline[1:-1]] == sorted(point[1] for point in half.outline[1:-1])
    assert rule(half, "slit")[0] == pytest.approx((0.5, EDGE + 4 + HOLE))


def test_a_dished_cover_is_as_long_in_front_and_behind_as_the_slants_to_its_rim(drawn: Drawn) -> None:
    """A rim 5 lower: hypot(18 - 4 - 4.456, 5) = 10.77 in front, hypot(17.544, 5) = 18.24 behind; the cone that
    stands for both is a twelfth of an inch short of either."""
    made = drawn(WHEEL.replace("CLOTH", "wide").replace("tilt:", "rim_drop: 5 in, tilt:")).shape
    cover, frame = made.panels[0], made.wheel
    edge = frame.cover / 2 + frame.hem
    ys = [y * INCH for _, y in rule(cover, "hole")]
    top, low = max(ys), min(ys)
    assert inches(edge + frame.cover / 2 - top, low - (edge - frame.cover / 2)) == pytest.approx(
        [10.77, 18.24], abs=0.09)
