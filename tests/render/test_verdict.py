"""The top of the page says whether the cage stands, what fails, what it costs and what is not known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

from hoopwright.plan.assemble import by_importance
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.spec.check import Check, Result
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
    assert "**It stands, but** the cage is heavy and the hem is wide." in _top(replace(calm, assessment=but))
    assert "> **It will not stand.** H1 buckles." in _top(replace(calm, assessment=falls))


def test_what_is_close_to_a_limit_is_said_unless_strength_said_it(plan: Plan) -> None:
    close = _check("marginal")
    assert "Close to a limit, **door (hem)**" in _top(_judged(plan, close))
    known = replace(plan, assessment=replace(plan.assessment, checks=(close,)))
    assert "Close to a limit" not in _top(_judged(known, close))


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
