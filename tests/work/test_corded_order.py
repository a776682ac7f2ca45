"""The order of a corded petticoat: wash, sample, test, cut, cord flat, last seam, starch, stop, hem, waist."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from hoopwright.plan.model import Plan


@pytest.fixture(scope="module")
def plan(committed: Callable[[str], Plan]) -> Plan:
    return committed("quay-market/petticoat.yaml")


def test_the_order_is_that_of_the_trade(plan: Plan) -> None:
    order = [task.action for task in plan.work.tasks]
    wanted = ["wash", "sew-sample", "starch-sample", "test-sample", "cut-breadths", "sew-cords", "close-round",
              "starch", "pin-gathers", "try-on-body-alone", "sew-hem", "try-on-use-alone"]
    places = [order.index(action) for action in wanted]
    assert places == sorted(places)
    assert order.index("set-drawstring") > order.index("try-on-body-alone")


def test_nothing_is_cut_before_the_sample_is_tested(plan: Plan) -> None:
    needs = {task.id: task.needs for task in plan.work.tasks}
    assert needs["cut-breadths"] == needs["cut-cords"] == ("test-sample",)


def test_groups_are_corded_from_the_hem_up(plan: Plan) -> None:
    needs = {task.id: task.needs for task in plan.work.tasks}
    assert all(f"cord-{k}" in needs[f"cord-{k + 1}"] for k in (1, 2, 3))
    rows = [row for task in plan.work.tasks if task.action == "sew-cords" for row in task.parts]
    assert rows == [f"C{k}" for k in range(1, 43)]


def test_the_stop_measures_edge_waist_and_width(plan: Plan) -> None:
    stop = next(task for task in plan.work.tasks if task.id == "try-on-1")
    measured = {one.key: one for one in stop.conditions if one.value is not None}
    assert {"waist-tied", "edge-front", "edge-side", "edge-back", "hem-across"} <= set(measured)
    assert all(one.tolerance and one.mend for one in measured.values())


def test_no_task_joins_or_tips_a_hoop(plan: Plan) -> None:
    actions = {task.action for task in plan.work.tasks}
    assert not actions & {"open-coil", "test-stock", "cut-hoop", "prove-join", "join-hoop", "thread-hoop"}


def test_every_drying_rests_over_night(plan: Plan) -> None:
    waits = {task.id: task.wait for task in plan.work.tasks if task.wait}
    assert set(waits) == {"wash", "starch-sample", "starch"}
