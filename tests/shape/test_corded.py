"""Rows and breadths of a corded petticoat: where they lie, what is cut, what cannot be."""

from __future__ import annotations

from math import hypot, pi

import pytest

from hoopwright.compile import Compiled, compile_spec
from hoopwright.shape.model import CordedPetticoat

SPEC = """\
spec: 1
title: Rows
units: centimetres
wearer: {stature: 166 cm, waist: 70 cm, waist_height: 104 cm}
shape: {hem: {girth: 260 cm, off_floor: 14 cm}}
build:
  carried_by: cords
  panels: {material: cotton}
  cords: {material: cord, spacing: 6 mm, first_row: 2 cm, groups: [{cords: 10}, {cords: 5, spacing: 8 mm, gap: 4 cm}]}
materials:
  cotton: {kind: cloth, weight: 140 g/m2, width: 150 cm, shrinkage: 4 %}
  cord: {kind: cord, diameter: 3 mm, weight: 4.2 g/m}
"""


def made(old: str = "", new: str = "") -> Compiled:
    assert old in SPEC
    return compile_spec(SPEC.replace(old, new).encode() if old else SPEC.encode(), "rows.yaml")


def corded(old: str = "", new: str = "") -> CordedPetticoat:
    found = made(old, new)
    assert found.plan is not None, found.diagnostics
    assert found.plan.shape.corded is not None
    return found.plan.shape.corded


def codes(old: str, new: str) -> list[str]:
    return [one.code for one in made(old, new).diagnostics if one.severity.value == "error"]


def test_there_is_no_hoop_and_no_steel_anywhere() -> None:
    plan = made().plan
    assert plan is not None
    assert plan.shape.hoops == ()
    assert plan.assessment.weights.hoops == 0
    assert not {line.kind for line in plan.supply.shopping} & {"strip", "wire", "cane"}
    assert plan.joins == ()


def test_rows_are_measured_up_from_the_hem() -> None:
    rows = corded().rows
    assert [row.id for row in rows] == [f"C{k}" for k in range(1, 16)]
    ups = [0.02 + 0.006 * k for k in range(10)]
    ups += [ups[-1] + 0.04 + 0.008 * k for k in range(5)]
    assert [row.up for row in rows] == pytest.approx(ups)


def test_the_flat_lines_allow_for_the_rows_below() -> None:
    cloth = corded("first_row", "shrinkage: 5 %, first_row")
    for k, row in enumerate(cloth.rows):
        assert row.flat == pytest.approx((cloth.turning + row.up + (k + 0.5) * cloth.take_up) / 0.95)


def test_length_and_height_give_each_other() -> None:
    cloth = corded()
    drop = 1.04 - 0.0254 / 2 - 0.14
    assert cloth.length == pytest.approx(hypot(drop, (2.60 - 0.70) / (2 * pi)))
    again = corded("off_floor: 14 cm}", f"}}, length: {cloth.length * 100} cm")
    assert again.hem_height == pytest.approx(0.14)


def test_a_row_is_as_round_as_the_cone_there() -> None:
    cloth = corded()
    for row in cloth.rows:
        assert row.girth == pytest.approx(2.60 - (2.60 - 0.70) * row.up / cloth.length)


def test_a_measured_take_up_outranks_geometry() -> None:
    cloth = corded("first_row", "take_up: 2 mm, first_row")
    assert (cloth.take_up, cloth.measured) == (0.002, True)
    assert not corded().measured


def test_breadths_are_as_many_as_the_washed_cloth_asks_for() -> None:
    assert corded().count == 2
    assert corded("width: 150 cm", "width: 90 cm").count == 4
    assert codes("{material: cotton}", "{material: cotton, breadths: 1}") == ["breadths-too-few"]


def test_a_breadth_printed_like_the_cloth_is_cut_from_it() -> None:
    """A cloth narrower than the breadth by less than is printed was refused, with two equal numbers."""
    cloth, stated = "width: 150 cm, shrinkage: 4 %", "panels: {material: cotton, breadths: 2}"
    wide = corded().wide
    spec = SPEC.replace("panels: {material: cotton}", stated)
    assert stated in spec
    for short, count in ((0.0004, 0), (0.002, 1)):
        text = spec.replace(cloth, f"width: {(wide - short) * 100:.4f} cm, shrinkage: 0 %")
        found = [one.code for one in compile_spec(text.encode(), "rows.yaml").diagnostics]
        assert found.count("breadths-too-few") == count


def test_more_rows_than_there_is_room_for_are_told_with_how_many_fit() -> None:
    found = made("cords: 5, spacing: 8 mm, gap: 4 cm", "cords: 90, spacing: 1 cm, gap: 4 cm")
    [wrong] = [one for one in found.diagnostics if one.severity.value == "error"]
    assert wrong.code == "cords-too-high"
    fit = int(wrong.help.split("at most ")[1].split()[0])
    assert codes("cords: 5, spacing: 8 mm", f"cords: {fit}, spacing: 1 cm") == []
    assert codes("cords: 5, spacing: 8 mm", f"cords: {fit + 1}, spacing: 1 cm") == ["cords-too-high"]


@pytest.mark.parametrize(("old", "new", "code"), [
    ("spacing: 6 mm", "spacing: 3 mm", "cords-too-close"),
    ("gap: 4 cm", "gap: 2 mm", "cords-too-close"),
    ("off_floor: 14 cm}", "}, length: 20 cm", "hem-beyond-length"),
    ("off_floor: 14 cm}", "}, length: 2 m", "hem-beyond-length"),
    ("off_floor: 14 cm}", "off_floor: 14 cm}, length: 90 cm", "keys-clash"),
    ("off_floor: 14 cm", "off_floor: 110 cm", "height-above-waist"),
    ("girth: 260 cm", "girth: 60 cm", "hem-not-wider"),
    ("carried_by: cords", "carried_by: tapes", "carrier-clash"),
    ("  cords: {", "  hoops: {join: lap bound}\n  cords: {", "carrier-clash"),
    ("shape: {", "shape: {ground_plan: oval, ", "carrier-clash"),
])
def test_what_cannot_be_is_told(old: str, new: str, code: str) -> None:
    assert code in codes(old, new)
