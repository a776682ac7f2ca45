"""plan.json: keys, units, rounding, determinism."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from hoopwright.plan.model import Plan
from hoopwright.render.machine import plan_json
from hoopwright.render.machine.values import (
    degree,
    fraction,
    grams,
    megapascals,
    mm,
    money,
    rounded,
    stiffness,
)

SCHEMA = json.loads((Path(__file__).parents[2] / "schemas" / "v1" / "plan.schema.json").read_text("utf-8"))


@pytest.fixture(scope="module")
def value(plan: Plan) -> dict[str, Any]:
    """The plan read back."""
    return dict(json.loads(plan_json(plan)))


def test_the_plan_is_valid_against_its_schema(value: dict[str, Any]) -> None:
    assert [error.message for error in Draft202012Validator(SCHEMA).iter_errors(value)] == []


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)


def test_the_schema_refuses_a_key_it_does_not_know(value: dict[str, Any]) -> None:
    value = value | {"hoops": [value["hoops"][0] | {"colour": "red"}]}
    assert "colour" in next(Draft202012Validator(SCHEMA).iter_errors(value)).message


def _objects(node: Any) -> list[dict[str, Any]]:
    """Every schema below ``node`` that describes an object."""
    if isinstance(node, list):
        return [found for item in node for found in _objects(item)]
    if not isinstance(node, dict):
        return []
    own = [node] if node.get("type") == "object" else []
    return own + [found for item in node.values() for found in _objects(item)]


OPTIONAL = {
    "panels", "petticoat", "corded_petticoat", "sum",
    "wheel", "side_hoops", "substitutes", "splices", "diary", "share", "shares", "from", "delivery",
    "bought_mm", "washed_mm"
}  # fmt: skip
"""Keys that stand only where a design has the matter, and the checksum that the file on disk ends in."""


def test_every_key_of_the_schema_is_described_and_no_other_is_allowed() -> None:
    objects = _objects(SCHEMA)
    assert len(objects) > 15
    for shape in objects:
        if "properties" not in shape:  # a map by the maker's own names
            assert shape["additionalProperties"]["type"] in {"number", "string", "array"}
            continue
        assert shape["additionalProperties"] is False
        assert set(shape["required"]) <= set(shape["properties"])
        assert set(shape["properties"]) - set(shape["required"]) <= OPTIONAL
        assert all(len(key["description"]) > 5 for key in shape["properties"].values())


def test_lengths_are_millimetres_and_masses_grams(value: dict[str, Any], plan: Plan) -> None:
    assert value["hoops"][0]["girth_mm"] == pytest.approx(plan.shape.hoops[0].girth * 1000, abs=0.005)
    assert value["waistband"]["cut_mm"] == pytest.approx(31 * 25.4)
    assert value["strength"]["weight_g"] == pytest.approx(plan.assessment.weights.total * 1000, abs=0.05)
    assert value["hoops"][0]["plan"]["arc_deg"] == 360
    stress = plan.assessment.hoops[0].stress
    assert stress is not None
    assert value["strength"]["hoops"][0]["stress_mpa"] == pytest.approx(stress / 1e6, abs=0.05)


def test_money_is_text(value: dict[str, Any]) -> None:
    assert value["cost"]["total"] == "40.65"
    assert value["cost"]["partial"] is True
    assert [line["price"] for line in value["shopping"]][-1] is None
    budget = next(check for check in value["checks"] if check["code"] == "budget")
    assert (budget["value"], budget["limit"], budget["unit"]) == ("44.72", "85.00", "USD")


def test_a_cutting_is_proven_or_gives_its_gap(value: dict[str, Any], plan: Plan) -> None:
    assert {pack["proven"] for pack in value["cutting"]} == {True}
    cutting = replace(plan.supply.cutting, proven=False, gap=0.04)
    unproven = json.loads(plan_json(replace(plan, supply=replace(plan.supply, cutting=cutting))))
    assert {pack["proven"] for pack in unproven["cutting"]} == {0.04}


def test_equal_pieces_of_cloth_are_counted(value: dict[str, Any]) -> None:
    assert [piece["count"] for piece in value["cloth"]] == [2, 1]


def test_the_same_plan_gives_the_same_bytes(make_plan: Callable[..., Plan]) -> None:
    first, again = plan_json(make_plan()), plan_json(make_plan())
    assert first == again
    assert first.endswith("}\n")
    assert "\r" not in first


def test_keys_are_sorted_and_reading_back_loses_nothing(plan: Plan, value: dict[str, Any]) -> None:
    assert json.dumps(value, indent=2, sort_keys=True, ensure_ascii=False) + "\n" == plan_json(plan)


def test_the_numbers_do_not_depend_on_the_printed_units(make_plan: Callable[..., Plan], plan: Plan) -> None:
    inches, metric = json.loads(plan_json(plan)), json.loads(plan_json(make_plan(units="centimetres")))
    for key in ("hoops", "tapes", "strength", "cutting", "cost", "checks"):
        assert inches[key] == metric[key]


def test_a_lone_surrogate_in_the_title_still_gives_utf8(make_plan: Callable[..., Plan]) -> None:
    assert json.loads(plan_json(make_plan(title="a\ud800b")).encode("utf-8"))["title"] == "a?b"


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        (mm(0.0254), 25.4),
        (mm(1 / 3), 333.33),
        (grams(1.23456), 1234.6),
        (degree(1.0), 57.3),
        (fraction(1 / 3), 0.333333),
        (megapascals(2.3456e8), 234.6),
        (stiffness(0.18765432), 0.1877),
        (stiffness(123456.0), 123500.0),
        (rounded(0.125, 2), 0.12),
    ],
)
def test_rounding(made: float, expected: float) -> None:
    assert made == expected


def test_minus_zero_is_zero() -> None:
    assert str(mm(-1e-9)) == "0.0"
    assert str(stiffness(-0.0)) == "0.0"


@pytest.mark.parametrize(("amount", "text"), [("19", "19.00"), ("0.605", "0.605"), ("1E+3", "1000.00")])
def test_money_has_two_decimals_or_more(amount: str, text: str) -> None:
    assert money(Decimal(amount)) == text
