"""Drawings are to scale: coordinates read back from the pictures give the plan's own measures."""

from __future__ import annotations

from typing import Any

import pytest

SVG = "{http://www.w3.org/2000/svg}"
HALF = {"inches": 0.0254, "centimetres": 0.01}


def _per_metre(cage: Any, name: str) -> float:
    """User units a metre, from the filled half of the picture's scale bar and the number that ends it."""
    bar = cage.rects(name, "scale")[0]
    texts = [text for text in cage.tree(name).iter(f"{SVG}text")
             if float(text.attrib["y"]) == pytest.approx(bar["y"] + 18, abs=0.01)
             and float(text.attrib["x"]) == pytest.approx(bar["x"] + bar["width"], abs=0.01)]
    (number,) = [int(text.text or "") for text in texts]
    return float(bar["width"] / (number * HALF[cage.plan.spec.units]))


@pytest.mark.parametrize("name", ["front", "side"])
def test_hoops_are_as_wide_and_as_high_as_in_the_plan(cage: Any, name: str) -> None:
    scale, hoops = _per_metre(cage, name), cage.plan.shape.hoops
    bars = cage.rects(name, "hoop")
    assert len(bars) == len(hoops)
    floor = bars[0]["y"] + bars[0]["height"] / 2 + hoops[0].height * scale
    for bar, hoop in zip(bars, hoops, strict=True):
        size = hoop.plan.width if name == "front" else hoop.plan.depth
        assert bar["width"] / scale == pytest.approx(size, abs=1e-4)
        assert (floor - bar["y"] - bar["height"] / 2) / scale == pytest.approx(hoop.height, abs=1e-4)


def test_the_cage_stands_in_the_middle_of_the_page(cage: Any) -> None:
    _, _, wide, _ = map(float, cage.tree("front").attrib["viewBox"].split())
    for bar in cage.rects("front", "hoop"):
        assert bar["x"] + bar["width"] / 2 == pytest.approx(wide / 2, abs=0.002)


def test_the_door_stands_at_its_clear_width(harbour: Any) -> None:
    scale = _per_metre(harbour, "front")
    jambs = sorted(float(line.attrib["x1"]) for line in harbour.tree("front").iter(f"{SVG}line")
                   if line.get("stroke-dasharray") == "9 4")
    assert len(jambs) == 2
    assert (jambs[1] - jambs[0]) / scale == pytest.approx(32 * 0.0254, abs=1e-4)


def test_the_hem_from_above_is_to_scale(cage: Any) -> None:
    scale, hem = _per_metre(cage, "hem"), cage.plan.shape.hoops[-1]
    widest = max(float(e.attrib["rx"]) for e in cage.tree("hem").iter(f"{SVG}ellipse"))
    deepest = max(float(e.attrib["ry"]) for e in cage.tree("hem").iter(f"{SVG}ellipse"))
    assert 2 * widest / scale == pytest.approx(hem.plan.width, abs=1e-4)
    assert 2 * deepest / scale == pytest.approx(hem.plan.depth, abs=1e-4)


def test_tapes_end_at_their_places_on_the_hem(harbour: Any) -> None:
    scale, plan = _per_metre(harbour, "hem"), harbour.plan
    ring = next(e for e in harbour.tree("hem").iter(f"{SVG}ellipse") if e.get("stroke-width") == "2.4")
    cx, cy = float(ring.attrib["cx"]), float(ring.attrib["cy"])
    dots = [(float(e.attrib["cx"]), float(e.attrib["cy"])) for e in harbour.tree("hem").iter(f"{SVG}ellipse")
            if e.get("rx") == "3.2"]
    places = [(fixing.at[0], fixing.at[1]) for fixing in plan.shape.hoops[-1].fixings]
    assert [((x - cx) / scale, (y - cy) / scale) for x, y in dots] == [
        (pytest.approx(left, abs=1e-4), pytest.approx(ahead, abs=1e-4)) for left, ahead in places]


def test_a_left_tape_is_on_the_right_of_the_page_where_the_wearer_faces_the_reader(harbour: Any) -> None:
    words = {text.text: float(text.attrib["x"]) for text in harbour.tree("hem").iter(f"{SVG}text")}
    heights = {text.text: float(text.attrib["y"]) for text in harbour.tree("hem").iter(f"{SVG}text")}
    assert words["T2"] > words["T5"]
    assert words["left"] > words["right"]
    assert heights["FRONT"] > heights["BACK"]
    assert heights["T1"] > heights["T3"]
    front = {text.text: float(text.attrib["x"]) for text in harbour.tree("front").iter(f"{SVG}text")}
    assert front["T1"] > front["T6"]
    side = {text.text: float(text.attrib["x"]) for text in harbour.tree("side").iter(f"{SVG}text")}
    assert side["T1"] < side["T3"]


def test_chart_marks_lie_at_their_distances_from_zero(harbour: Any) -> None:
    scale = _per_metre(harbour, "tapes")
    lines = [{key: float(line.attrib[key]) for key in ("x1", "x2", "y1", "stroke-width")}
             for line in harbour.tree("tapes").iter(f"{SVG}line")]
    zeros = sorted((line for line in lines if line["stroke-width"] == 2.4), key=lambda line: line["x1"])
    for zero, tape in zip(zeros, harbour.plan.shape.tapes[:3], strict=True):
        marks = sorted(line["y1"] for line in lines
                       if line["stroke-width"] == 1.6 and abs(line["x1"] - zero["x1"] - 4) < 0.01)
        assert [(y - zero["y1"]) / scale for y in marks] == [
            pytest.approx(mark.at, abs=1e-4) for mark in tape.marks]


def test_bars_share_their_packs_out_by_each_materials_own_scale(cage: Any) -> None:
    packs = cage.plan.supply.cutting.packs
    materials = list(dict.fromkeys(pack.material for pack in packs))
    scales = cage.rects("coils", "scale")
    assert len(scales) == len(materials)
    above = 0.0
    for material, bar in zip(materials, scales, strict=True):
        last = next(text for text in cage.tree("coils").iter(f"{SVG}text")
                    if float(text.attrib["y"]) == pytest.approx(bar["y"] + 18, abs=0.01)
                    and float(text.attrib["x"]) == pytest.approx(bar["x"] + bar["width"], abs=0.01))
        scale = bar["width"] / (int(last.text or "") * HALF[cage.plan.spec.units])
        mine = [pack for pack in packs if pack.material == material]
        for kind, metres in (("piece", sum(piece.length for pack in mine for piece in pack.pieces)),
                             ("left", sum(pack.washed - sum(p.length for p in pack.pieces) for pack in mine))):
            wide = sum(rect["width"] for rect in cage.rects("coils", kind) if above < rect["y"] < bar["y"])
            assert wide / scale == pytest.approx(metres, rel=1e-3, abs=2 / scale)
        above = bar["y"]


def test_equal_bars_for_equal_lengths(harbour: Any) -> None:
    strips = [pack for pack in harbour.plan.supply.cutting.packs if pack.material == "strip"]
    lengths = [piece.length for pack in strips for piece in pack.pieces]
    widths = [bar["width"] for bar in harbour.rects("coils", "piece")][:len(lengths)]
    scale = widths[0] / lengths[0]
    assert widths == [pytest.approx(length * scale, abs=0.002) for length in lengths]
    assert scale == pytest.approx(452 / max(pack.pack for pack in strips), rel=1e-4)


def test_a_folded_bar_draws_all_of_its_pack(crowded: Any) -> None:
    packs = [pack for pack in crowded.plan.supply.cutting.packs if pack.material == "braid"]
    assert len(packs) == 1
    first = next(text for text in crowded.tree("coils").iter(f"{SVG}text") if text.text == "braid")
    bars = [bar for kind in ("piece", "left") for bar in crowded.rects("coils", kind)
            if bar["y"] > float(first.attrib["y"])]
    rows = {bar["y"] for bar in bars}
    assert len(rows) > 1
    whole = [sum(bar["width"] for bar in bars if bar["y"] == row) for row in sorted(rows)]
    assert whole[:-1] == [pytest.approx(452, abs=0.01)] * (len(rows) - 1)
    total = sum(piece.length for piece in packs[0].pieces)
    scale = sum(bar["width"] for bar in bars) / packs[0].washed
    pieces = sum(bar["width"] for bar in crowded.rects("coils", "piece") if bar["y"] >= min(rows))
    assert pieces / scale == pytest.approx(total, rel=1e-4)


def test_strips_lie_on_the_cloth_where_the_layout_has_them(harbour: Any) -> None:
    layout = harbour.plan.supply.layouts[0]
    (cloth,), strips = harbour.rects("band", "cloth"), harbour.rects("band", "strip")
    scale = cloth["width"] / layout.width
    assert cloth["height"] / scale == pytest.approx(layout.buy * 0.97, abs=1e-4)
    assert len(strips) == len(layout.placements)
    for strip, placed in zip(strips, layout.placements, strict=True):
        got = ((strip["x"] - cloth["x"]) / scale, (strip["y"] - cloth["y"]) / scale,
               strip["width"] / scale, strip["height"] / scale)
        assert got == pytest.approx((placed.x, placed.y, placed.width, placed.height), abs=1e-4)
