"""Sketches of a wheel's steps: strip stands on edge in them as in the instruction, rods stay round."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from hoopwright.library.model import Section
from hoopwright.plan.model import Plan
from hoopwright.render.drawing.steps.wheel_steps import SKETCHES
from hoopwright.render.markdown import plan_markdown

SVG = "{http://www.w3.org/2000/svg}"


def _tree(plan: Plan, action: str) -> ElementTree.Element:
    return ElementTree.fromstring(SKETCHES[action](plan, action).svg)


def _rods(plan: Plan) -> Plan:
    """The same wheel of round rod."""
    build = plan.spec.build
    rod = replace(build.hoops.material, section=Section("round", diameter=0.006))
    return replace(plan, spec=replace(plan.spec, build=replace(build, hooped=replace(build.hoops, material=rod))))


def test_a_strip_seen_from_above_is_as_thin_as_its_edge(committed: Callable[[str], Plan]) -> None:
    tree = _tree(committed("moon-masque/wheel.yaml"), "bind-wheel")
    said = [text.text for text in tree.iter(f"{SVG}text")]
    assert said.count("from above") == 2
    assert said.count("from the side") == 1
    side = next(float(text.attrib["x"]) for text in tree.iter(f"{SVG}text") if text.text == "from the side")
    bars = [rect.attrib for rect in tree.iter(f"{SVG}rect") if rect.get("fill") != "#fff"]
    assert [bar for bar in bars if float(bar["x"]) < side - 20] == []
    ring, spoke = sorted(bars, key=lambda bar: -float(bar["width"]))
    assert float(spoke["width"]) < float(spoke["height"]) / 4
    assert float(spoke["y"]) + float(spoke["height"]) == float(ring["y"])


@pytest.mark.parametrize("action", ["set-wheel", "sew-cover"])
def test_a_ring_cut_through_is_drawn_as_its_stock(action: str, committed: Callable[[str], Plan]) -> None:
    strip = committed("moon-masque/wheel.yaml")
    rounds = [sum(1 for _ in _tree(plan, action).iter(f"{SVG}ellipse")) for plan in (strip, _rods(strip))]
    assert rounds[1] == rounds[0] + 1


def test_what_to_do_with_ends_that_break_is_said_of_strip_alone(committed: Callable[[str], Plan]) -> None:
    strip = committed("moon-masque/wheel.yaml")
    assert "If the offcut breaks in the bend, leave the ends straight" in plan_markdown(strip)
    assert "offcut breaks" not in plan_markdown(_rods(strip))
