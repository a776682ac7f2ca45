"""No label covers another or leaves its page, and what a maker looks for is there."""

from __future__ import annotations

from itertools import combinations
from typing import Any

from hoopwright.render.drawing.letters import Box, text_box
from hoopwright.source.quantity import length_text

SVG = "{http://www.w3.org/2000/svg}"


def _boxes(tree: Any) -> list[tuple[str, Box]]:
    """The box of every line of text of a picture."""
    found = []
    for text in tree.iter(f"{SVG}text"):
        x, y, size = (float(text.attrib[key]) for key in ("x", "y", "font-size"))
        words, bold = text.text or "", text.get("font-weight") == "bold"
        box = text_box(x, y, words, size, text.attrib["text-anchor"], bold=bold)
        if "transform" in text.attrib:
            assert text.attrib["transform"].startswith("rotate(-90 ")
            box = Box(x + box.top - y, y - (box.right - x), x + box.bottom - y, y - (box.left - x))
        found.append((words, box))
    return found


def test_no_label_covers_another(cage: Any) -> None:
    for name, tree in cage.trees.items():
        for (one, a), (other, b) in combinations(_boxes(tree), 2):
            assert not a.meets(b), (name, one, other)


def test_every_label_lies_on_its_page(cage: Any) -> None:
    for name, tree in cage.trees.items():
        _, _, wide, high = map(float, tree.attrib["viewBox"].split())
        for words, box in _boxes(tree):
            assert box.left >= 0, (name, words)
            assert box.right <= wide, (name, words)
            assert box.top >= 0, (name, words)
            assert box.bottom <= high, (name, words)


def test_heights_and_girths_stand_beside_the_front_view(harbour: Any) -> None:
    said = harbour.texts("front")
    for hoop in harbour.plan.shape.hoops:
        assert said.count(hoop.id) == 2
        assert length_text(hoop.height, "inches") in said
        assert length_text(hoop.girth, "inches") in said
    assert "front gap 7 in" in said
    assert "door 32 in clear" in said
    assert "the hem must give 3 in to pass" in said


def test_the_skirt_over_it_is_told_beside_the_side_view(harbour: Any) -> None:
    said, skirt = " ".join(harbour.texts("side")), harbour.plan.shape.skirt
    for length in (skirt.front, skirt.side, skirt.back, skirt.hem_girth, skirt.off_floor):
        assert length_text(length, "inches") in said


def test_every_tape_is_charted_once_with_every_mark(cage: Any) -> None:
    said, units = cage.texts("tapes"), cage.plan.spec.units
    heads = " ".join(said)
    for tape in cage.plan.shape.tapes:
        assert tape.id in heads
        for mark in tape.marks:
            assert length_text(mark.at, units) in said
    assert "0" in said
    assert {"front", "back", "left", "right"} <= set(said)


def test_tapes_that_are_alike_share_a_strip(harbour: Any) -> None:
    said = harbour.texts("tapes")
    assert [words for words in said if words.startswith("T") and " and " in words] == [
        "T1 and T6", "T2 and T5", "T3 and T4"]


def test_every_cut_piece_is_told_with_its_length(cage: Any) -> None:
    said, units = cage.texts("coils"), cage.plan.spec.units
    for pack in cage.plan.supply.cutting.packs:
        for piece in pack.pieces:
            assert length_text(piece.length, units) in said
    assert any("bought" in words for words in said)


def test_the_band_shows_its_measures(harbour: Any) -> None:
    said, band = " ".join(harbour.texts("band")), harbour.plan.shape.band
    assert band is not None
    for length in (band.height, band.length, band.depth, band.channel, band.seam):
        assert length_text(length, "inches") in said
    assert "selvage" in said
    assert "fold" in said


def test_every_piece_of_cloth_is_told_with_its_size(cage: Any) -> None:
    units = cage.plan.spec.units
    pictures = [name for name in cage.trees if name == "band" or name.startswith("cloth")]
    said = " ".join(" ".join(cage.texts(name)) for name in pictures)
    for layout in cage.plan.supply.layouts:
        for placed in layout.placements:
            size = f"{length_text(placed.width, units)} × {length_text(placed.height, units)}"
            assert placed.part in said
            assert size in said


def test_the_hem_names_front_back_left_and_right(cage: Any) -> None:
    said = cage.texts("hem")
    assert {"FRONT", "BACK", "left", "right"} <= set(said)
    assert {tape.id for tape in cage.plan.shape.tapes} <= set(said)
