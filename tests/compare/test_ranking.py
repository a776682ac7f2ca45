"""Designs side by side: the cheapest that passes comes first, and each place has its reason."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from functools import cache
from itertools import permutations

from hoopwright.compare import table
from hoopwright.compare.ranking import ranked
from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan

SPEC = """\
spec: 1
units: inches
wearer: {stature: 66 in, waist: 28 in, hip: 40 in}
shape: {hem: {girth: 108 in}, hoops: {count: 5}}
load: [{name: skirt, weight: 2 lb}]
"""


@cache
def base() -> Plan:
    run = compile_spec(SPEC.encode(), "cage.yaml")
    assert run.plan is not None, run.diagnostics
    return run.plan


def priced(total: str | None, missing: tuple[str, ...] = (), currency: str = "USD") -> Plan:
    """The base plan with another cost."""
    plan = base()
    cost = replace(plan.supply.cost, total=Decimal(total or 0), reserve=Decimal(0),
                   currency=currency if total else None, missing=missing)
    spec, supply = replace(plan.spec, currency=cost.currency), replace(plan.supply, cost=cost)
    return replace(plan, spec=spec, supply=supply)


def failing(plan: Plan) -> Plan:
    broken = replace(plan.checks[0], result="fails", code="sag", part="H3")
    return replace(plan, checks=(broken, *plan.checks[1:]))


def designs() -> dict[str, Plan]:
    return {
        "dear": priced("40"), "cheap": priced("30"), "partial": priced("10", ("thread",)),
        "unpriced": priced(None), "fails": failing(priced("1")),
    }


ORDER = ["cheap", "dear", "partial", "unpriced", "fails"]


def test_the_order_does_not_depend_on_how_they_were_given() -> None:
    known = designs()
    for order in permutations(known):
        assert [one.label for one in ranked([(name, known[name]) for name in order])] == ORDER


def test_each_place_has_its_reason() -> None:
    reasons = {one.label: one.reason for one in ranked(list(designs().items()))}
    assert reasons["cheap"] == "the cheapest that passes"
    assert reasons["dear"] == "10.00 USD more"
    assert "thread" in reasons["partial"]
    assert reasons["fails"].startswith("sag H3: ")


def test_nothing_is_called_cheapest_among_several_currencies() -> None:
    found = ranked([("a", priced("40")), ("b", priced("30", currency="EUR"))])
    assert [one.label for one in found] == ["a", "b"]
    assert "cheapest" not in found[0].reason
    assert "more" not in found[1].reason


def test_when_none_passes_the_one_with_the_least_failures_is_first_and_not_praised() -> None:
    found = ranked([("a", failing(priced("1")))])
    assert not found[0].passes
    assert "cheapest" not in found[0].reason


def test_the_three_formats_hold_all_designs_in_order() -> None:
    found = ranked([(f"{name} | x", plan) for name, plan in designs().items()])
    page = table.markdown(found)
    rows = page.splitlines()[2:]
    assert [row.split("|")[1].strip() for row in rows] == ["1", "2", "3", "4", "5"]
    assert all(row.replace("\\|", "").count("|") == len(table.HEADS) + 1 for row in rows)
    data = json.loads(table.ranking_json(found))
    assert [one["design"] for one in data["designs"]] == [f"{name} | x" for name in ORDER]
    assert [one["passes"] for one in data["designs"]] == [True, True, True, True, False]
    assert table.text(found).count("\n") == 11
