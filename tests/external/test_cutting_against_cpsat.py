"""Cutting of lengths against OR-Tools CP-SAT (version 9.15), a solver that shares nothing with the
project's methods.

`data/cutting_cpsat.json` holds generated instances of 7 to 300 pieces with CP-SAT's cost and the bound it
proved within twenty seconds each; `data/cutting_cpsat.py` is the model and makes the file anew. One small
instance is solved by CP-SAT afresh, so that the file cannot stand for a model that is no longer there.
"""

from __future__ import annotations

import json
import runpy
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from hoopwright.supply.cutting import CuttingOrder, CuttingPlan, CuttingRules, Pack, Piece, cut_lengths

DATA = Path(__file__).parent / "data"
INSTANCES: list[dict[str, Any]] = json.loads((DATA / "cutting_cpsat.json").read_text())
PROVEN = [one for one in INSTANCES if one["proven"]]
OPEN = [one for one in INSTANCES if not one["proven"]]


def plan_of(data: dict[str, Any]) -> CuttingPlan:
    unit = 10_000
    order = CuttingOrder(
        tuple(Piece(f"P{i}", p / unit) for i, p in enumerate(data["pieces"])),
        tuple(Pack(p["length"] / unit, Decimal(p["cents"]) / 100, p["available"]) for p in data["packs"]),
        tuple(x / unit for x in data["on_hand"]),
        CuttingRules(kerf=data["kerf"] / unit, trim=data["trim"] / unit),
    )
    plan = cut_lengths(order)
    assert isinstance(plan, CuttingPlan)
    return plan


def test_there_are_enough_instances_of_every_kind() -> None:
    assert len(PROVEN) >= 40
    counts = [len(one["pieces"]) for one in PROVEN]
    assert min(counts) == 7
    assert max(counts) == 300
    assert {len({p["length"] for p in one["packs"]}) for one in PROVEN} == {1, 2, 3}
    assert sum(1 for one in PROVEN if one["on_hand"]) >= 20
    assert sum(1 for one in PROVEN if one["kerf"]) >= 20
    assert sum(1 for one in PROVEN if any(p["available"] is not None for p in one["packs"])) >= 10


@pytest.mark.parametrize("data", PROVEN, ids=lambda one: one["name"])
def test_cost_equals_cpsat_where_cpsat_proved_it(data: dict[str, Any]) -> None:
    plan = plan_of(data)
    assert plan.cost == Decimal(data["cost"]) / 100
    assert plan.proven


@pytest.mark.parametrize("data", OPEN, ids=lambda one: one["name"])
def test_bounds_agree_where_cpsat_did_not_finish(data: dict[str, Any]) -> None:
    plan = plan_of(data)
    assert plan.objective <= Decimal(data["cost"]) / 100
    assert plan.objective >= Decimal(data["bound"]) / 100
    assert plan.lower_bound <= Decimal(data["cost"]) / 100


def test_the_reference_file_is_what_the_model_gives() -> None:
    made = runpy.run_path(str(DATA / "cutting_cpsat.py"))
    fresh = made["instances"]()
    assert [
        {k: v for k, v in one.items() if k not in ("cost", "bound", "proven")} for one in INSTANCES
    ] == fresh
    for one in INSTANCES[:3]:
        assert made["Model"](one).solve(60.0) == (one["cost"], one["bound"])
