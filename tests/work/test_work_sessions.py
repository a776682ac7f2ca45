"""Cutting the order of work into sessions: needs, waits, lengths and batches, on any graph."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from hoopwright.work.model import Task
from hoopwright.work.sessions import plan_sessions

SETUPS = ("metal", "table", "hand")


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


@given(graphs(), st.integers(20, 180))
def test_any_graph_is_done_once_in_an_order_that_respects_needs_and_waits(
    tasks: tuple[Task, ...], limit: int
) -> None:
    ordered, sessions = plan_sessions(tasks, limit)
    assert sorted(task.id for task in ordered) == sorted(task.id for task in tasks)
    assert [name for session in sessions for name in session.tasks] == [task.id for task in ordered]
    at: dict[str, tuple[int, float]] = {}
    clock, number = 0.0, 0
    for task in ordered:
        clock, number = (clock, number) if task.session == number else (0.0, task.session)
        for need in task.needs:
            session, end = at[need]
            assert session < task.session or end <= clock
        clock += task.minutes
        at[task.id] = (task.session, clock + task.wait)


@given(graphs(), st.integers(20, 180))
def test_no_session_runs_over_but_for_a_single_long_task(tasks: tuple[Task, ...], limit: int) -> None:
    ordered, sessions = plan_sessions(tasks, limit)
    length = {task.id: task.minutes for task in ordered}
    for session in sessions:
        assert session.minutes == sum(length[name] for name in session.tasks)
        assert session.minutes <= limit or len(session.tasks) == 1
        assert session.ends


@given(graphs(), st.integers(20, 180))
def test_the_order_does_not_depend_on_chance(tasks: tuple[Task, ...], limit: int) -> None:
    assert plan_sessions(tasks, limit) == plan_sessions(tasks, limit)


def test_work_on_the_same_set_up_is_batched() -> None:
    tasks = (
        job("a", 5, setup="metal"),
        job("b", 5, setup="hand"),
        job("c", 5, setup="metal"),
        job("d", 5, setup="hand"),
    )
    ordered, _ = plan_sessions(tasks, 120)
    assert [task.id for task in ordered] == ["a", "c", "b", "d"]


def test_what_waits_by_itself_is_started_first_and_the_wait_is_filled() -> None:
    tasks = (job("cut", 20), job("wash", 10, wait=480), job("press", 10, "wash"))
    ordered, sessions = plan_sessions(tasks, 120)
    assert [task.id for task in ordered] == ["wash", "cut", "press"]
    assert [session.tasks for session in sessions] == [("wash", "cut"), ("press",)]
    assert "over night" in sessions[0].ends


def test_a_short_wait_is_over_within_the_session_once_other_work_has_filled_it() -> None:
    tasks = (job("glue", 10, wait=20), job("sand", 5, "glue"), job("other", 25))
    ordered, sessions = plan_sessions(tasks, 120)
    assert [task.id for task in ordered] == ["glue", "other", "sand"]
    assert len(sessions) == 1


def test_dressing_the_cage_is_not_begun_when_the_fitting_no_longer_fits() -> None:
    clips = tuple(job(f"clip{k}", 10, action="clip-hoop") for k in range(3))
    stop = job("try", 40, *(clip.id for clip in clips), action="try-on-body-alone")
    _, sessions = plan_sessions((job("first", 60), *clips, stop), 120)
    assert [session.tasks for session in sessions] == [("first",), ("clip0", "clip1", "clip2", "try")]
