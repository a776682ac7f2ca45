"""Cutting the order of work into sessions: needs, waits, lengths and batches, on any graph."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.spec.model import Worker, Workshop
from hoopwright.work.model import Task
from hoopwright.work.sessions import Planned, plan_sessions, skill_of, unskilled

SETUPS = ("metal", "table", "hand")


def planned(tasks: Iterable[Task], limit: float, *hands: Worker) -> Planned:
    return plan_sessions(tasks, Workshop(None, limit, False, "A4", hands))


def job(
    name: str, minutes: float, *needs: str, setup: str = "table", wait: float = 0.0, action: str = "press"
) -> Task:
    action = "wash" if wait else action
    return Task(name, "sew", action, name, needs, minutes, (), (), (), setup, wait=wait)


@st.composite
def graphs(draw: st.DrawFn) -> tuple[Task, ...]:
    """Random graphs of up to 25 tasks whose needs point backwards, shuffled."""
    count = draw(st.integers(1, 25))
    tasks = []
    for k in range(count):
        needs = draw(st.sets(st.integers(0, k - 1), max_size=3)) if k else set()
        tasks.append(
            job(
                f"t{k}",
                draw(st.integers(1, 90)),
                *(f"t{n}" for n in sorted(needs)),
                setup=draw(st.sampled_from(SETUPS)),
                wait=draw(st.sampled_from((0.0, 0.0, 30.0, 600.0))),
                action=draw(st.sampled_from(("press", "clip-hoop", "join-hoop"))),
            )
        )
    return tuple(draw(st.permutations(tasks)))


@settings(max_examples=40, deadline=None)
@given(graphs(), st.integers(20, 180))
def test_any_graph_is_done_once_in_an_order_that_respects_needs_and_waits(
    tasks: tuple[Task, ...], limit: int
) -> None:
    found = planned(tasks, limit)
    assert sorted(task.id for task in found.tasks) == sorted(task.id for task in tasks)
    assert [name for session in found.sessions for name in session.tasks] == [task.id for task in found.tasks]
    at = {task.id: task for task in found.tasks}
    for task in found.tasks:
        for need in (at[name] for name in task.needs):
            over = need.start + need.minutes + need.wait
            assert need.session < task.session or (need.session == task.session and over <= task.start)


@settings(max_examples=40, deadline=None)
@given(graphs(), st.integers(20, 180))
def test_no_session_runs_over_but_for_a_single_long_task(tasks: tuple[Task, ...], limit: int) -> None:
    found = planned(tasks, limit)
    length = {task.id: task.minutes for task in found.tasks}
    for session in found.sessions:
        assert session.minutes >= sum(length[name] for name in session.tasks)
        assert session.minutes <= limit or len(session.tasks) == 1
        assert session.ends


def test_work_on_the_same_set_up_is_batched() -> None:
    tasks = (
        job("a", 5, setup="metal"),
        job("b", 5, setup="hand"),
        job("c", 5, setup="metal"),
        job("d", 5, setup="hand"),
    )
    assert [task.id for task in planned(tasks, 120).tasks] == ["a", "c", "b", "d"]


def test_what_waits_by_itself_is_started_first_and_the_wait_is_filled() -> None:
    found = planned((job("cut", 20), job("wash", 10, wait=480), job("press", 10, "wash")), 120)
    assert [session.tasks for session in found.sessions] == [("wash", "cut"), ("press",)]
    assert "over night" in found.sessions[0].ends


def test_dressing_the_cage_is_not_begun_when_the_fitting_no_longer_fits() -> None:
    clips = tuple(job(f"clip{k}", 10, action="clip-hoop") for k in range(3))
    stop = job("try", 40, *(clip.id for clip in clips), action="try-on-body-alone")
    sessions = planned((job("first", 60), *clips, stop), 120).sessions
    assert len({session.number for session in sessions if {"clip0", "try"} & set(session.tasks)}) == 1
    assert {"clip0", "clip1", "clip2", "try"} <= set(sessions[-1].tasks) | set(sessions[0].tasks)


def test_each_of_several_hands_is_named_and_does_what_she_knows() -> None:
    tasks = (job("saw", 30, setup="metal"), job("sew", 30, setup="hand"), job("mark", 10))
    found = planned(tasks, 60, Worker("Ann", ("cutting metal",)), Worker("Bea", ("hand sewing",)))
    assert {task.id: task.hand for task in found.tasks if task.id != "mark"} == {"saw": "Ann", "sew": "Bea"}
    assert found.order.hands == ("Ann", "Bea")
    assert [session.minutes for session in found.sessions] == [40]


def test_one_maker_is_not_named_over_and_over() -> None:
    assert {task.hand for task in planned((job("a", 5), job("b", 5)), 60).tasks} == {""}


def test_skills_go_by_the_place_and_a_seam_without_a_machine_is_sewn_by_hand() -> None:
    assert skill_of(job("a", 5, setup="metal")) == "cutting metal"
    assert skill_of(job("a", 5, setup="machine")) == "hand sewing"
    assert skill_of(replace(job("a", 5, setup="machine"), tools=("sewing machine",))) == "machine"
    assert skill_of(job("a", 5, setup="joining")) == "cutting metal"
    assert skill_of(replace(job("a", 5, setup="joining"), cautions=("hot-iron",))) == "soldering"
    assert skill_of(job("a", 5)) == ""


def test_a_skill_that_nobody_has_is_told_with_its_first_task() -> None:
    tasks = (job("saw", 5, setup="metal"), job("cut", 5, setup="metal"), job("sew", 5, setup="hand"))
    shop = Workshop(None, 60, False, "A4", (Worker("Bea", ("hand sewing",)),))
    assert unskilled(tasks, shop) == {"cutting metal": "saw"}
    assert unskilled(tasks, Workshop(None, 60, False, "A4")) == {}
