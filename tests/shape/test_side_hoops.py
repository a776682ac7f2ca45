"""Side hoops: worked numbers of half ovals, their width against a door, panels, and what is impossible."""

from __future__ import annotations

import pytest

from hoopwright.shape.curves import bow
from hoopwright.shape.curves.ellipse import perimeter
from hoopwright.shape.draw import draw

INCH = 0.0254
HIPS = perimeter(7.0, 5.0)
"""Girth of hips 14 in wide and 10 deep, in."""
SPEC = f"""\
spec: 1
units: inches
wearer: {{stature: 5 ft 7 in, waist: 28 in, hip: 40 in,
  hip_rows: [{{below_waist: 0 in, girth: 28 in, oval: 1.4}},
    {{below_waist: 8 in, girth: {HIPS:.6f} in, oval: 1.4}}]}}
shape: {{ground_plan: {{kind: pair, front_to_back: 12 in,
  hoops: [{{drop: 4 in, reach: 4 in}}, {{drop: 7 in, reach: 6 1/2 in}}, {{drop: 10 in, reach: 8 in}}]}}}}
build: {{carried_by: channels}}
limits: {{door: 32 in}}
"""


def test_channels_of_half_ovals_and_steels_half_an_inch_shorter(drawn) -> None:
    pair = drawn(SPEC).shape.sides
    assert pair is not None
    assert [one.width / INCH for one in pair.channels] == pytest.approx([15.9, 19.6, 22.1], abs=0.05)
    assert [(one.width - one.steel) / INCH for one in pair.channels] == pytest.approx([0.5] * 3)


def test_hips_14_in_wide_are_30_across_and_leave_an_inch_each_side_of_a_32_in_door(drawn) -> None:
    shape = drawn(SPEC).shape
    assert shape.sides is not None
    assert shape.sides.across == pytest.approx(30 * INCH, abs=1e-6)
    check = next(check for check in shape.checks if check.code == "door-width")
    assert check.result == "holds"
    assert check.limit is not None
    assert (check.limit - shape.sides.across) / 2 == pytest.approx(1 * INCH, abs=1e-6)


def test_wider_than_the_door_is_a_check_that_fails_and_no_error(drawn) -> None:
    shape = drawn(SPEC.replace("door: 32 in", "door: 29 in")).shape
    assert next(check for check in shape.checks if check.code == "door-width").result == "fails"
    unstated = drawn(SPEC.replace("limits: {door: 32 in}\n", "").replace("reach: 8 in", "reach: 12 in")).shape
    assert next(check for check in unstated.checks if check.code == "door-width").result == "marginal"


def test_left_and_right_mirror_each_other(drawn) -> None:
    shape = drawn(SPEC).shape
    for left, right in zip(shape.hoops[:3], shape.hoops[3:], strict=True):
        assert (left.cut, left.height, left.girth) == (right.cut, right.height, right.girth)
        mirrored = [(-x, y) for x, y in reversed(left.plan.path)]
        for point, other in zip(mirrored, right.plan.path, strict=True):
            assert point == pytest.approx(other)


def test_a_steel_by_itself_is_an_elastica_of_its_length_at_the_inner_panels_width(drawn) -> None:
    shape = drawn(SPEC).shape
    assert shape.sides is not None
    for one in shape.sides.channels:
        assert one.stands == pytest.approx(bow.of_length(one.steel, 12 * INCH).reach)
    tie = next(tie for tie in shape.ties if tie.hoop == "L2")
    assert tie.length == pytest.approx(12 * INCH)
    assert tie.pull == pytest.approx(bow.of_length(shape.hoop("L2").cut, 12 * INCH).pull)


def test_panels_are_as_wide_as_channels_and_inner_width_with_seams(drawn) -> None:
    shape = drawn(SPEC).shape
    assert shape.sides is not None
    outer, inner = shape.panels
    seam = 0.5 * INCH
    assert outer.width == pytest.approx(shape.sides.channels[-1].width + 2 * seam)
    assert inner.width == pytest.approx(12 * INCH + 2 * seam)
    for rule, one in zip(outer.rules, shape.sides.channels, strict=False):
        assert rule.points[-1][0] - rule.points[0][0] == pytest.approx(one.width)


def test_the_pocket_slit_ends_above_the_first_channel(drawn, make) -> None:
    shape = drawn(SPEC).shape
    assert shape.sides is not None
    slit, first = shape.panels[0].rules[-1], shape.panels[0].rules[0]
    assert slit.name == "pocket slit"
    assert min(y for _, y in slit.points) > first.points[0][1] + shape.sides.channel / 2
    shape_, found = draw(make.yaml(
        SPEC.replace("carried_by: channels", "carried_by: channels, side_hoops: {pocket_slit: 12 in}")
    ))
    assert shape_ is None
    assert [finding.code for finding in found] == ["pocket-too-long"]


def test_the_skirt_is_longer_at_the_sides(drawn) -> None:
    skirt = drawn(SPEC).shape.skirt
    assert skirt.side > max(skirt.front, skirt.back)
