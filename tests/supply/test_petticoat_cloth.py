"""The cloth of petticoats: the worked flounce, gores head to tail, casings, a drawstring."""

from __future__ import annotations

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.machine import plan_json

INCH = 0.0254
CONE = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 30 in, hip: 38 in, waist_height: 41 in}
shape:
  line: {kind: cone}
  hem: {girth: 110 in, off_floor: 4 in}
  hoops: {count: 6, spacing: from hem, every: 5 in}
build:
  carried_by: channels
  flounce: {depth: 10 1/2 in, material: lawn}
  PANELS
materials:
  lawn: {kind: cloth, weight: 70 g/m2, width: 44 in, sold: [{per: 1 yd, step: 1 in, price: 3 USD}]}
"""
WASHED = CONE.replace("width: 44 in,", "width: 44 in, shrinkage: 0 %,")


def planned(panels: str, spec: str = CONE) -> Plan:
    found = compile_spec(spec.replace("PANELS", panels).encode(), "petticoat.yaml")
    assert found.plan is not None, found.diagnostics
    return found.plan


@pytest.fixture(scope="module")
def cone() -> Plan:
    return planned("panels: {gores: 6}", WASHED)


def test_a_flounce_of_220_takes_six_strips_of_44_in_cloth_and_69_in_of_it(cone: Plan) -> None:
    """Cloth 44 usable less seams 43: five strips give 215, so six; each cut 11 1/2 high: 69."""
    layout = next(layout for layout in cone.supply.layouts if layout.material == "lawn")
    strips = [place for place in layout.placements if place.part == "flounce 1"]
    assert len(strips) == 6
    assert {round(place.height / INCH, 6) for place in strips} == {11.5}
    assert layout.need / INCH == pytest.approx(69)
    sewn = sum(place.width for place in strips) - 6 * INCH
    assert sewn / INCH == pytest.approx(220)


def test_six_gores_are_laid_head_to_tail(cone: Plan) -> None:
    layout = next(layout for layout in cone.supply.layouts if layout.material == "calico")
    gores = [place for place in layout.placements if place.part == "gore"]
    assert len(gores) == 6
    panel = cone.shape.panels[0]
    assert layout.need < 6 * panel.height / 2 + 20 * INCH, "side by side, two to a row, they take three rows"
    for gore in gores:
        assert gore.width == pytest.approx(panel.width, abs=1e-4)


def test_nap_keeps_gores_from_being_turned() -> None:
    """Head to tail two gores of 19 5/8 and 5 7/8 in lie within 32 1/2 in; with a nap only one does."""
    needs = []
    for nap in ("true", "false"):
        plush = f"  plush: {{kind: cloth, weight: 200 g/m2, width: 34 in, nap: {nap}, sold: [{{per: 1 yd}}]}}\n"
        plan = planned("panels: {gores: 6, material: plush}\n  channels: {material: twill}", CONE + plush)
        needs.append(next(one.need for one in plan.supply.layouts if one.material == "plush"))
    assert needs[0] == pytest.approx(2 * needs[1])


def test_a_cloth_too_narrow_for_a_gore_is_an_error() -> None:
    text = CONE.replace("PANELS", "panels: {gores: 3, material: lawn}")
    text = text.replace("width: 44 in", "width: 30 in")
    found = compile_spec(text.encode(), "petticoat.yaml")
    assert "cloth-too-narrow" in {one.code for one in found.diagnostics}
    assert found.plan is None


def test_casings_of_tape_come_off_the_roll_and_no_cloth_strips_are_cut() -> None:
    plan = planned("channels: {material: twill}")
    pieces = {piece.part: piece.length for pack in plan.supply.cutting.packs for piece in pack.pieces}
    assert pieces["casing H6"] / INCH == pytest.approx(111)
    laid = {place.part for layout in plan.supply.layouts for place in layout.placements}
    assert not {part for part in laid if part.startswith("casing")}


def test_a_drawstring_is_cut_and_no_fastening_is_bought() -> None:
    plan = planned("panels: {gores: 6, waist: drawstring}")
    assert "hook and bar" not in {line.item for line in plan.supply.shopping}
    pieces = {piece.part: piece.length for pack in plan.supply.cutting.packs for piece in pack.pieces}
    assert pieces["drawstring"] == pytest.approx(38 * INCH + 0.5)
    assert "waistband" not in pieces


def test_the_machine_readable_plan_lists_every_piece(cone: Plan) -> None:
    text = plan_json(cone)
    assert '"part": "gore"' in text
    assert '"part": "flounce 1"' in text
    assert '"tapes": []' in text
