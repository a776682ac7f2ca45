"""One thing changed in the starter of every family: the difference tells it in shape, parts, shopping, cost, hours,
checks and tasks, with the right sign and of the right members, and done work that it undoes."""

from __future__ import annotations

import re
from collections import Counter
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from hoopwright.compare.difference import difference
from hoopwright.compare.model import Difference
from hoopwright.compare.trip import plan_trip
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan

STARTERS = Path(__file__).parents[2] / "specs" / "starters"
FAMILIES = {
    "round-cage-centimetres": ("girth: 265 cm", "girth: 275 cm", "count: 7, spacing", "count: 8, spacing"),
    "half-open-cage-centimetres": ("girth: 2.6 m", "girth: 2.7 m", "count: 8, spacing", "count: 9, spacing"),
    "thrown-back-cage-inches": ("girth: 105 in", "girth: 109 in", "count: 7, spacing", "count: 8, spacing"),
    "bustle-centimetres": ("hem: 20 cm}", "hem: 22 cm}", "count: 6, spacing", "count: 7, spacing"),
    "crinolette-inches": ("girth: 92 in", "girth: 95 in", "count: 13, spacing", "count: 14, spacing"),
    "cone-farthingale-inches": ("girth: 104 in", "girth: 108 in", "count: 5, spacing", "count: 6, spacing"),
    "hooped-petticoat-centimetres": ("girth: 260 cm", "girth: 270 cm", "count: 4, spacing", "count: 5, spacing"),
    "wheel-farthingale-inches": ("width: 36 in", "width: 38 in", "rings: 5", "rings: 6"),
    "side-hoops-centimetres": ("reach: 19 cm", "reach: 21 cm", "      - {drop: 28",
                               "      - {drop: 24 cm, reach: 18 cm}\n      - {drop: 28"),
}
WAIST = {"27 in": "28 in", "28 in": "29 in", "26 in": "27 in", "70 cm": "73 cm", "72 cm": "75 cm", "66 cm": "69 cm"}


@cache
def text(name: str) -> str:
    return (STARTERS / f"{name}.yaml").read_text(encoding="utf-8")


@cache
def plan(of: str) -> Plan:
    made = compile_spec(of.encode(), "cage.yaml")
    assert made.plan is not None, made.diagnostics
    return made.plan


def swapped(name: str, old: str, new: str) -> Difference:
    assert old in text(name)
    return difference(plan(text(name)), plan(text(name).replace(old, new, 1)))


def rise(found: Difference, section: str, what: str, part: str = "") -> float:
    """How much a value rises; 0 when nothing is told of it."""
    for one in found.of(section):
        if one.what == what and part in (one.was, one.now) and one.before and one.after:
            return float(one.after.value) - float(one.before.value)
    return 0.0


def risen(found: Difference, what: str) -> dict[str, float]:
    """By part, how much a value of the parts that both have rises."""
    return {one.name: float(one.after.value) - float(one.before.value)
            for one in found.of("parts") if one.what == what and one.before and one.after}


def measured(found: Difference) -> set[str]:
    """Tasks that are done by other measures."""
    return {one.now for one in found.of("tasks") if one.what == "measures" and one.kind == "changed"}


@pytest.mark.parametrize("name", FAMILIES)
def test_a_wider_hem(name: str) -> None:
    old, new, *_ = FAMILIES[name]
    found, before = swapped(name, old, new), plan(text(name))
    hem = [hoop.id for hoop in before.shape.hoops if hoop.place == "hem"]
    wide = risen(found, "to cut")
    assert hem
    assert all(wide[id] > 0.01 for id in hem)
    assert all(by > 0 for part, by in wide.items() if part[0] in "HLR" and part[1:].isdigit())
    assert rise(found, "shape", "width at the hem") + rise(found, "shape", "depth at the hem") > 0
    assert rise(found, "shape", "weight of the cage") > 0
    assert rise(found, "shape", "waist") == 0
    assert rise(found, "cost", "total") >= 0
    assert any("cut" in task for task in measured(found))
    assert not {"wash", "test-stock", "cut-waistband", "make-waistband"} & measured(found)
    assert not [one for one in found.of("parts") if one.kind != "changed"]


@pytest.mark.parametrize("name", FAMILIES)
def test_one_hoop_more(name: str) -> None:
    *_, old, new = FAMILIES[name]
    found, each = swapped(name, old, new), 2 if name.startswith("side") else 1
    hoops = {hoop.id for hoop in plan(text(name).replace(old, new, 1)).shape.hoops}
    came = {one.now for one in found.of("parts") if one.kind == "added"}
    assert len(came & hoops) == each
    assert not [part for part in came - hoops if "tie" not in part and "lacing" not in part]
    assert not [one for one in found.of("parts") if one.kind == "dropped"]
    assert rise(found, "shape", "hoops") == each
    assert rise(found, "shape", "weight of the cage") > 0
    assert rise(found, "hours", "in all") > 0
    assert rise(found, "cost", "total") >= 0
    hem = [hoop.id for hoop in plan(text(name)).shape.hoops if hoop.place == "hem"]
    assert not [one for one in found.of("parts") if one.was in hem and one.what == "to cut"]
    assert any(one.kind == "added" and one.now.startswith(("cut", "join", "mark", "sew", "thread", "case"))
               for one in found.of("tasks"))


@pytest.mark.parametrize("name", FAMILIES)
def test_a_wider_waist(name: str) -> None:
    old = next(of for of in WAIST if f"waist: {of}" in text(name))
    found = swapped(name, f"waist: {old}", f"waist: {WAIST[old]}")
    by = 0.03 if "cm" in old else 0.0254
    assert rise(found, "shape", "waist") == pytest.approx(by)
    if plan(text(name)).shape.petticoat is None or not plan(text(name)).shape.petticoat.drawstring:
        assert risen(found, "to cut")["waistband"] == pytest.approx(by)
        assert "cut-waistband" in measured(found)
    assert rise(found, "shape", "hoops") == 0
    assert not {"wash", "test-stock"} & measured(found)


@pytest.mark.parametrize("name", FAMILIES)
def test_thicker_stock(name: str) -> None:
    found = swapped(name, *thicker(name))
    assert [one for one in found.of("build") if one.what in ("stock's thickness", "stock's diameter")]
    assert rise(found, "shape", "weight of the cage") > 0
    assert not [one for one in found.of("parts") if one.what == "girth"]
    assert "test-stock" in measured(found)
    assert rise(found, "cost", "total") == 0


def thicker(name: str) -> tuple[str, str]:
    """Thickness or diameter of the stock as the starter says it, and a fifth more."""
    (which, number, unit), *_ = re.findall(r"section: .*(thickness|diameter): ([0-9.]+) (mm|in)", text(name))
    return f"{which}: {number} {unit}", f"{which}: {Decimal(number) * 6 / 5} {unit}"


@pytest.mark.parametrize(("name", "task", "old", "new", "measure"), [
    ("wheel-farthingale-inches", "cut-spokes", "width: 36 in", "width: 38 in", "wheel.spokes.cut"),
    ("wheel-farthingale-inches", "cut-roll", "length: 22 in", "length: 24 in", "wheel.roll_cut"),
    ("hooped-petticoat-centimetres", "cut-flounces", "fullness: 1.8", "fullness: 2", "petticoat.flounces.length"),
    ("cone-farthingale-inches", "cut-strips", "girth: 104 in", "girth: 108 in", "petticoat.channels.strip"),
    ("side-hoops-centimetres", "sew-left", "reach: 19 cm", "reach: 21 cm", "sides.channels.width"),
])
def test_done_work_of_cloth_and_frames_is_undone_when_its_measures_change(
        name: str, task: str, old: str, new: str, measure: str) -> None:
    ids = {one.id for one in plan(text(name)).work.tasks if one.id.startswith(task)}
    assert ids
    done = text(name) + f"progress: {{done: [{', '.join(sorted(ids))}]}}\n"
    found = difference(plan(done), plan(text(name).replace(old, new, 1)))
    told = {one.task: one for one in found.undone}
    assert set(told) == ids
    assert all(one.why == "measures" and measure in one.what for one in told.values())
    assert not difference(plan(done), plan(text(name))).undone


@pytest.mark.parametrize("currency", ["EUR", "USD"])
def test_a_cast_of_every_family_shops_together(currency: str) -> None:
    """No dearer than alone, shares that sum up, every piece of every plan cut once, and cloth for every panel."""
    cast = [(name, plan(text(name))) for name in FAMILIES if f" {currency}" in text(name)]
    trip, said = plan_trip(cast)
    assert trip is not None, said
    assert len(trip.designs) == len(cast) >= 4
    assert trip.total <= trip.alone == sum(one.supply.cost.total for _, one in cast)
    assert sum(design.pays for design in trip.designs) == trip.total
    cut = Counter(piece.part for pack in trip.packs for piece in pack.pieces)
    wanted = Counter(f"{design.letter} {piece.part}" for design in trip.designs
                     for pack in design.plan.supply.cutting.packs for piece in pack.pieces)
    assert cut == wanted
    laid = Counter(place.part for layout in trip.layouts for place in layout.placements)
    panels = Counter({f"{design.letter} {panel.part}": panel.count for design in trip.designs
                      for panel in design.plan.shape.panels})
    assert panels
    assert all(laid[part] == count for part, count in panels.items())


@pytest.mark.parametrize(("name", "noted", "old", "new", "parts"), [
    ("wheel-farthingale-inches", "done: [cut-spokes]", "width: 36 in", "width: 35 in", "S"),
    ("side-hoops-centimetres", "done: [cut-L3, cut-R3]", "reach: 19 cm", "reach: 18 cm", "LR"),
    ("hooped-petticoat-centimetres", "done: [wash], cut: {drawstring: 500 cm}", "fullness: 1.8", "fullness: 1.7", "d"),
])
def test_what_was_cut_for_a_frame_or_the_waist_serves_its_own_part(
        name: str, noted: str, old: str, new: str, parts: str) -> None:
    """Longer than wanted now: it is cut to what is wanted, and nothing is bought anew."""
    found = difference(plan(text(name) + f"progress: {{{noted}}}\n"), plan(text(name).replace(old, new, 1)))
    assert found.mending is not None
    assert found.mending.pieces
    assert {one.part[0] for one in found.mending.pieces} == set(parts)
    assert {(one.fate, one.serves) for one in found.mending.pieces} == {
        ("recut", one.part) for one in found.mending.pieces}
    assert found.mending.anew == ()
