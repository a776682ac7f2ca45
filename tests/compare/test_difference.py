"""What differs between two plans: nothing for the same design however it is written, the same seen from both
sides, parts paired by name, place and order, and done work that a change undoes."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.compare.difference import difference
from hoopwright.compare.machine import difference_json
from hoopwright.compare.markdown import markdown
from hoopwright.compare.model import Difference
from hoopwright.compare.pairing import paired
from hoopwright.compare.words import text
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer

BASE: dict[str, Any] = {
    "spec": 1, "units": "inches",
    "wearer": {"stature": "66 in", "waist": "28 in", "hip": "40 in"},
    "shape": {"hem": {"girth": "110 in", "off_floor": "7 in"}, "hoops": {"count": 6}},
    "build": {"hem_band": {"depth": "8 in"}},
    "load": [{"name": "skirt", "weight": "4 lb"}],
    "materials": {
        "strip": {"grade": "spring steel, tempered",
                  "section": {"kind": "flat", "width": "3/8 in", "thickness": "0.042 in"},
                  "sold": [{"length": "50 ft", "price": "19 USD"}]},
        "cane": {"grade": "rattan", "section": {"kind": "round", "diameter": "6 mm"}},
        "calico": {"kind": "cloth", "weight": "140 g/m2", "width": "45 in",
                   "sold": [{"per": "1 yd", "price": "4.20 USD"}]},
    },
}
BASE["build"]["hoops"] = {"material": "strip"}


@cache
def planned(text: str) -> Plan:
    run = compile_spec(text.encode(), "cage.yaml")
    assert run.plan is not None, run.diagnostics
    return run.plan


def plan(**changes: Any) -> Plan:
    from hoopwright.source.overlay import merged

    return planned(json.dumps(merged(BASE, changes)))


def diff(**changes: Any) -> Difference:
    return difference(plan(), plan(**changes))


CHANGES: list[dict[str, Any]] = [
    {},
    {"shape": {"hoops": {"count": 7}}},
    {"shape": {"hem": {"girth": "104 in"}}},
    {"build": {"hoops": {"material": "cane", "join": "lap bound"}}},
    {"build": {"tapes": {"count": 7}}},
    {"shape": {"hoops": {"names": ["", "hip", "knee"]}}},
    {"wearer": {"waist": "30 in"}, "limits": {"budget": "10 USD"}},
    {"shape": {"line": {"kind": "cone"}, "hoops": {"count": 4, "names": ["knee"]}}},
]


@given(st.sampled_from(CHANGES), st.sampled_from(CHANGES))
@settings(max_examples=30, deadline=None)
def test_seen_from_the_other_side_each_change_is_turned_round(
    one: dict[str, Any], other: dict[str, Any]
) -> None:
    there, back = difference(plan(**one), plan(**other)), difference(plan(**other), plan(**one))
    assert tuple(change.mirrored() for change in there.changes) == back.changes
    assert there.empty == (one == other)


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: "-".join(change) or "none")
def test_a_plan_does_not_differ_from_itself(change: dict[str, Any]) -> None:
    found = difference(plan(**change), plan(**change))
    assert found.empty
    assert "nothing differs" in text(found, ("a", "b"), Printer("inches", "USD"))


def test_other_units_and_another_order_of_keys_are_no_change() -> None:
    metric: dict[str, Any] = {
        "materials": dict(reversed(BASE["materials"].items())),
        "load": [{"weight": "64 oz", "name": "skirt"}],
        "build": {"hoops": {"material": "strip"}, "hem_band": {"depth": "20.32 cm"}},
        "shape": {"hoops": {"count": 6}, "hem": {"off_floor": "177.8 mm", "girth": "2.794 m"}},
        "wearer": {"hip": "101.6 cm", "waist": "71.12 cm", "stature": "167.64 cm"},
        "units": "centimetres", "spec": 1,
    }
    metric["materials"]["strip"] = {
        "sold": [{"price": "19 USD", "length": "1524 cm"}],
        "section": {"thickness": "1.0668 mm", "width": "9.525 mm", "kind": "flat"},
        "grade": "spring steel, tempered"}
    assert difference(plan(), planned(json.dumps(metric))).changes == ()


def changed(found: Difference, section: str) -> set[tuple[str, str]]:
    return {(change.name, change.what) for change in found.changes if change.section == section}


def test_a_hem_of_another_girth_shows_in_shape_parts_and_cutting() -> None:
    found = diff(shape={"hem": {"girth": "104 in"}})
    [hem] = [one for one in found.of("shape") if one.what == "hem girth"]
    assert hem.before is not None
    assert hem.after is not None
    assert (hem.before.value, hem.after.value) == pytest.approx((2.794, 2.6416))
    assert {("H6", "to cut"), ("H6", "girth"), ("hem band", "length")} <= changed(found, "parts")
    assert ("cut-H6", "measures") in changed(found, "tasks")
    assert ("wash", "measures") not in changed(found, "tasks")


def test_one_more_hoop_is_added_between_and_the_others_keep_their_pairs() -> None:
    found = diff(shape={"hoops": {"count": 7}})
    came = [one for one in found.changes if one.kind == "added" and one.section == "parts"]
    assert len(came) == 1
    twins = paired(plan(), plan(shape={"hoops": {"count": 7}}))
    pairs = {hoop: twins.twin(hoop) for hoop in ("H1", "H2", "H3", "H4", "H5", "H6")}
    assert (pairs["H1"], pairs["H5"], pairs["H6"]) == ("H1", "H6", "H7")
    assert list(pairs.values()) == sorted(set(pairs.values()), key=str)


def test_hoops_pair_by_the_makers_own_names_first() -> None:
    names = {"shape": {"hoops": {"names": ["", "", "knee"]}}}
    moved = {"shape": {"hoops": {"names": ["", "", "", "knee"]}}}
    found = difference(plan(**names), plan(**moved))
    assert {(one.was, one.now) for one in found.of("parts") if "knee" in (one.was, one.now)} == {
        ("knee", "knee")}


def test_a_check_is_told_when_its_result_changes_and_not_when_its_value_does() -> None:
    tight = diff(limits={"weight": "1 lb"})
    results = {one.name: (one.before and one.before.value, one.after and one.after.value)
               for one in tight.of("checks")}
    assert results["weight"][1] == "fails"
    assert diff(load=[{"name": "skirt", "weight": "4.01 lb"}]).of("checks") == ()


DONE = {"done": ["wash", "press", "open-coil", "test-stock", "cut-H1", "cut-H2", "cut-H3", "cut-H4", "cut-H5",
                 "cut-H6", "mark-tapes"]}


def test_done_work_that_a_change_undoes_is_told_with_what_can_be_saved() -> None:
    found = difference(plan(progress=DONE), plan(progress=DONE, shape={"hem": {"girth": "104 in"}}))
    undone = {item.task: item.why for item in found.undone}
    assert undone["cut-H6"] == "measures"
    assert undone["mark-tapes"] == "measures"
    assert "wash" not in undone
    assert "test-stock" not in undone
    assert found.mending is not None
    assert {piece.fate for piece in found.mending.pieces} == {"recut"}
    assert found.mending.anew == ()


def test_what_waited_for_undone_work_is_undone_too() -> None:
    done = {"done": [*DONE["done"], "cut-casings", "case-H2", "mark-H2"]}
    found = difference(plan(progress=done), plan(progress=done, shape={"hoops": {"count": 5}}))
    whys = {item.task: (item.why, item.what) for item in found.undone}
    assert any(why == "gone" for why, _ in whys.values())
    assert found.mending is not None
    spare = [piece for piece in found.mending.pieces if piece.fate == "spare"]
    assert len(spare) <= 2


def test_adding_a_hoop_saves_every_piece_that_is_cut() -> None:
    found = difference(plan(progress=DONE), plan(shape={"hoops": {"count": 7}}))
    assert found.mending is not None
    kept = [piece for piece in found.mending.pieces if piece.fate != "spare"]
    assert len(kept) >= 5
    assert {piece.part for piece in found.mending.pieces} == {f"H{k}" for k in range(1, 7)}


def test_strip_does_not_become_cane() -> None:
    found = difference(plan(progress=DONE), plan(build={"hoops": {"material": "cane"}}))
    assert found.mending is not None
    assert {piece.fate for piece in found.mending.pieces} == {"spare"}
    assert {item.task for item in found.undone} >= {"test-stock", "cut-H1", "cut-H6"}


def test_hoops_of_another_strip_are_cut_anew_though_they_are_as_long() -> None:
    thin = {"materials": {"strip": {"section": {"thickness": "0.032 in"}}}}
    found = difference(plan(progress=DONE), plan(progress=DONE, **thin))
    undone = {item.task: item.why for item in found.undone}
    assert (undone["test-stock"], undone["cut-H1"]) == ("measures", "rests on")
    assert found.mending is not None
    assert {piece.fate for piece in found.mending.pieces} == {"spare"}
    assert [piece.part for piece in found.mending.anew] == [f"H{k}" for k in range(1, 7)]
    assert found.mending.cost == 19
    assert "to cut anew: H1 " in text(found, ("a", "b"), Printer("inches", "USD"))


def test_work_is_not_undone_by_writing_the_stock_in_other_units() -> None:
    metric = {"materials": {"strip": {"section": {"width": "0.9525 cm", "thickness": "1.0668 mm"}}}}
    found = difference(plan(progress=DONE), plan(progress=DONE, **metric))
    assert found.empty
    assert found.mending is None


def test_the_three_formats_say_the_same() -> None:
    found = diff(build={"hoops": {"material": "cane", "join": "lap bound"}})
    labels = ("cage.yaml", "cage.yaml (cane | bars)")
    p = Printer("inches", "USD")
    plain, page = text(found, labels, p), markdown(found, labels, p)
    data = json.loads(difference_json(found, labels))
    assert len(data["changes"]) == len(found.changes)
    assert "strip -> cane" in plain
    assert "cane \\| bars" in page
    for line in page.splitlines():
        if line.startswith("| "):
            assert line.replace("\\|", "").count("|") == 5
    assert {change["kind"] for change in data["changes"]} >= {"added", "dropped", "changed"}


def test_tape_that_is_washed_already_is_told_as_less_to_ask_for() -> None:
    """Twill without a price: the same tapes are wanted, and 3 % less of it is asked for in the shop."""
    washed = {"materials": {"twill": {"kind": "tape", "shrinkage": "0 %"}}}
    [change] = [one for one in diff(**washed).of("shopping") if one.now == "twill"]
    assert change.before is not None
    assert change.after is not None
    assert change.what == "amount"
    pieces = sum(piece.length for pack in plan().supply.cutting.packs if pack.material == "twill"
                 for piece in pack.pieces)
    assert change.after.value == pytest.approx(pieces)
    assert change.before.value == pytest.approx(pieces / 0.97)
