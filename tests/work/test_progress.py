"""Work done and work to do again: ticks, hours left, and what is odd about a record."""

from __future__ import annotations

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan

SPEC = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in, hip: 30 in}
shape: {hem: {girth: 110 in, off_floor: 7 in}, hoops: {count: 5}}
"""
LONG_WAY = ("[wash, press, mark-tapes, cut-tapes, open-coil, test-stock, cut-waistband, make-waistband,"
            " sew-fastening, sew-tapes]")


def compiled(more: str) -> tuple[Plan, list[tuple[str, str]]]:
    run = compile_spec((SPEC + more).encode(), "cage.yaml")
    assert run.plan is not None, run.diagnostics
    told = [(one.severity.value, one.code) for one in run.diagnostics]
    return run.plan, [one for one in told if one[0] != "note"]


def test_done_tasks_are_ticked_and_taken_from_the_hours_left() -> None:
    fresh, _ = compiled("")
    plan, told = compiled(f"progress: {{done: {LONG_WAY}}}\n")
    assert told == []
    done = {task.id for task in plan.work.tasks if task.done}
    assert "sew-tapes" in done
    assert len(done) == 10
    assert plan.work.minutes == fresh.work.minutes
    spent = sum(task.minutes for task in plan.work.tasks if task.done)
    assert plan.work.minutes_left == pytest.approx(fresh.work.minutes - spent)


@pytest.mark.parametrize(("done", "code"), [
    ("[press]", ("warning", "done-out-of-order")),
    ("[cut-H9]", ("warning", "task-gone")),
    ("[close-band]", ("warning", "task-gone")),
])
def test_an_odd_record_is_told(done: str, code: tuple[str, str]) -> None:
    assert code in compiled(f"progress: {{done: {done}}}\n")[1]


def test_a_task_that_is_none_is_an_error_with_the_nearest_name() -> None:
    run = compile_spec(f"{SPEC}progress:\n  done:\n    - mark-taps\n".encode(), "cage.yaml")
    [wrong] = [one for one in run.diagnostics if one.severity.value == "error"]
    assert wrong.code == "task-unknown"
    assert wrong.span is not None
    assert wrong.span.line == 7
    assert "`mark-tapes`" in wrong.help


def again(more: str) -> list[tuple[str, str]]:
    return [(item.task, item.key) for item in compiled(more)[0].work.again]


def test_the_same_all_round_asks_for_the_waistband_and_no_hoop() -> None:
    assert again("fittings: [{on: 2027-03-02, hem_height: 6 1/2 in}]\n") == [
        ("sew-tapes", "draw-up"), ("try-on-1", "try-on")]


def test_one_tape_asks_for_its_marks_and_the_hoops_at_it() -> None:
    found = compiled("fittings: [{on: 2027-03-02, hem_height: {T4: 6 in}}]\n")[0].work.again
    assert [(item.task, item.parts) for item in found][:1] == [("mark-tapes", ("T4",))]
    assert {item.key for item in found} == {"move-marks", "clip", "try-on"}
    assert all("T4" in item.parts for item in found if item.key == "clip")


def test_a_hoop_already_sewn_is_sewn_again_there_only() -> None:
    done = f"progress: {{done: {LONG_WAY[:-1]}, sew-H5, try-on-1, try-on-2]}}\n"
    found = again(done + "fittings: [{on: 2027-03-02, hoop_height: {H5: 6 1/2 in}}]\n")
    assert ("sew-H5", "sew") in found
    assert found[-1] == ("try-on-2", "try-on")


def test_a_fitting_that_finds_all_right_asks_for_nothing() -> None:
    plan, told = compiled("fittings: [{on: 2027-03-02, hem_height: 7 1/8 in}]\n")
    assert plan.work.again == ()
    assert told == []


def test_only_the_last_fitting_asks() -> None:
    both = ("fittings:\n  - {on: 2027-03-02, hem_height: {T4: 6 in}}\n"
            "  - {on: 2027-03-09, hem_height: {T4: 7 in}}\n")
    assert again(both) == []
