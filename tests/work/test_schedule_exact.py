"""The exact order of one maker against every order there is, on graphs small enough to try them all."""

from __future__ import annotations

from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.work.schedule import Aim, Job, Shop, Slot, timetable
from hoopwright.work.schedule.judge import aim, faults
from hoopwright.work.schedule.network import network
from hoopwright.work.schedule.runs import fewest_runs, reason


def every_order(jobs: tuple[Job, ...], shop: Shop) -> Aim:
    """The best sessions, goal's session and changes by trying each order with each set of session ends."""
    best: Aim | None = None
    for order in permutations(jobs):
        for ends in range(2 ** (len(order) - 1)):
            slots: list[Slot] = []
            number, clock = 1, 0.0
            for k, job in enumerate(order):
                if k and ends >> (k - 1) & 1:
                    number, clock = number + 1, 0.0
                slots.append(Slot(job.name, "maker", number, clock, clock + job.minutes))
                clock += job.minutes
            if not faults(jobs, shop, slots):
                found = aim(jobs, shop, slots)
                best = found if best is None or found < best else best
    assert best is not None
    return best


@st.composite
def small(draw: st.DrawFn) -> tuple[Job, ...]:
    """Up to five jobs; rests, where there are any, last the night."""
    count = draw(st.integers(2, 5))
    return tuple(
        Job(
            f"j{k}",
            draw(st.sampled_from((10.0, 25.0, 40.0))),
            tuple(f"j{n}" for n in sorted(draw(st.sets(st.integers(0, k - 1), max_size=2)) if k else set())),
            rest=draw(st.sampled_from((0.0, 0.0, 600.0))),
            setup=draw(st.sampled_from("ab")),
            goal=k == count - 1,
        )
        for k in range(count)
    )


@settings(max_examples=30, deadline=None)
@given(small())
def test_the_exact_order_is_the_best_of_all_orders(jobs: tuple[Job, ...]) -> None:
    shop = Shop(60)
    best, found = every_order(jobs, shop), timetable(jobs, shop, "exact")
    assert faults(jobs, shop, found.slots) == []
    assert found.aim[:4] == best[:4]
    assert found.proven


@settings(max_examples=30, deadline=None)
@given(small())
def test_no_bound_of_the_built_in_order_passes_the_best_of_all_orders(jobs: tuple[Job, ...]) -> None:
    best, found = every_order(jobs, Shop(60)), timetable(jobs, Shop(60))
    assert found.least.sessions <= best.sessions
    assert found.least.goal_session <= best.goal_session
    if found.least[:2] == best[:2]:
        assert found.least.changes <= best.changes
    assert found.aim[:4] >= best[:4]


def test_the_fewest_runs_go_back_to_a_set_up_only_when_they_must() -> None:
    net = network((Job("a", 1), Job("b", 1, ("a",)), Job("c", 1, ("b",)), Job("d", 1), Job("e", 1)))
    setups = (0, 1, 0, 1, 0)
    assert fewest_runs(net, setups, range(5)) == ((0, 4), (1, 3), (2,))
    assert reason(net, setups, range(5)) == (0, 1, 2)
    assert fewest_runs(net, setups, (0, 2, 3)) == ((0, 2), (3,))
