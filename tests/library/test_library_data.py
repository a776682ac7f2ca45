"""The library's own consistency: every name it mentions exists, every value carries a source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from hoopwright.library import body
from hoopwright.library.cautions import CAUTIONS
from hoopwright.library.goods import GOODS, HOOP_END, SEAM_METRE, TAPE_FIXING
from hoopwright.library.grades import DEFAULT_SECTIONS, GRADES, grade_for, shear_modulus
from hoopwright.library.joins import JOINS, suits
from hoopwright.library.model import Section, Stock
from hoopwright.library.tools import HOUSEHOLD, TOOLS, at_hand, cutting_tools, lacking, tool_name

INCH = 0.0254


def test_the_library_holds_what_the_language_promises() -> None:
    assert {"spring steel, tempered", "mild steel", "stainless, full hard", "music wire", "rattan",
            "polyethylene"} <= set(GRADES)
    assert {"twill", "braid", "calico", "hook and bar", "solder and flux"} <= set(GOODS)
    assert set(JOINS) == {"lap soldered", "lap bound", "sleeve crimped", "lap bolted", "lap riveted",
                          "lap brazed"}


def test_every_grade_has_a_default_section_and_possible_values() -> None:
    assert set(DEFAULT_SECTIONS) == set(GRADES)
    for grade in GRADES.values():
        assert 0 < grade.elastic_limit < grade.e / 40, grade.name
        assert 0 < grade.g < grade.e / 2, grade.name
        assert grade.source


@pytest.mark.parametrize("table", [GRADES, GOODS, JOINS, CAUTIONS])
def test_everything_carries_a_source(table: dict[str, object]) -> None:
    for name, item in table.items():
        assert getattr(item, "source", ""), name


def test_joins_and_tools_name_only_what_the_library_holds() -> None:
    for join in JOINS.values():
        assert {tool for group in join.tools for tool in group} <= set(TOOLS), join.name
        assert {use.goods for use in join.consumes} <= set(GOODS), join.name
        assert set(join.cautions) <= set(CAUTIONS), join.name
    for tool in TOOLS.values():
        assert set(tool.cautions) <= set(CAUTIONS), tool.name
    assert {use.goods for use in (HOOP_END, TAPE_FIXING, SEAM_METRE)} <= set(GOODS)
    assert set(HOUSEHOLD) <= set(TOOLS)


def test_no_tool_answers_to_two_names() -> None:
    names = [name for tool in TOOLS.values() for name in (tool.name, *tool.aliases)]
    assert len(names) == len(set(names))


def test_a_bound_lap_takes_three_inches_more_than_a_soldered_one() -> None:
    assert JOINS["lap bound"].lap - JOINS["lap soldered"].lap == pytest.approx(3 * INCH)


def test_steel_shear_modulus_follows_from_poissons_ratio() -> None:
    assert GRADES["spring steel, tempered"].g == pytest.approx(79.457e9, rel=1e-4)
    assert shear_modulus(100.0, 0.25) == 40.0


def test_music_wire_is_the_stronger_the_thinner() -> None:
    thick = grade_for("music wire", Section("round", diameter=0.003))
    thin = grade_for("music wire", Section("round", diameter=0.001))
    assert thin.elastic_limit == pytest.approx(0.75 * 2211e6)
    assert thick.elastic_limit < thin.elastic_limit


def test_tin_snips_are_not_offered_for_hard_thick_strip() -> None:
    section = Section("flat", width=0.01, thickness=0.026 * INCH)
    strip = Stock("strip", GRADES["spring steel, tempered"], section)
    assert "tin snips" not in cutting_tools(strip)
    thin = replace(strip, section=Section("flat", width=0.01, thickness=0.024 * INCH))
    assert "tin snips" in cutting_tools(thin)
    soft = replace(strip, grade=GRADES["mild steel"])
    assert "tin snips" in cutting_tools(soft)
    cane = Stock("cane", GRADES["rattan"], Section("round", diameter=0.008))
    assert cutting_tools(cane)[0] == "hacksaw"
    assert "bolt cutters" not in cutting_tools(cane)
    for grade in GRADES.values():
        assert set(cutting_tools(replace(strip, grade=grade))) <= set(TOOLS)


def test_a_tool_is_known_under_its_other_names_and_the_household_has_a_needle() -> None:
    assert tool_name("Bench  Vise") == "vice"
    assert tool_name("lathe") is None
    have = at_hand(["soldering iron", "Clamp"])
    assert "needle" in have
    assert lacking(JOINS["lap soldered"].tools, have) == (("file", "grinder", "abrasive paper"),)


def test_solder_is_for_metal_only_and_bolts_for_flat_stock() -> None:
    flat, cane = Section("flat", width=0.01, thickness=0.001), Section("round", diameter=0.006)
    assert suits(JOINS["lap soldered"], flat, metal=True)
    assert not suits(JOINS["lap soldered"], cane, metal=False)
    assert not suits(JOINS["lap bolted"], cane, metal=False)
    assert all(suits(JOINS["lap bound"], DEFAULT_SECTIONS[name], GRADES[name].metal) for name in GRADES)


def test_proportions_are_ordered_and_their_warnings_lie_outside() -> None:
    for ratio in (body.WAIST_HEIGHT, body.HIP_HEIGHT, body.WAIST_OVER_HIP, body.WAIST_OVAL,
                  body.WAIST_TO_HIP):
        assert ratio.low < ratio.p5 < ratio.median < ratio.p95 < ratio.high, ratio.name
