"""Several hands against textbook machines with known least length.

R. L. Graham, Bounds on multiprocessing timing anomalies, 1969 (from memory): nine tasks on three machines
take 12; listed as named, a shorter list of times then takes longer, which is the anomaly; with its
times each one less the best is 10. S. M. Johnson, 1954, two-machine flow shop (from memory;
the five jobs are those of many textbooks): the least length is that of Johnson's own order, computed
here by his recursion.
"""

from __future__ import annotations

import pytest

from hoopwright.work.schedule import Hand, Job, Shop, timetable
from hoopwright.work.schedule.judge import faults

GRAHAM = {1: (3, ()), 2: (2, ()), 3: (2, ()), 4: (2, ()), 5: (4, (4,)), 6: (4, (4,)), 7: (4, (4,)),
          8: (4, (4,)), 9: (9, (1,))}
FLOW = ((5, 2), (1, 6), (9, 7), (3, 8), (10, 4))


def three(less: int) -> tuple[tuple[Job, ...], Shop]:
    jobs = tuple(Job(f"T{k}", t - less, tuple(f"T{n}" for n in needs)) for k, (t, needs) in GRAHAM.items())
    return jobs, Shop(1000, (Hand("one"), Hand("two"), Hand("three")))


@pytest.mark.parametrize(("less", "length"), [(0, 12), (1, 10)])
def test_three_hands_need_no_longer_than_grahams_optimum(less: int, length: int) -> None:
    jobs, shop = three(less)
    found = timetable(jobs, shop)
    assert faults(jobs, shop, found.slots) == []
    assert (found.aim.lasting, found.least.lasting) == (length, length)


def johnson(times: tuple[tuple[int, int], ...]) -> int:
    """Length of Johnson's order: short first operations first, short second operations last."""
    front = sorted((t for t in times if t[0] < t[1]), key=lambda t: t[0])
    back = sorted((t for t in times if t[0] >= t[1]), key=lambda t: -t[1])
    first = second = 0
    for a, b in (*front, *back):
        first += a
        second = max(second, first) + b
    return second


def test_two_machines_in_line_need_no_longer_than_johnsons_order() -> None:
    jobs = tuple(
        job
        for k, (a, b) in enumerate(FLOW)
        for job in (Job(f"a{k}", a, skill="A"), Job(f"b{k}", b, (f"a{k}",), skill="B"))
    )
    shop = Shop(1000, (Hand("A", frozenset("A")), Hand("B", frozenset("B"))))
    found = timetable(jobs, shop)
    assert johnson(FLOW) == 30
    assert faults(jobs, shop, found.slots) == []
    assert found.aim.lasting == 30


def test_one_shared_tool_makes_two_hands_wait_for_each_other() -> None:
    jobs = tuple(Job(f"j{k}", 10, tools=("iron",)) for k in range(4))
    hands = (Hand("one"), Hand("two"))
    assert timetable(jobs, Shop(100, hands, {"iron": 1})).aim.lasting == 40
    assert timetable(jobs, Shop(100, hands, {"iron": 2})).aim.lasting == 20
