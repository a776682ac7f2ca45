"""One maker's sessions against assembly lines balanced by hand: as many stations as an optimum is known for.

Cutting an order of work into sessions of one length under needs is the simple assembly line balancing
problem of type 1. Two textbook instances, both from memory with the optima of A. Scholl's collection
(Balancing and Sequencing of Assembly Lines, 1999): E. H. Bowman (1960), 8 tasks, and J. R. Jackson (1956), 11
tasks. A third is a bin of nine boxes where filling the largest first needs a bin too many, built by hand.
"""

from __future__ import annotations

import pytest

from hoopwright.work.schedule import Job, Shop, timetable
from hoopwright.work.schedule.judge import faults

BOWMAN = ((11, 17, 9, 5, 8, 12, 10, 3), ((1, 2), (2, 3), (2, 4), (3, 5), (3, 6), (4, 6), (5, 7), (6, 8)))
JACKSON = (
    (6, 2, 5, 7, 1, 2, 3, 6, 5, 5, 4),
    (
        (1, 2), (1, 3), (1, 4), (1, 5), (2, 6), (3, 7), (4, 7), (5, 7), (6, 8), (7, 9), (8, 10), (9, 11),
        (10, 11),
    ),
)
KNOWN = (
    (BOWMAN, 20, 5),
    (JACKSON, 7, 8),
    (JACKSON, 9, 6),
    (JACKSON, 10, 5),
    (JACKSON, 13, 4),
    (JACKSON, 14, 4),
    (JACKSON, 21, 3),
)


def tasks(line: tuple[tuple[int, ...], tuple[tuple[int, int], ...]]) -> tuple[Job, ...]:
    """The tasks of a line as jobs."""
    minutes, pairs = line
    return tuple(
        Job(f"t{k}", time, tuple(f"t{a}" for a, b in pairs if b == k)) for k, time in enumerate(minutes, 1)
    )


@pytest.mark.parametrize(("line", "cycle", "stations"), KNOWN)
def test_as_few_sessions_as_the_line_has_stations(
    line: tuple[tuple[int, ...], tuple[tuple[int, int], ...]], cycle: int, stations: int
) -> None:
    jobs = tasks(line)
    found = timetable(jobs, Shop(cycle), "exact")
    assert faults(jobs, Shop(cycle), found.slots) == []
    assert (found.aim.sessions, found.least.sessions) == (stations, stations)
    assert found.proven


@pytest.mark.parametrize(("line", "cycle", "stations"), KNOWN)
def test_the_built_in_order_is_as_good_and_claims_no_more(
    line: tuple[tuple[int, ...], tuple[tuple[int, int], ...]], cycle: int, stations: int
) -> None:
    found = timetable(tasks(line), Shop(cycle))
    assert found.aim.sessions == stations
    assert found.least.sessions <= stations


def test_nine_boxes_that_the_largest_first_would_not_pack() -> None:
    """44, 24, 24, 22, 21, 17, 8, 8, 6 go into bins of 61 by twos: largest first takes four, three hold them
    (44 + 17, 24 + 22 + 8 + 6, 24 + 21 + 8: 61, 60, 53)."""
    jobs = tuple(Job(f"b{k}", size) for k, size in enumerate((44, 24, 24, 22, 21, 17, 8, 8, 6)))
    found = timetable(jobs, Shop(61))
    assert (found.aim.sessions, found.proven) == (3, True)
