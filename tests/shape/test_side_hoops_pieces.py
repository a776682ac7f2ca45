"""What a maker cuts for side hoops, worked by hand in inches: 12 from front to back, hips 14 wide, reaches 4, 6 1/2
and 8 at 4, 7 and 10 below the waist, a waist 10.34 wide, a 1 in band, 3/8 in strip, 1/2 in seams."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from math import dist, hypot
from types import SimpleNamespace

import pytest

from hoopwright.shape.model import Shape

INCH = 0.0254
SIDES = """\
spec: 1
units: inches
wearer: {stature: 5 ft 7 in, waist: 28 in, hip: 40 in, waist_height: 41 in, hip_rows: [
  {below_waist: 0 in, girth: 28 in, oval: 1.4}, {below_waist: 4 in, girth: 964.2188 mm, oval: 1.4}]}
shape: {ground_plan: {kind: pair, front_to_back: 12 in,
  hoops: [{drop: 4 in, reach: 4 in}, {drop: 7 in, reach: 6 1/2 in}, {drop: 10 in, reach: 8 in}]}}
build:
  carried_by: channels
  hoops: {material: strip}
  waistband: {material: twill, width: 1 in}
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 3/8 in, thickness: 0.02 in}}
"""
START = 10.337 / 2
"""Half the waist's width: an ellipse 28 round, 1.4 times as wide as deep."""
DOWN = (hypot(3.5, 11 - START), hypot(3.0, 2.5), hypot(3.0, 1.5))
"""Stretches of the outer panel's middle: 4 - 1/2 below the band's edge, out from the waist to 14/2 + 4, and on."""
Drawn = Callable[[str], SimpleNamespace]


@pytest.fixture(scope="module")
def sides(drawn: Drawn) -> Shape:
    return drawn(SIDES).shape


def inches(*metres: float) -> list[float]:
    return [one / INCH for one in metres]


def test_channels_lie_as_far_down_as_the_cloth_runs_over_them(sides: Shape) -> None:
    assert sides.sides is not None
    assert inches(*(one.down for one in sides.sides.channels)) == pytest.approx(
        [DOWN[0], DOWN[0] + DOWN[1], sum(DOWN)], abs=0.005)


def test_their_ends_lie_on_the_straight_inner_panel(sides: Shape) -> None:
    """From the band to 10 below the waist: hypot(9 1/2, 7 - 5.17) = 9.675; the others in the share of their drop."""
    assert sides.sides is not None
    long = hypot(9.5, 7 - START)
    assert inches(*(one.inner for one in sides.sides.channels)) == pytest.approx(
        [long * 3.5 / 9.5, long * 6.5 / 9.5, long], abs=0.005)


def test_the_outer_panels_edge_is_gathered_to_the_inner_one(sides: Shape) -> None:
    """Its edge slants out by half of what the channels grow: 15.87, 19.58, 22.10."""
    assert sides.sides is not None
    edge = DOWN[0] + hypot(DOWN[1], (19.58 - 15.87) / 2) + hypot(DOWN[2], (22.10 - 19.58) / 2)
    assert inches(sides.sides.ease) == pytest.approx([edge - hypot(9.5, 7 - START)], abs=0.01)


def test_panels_have_a_seam_at_the_band_and_a_turned_channel_below(sides: Shape) -> None:
    """The lowest line lies half a channel (5/16) and a seam above the cut edge."""
    outer, inner = sides.panels
    low = 0.625 / 2 + 0.5
    assert inches(outer.width, outer.height) == pytest.approx([22.10 + 1, low + sum(DOWN) + 0.5], abs=0.01)
    assert inches(inner.width, inner.height) == pytest.approx([13, low + hypot(9.5, 7 - START) + 0.5], abs=0.01)
    lines = {one.name: one for one in outer.rules}
    assert inches(*(lines[f"L{k} and R{k}"].offset for k in (1, 2, 3))) == pytest.approx(
        [low + DOWN[1] + DOWN[2], low + DOWN[2], low], abs=0.01)
    ties = inches(*(one.offset for one in inner.rules))
    assert ties == pytest.approx([low + (9.5 - at) / 9.5 * hypot(9.5, 7 - START) for at in (3.5, 6.5, 9.5)], abs=0.01)
    for one in inner.rules:
        assert inches(one.points[0][0], one.points[1][0]) == pytest.approx([0.5, 12.5])


def test_the_outer_panel_is_as_wide_as_each_channel_at_its_line(sides: Shape) -> None:
    outer = sides.panels[0]
    for one in outer.rules[:3]:
        (x0, y), (x1, _) = one.points
        at = sorted(x for x, high in outer.outline if abs(high - y) < 1e-9)
        assert inches(x0 - at[0], at[-1] - x1) == pytest.approx([0.5, 0.5])
    tops = [x for x, y in outer.outline if y == outer.height]
    assert inches(max(tops) - min(tops)) == pytest.approx([15.87 + 1], abs=0.01)


def test_hoops_stand_out_from_the_hip_to_both_sides(sides: Shape) -> None:
    for hoop in sides.hoops:
        sign, reach = (1 if hoop.id[0] == "L" else -1), (4, 6.5, 8)[int(hoop.id[1]) - 1]
        xs, ys = zip(*hoop.plan.path, strict=True)
        assert inches(max(sign * x for x in xs), min(sign * x for x in xs)) == pytest.approx(
            [7 + reach, 7], abs=0.001)
        assert inches(max(ys), min(ys)) == pytest.approx([6, -6])
        assert inches(hoop.height, hoop.plan.sideways) == pytest.approx(
            [41 - (4, 7, 10)[int(hoop.id[1]) - 1], sign * (7 + reach / 2)], abs=0.001)
        assert hoop.place == ("top", "body", "hem")[int(hoop.id[1]) - 1]
        real = hoop.real
        assert dist(real[0], real[-1]) == pytest.approx(12 * INCH)
        assert inches(real[0][0], real[-1][0]) == pytest.approx([sign * 7] * 2, abs=0.001)
        run = sum(dist(a, b) for a, b in pairwise(real))
        assert run == pytest.approx(hoop.cut, rel=2e-3)
        assert (hoop.start, hoop.end) == ((0.0, 0.5) if sign > 0 else (0.5, 1.0))


def test_ties_are_an_inch_longer_at_each_end_and_reach_from_end_to_end(sides: Shape) -> None:
    assert len(sides.ties) == 6
    for tie in sides.ties:
        assert inches(tie.length, tie.cut) == pytest.approx([12, 14])
        assert (tie.at, tie.to) == ((0.0, 0.5) if tie.hoop[0] == "L" else (0.5, 1.0))


def test_the_pocket_slit_is_8_in_where_there_is_room(drawn: Drawn, sides: Shape) -> None:
    """Else from a band's width below the edge to 1/4 above the first channel: 6.8 - 1 - 1/4 - 5/16."""
    assert sides.sides is not None
    assert inches(sides.sides.pocket) == pytest.approx([DOWN[0] - 1 - 0.25 - 0.3125], abs=0.01)
    deep = drawn(SIDES.replace("drop: 4 in", "drop: 8 1/2 in").replace("drop: 7 in", "drop: 9 in")).shape.sides
    assert inches(deep.pocket) == pytest.approx([8])


def test_the_hips_are_taken_where_they_are_widest_above_the_lowest_hoop(drawn: Drawn) -> None:
    """14 wide at 4 below the waist, narrower below."""
    bulge = SIDES.replace("oval: 1.4}]}", "oval: 1.4}, {below_waist: 8 in, girth: 34 in, oval: 1.4}]}")
    assert inches(drawn(bulge).shape.sides.hip) == pytest.approx([7], abs=0.001)


def test_the_skirt_over_them_goes_out_to_every_hoop_and_falls_straight(sides: Shape) -> None:
    """In front from the waist (7.38 deep) over hips 10 deep 4 lower, then 36 down to 1 off the floor; at the sides over
    the hoops and 30 down; its hem goes round two half ovals of 22.10 and 14 across the hips, in front and behind."""
    front = hypot(4, 5 - 7.384 / 2) + 36
    side = hypot(4, 11 - START) + hypot(3, 2.5) + hypot(3, 1.5) + 30
    assert inches(sides.skirt.front, sides.skirt.side, sides.skirt.back) == pytest.approx(
        [front, side, front], abs=0.01)
    assert inches(sides.skirt.hem_girth) == pytest.approx([2 * 22.10 + 2 * 14], abs=0.05)
