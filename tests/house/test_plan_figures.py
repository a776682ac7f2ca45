"""Every committed plan has the figures its family needs, shows each of them, and no label in them covers another."""

from __future__ import annotations

import json
import re
from itertools import combinations
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from hoopwright.render.drawing.letters import Box, text_box
from hoopwright.source.quantity import length_text

SVG = "{http://www.w3.org/2000/svg}"
ROOT = Path(__file__).parents[2]
PLANS = sorted(path.parent for path in (ROOT / "specs").glob("*/plan.json"))
VIEWS = {"front", "side", "hem"}
OF_FAMILY = {"wheel": {"spokes"}, "side_hoops": {"steels"}, "petticoat": {"strips"}}


def _needed(plan: dict[str, Any]) -> set[str]:
    """The figures a plan needs, by what its design has."""
    found = set(VIEWS)
    for key, names in OF_FAMILY.items():
        found |= names if key in plan else set()
    found |= {"coils"} if plan["hoops"] else {"rows"}
    found |= {"tapes", "gauge-1"} if plan["tapes"] else set()
    found |= {"ties"} if plan["ties"] and "side_hoops" not in plan else set()
    found |= {"band"} if any(piece["part"] == "band" for piece in plan["cloth"]) else set()
    found |= {f"panel-{number}" for number, _ in enumerate(_panels(plan), 1)}
    return found


def _panels(plan: dict[str, Any]) -> list[dict[str, Any]]:
    """The panels of the garment itself: a sample is a plain rectangle."""
    return [panel for panel in plan.get("panels", []) if not panel["part"].startswith("sample")]


def _read(folder: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((folder / "plan.json").read_text("utf-8"))
    return found


def _texts(path: Path) -> list[tuple[str, Box]]:
    """Every line of text of a picture and the box it fills."""
    found = []
    for text in ElementTree.fromstring(path.read_text("utf-8")).iter(f"{SVG}text"):
        x, y, size = (float(text.attrib[key]) for key in ("x", "y", "font-size"))
        words, bold = text.text or "", text.get("font-weight") == "bold"
        box = text_box(x, y, words, size, text.attrib["text-anchor"], bold=bold)
        if "transform" in text.attrib:
            box = Box(x + box.top - y, y - (box.right - x), x + box.bottom - y, y - (box.left - x))
        found.append((words, box))
    return found


@pytest.mark.parametrize("folder", PLANS, ids=lambda folder: folder.name)
def test_the_figures_of_the_family_exist_and_are_shown(folder: Path) -> None:
    page = (folder / "plan.md").read_text("utf-8")
    drawn = {path.stem for path in (folder / "figures").glob("*.svg")}
    assert _needed(_read(folder)) <= drawn
    shown = set(re.findall(r"\(figures/([\w-]+)\.svg\)", page))
    assert shown == drawn


@pytest.mark.parametrize("folder", PLANS, ids=lambda folder: folder.name)
def test_every_cut_piece_is_drawn_with_its_measures(folder: Path) -> None:
    """Panels with both measures and every line's place, petticoat strips, spokes and steels with their lengths."""
    plan = _read(folder)
    units = plan["units"]

    def said(figure: str) -> str:
        return " ".join(words for words, _ in _texts(folder / "figures" / f"{figure}.svg"))

    def mm(value: float) -> str:
        return length_text(value / 1000, units)

    for number, panel in enumerate(_panels(plan), 1):
        words = said(f"panel-{number}")
        for value in (panel["width_mm"], panel["height_mm"]):
            assert mm(value) in words
        for line in panel["lines"]:
            assert line["name"] in words
            (_, y1), (_, y2) = line["points"][0], line["points"][-1]
            assert mm(line["up_mm"] if y1 == y2 else min(y for _, y in line["points"])) in words
    for one in plan.get("petticoat", {}).get("channels", []):
        assert not one["strip_mm"] or f"{mm(one['strip_mm'])} × {mm(one['strip_height_mm'])}" in said("strips")
    for one in plan.get("petticoat", {}).get("flounces", []):
        assert f"{mm(one['length_mm'])} × {mm(one['height_mm'])}" in said("strips")
    for spoke in plan.get("wheel", {}).get("spokes", []):
        words = said("spokes")
        assert mm(spoke["cut_mm"]) in words
        assert all(mm(mark["at_mm"]) in words for mark in spoke["marks"][1:])
    for one in plan.get("side_hoops", {}).get("channels", []):
        for key in ("steel_mm", "length_mm", "reach_mm", "by_itself_mm"):
            assert mm(one[key]) in said("steels")


@pytest.mark.parametrize("folder", PLANS, ids=lambda folder: folder.name)
def test_front_and_side_show_the_body_and_no_label_covers_another(folder: Path) -> None:
    for path in sorted((folder / "figures").glob("*.svg")):
        text = path.read_text("utf-8")
        if path.stem in ("front", "side"):
            assert 'fill="#ededed"' in text
        if path.stem.startswith("gauge-"):
            continue
        _, _, wide, high = map(float, re.findall(r'viewBox="([^"]*)"', text)[0].split())
        texts = _texts(path)
        for words, box in texts:
            assert 0 <= box.left <= box.right <= wide, (path, words)
            assert 0 <= box.top <= box.bottom <= high, (path, words)
        for (one, a), (other, b) in combinations(texts, 2):
            assert not a.meets(b), (path, one, other)
