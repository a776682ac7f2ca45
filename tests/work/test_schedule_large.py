"""One maker's order of as many tasks as a large cage has: it can be worked, and what it may lack is bounded."""

from __future__ import annotations

import random

import pytest

from hoopwright.work.schedule import Job, Shop, timetable
from hoopwright.work.schedule.judge import aim, faults


@pytest.mark.parametrize("seed", [1, 2])
def test_a_hundred_and_fifty_tasks_are_ordered_with_a_bound_within_a_tenth(seed: int) -> None:
    draw = random.Random(seed)
    jobs = tuple(
        Job(f"j{k}", draw.randint(3, 30), tuple(f"j{n}" for n in range(max(0, k - 6), k) if draw.random() < 0.25),
            rest=draw.choice((0, 0, 0, 600)), setup=f"s{draw.randrange(3)}", goal=k == 75)
        for k in range(150)
    )
    shop = Shop(60)
    found = timetable(jobs, shop)
    assert faults(jobs, shop, found.slots) == []
    assert found.aim == aim(jobs, shop, found.slots)
    assert found.least.sessions <= found.aim.sessions <= 1.1 * found.least.sessions
    assert sum(job.minutes for job in jobs) / 60 <= found.least.sessions
