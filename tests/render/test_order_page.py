"""What the page says of the order of work: what it comes to beside what no order can better; hands; rates."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.render.views.order import order_view
from hoopwright.work.model import Order, Spent

SPEC = b"""
spec: 1
units: inches
wearer: {stature: 5 ft 7 in, waist: 28 in}
shape: {hem: {girth: 110 in}}
"""
ONE = Order("built-in", True, (), 4, 4, 2, 2, 3, 3)


def compiled() -> Plan:
    plan = compile_spec(SPEC, "cage.yaml").plan
    assert plan is not None
    return plan


def said(make_plan: Callable[..., Plan], order: Order) -> str:
    plan = make_plan()
    return " ".join(order_view(replace(plan, work=replace(plan.work, order=order))).said)


def test_a_proven_order_says_so_and_offers_no_more(make_plan: Callable[..., Plan]) -> None:
    assert said(make_plan, ONE) == (
        "No order does with fewer than four sittings, nor has its first try-on before sitting 2. Within"
        " sittings the set-up is changed three times; no order of so few sittings does with less."
    )


@pytest.mark.parametrize(
    ("order", "words"),
    [
        (replace(ONE, proven=False, sessions_least=3), "no order does with fewer than 3, or has it before"),
        (replace(ONE, proven=False, fitting_least=1), "it cannot be before sitting 1"),
        (replace(ONE, proven=False, changes_least=1), "not known, but not under 1"),
        (replace(ONE, proven=False, changes_least=1), "order: exact"),
        (replace(ONE, hands=("Ann", "Bea"), lasting=90, lasting_least=60), "Ann and Bea work side by side"),
        (replace(ONE, hands=("Ann", "Bea"), lasting=90, lasting_least=60), "last 1 h 30 min together; no"),
    ],
)
def test_a_gap_is_told(make_plan: Callable[..., Plan], order: Order, words: str) -> None:
    assert words in said(make_plan, order)


def test_a_step_names_its_hand_and_rates_are_listed() -> None:
    plan = compiled()
    tasks = tuple(replace(task, hand="Ann") for task in plan.work.tasks)
    spent = (Spent("machine seam", 2.75, "m", 4.0, "a trial"), Spent("clip", 1.0, "fixing", 1.0, "practice"))
    page = plan_markdown(replace(plan, work=replace(plan.work, tasks=tasks, spent=spent)))
    assert " · **Ann**" in page
    assert "| machine seam | 13 ft 1 1/2 in | 2.75 min/m | 11 min | a trial |" in page
    assert "| clip | 1 fixing | 1 min | 1 min | practice |" in page
    assert "**Ann**" not in plan_markdown(plan)
