"""The page and figures of a petticoat: panels and channels, no tape chart, steps with their measures."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.figure import Figure
from hoopwright.render.figures import draw_figures
from hoopwright.render.markdown import plan_markdown

SPEC = """\
spec: 1
title: Tide pool
units: UNITS
wearer: {stature: 165 cm, waist: 72 cm, hip: 98 cm, waist_height: {front: 103 cm, side: 104 cm, back: 103 cm}}
shape:
  line: {kind: cone}
  hem: {girth: 270 cm, off_floor: 8 cm}
  hoops: {count: 5, spacing: from hem, every: 14 cm}
build: {carried_by: channels, panels: {PANELS}, flounce: {depth: 20 cm}}
"""
CASES = {
    "gores, inches": ("inches", "gores: 6"),
    "gores, centimetres": ("centimetres", "gores: 6"),
    "breadths, drawstring": ("centimetres", "breadths: 3, waist: drawstring"),
}


def planned(units: str, panels: str) -> Plan:
    found = compile_spec(SPEC.replace("UNITS", units).replace("PANELS", panels).encode(), "pool.yaml")
    assert found.plan is not None, found.diagnostics
    return found.plan


@pytest.fixture(scope="module", params=sorted(CASES))
def made(request: pytest.FixtureRequest) -> tuple[Plan, tuple[Figure, ...], str]:
    plan = planned(*CASES[str(request.param)])
    figures = draw_figures(plan)
    return plan, figures, plan_markdown(plan, figures)


def test_panels_and_channels_take_the_place_of_the_tape_chart(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    plan, figures, page = made
    assert "## The petticoat's panels and channels" in page
    assert "Tape marking chart" not in page
    assert not re.search(r"\bT1\b", page)
    names = {figure.name for figure in figures}
    assert {"front", "side", "hem", "panel-1"} <= names
    assert "tapes" not in names
    assert not [name for name in names if name.startswith("gauge-")]
    assert page.count("figures/panel-1.svg") == 1
    assert plan.shape.petticoat is not None
    for channel in plan.shape.petticoat.channels:
        assert f"| **{channel.hoop}** |" in page


def test_every_figure_named_on_the_page_is_drawn_and_well_formed(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    _, figures, page = made
    names = {figure.name for figure in figures}
    assert set(re.findall(r"figures/([a-z0-9-]+)\.svg", page)) <= names
    for figure in figures:
        root = ET.fromstring(figure.svg)
        assert root.tag.endswith("svg")
        assert figure.alt


def test_the_panel_shows_its_grain_its_sizes_and_every_line(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    plan, figures, _ = made
    svg = next(figure.svg for figure in figures if figure.name == "panel-1")
    assert ">grain<" in svg
    for rule in plan.shape.panels[0].rules:
        assert f">{rule.name}: " in svg


def test_the_steps_stop_before_the_waistband_and_say_what_is_tied(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    plan, _, page = made
    assert plan.shape.petticoat is not None
    on = "Turn the edge over the drawstring" if plan.shape.petticoat.drawstring else "Sew the waistband on"
    places = [page.index(words) for words in ("Sew all seams but one", "Pin the last seam and the waist",
                                              "Stop: try it on", on, "Sew the flounces on")]
    assert places == sorted(places)
    assert "measured round as the tape or drawstring is tied" in page


def test_units_are_not_mixed(made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    plan, _, page = made
    chapter = page[page.index("## The petticoat's panels"):page.index("## Steps")]
    other = " cm" if plan.spec.units == "inches" else " in |"
    assert other not in chapter


def test_words_of_tapes_are_gone_from_the_verdict_and_the_table(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    plan, _, page = made
    top = page[:page.index("## What to buy")]
    assert "tape" not in top.lower()
    assert "| Petticoat |" in top
    assert "0 tapes" not in "".join(figure.alt for figure in draw_figures(plan))


def test_joined_hoops_of_a_petticoat_have_their_lap_drawn(
        made: tuple[Plan, tuple[Figure, ...], str]) -> None:
    """Its joins lie beside no tape, and are joins all the same."""
    plan, figures, page = made
    assert all(hoop.closed for hoop in plan.shape.hoops)
    assert "not joined" not in page
    assert "A lap is the stretch where the two ends of a hoop lie over each other" in page
    assert "that is the lap, where the ends will lie over each other" in page
    (waistband,) = [figure.alt for figure in figures if figure.name == "step-make-waistband"] or [""]
    assert waistband == "" or "from centre front: centre back " in waistband
