"""The order of work of one maker: part-orders grown job by job, the most promising kept.

A part-order is judged by what it must at least come to (:mod:`hoopwright.work.schedule.bounds`). Part-orders
that have done the same jobs and stand at the same minute with the same set-up are one.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil
from operator import sub
from typing import NamedTuple

from hoopwright.work.schedule.bounds import minutes_of
from hoopwright.work.schedule.desk import Desk
from hoopwright.work.schedule.left import Lefts
from hoopwright.work.schedule.model import Aim
from hoopwright.work.schedule.packing import SPARE, weights, whole

Worth = tuple[float, float, float, float, float]

Key = tuple[int, int, float, int]
"""Jobs done, session, minute and set-up: part-orders that have these in common are one."""

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


Move = tuple[Part, int, float]
"""A part-order, the job done next and the minute at which it starts."""


class Search:
    """Searches at one desk. ``looked`` counts the part-orders looked at so far."""

    def __init__(self, desk: Desk, looked: int = 0) -> None:
        self.desk, self.looked = desk, looked
        self._left = Lefts(desk)
        self._end = desk.limit + _SMALL
        self._rooms: dict[float, tuple[float, ...]] = {}

    def run(self, width: int, most: int, *, tight: bool = False, every: bool = False,
            best: Aim | None = None) -> Part | None:
        """The best whole order that ``width`` part-orders of each length lead to, or None.

        ``tight`` prefers full sessions to few changes of set-up; ``every`` tries every job that can be
        next, not only the likeliest. After ``most`` part-orders only one of
        each length is kept. Given up, with None, once none of those kept can come to less than ``best``.
        """
        rank = _tightly if tight else _plainly
        likely = len(self.desk.setups) if every else _LIKELY
        until = self.looked + most
        parts = [Part(0, 1, 0.0, -1, 0, (), 0, 0.0, 0.0, None)]
        for _ in self.desk.minutes:
            kept: dict[Key, tuple[Worth, Move]] = {}
            for part in parts:
                for move in self._moves(part, likely):
                    self.looked += 1
                    worth, key = self._worth(*move)
                    if key not in kept or worth < kept[key][0]:
                        kept[key] = (worth, move)
            ranked = sorted(kept.values(), key=rank)[: width if self.looked < until else 1]
            if best is not None and all(_at_least(worth) >= best for worth, _ in ranked):
                return None
            parts = [self._done(*move) for _, move in ranked]
        return parts[0] if parts else None

    def _moves(self, part: Part, likely: int) -> Iterator[Move]:
        """The jobs that are worth looking at as the next one, in this session and in the next: so many of each
        set-up as are ``likely``."""
        desk, setups = self.desk, self.desk.setups
        open_ = [k for k, mask in enumerate(desk.blocks) if part.done & mask and mask & ~part.done]
        next_day = _night(part) if (part.clock > 0 or part.resting) and not open_ else None
        today, tomorrow = [likely] * len(setups), [likely] * len(setups)
        for at in self._left[part.done].first:
            kind = setups[at]
            if today[kind]:
                start = self._start(part, at, open_)
                if start is not None:
                    today[kind] -= 1
                    yield part, at, start
            if next_day is not None and tomorrow[kind]:
                start = self._start(next_day, at, open_)
                if start is not None:
                    tomorrow[kind] -= 1
                    yield next_day, at, start

    def _start(self, part: Part, at: int, open_: list[int]) -> float | None:
        """The minute of this session at which a job can be begun next, or None when it does not fit."""
        desk = self.desk
        start, needs = part.clock, desk.needs[at]
        for other, over in part.resting:
            if over > start and needs >> other & 1:
                start = over
        end = start + desk.minutes[at]
        if end > self._end and (part.clock > 0 or start > 0):
            return None
        own = desk.block_of[at]
        if open_ or own >= 0:
            must = desk.closures[own] if own >= 0 else 0
            for k in open_:
                must |= desk.closures[k]
            if end + minutes_of(must & ~(part.done | 1 << at), desk.minutes) > self._end:
                return None
        return start

    def _done(self, part: Part, at: int, start: float) -> Part:
        """The part-order with a job done next."""
        desk = self.desk
        end, rest, setup, goal = start + desk.minutes[at], desk.net.jobs[at].rest, desk.setups[at], at == desk.goal
        return Part(
            part.done | 1 << at,
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

    def _worth(self, part: Part, at: int, start: float) -> tuple[Worth, Key]:
        """What the part-order with this job done next must at least come to: sessions, the goal's session,
        changes, minutes before the goal; then minutes lost in closed sessions. And what it stands at."""
        desk = self.desk
        done, session, clock, setup = part.done | 1 << at, part.session, start + desk.minutes[at], desk.setups[at]
        left = self._left.after(self._left[part.done], at, done)
        limit = desk.limit
        room = limit - clock if clock < limit else 0.0
        packed = self._rooms.get(room)
        if packed is None:
            packed = self._rooms[room] = weights(room / limit)
        sessions = max(desk.found.sessions, session + ceil(max(map(sub, left.weights, packed)) - SPARE))
        behind = session + left.tail
        if sessions <= behind:
            sessions = behind + self._waits(part, at, clock, left.last)
        runs = part.runs + (part.setup != setup) + left.every_run - (1 if left.runs and left.runs[setup] else 0)
        if at == desk.goal:
            goal_session, before = session, part.past + start
        else:
            goal_session, before = part.goal_session, part.before_goal
        if not goal_session and desk.goal >= 0:
            needed = left.ahead + min(desk.minutes[desk.goal], limit) - room
            goal_session = session + max(0, whole(needed, limit))
            before = part.past + clock + left.ahead
        lost = (session - 1) * limit + clock + left.work  # minutes of closed sessions in which nothing was done
        return (sessions, goal_session, runs - sessions, before, lost), (done, session, clock, setup)

    def _waits(self, part: Part, at: int, clock: float, jobs: tuple[int, ...]) -> bool:
        """Whether one of ``jobs``, which could be next after the job that ends now, cannot be done in this
        session any more."""
        desk, end = self.desk, self._end
        rest = desk.net.jobs[at].rest
        resting = (*part.resting, (at, clock + rest)) if rest > 0 else part.resting
        for job in jobs:
            minutes = desk.minutes[job]
            if clock + minutes > end:
                return True
            for other, over in resting:
                if over + minutes > end and desk.needs[job] >> other & 1:
                    return True
        return False


def _at_least(worth: Worth) -> Worth:
    """The aim of every whole order that a part-order of this worth leads to, or one that is less."""
    sessions, goal_session, changes, before, _ = worth
    return (sessions, goal_session, 0.0, changes, before)


def _plainly(item: tuple[Worth, Move]) -> Worth:
    return item[0]


def _tightly(item: tuple[Worth, Move]) -> Worth:
    sessions, goal_session, changes, before, lost = item[0]
    return (sessions, goal_session, lost, changes, before)


def _night(part: Part) -> Part:
    """The part-order with its session closed."""
    return Part(part.done, part.session + 1, 0.0, -1, part.runs, (), part.goal_session, part.before_goal,
                part.past + part.clock, part.last)
