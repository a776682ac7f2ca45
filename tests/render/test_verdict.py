"""The top of the page says whether the cage stands, what fails, what it costs and what is not known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from typing import Literal

import pytest

from hoopwright.plan.assemble import by_importance
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.quantities import Printer
from hoopwright.spec.check import Check, Result
from hoopwright.strength.verdict import clause
from hoopwright.supply.model import Cost


def _check(result: Result, code: str = "door", value: float | None = 35 * 0.0254) -> Check:
    return Check(
        code,
        "hem",
        value,
        32 * 0.0254,
        "length",
        "at most",
        result,
        "make the `hem` smaller",
        "ours",
        "the hem passes the door",
    )


def _top(plan: Plan) -> str:
    return plan_markdown(plan).split("## At a glance")[0]


def _judged(plan: Plan, *checks: Check) -> Plan:
    return replace(plan, checks=by_importance(checks))


def test_a_failed_check_is_said_first(plan: Plan) -> None:
    page = plan_markdown(_judged(plan, _check("holds", "sag"), _check("fails")))
    assert page.split("\n\n")[1].split("\n") == [
        "> **Does not pass yet: one thing has to change.**",
        ">",
        "> - **door (hem)**: found 35 in, wanted at most 32 in (what is judged: the hem passes the door)."
        " Make the `hem` smaller.",
    ]
    assert "| Result | does not pass yet: door |" in page


def test_two_failed_checks_are_counted(plan: Plan) -> None:
    assert "two things have to change" in _top(_judged(plan, _check("fails"), _check("fails", "sag")))


def test_what_stands_is_said_with_its_reasons(plan: Plan) -> None:
    calm = _judged(plan, _check("holds"))
    stands = replace(plan.assessment, verdict="stands", reasons=())
    but = replace(plan.assessment, verdict="stands, but", reasons=("the cage is heavy", "the hem is wide"))
    falls = replace(plan.assessment, verdict="will not stand", reasons=("H1 buckles",))
    assert "**It stands.**\n" in _top(replace(calm, assessment=stands))
    watched = "**It stands, but watch:**\n\n- The cage is heavy.\n- The hem is wide.\n"
    assert watched in _top(replace(calm, assessment=but))
    assert "> **It will not stand.** H1 buckles." in _top(replace(calm, assessment=falls))


def test_what_is_close_to_a_limit_is_told_from_what_is_past_it(plan: Plan) -> None:
    near, past = _check("marginal", "floor", 31 * 0.0254), _check("marginal")
    top = _top(_judged(plan, near, past))
    assert "- **floor (hem)**, close to a limit: found 31 in, wanted at most 32 in" in top
    assert "- **door (hem)**, past what is usual, but let pass: found 35 in, wanted at most 32 in" in top
    page = plan_markdown(_judged(plan, near, past))
    assert "| **marginal**, close to its limit |" in page
    assert "| **marginal**, past its limit |" in page
    assert "**Marginal**: let pass" in page


def test_a_reason_of_strength_stands_once_with_its_numbers_and_what_to_do(plan: Plan) -> None:
    missed = _check("marginal")
    known = replace(plan.assessment, verdict="stands, but", checks=(missed,), reasons=(clause(missed),))
    top = _top(_judged(replace(plan, assessment=known), missed))
    assert top.count("door (hem)") == 1
    assert ("- **door (hem)**: hem only just springs back from the door (found 35 in, wanted at most 32 in)."
            " Make the `hem` smaller.") in top
    assert top.index("watch:") < top.index("door (hem)") < top.index("are numbered from the top")


@pytest.mark.parametrize(("value", "sense", "said"), [
    (32.01, "at most", "just over 32 in"),
    (31.99, "at most", "just under 32 in"),
    (31.99, "at least", "just under 32 in"),
    (32.01, "at least", "just over 32 in"),
    (32.0, "at most", "32 in"),
    (32.2, "at most", "32 1/4 in"),
])
def test_found_never_prints_like_the_limit_that_it_misses(
    plan: Plan, value: float, sense: Literal["at most", "at least"], said: str
) -> None:
    check = replace(_check("marginal", value=value * 0.0254), sense=sense)
    assert Printer.of(replace(plan.spec, units="inches")).check_value(check) == said


def test_a_check_that_was_not_made_shows_a_dash_and_why(plan: Plan) -> None:
    page = plan_markdown(_judged(plan, _check("not assessed", value=None)))
    assert (
        "| door | hem | – | at most 32 in | **not assessed** | The hem passes the door. Why not: make" in page
    )


def test_no_price_at_all_is_said(plan: Plan) -> None:
    lines = tuple(replace(line, price=None, cost=None) for line in plan.supply.shopping)
    cost = Cost(Decimal(0), Decimal(0), None, None, tuple(line.item for line in lines))
    page = plan_markdown(
        replace(
            plan,
            spec=replace(plan.spec, currency=None),
            supply=replace(plan.supply, shopping=lines, cost=cost),
        )
    )
    assert "| Cost | not known: nothing in the spec has a price |" in page
    assert "The spec names no price." in page


def test_items_without_a_price_are_named(plan: Plan) -> None:
    page = plan_markdown(plan)
    assert plan.supply.cost.partial
    assert all(
        item in page.split("no price is known for ")[1].split("|")[0] for item in plan.supply.cost.missing
    )


def test_nothing_to_buy_is_said(plan: Plan) -> None:
    assert "Nothing: everything is on hand." in plan_markdown(
        replace(plan, supply=replace(plan.supply, shopping=()))
    )


def test_a_door_that_would_bend_the_hoops_is_not_walked_through(plan: Plan) -> None:
    assert "press the hoops narrow" in plan_markdown(_judged(plan, _check("holds")))
    assert "so take another door" in plan_markdown(_judged(plan, _check("fails")))


def test_the_cage_without_load_says_so(make_plan: Callable[..., Plan]) -> None:
    plan = make_plan()
    page = plan_markdown(replace(plan, spec=replace(plan.spec, load=())))
    assert "nothing is stated that is worn over it" in page
