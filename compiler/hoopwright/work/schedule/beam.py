"""The order of work of one maker: part-orders grown job by job, the most promising kept.

A part-order is judged by what it must at least come to (:mod:`hoopwright.work.schedule.bounds`). Part-orders
that have done the same jobs and stand at the same minute with the same set-up are one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil
from operator import sub
from typing import NamedTuple

from hoopwright.work.schedule.bounds import minutes_of
from hoopwright.work.schedule.desk import Desk
from hoopwright.work.schedule.packing import SPARE, weights, whole

Worth = tuple[float, float, float, float, float]

_SMALL = 1e-9
_LIKELY = 2
"""Jobs of each set-up that are tried as the next one."""


class Placed(NamedTuple):
    """The last job of a part-order, where it lies, and the part-order before it."""

    before: Placed | None
    job: int
    session: int
    start: float


class Part(NamedTuple):
    """A part-order. ``resting``: jobs of this session and the minute from which their result can be used.
    ``past``: minutes that the sessions before this one lasted."""

    done: int
    session: int
    clock: float
    setup: int
    runs: int
    resting: tuple[tuple[int, float], ...]
    goal_session: int
    before_goal: float
    past: float
    last: Placed | None


class Left(NamedTuple):
    """What is left once certain jobs are done: which can be next (those that rest afterwards first), the
    minutes of all of it (no job counted longer than a session) and its weights as packed, runs that it
    needs by set-up and in all, minutes that must come before the goal. ``tail``: the most sessions that must
    follow that of a job which can be next; ``last``: the jobs that so many must follow."""

    first: tuple[int, ...]
    work: float
    weights: tuple[float, ...]
    runs: tuple[int, ...]
    every_run: int
    ahead: float
    tail: int
    last: tuple[int, ...]


@dataclass(slots=True)
class Search:
    """Searches at one desk. ``looked`` counts the part-orders looked at so far."""

    desk: Desk
    looked: int = 0
    every: bool = False
    _known: dict[int, Left] = field(default_factory=dict)
    _rooms: dict[float, tuple[float, ...]] = field(default_factory=dict)
    _rank: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Rank the jobs: eager ones first."""
        ordered = sorted(range(len(self.desk.minutes)), key=self._eager)
        self._rank = sorted(ordered, key=ordered.__getitem__)

    def run(self, width: int, most: int, *, tight: bool = False, every: bool = False) -> Part | None:
        """The best whole order that ``width`` part-orders of each length lead to, or None.

        ``tight`` prefers full sessions to few changes of set-up; ``every`` tries every job that can be
        next, not only the likeliest. After ``most`` part-orders only one of
        each length is kept.
        """
        rank = _tightly if tight else _plainly
        self.every = every
        until = self.looked + most
        self._known.setdefault(0, self._all())
        parts = [Part(0, 1, 0.0, -1, 0, (), 0, 0.0, 0.0, None)]
        for _ in self.desk.minutes:
            kept: dict[tuple[int, int, float, int], tuple[Worth, Part]] = {}
            for part in parts:
                for fresh in self._moves(part):
                    self.looked += 1
                    worth = self._worth(fresh)
                    key = (fresh.done, fresh.session, fresh.clock, fresh.setup)
                    if key not in kept or worth < kept[key][0]:
                        kept[key] = (worth, fresh)
            ranked = sorted(kept.values(), key=rank)
            parts = [part for _, part in ranked[: width if self.looked < until else 1]]
        return parts[0] if parts else None

    def _all(self) -> Left:
        """What is left before anything is done."""
        desk = self.desk
        jobs = range(len(desk.minutes))
        first = tuple(sorted((at for at in jobs if not desk.needs[at]), key=self._rank.__getitem__))
        ahead = minutes_of(desk.net.before[desk.goal], desk.minutes) if desk.goal >= 0 else 0.0
        return self._seen(first, sum(desk.sizes), tuple(map(sum, zip(*desk.weights, strict=True))), ahead)

    def _seen(self, first: tuple[int, ...], work: float, packed: tuple[float, ...], ahead: float) -> Left:
        """What is left, with what is looked up of the jobs that can be next."""
        found = self.desk.found
        rows = [found.runs[at] for at in first]
        runs = tuple(map(max, *rows)) if len(rows) > 1 else tuple(*rows)
        tails = [found.tail[at] for at in first]
        tail = max(tails, default=0)
        last = tuple([at for at, mine in zip(first, tails, strict=True) if mine == tail])
        return Left(first, work, packed, runs, sum(runs), ahead, tail, last)

    def _left(self, part: Part) -> Left:
        """What is left of a part-order, looked up once for all that have done the same."""
        known = self._known.get(part.done)
        if known is None:
            desk, done = self.desk, part.done
            at = part.last.job if part.last else 0
            before = self._known[done & ~(1 << at)]
            fresh = [then for then in desk.net.after[at] if not desk.needs[then] & ~done]
            first = tuple(sorted((*(other for other in before.first if other != at), *fresh),
                                 key=self._rank.__getitem__))
            needed = desk.goal >= 0 and desk.net.before[desk.goal] >> at & 1
            known = self._seen(first, before.work - desk.sizes[at],
                               tuple(map(sub, before.weights, desk.weights[at])),
                               before.ahead - (desk.minutes[at] if needed else 0.0))
            self._known[done] = known
        return known

    def _eager(self, at: int) -> tuple[bool, bool, int]:
        """Jobs that rest afterwards first, then those the goal waits for, then as named."""
        desk = self.desk
        needed = desk.goal < 0 or at == desk.goal or desk.net.before[desk.goal] >> at & 1
        return (desk.net.jobs[at].rest <= 0, not needed, at)

    def _moves(self, part: Part) -> Iterator[Part]:
        """Every part-order with one job more that is worth looking at."""
        desk, setups = self.desk, self.desk.setups
        open_ = [k for k, mask in enumerate(desk.blocks) if part.done & mask and mask & ~part.done]
        next_day = _night(part) if part.clock > 0 and not open_ else None
        most = len(setups) if self.every else _LIKELY
        today, tomorrow = [most] * len(setups), [most] * len(setups)
        for at in self._left(part).first:
            kind = setups[at]
            if today[kind]:
                now = self._now(part, at, open_)
                if now is not None:
                    today[kind] -= 1
                    yield now
            if next_day is not None and tomorrow[kind]:
                then = self._now(next_day, at, open_)
                if then is not None:
                    tomorrow[kind] -= 1
                    yield then

    def _now(self, part: Part, at: int, open_: list[int]) -> Part | None:
        """The job done next in this session, or None when it does not fit."""
        desk = self.desk
        start = part.clock
        for other, over in part.resting:
            if desk.needs[at] >> other & 1 and over > start:
                start = over
        end = start + desk.minutes[at]
        if end > desk.limit + _SMALL and (part.clock > 0 or start > 0):
            return None
        done = part.done | 1 << at
        own = desk.block_of[at]
        if open_ or own >= 0:
            must = desk.closures[own] if own >= 0 else 0
            for k in open_:
                must |= desk.closures[k]
            if end + minutes_of(must & ~done, desk.minutes) > desk.limit + _SMALL:
                return None
        rest = desk.net.jobs[at].rest
        setup = desk.setups[at]
        goal = at == desk.goal
        return Part(
            done,
            part.session,
            end,
            setup,
            part.runs + (part.setup != setup),
            (*part.resting, (at, end + rest)) if rest > 0 else part.resting,
            part.session if goal else part.goal_session,
            part.past + start if goal else part.before_goal,
            part.past,
            Placed(part.last, at, part.session, start),
        )

    def _worth(self, part: Part) -> Worth:
        """What the part-order must at least come to: sessions, the goal's session, changes, minutes before
        the goal; then minutes lost in closed sessions."""
        desk, left = self.desk, self._left(part)
        session, clock, limit = part.session, part.clock, desk.limit
        room = limit - clock if clock < limit else 0.0
        packed = self._rooms.get(room)
        if packed is None:
            packed = self._rooms[room] = weights(room / limit)
        sessions = max(desk.found.sessions, session + ceil(max(map(sub, left.weights, packed)) - SPARE))
        behind = session + left.tail
        if sessions <= behind:
            sessions = behind + self._waits(part, left.last)
        runs = part.runs + left.every_run - (1 if left.runs and left.runs[part.setup] else 0)
        goal_session, before = part.goal_session, part.before_goal
        if desk.goal >= 0 and not goal_session:
            needed = left.ahead + min(desk.minutes[desk.goal], limit) - room
            goal_session = session + max(0, whole(needed, limit))
            before = part.past + clock + left.ahead
        lost = (session - 1) * limit + clock + left.work  # minutes of closed sessions in which nothing was done
        return (sessions, goal_session, runs - sessions, before, lost)

    def _waits(self, part: Part, jobs: tuple[int, ...]) -> bool:
        """Whether one of the jobs, which could be next, cannot be done in this session any more."""
        desk, clock, end = self.desk, part.clock, self.desk.limit + _SMALL
        for at in jobs:
            minutes = desk.minutes[at]
            if clock + minutes > end:
                return True
            for other, over in part.resting:
                if over + minutes > end and desk.needs[at] >> other & 1:
                    return True
        return False


def _plainly(item: tuple[Worth, Part]) -> Worth:
    return item[0]


def _tightly(item: tuple[Worth, Part]) -> Worth:
    sessions, goal_session, changes, before, lost = item[0]
    return (sessions, goal_session, lost, changes, before)


def _night(part: Part) -> Part:
    """The part-order with its session closed."""
    return part._replace(session=part.session + 1, clock=0.0, setup=-1, resting=(),
                         past=part.past + part.clock)
