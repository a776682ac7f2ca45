"""What the scheduler works on: jobs, hands, shared tools, and the timetable it gives back. Minutes.

The scheduler knows nothing of cages. A job takes minutes of one hand, waits for others, and its result may
have to rest by itself before it can be used. Work is done in sessions of one length; the night between two
sessions ends any rest. A job is never cut in two; one that is longer than a session has one of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from types import MappingProxyType
from typing import Literal, NamedTuple

from hoopwright.source.record import record

Way = Literal["built-in", "exact"]


@record(frozen=True, slots=True)
class Job:
    """One job. ``rest`` minutes pass by themselves after it before its result can be used.

    ``setup`` is the place and set of tools it wants; jobs of one set-up done one after the other want no
    change. ``skill`` is what its hand must know, blank for nothing special; ``tools`` are those that hands
    share. Jobs of one ``group`` are done in one session whenever all of them fit into one. ``goal`` marks
    the job that should come as early as it can (a first fitting); at most one job has it. Jobs of one ``kind``
    want one instruction, and follow one another within a session where that costs nothing.
    """

    name: str
    minutes: float
    needs: tuple[str, ...] = ()
    rest: float = 0.0
    setup: str = ""
    skill: str = ""
    tools: tuple[str, ...] = ()
    group: str = ""
    goal: bool = False
    kind: str = ""


@record(frozen=True, slots=True)
class Hand:
    """Somebody who works. ``skills`` None: knows everything."""

    name: str
    skills: frozenset[str] | None = None

    def can(self, job: Job) -> bool:
        """Whether this hand may do the job."""
        return not job.skill or self.skills is None or job.skill in self.skills


@record(frozen=True, slots=True)
class Shop:
    """Who works, minutes of a session, and how many there are of each shared tool (others: enough)."""

    session: float
    hands: tuple[Hand, ...] = (Hand("maker"),)
    tools: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))


class Aim(NamedTuple):
    """What an order is judged by, the weightiest first; less is better.

    ``sessions``; ``goal_session``: the session of the goal (0 without one); ``lasting``: minutes that all
    sessions last together when several hands work, 0 for one; ``changes`` of set-up within sessions, hand
    by hand; ``before_goal``: minutes that sessions have lasted when the goal begins.
    """

    sessions: int
    goal_session: int
    lasting: float
    changes: int
    before_goal: float


@record(frozen=True, slots=True)
class Slot:
    """A job in its place: ``session`` from 1, ``start`` and ``end`` in minutes of that session."""

    job: str
    hand: str
    session: int
    start: float
    end: float


@record(frozen=True, slots=True)
class Timetable:
    """All jobs in working order, what the order comes to, and what no order can better.

    ``least`` bounds each part of ``aim`` from below, each given that those before it are as found;
    ``proven`` tells that the first parts up to ``changes`` are the best there are. ``looked`` counts the
    part-orders looked at.
    """

    slots: tuple[Slot, ...]
    aim: Aim
    least: Aim
    proven: bool
    way: Way = "built-in"
    looked: int = 0
