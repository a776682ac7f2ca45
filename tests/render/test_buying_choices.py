"""Splices, choices of material, deliveries and remnants on the page and in plan.json."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.figures import draw_figures
from hoopwright.render.machine import plan_json
from hoopwright.render.markdown import plan_markdown

SCHEMA = json.loads((Path(__file__).parents[2] / "schemas" / "v1" / "plan.schema.json").read_text("utf-8"))
SPEC = """\
spec: 1
title: Market day
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 6}}
build:
  hoops: {material: [strip, "ca|ne"], splices: 1, join: lap soldered, casing: none}
  hem_band: {depth: 20 cm, material: calico}
load: [{name: skirt, weight: 1.2 kg}]
shops: {wire works: 6.90 EUR}
materials:
  strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1 mm}
    sold: [{length: 4.4 m, price: 9.00 EUR}]
    from: wire works
    on_hand: [90 cm]
  ca|ne: {grade: rattan, section: {kind: round, diameter: 2 mm}, sold: [{length: 5 m, price: 4 EUR}]}
  calico:
    kind: cloth
    weight: 140 g/m2
    width: 140 cm
    on_hand: [{length: 60 cm, width: 50 cm}]
    sold: [{per: 1 m, step: 10 cm, price: 7 EUR}]
allowances: {end_trim: 5 mm}
"""


@pytest.fixture(scope="module")
def market() -> Plan:
    result = compile_spec(SPEC.encode(), "market.yaml")
    assert result.plan is not None, result.diagnostics
    return result.plan


@pytest.fixture(scope="module")
def page(market: Plan) -> str:
    return plan_markdown(market, draw_figures(market))


@pytest.fixture(scope="module")
def value(market: Plan) -> dict[str, Any]:
    return dict(json.loads(plan_json(market)))


def chapter(page: str, heading: str) -> str:
    return re.split(r"\n#{2,3} ", page.split(f"{heading}\n", 1)[1])[0]


def test_the_table_of_choices_names_each_with_its_reason(page: str) -> None:
    rows = [
        line for line in chapter(page, "### What was weighed against what").splitlines() if line[:2] == "| "
    ]
    assert "**strip**" in rows[2]
    assert "the cheapest that passes" in rows[2]
    assert "ca\\|ne" in rows[3]
    assert "fails" in rows[3]
    assert len({row.replace("\\|", "").count("|") for row in rows}) == 1


def test_who_buys_cloth_is_told_that_it_burns_and_who_presses_it_is_not(page: str) -> None:
    """16 CFR 1610 in the maker's order: before the cloth is bought and washed (from memory)."""
    bought = page.split("## What to buy\n", 1)[1]
    assert "Ask the venue's fire officer before you buy cloth" in bought[: bought.index("| Item |")]
    assert "16 CFR 1610" not in re.split(r"\n#### ", page.split(". Press it flat\n", 1)[1])[0]
    assert "not exempt" not in page


def test_splices_say_what_they_save_and_cost_and_where_they_lie(page: str, market: Plan) -> None:
    told = market.supply.cutting.splicing
    assert told is not None
    text = chapter(page, "### Splices")
    assert f"save {told.saves} EUR of stock" in text
    assert "of work" in text
    assert "can fail" in text
    for splice in market.splices:
        assert f"| **{splice.hoop}** |" in text
        assert f"between {splice.between[0]} and {splice.between[1]}" in text
    assert "centre front)" not in text
    first = told.parts[0]
    assert f"{first} (1 of 2)" in page
    assert f"splice-{first}" in page


def test_the_splices_are_made_before_the_hoop_is_marked_and_after_the_proof(market: Plan) -> None:
    tasks = {task.id: task for task in market.work.tasks}
    order = list(tasks)
    assert market.supply.cutting.splicing is not None
    for hoop in market.supply.cutting.splicing.parts:
        task = tasks[f"splice-{hoop}"]
        assert set(task.needs) >= {f"cut-{hoop}", "prove-join"}
        later = [one for one in tasks.values() if f"splice-{hoop}" in one.needs]
        assert later
        assert all(order.index(one.id) > order.index(task.id) for one in later)


def test_deliveries_unit_prices_trims_and_remnants_are_said(page: str) -> None:
    buying = chapter(page, "## What to buy")
    assert "| **delivery from wire works** | one | 6.90 EUR | 6.90 EUR | strip |" in buying
    assert "9.00 EUR (2.05 EUR a metre)" in buying
    assert "from wire works" in buying
    assert "of a piece 50 cm wide: band" in page
    assert "0.5 cm is cut off the end of every length first" in page


def test_the_json_is_valid_and_has_them_all(value: dict[str, Any]) -> None:
    assert [error.message for error in Draft202012Validator(SCHEMA).iter_errors(value)] == []
    assert [row["chosen"] for row in value["substitutes"]] == [True, False]
    assert value["cost"]["delivery"] == "6.90"
    assert {place["hoop"] for place in value["splices"]["places"]}
    shares = [piece for pack in value["cutting"] for piece in pack["pieces"] if "share" in piece]
    assert len(shares) == 2 * len({piece["part"] for piece in shares})
