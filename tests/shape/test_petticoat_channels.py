"""Petticoats that carry their hoops in channels: gores, lines, tucks, casings, flounces, worked by hand.

A cone from 30 to 110 in over a height of 36: slant sqrt(36^2 + (80/2 pi)^2) = 38.2, half-angle 19.5 degrees;
every 5 of slant up from the hem the girth falls by 80 x 5/38.2 = 10.5.
"""

from __future__ import annotations

from itertools import pairwise
from math import asin, degrees, hypot, pi

import pytest

from hoopwright.shape.model import Shape

INCH = 0.0254
HEIGHT = 36 * INCH + 4 * INCH + INCH / 4 + INCH / 2
"""The waistline of the cone by hand: 36 in, 4 in off the floor, half a 1/2 in strip, half a 1 in band."""
CONE = f"""\
spec: 1
units: inches
wearer: {{stature: 5 ft 5 in, waist: 30 in, hip: 38 in, waist_height: {HEIGHT * 1000} mm}}
shape:
  line: {{kind: cone}}
  hem: {{girth: 110 in, off_floor: 4 in}}
  hoops: {{count: 6, spacing: from hem, every: 5 in}}
build:
  carried_by: channels
  hoops: {{material: strip}}
  panels: {{gores: 6, top: 30 in}}
  waistband: {{width: 1 in}}
materials:
  strip: {{grade: "spring steel, tempered", section: {{kind: flat, width: 1/2 in, thickness: 0.02 in}}}}
"""


@pytest.fixture(scope="module")
def cone(drawn) -> Shape:
    return drawn(CONE).shape


def test_the_slant_is_38_2_and_the_half_angle_19_5_degrees(cone: Shape) -> None:
    assert cone.petticoat is not None
    assert cone.petticoat.slant / INCH == pytest.approx(38.2, abs=0.05)
    assert degrees(cone.petticoat.half_angle) == pytest.approx(19.5, abs=0.05)


def test_hoops_every_5_of_slant_from_the_hem(cone: Shape) -> None:
    girths = [hoop.girth / INCH for hoop in reversed(cone.hoops)]
    assert girths == pytest.approx([110, 99.5, 89.0, 78.6, 68.1, 57.6], abs=0.06)
    assert sum(girths) == pytest.approx(502.9, abs=0.1)


def test_six_gores_are_6_at_the_top_and_19_3_8_at_the_hem(cone: Shape) -> None:
    panel = cone.panels[0]
    assert (panel.part, panel.count, panel.grain) == ("gore", 6, "up")
    (x0, _), (x1, _), (x2, top), (x3, _) = panel.outline

    def wide(y: float) -> float:
        return (x1 - x0) + ((x2 - x3) - (x1 - x0)) * y / top

    assert cone.petticoat is not None
    waist = top - cone.petticoat.head
    assert wide(waist) / INCH == pytest.approx(6.0, abs=1e-6)
    assert round(wide(panel.rules[-1].offset) / INCH * 8) / 8 == 19.375
    assert (waist - panel.rules[-1].offset) / INCH == pytest.approx(38.2, abs=0.05)


def test_lines_lie_5_apart_up_from_the_hem_and_run_from_seam_to_seam(cone: Shape) -> None:
    assert cone.petticoat is not None
    ups = [channel.up / INCH for channel in cone.petticoat.channels]
    assert [a - b for a, b in pairwise(ups)] == pytest.approx([5.0] * 5)
    assert ups[-1] == pytest.approx(0.375)
    for rule, hoop in zip(cone.panels[0].rules, cone.hoops, strict=True):
        length = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(rule.points))
        assert hoop.girth / 6 <= length <= 1.006 * hoop.girth / 6


def test_the_hem_is_rounded_off_as_an_arc_about_the_tip_of_the_cone(cone: Shape) -> None:
    assert cone.petticoat is not None
    tip = 110 / 80 * cone.petticoat.slant
    half = 110 * INCH / 12
    assert cone.petticoat.round_off == pytest.approx(tip - tip * (1 - (half / tip) ** 2) ** 0.5)
    assert cone.petticoat.round_off / INCH == pytest.approx(0.81, abs=0.01)


def test_six_tucks_3_4_deep_take_9(drawn) -> None:
    tucked = drawn(CONE.replace("panels: {gores: 6, top: 30 in}", "panels: {breadths: 3}")).shape
    assert tucked.petticoat is not None
    assert [channel.width / INCH for channel in tucked.petticoat.channels] == pytest.approx([0.75] * 6)
    assert tucked.petticoat.takes / INCH == pytest.approx(9.0)


def test_tucks_make_the_panel_longer_and_a_casing_does_not(cone: Shape, drawn) -> None:
    cased = drawn(CONE.replace("panels: {gores: 6, top: 30 in}",
                               "panels: {breadths: 3}\n  channels: {kind: applied casing}")).shape
    tucked = drawn(CONE.replace("panels: {gores: 6, top: 30 in}", "panels: {breadths: 3}")).shape
    assert (tucked.panels[0].height - cased.panels[0].height) / INCH == pytest.approx(9.0)
    assert cased.petticoat is not None
    assert cased.petticoat.takes == 0.0
    strip = cased.petticoat.channels[-1]
    assert strip.height / INCH == pytest.approx(0.75 + 2 * 0.25)
    assert strip.strip / INCH == pytest.approx(111)


def test_tuck_folds_lie_above_the_cloth_that_lower_tucks_take(drawn) -> None:
    tucked = drawn(CONE.replace("panels: {gores: 6, top: 30 in}", "panels: {breadths: 3}")).shape
    offsets = [rule.offset / INCH for rule in tucked.panels[0].rules]
    assert [a - b for a, b in pairwise(offsets)] == pytest.approx([6.5] * 5)


def test_a_tuck_pressed_down_lies_with_its_middle_on_the_hoops_line(drawn) -> None:
    """At the hem: 1/2 turned up, its middle 3/8 above that, stitches 3/8 above, the fold 3/4 above them."""
    tucked = drawn(CONE.replace("panels: {gores: 6, top: 30 in}", "panels: {breadths: 3}")).shape
    assert tucked.panels[0].rules[-1].offset / INCH == pytest.approx(0.5 + 0.375 + 0.375 + 0.75)


def test_a_flounce_gathered_double_on_110_is_220_long_and_cut_11_1_2_high(drawn) -> None:
    shape = drawn(CONE.replace("  waistband", "  flounce: {depth: 10 1/2 in}\n  waistband")).shape
    assert shape.petticoat is not None
    only, = shape.petticoat.flounces
    assert only.length / INCH == pytest.approx(220)
    assert only.height / INCH == pytest.approx(11.5)


def test_a_second_row_covers_the_head_of_the_first(drawn) -> None:
    shape = drawn(CONE.replace("  waistband", "  flounce: {depth: 10 in, rows: 2}\n  waistband")).shape
    assert shape.petticoat is not None
    first, second = shape.petticoat.flounces
    assert (second.up - first.up) / INCH == pytest.approx(10)
    assert second.girth / INCH == pytest.approx(110 - 80 * 10 / 38.19, abs=0.05)


def test_a_channel_for_a_10_mm_round_tube_is_19_7_mm(drawn) -> None:
    steel = 'grade: "spring steel, tempered", section: {kind: flat, width: 1/2 in, thickness: 0.02 in}'
    tube = CONE.replace(steel, "grade: polyethylene, section: {kind: tube, diameter: 10 mm, wall: 1.5 mm}")
    assert tube != CONE
    shape = drawn(tube).shape
    assert shape.petticoat is not None
    assert shape.petticoat.channels[0].width * 1000 == pytest.approx(19.7, abs=0.05)


def test_a_drawstring_runs_in_an_edge_as_wide_as_the_hips(drawn) -> None:
    shape = drawn(CONE.replace("panels: {gores: 6, top: 30 in}", "panels: {gores: 6, waist: drawstring}")).shape
    assert shape.petticoat is not None
    assert shape.petticoat.top / INCH == pytest.approx(38)
    assert shape.petticoat.drawstring / INCH == pytest.approx(38 + 0.5 / INCH)
    assert shape.petticoat.placket == 0.0


def test_a_dome_widens_its_gores_to_every_hoop(drawn) -> None:
    round_line = CONE.replace("{kind: cone}", "{kind: dome}")
    shape = drawn(round_line.replace(", spacing: from hem, every: 5 in", "")).shape
    assert shape.petticoat is not None
    for channel, hoop in zip(shape.petticoat.channels, shape.hoops, strict=True):
        assert channel.girth >= hoop.girth - 1e-9
    assert len(shape.panels[0].outline) > 4


def test_a_panel_is_symmetric_and_no_tape_is_drawn(cone: Shape) -> None:
    panel = cone.panels[0]
    for x, y in panel.outline:
        assert any(abs(panel.width - x - a) < 1e-9 and abs(y - b) < 1e-9 for a, b in panel.outline)
    assert cone.tapes == ()
    assert all(hoop.fixings == () and hoop.casing == 0.0 for hoop in cone.hoops)


def test_the_half_angle_agrees_with_radii_over_slant(cone: Shape) -> None:
    assert cone.petticoat is not None
    radii = (110 - 30) * INCH / (2 * pi)
    assert cone.petticoat.half_angle == pytest.approx(asin(radii / cone.petticoat.slant))
