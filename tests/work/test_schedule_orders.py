"""The scheduler on random graphs: every job once, needs and rests kept, bounds not passed, no chance."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.work.schedule import Hand, Job, NeedsError, Shop, Timetable, network, timetable
from hoopwright.work.schedule.judge import aim, faults
from hoopwright.work.schedule.model import Way
from hoopwright.work.schedule.one import one_maker
from hoopwright.work.schedule.tidy import tidied

SETUPS = ("metal", "table", "hand")
SKILLS = ("", "cutting", "sewing")
HANDS = (Hand("Ann", frozenset({"cutting"})), Hand("Bea", frozenset({"sewing"})), Hand("Cee"))


@st.composite
def graphs(draw: st.DrawFn, most: int = 22) -> tuple[Job, ...]:
    """Random graphs whose needs point backwards, shuffled, one job the goal."""
    count = draw(st.integers(1, most))
    jobs = []
    for k in range(count):
        needs = draw(st.sets(st.integers(0, k - 1), max_size=3)) if k else set()
        jobs.append(
            Job(
                f"j{k}",
                draw(st.integers(0, 90)),
                tuple(f"j{n}" for n in sorted(needs)),
                rest=draw(st.sampled_from((0.0, 0.0, 0.0, 30.0, 600.0))),
                setup=draw(st.sampled_from(SETUPS)),
                skill=draw(st.sampled_from(SKILLS)),
                tools=draw(st.sampled_from(((), (), ("iron",)))),
                group=draw(st.sampled_from(("", "", "dress", "join"))),
                kind=draw(st.sampled_from(("cut", "mark", "sew"))),
            )
        )
    goal = draw(st.integers(0, count - 1))
    jobs[goal] = replace(jobs[goal], goal=True)
    return tuple(draw(st.permutations(jobs)))


def holds(jobs: tuple[Job, ...], shop: Shop, found: Timetable) -> None:
    assert faults(jobs, shop, found.slots) == []
    assert found.aim == aim(jobs, shop, found.slots)
    assert all(low <= high for low, high in zip(found.least, found.aim, strict=True))
    sessions = [slot.session for slot in found.slots]
    assert sorted(set(sessions)) == list(range(1, max(sessions) + 1))
    assert all(first <= then for first, then in pairwise(sessions))


@settings(max_examples=60, deadline=None)
@given(graphs(), st.integers(20, 180))
def test_one_maker_does_every_job_once_in_an_order_that_can_be_worked(
    jobs: tuple[Job, ...], limit: int
) -> None:
    shop = Shop(limit)
    holds(jobs, shop, timetable(jobs, shop))


@settings(max_examples=40, deadline=None)
@given(graphs(14), st.integers(20, 180), st.integers(2, 3))
def test_several_hands_do_every_job_once_each_what_they_can_with_the_tools_there_are(
    jobs: tuple[Job, ...], limit: int, hands: int
) -> None:
    shop = Shop(limit, HANDS[3 - hands :], {"iron": 1})
    holds(jobs, shop, timetable(jobs, shop))


@settings(max_examples=15, deadline=None)
@given(graphs(), st.integers(20, 180))
def test_the_same_jobs_give_the_same_timetable(jobs: tuple[Job, ...], limit: int) -> None:
    for shop in (Shop(limit), Shop(limit, HANDS, {"iron": 1})):
        assert timetable(jobs, shop) == timetable(jobs, shop)


@settings(max_examples=25, deadline=None)
@given(graphs(), st.integers(60, 180))
def test_a_group_that_fits_into_a_session_and_waits_for_nothing_outside_is_done_in_one(
    jobs: tuple[Job, ...], limit: int
) -> None:
    grouped = tuple(
        replace(job, needs=(), rest=0.0) if job.group == "dress" else replace(job, group="") for job in jobs
    )
    members = {job.name for job in grouped if job.group}
    if sum(job.minutes for job in grouped if job.group) <= limit:
        slots = timetable(grouped, Shop(limit)).slots
        assert len({slot.session for slot in slots if slot.job in members}) <= 1


def test_what_rests_is_begun_first_and_the_rest_falls_into_the_night() -> None:
    jobs = (Job("cut", 20), Job("wash", 10, rest=480), Job("press", 10, ("wash",)))
    found = timetable(jobs, Shop(120))
    assert [(slot.job, slot.session) for slot in found.slots] == [("wash", 1), ("cut", 1), ("press", 2)]
    assert found.proven


def test_a_short_rest_is_filled_with_other_work() -> None:
    jobs = (Job("glue", 10, rest=20), Job("sand", 5, ("glue",)), Job("other", 25))
    found = timetable(jobs, Shop(120))
    assert [slot.job for slot in found.slots] == ["glue", "other", "sand"]
    assert found.aim.sessions == 1


def test_work_on_one_set_up_is_batched_and_proven_to_be() -> None:
    jobs = tuple(Job(name, 5, setup=setup) for name, setup in zip("abcd", ("m", "h", "m", "h"), strict=True))
    found = timetable(jobs, Shop(120))
    assert (found.aim.changes, found.least.changes, found.proven) == (1, 1, True)


def test_the_goal_comes_before_what_it_does_not_wait_for() -> None:
    jobs = (Job("a", 50), Job("b", 50), Job("c", 50), Job("try", 20, ("c",), goal=True))
    found = timetable(jobs, Shop(120))
    assert found.aim.goal_session == 1
    assert found.aim.before_goal == 50


def test_a_job_longer_than_a_session_has_one_of_its_own() -> None:
    jobs = (Job("long", 200), Job("short", 10), Job("after", 10, ("long",)))
    for shop in (Shop(120), Shop(120, HANDS)):
        found = timetable(jobs, shop)
        assert faults(jobs, shop, found.slots) == []
        alone = next(slot for slot in found.slots if slot.job == "long")
        assert [s.job for s in found.slots if (s.session, s.hand) == (alone.session, alone.hand)] == ["long"]


def test_a_circle_is_refused_by_name() -> None:
    with pytest.raises(NeedsError, match="circle: a -> b -> a"):
        timetable((Job("a", 1, ("b",)), Job("b", 1, ("a",))), Shop(60))


@pytest.mark.parametrize("way", ["built-in", "exact"])
def test_a_rest_of_nothing_done_is_slept_over(way: Way) -> None:
    jobs = (Job("pour", 0, rest=500), Job("file", 10, ("pour",)))
    found = timetable(jobs, Shop(120), way)
    assert [(slot.job, slot.session, slot.start) for slot in found.slots] == [("pour", 1, 0), ("file", 2, 0)]


@pytest.mark.parametrize("way", ["built-in", "exact"])
def test_where_groups_cannot_be_kept_nothing_is_claimed_of_orders_that_keep_them(way: Way) -> None:
    """a1 before b1 and b2 before a2 want both groups in one session, which has no room for them. Apart, all of it
    takes two sessions; kept together, three boxes of 60 minutes would take three."""
    jobs = (Job("a1", 10, group="a"), Job("b2", 10, group="b"), Job("a2", 50, ("b2",), group="a"),
            Job("b1", 50, ("a1",), group="b"), Job("c1", 10, group="c"), Job("c2", 50, group="c"))
    shop = Shop(100)
    found = timetable(jobs, shop, way)
    holds(jobs, shop, found)
    assert found.aim.sessions == found.least.sessions == 2


def test_jobs_of_one_kind_are_done_one_after_the_other_in_the_order_they_are_named() -> None:
    """Slide and mark four hoops: without kinds the order may go to and fro."""
    hoops = ("H1", "H2", "H3", "H4")
    jobs = tuple(job for hoop in hoops for job in (
        Job(f"slide {hoop}", 5, setup="table", kind="slide"),
        Job(f"mark {hoop}", 7, (f"slide {hoop}",), setup="table", kind="mark")))
    found = timetable(jobs, Shop(60))
    assert [slot.job for slot in found.slots] == [f"{kind} {hoop}" for kind in ("slide", "mark") for hoop in hoops]


@settings(max_examples=60, deadline=None)
@given(graphs(), st.integers(20, 180))
def test_fewer_runs_of_a_kind_cost_nothing(jobs: tuple[Job, ...], limit: int) -> None:
    net, shop = network(jobs), Shop(limit)
    before = one_maker(net, shop)
    after = tidied(net, shop, before)
    holds(jobs, shop, after)
    assert after.aim <= before.aim
    assert {(slot.job, slot.session) for slot in after.slots} == {(slot.job, slot.session) for slot in before.slots}
    assert runs(jobs, after) <= runs(jobs, before)


def runs(jobs: tuple[Job, ...], found: Timetable) -> int:
    """How many steps the jobs are told in."""
    kinds = {job.name: job.kind for job in jobs}
    return len(list(groupby((slot.session, kinds[slot.job]) for slot in found.slots)))


def test_a_tool_of_which_there_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="press wants iron, of which there is none"):
        timetable((Job("press", 5, tools=("iron",)),), Shop(60, HANDS, {"iron": 0}))


def test_a_skill_that_nobody_has_is_refused() -> None:
    with pytest.raises(ValueError, match="no hand can do weld"):
        timetable((Job("weld", 5, skill="welding"),), Shop(60, HANDS[:2]))


def test_a_faulty_timetable_is_told_in_words() -> None:
    jobs = (Job("a", 10, rest=30), Job("b", 10, ("a",), skill="sewing", tools=("iron",)))
    shop = Shop(60, (Hand("Ann", frozenset()),), {"iron": 0})
    good = timetable(jobs, Shop(60)).slots
    wrong = tuple(replace(slot, hand="Ann", start=5, end=14) for slot in good)
    said = " / ".join(faults(jobs, shop, wrong))
    for words in ("takes 9 minutes", "Ann cannot do b", "b begins before a", "two jobs at once", "few of"):
        assert words in said
    assert faults(jobs, shop, wrong[:1])[0] == "not every job exactly once"
