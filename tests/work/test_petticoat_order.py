"""The order of work on a petticoat: the stop comes before the waistband, flounces come last."""

from __future__ import annotations

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan

SPEC = """\
spec: 1
units: centimetres
wearer: {stature: 165 cm, waist: 72 cm, hip: 98 cm}
shape: {line: {kind: cone}, hem: {girth: 270 cm, off_floor: 8 cm}, hoops: {count: 5}}
build: {carried_by: channels, flounce: {depth: 20 cm}, panels: {PANELS}}
"""


def planned(panels: str) -> Plan:
    found = compile_spec(SPEC.replace("PANELS", panels).encode(), "petticoat.yaml")
    assert found.plan is not None, found.diagnostics
    return found.plan


@pytest.fixture(scope="module", params=["gores: 6", "breadths: 3, waist: drawstring"])
def plan(request: pytest.FixtureRequest) -> Plan:
    return planned(str(request.param))


def before(plan: Plan, id: str) -> set[str]:
    """Every task that has to be done before one."""
    needs = {task.id: task.needs for task in plan.work.tasks}
    found: set[str] = set()
    open_ = list(needs[id])
    while open_:
        one = open_.pop()
        if one not in found:
            found.add(one)
            open_.extend(needs[one])
    return found


def test_only_the_hem_hoop_and_the_top_one_are_threaded_before_the_first_stop(plan: Plan) -> None:
    threaded = {id for id in before(plan, "try-on-1") if id.startswith("thread-")}
    assert threaded == {"thread-H5", "thread-H1"}


def test_nothing_at_the_waist_is_sewn_and_no_hoop_joined_before_it(plan: Plan) -> None:
    waist = "set-drawstring" if plan.shape.petticoat and plan.shape.petticoat.drawstring else "set-waistband"
    assert "try-on-1" in before(plan, waist)
    for hoop in plan.shape.hoops:
        assert "try-on-1" in before(plan, f"join-{hoop.id}")
        assert f"thread-{hoop.id}" in before(plan, f"join-{hoop.id}")
    assert "sew-cloth" in before(plan, "try-on-1")


def test_flounces_come_last_after_the_hem_is_level(plan: Plan) -> None:
    assert "try-on-2" in before(plan, "sew-flounces")
    assert "sew-flounces" in before(plan, "try-on-3")
    assert "sew-flounces" in before(plan, "hang-up")


def test_the_stop_names_measured_conditions_that_speak_of_cloth(plan: Plan) -> None:
    stop = next(task for task in plan.work.tasks if task.id == "try-on-1")
    measured = [one for one in stop.conditions if one.value is not None]
    assert len(measured) >= 2
    assert not [one for one in stop.conditions if "tape" in one.mend or "its marks" in one.mend]


def test_hoops_clamped_in_their_channels_are_warned_of_until_they_are_joined(plan: Plan) -> None:
    held = [task for task in plan.work.tasks if task.action == "thread-hoop" or task.id == "try-on-1"]
    assert len(held) == 6
    assert all("clamped-hoop" in task.cautions and "goggles" in task.tools for task in held)


def test_tucks_need_no_strips_and_casings_no_tucks(plan: Plan) -> None:
    actions = {task.action for task in plan.work.tasks}
    assert plan.shape.petticoat is not None
    assert ("apply-casings" in actions) == bool(plan.shape.petticoat.casing)
    assert ("sew-tucks" in actions) != ("apply-casings" in actions)
