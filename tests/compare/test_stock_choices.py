"""Each choice of materials laid side by side with the others, whether it passes or not."""

from __future__ import annotations

import json

import pytest

from hoopwright.compare import table
from hoopwright.compare.ranking import ranked
from hoopwright.compare.stocks import Choices, stock_plans
from hoopwright.compile import compile_spec

SPEC = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 5}}
build: {hoops: {material: [strip, cane, short]}}
load: [{name: skirt, weight: 1.2 kg}]
materials:
  strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1 mm}
    sold: [{length: 25 m, price: 44.00 EUR}]
  cane: {grade: rattan, section: {kind: round, diameter: 2 mm}, sold: [{length: 25 m, price: 12.00 EUR}]}
  short: {grade: mild steel, section: {kind: round, diameter: 3 mm}, sold: [{length: 1 m, price: 1.00 EUR}]}
"""


@pytest.fixture(scope="module")
def choices() -> Choices:
    result = compile_spec(SPEC.encode(), "cage.yaml")
    return stock_plans("cage", result.plan, result.trials)


def test_there_is_a_plan_for_each_choice_that_can_be_made(choices: Choices) -> None:
    assert [label for label, _ in choices.plans] == ["cage: strip", "cage: cane"]
    assert [plan.spec.build.hoops.material.name for _, plan in choices.plans] == ["strip", "cane"]
    ((label, why),) = choices.left_out
    assert label == "cage: short"
    assert "cannot be cut in one piece" in why


def test_the_one_that_passes_comes_first_with_its_mechanics(choices: Choices) -> None:
    found = ranked(choices.plans)
    assert [one.label for one in found] == ["cage: strip", "cage: cane"]
    said = table.text(found, choices.left_out)
    assert "0.171 N m2" in said
    assert "cage: short: cannot be made:" in said
    rows = table.markdown(found, choices.left_out).splitlines()
    assert len({row.count("|") for row in rows}) == 1
    value = json.loads(table.ranking_json(found, choices.left_out))
    assert [one["design"] for one in value["left_out"]] == ["cage: short"]
    assert value["designs"][1]["set_used"] > 1


def test_a_spec_without_a_list_is_one_plan() -> None:
    result = compile_spec(SPEC.replace("[strip, cane, short]", "strip").encode(), "cage.yaml")
    found = stock_plans("cage", result.plan, result.trials)
    assert [label for label, _ in found.plans] == ["cage"]
    assert found.left_out == ()
