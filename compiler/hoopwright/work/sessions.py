"""The order of work for one pair of hands, cut into sittings.

The rule: tasks that then wait by themselves start first; then work that wants the set-up already on the
table; then the order an experienced maker names. A task never starts before its needs are done and their
waiting is over; a night between two sessions ends any wait. Dressing the cage with its fitting, and
joining with the washing of the joins, are kept in one sitting whenever they fit into one.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from hoopwright.work.endings import ending
from hoopwright.work.model import Session, Task

_TOGETHER = {
    "clip-hoop": "dress",
    "clamp-ends": "dress",
    "try-on-body-alone": "dress",
    "try-on-body-helped": "dress",
    "join-hoop": "join",
    "join-hoop-shielded": "join",
    "wash-joins": "join",
    "check-joins": "join",
}


@dataclass(frozen=True, slots=True)
class Sitting:
    """One session while it is being filled: minutes it may take and has taken, set-up on the table."""

    limit: float
    clock: float = 0.0
    setup: str = ""


def plan_sessions(tasks: Iterable[Task], limit: float) -> tuple[tuple[Task, ...], tuple[Session, ...]]:
    """All tasks in working order with their session, and the sessions. ``limit`` is minutes a session.

    A task longer than a session has a session of its own. Raises ValueError when needs hold a circle.
    """
    waiting = list(tasks)
    rank = {task.id: index for index, task in enumerate(waiting)}
    past: dict[str, float] = {}
    ordered: list[Task] = []
    sessions: list[Session] = []
    while waiting:
        number = len(sessions) + 1
        done = _fill(waiting, past, rank, limit)
        if not done:
            raise ValueError(f"{waiting[0].id} can never be begun")
        begun = {task.id for task in done}
        waiting = [task for task in waiting if task.id not in begun]
        past = {**past, **{task.id: 0.0 for task in done}}
        ordered.extend(replace(task, session=number) for task in done)
        sessions.append(
            Session(
                number,
                tuple(task.id for task in done),
                sum(task.minutes for task in done),
                ending(done, bool(waiting)),
            )
        )
    return tuple(ordered), tuple(sessions)


def _fill(
    waiting: list[Task], past: Mapping[str, float], rank: Mapping[str, int], limit: float
) -> list[Task]:
    """The tasks of one session, in order. ``past`` holds what earlier sessions finished."""
    over: dict[str, float] = dict(past)  # minute of this session from which a task's result can be used
    done: list[Task] = []
    begun: set[str] = set()
    sitting = Sitting(limit)
    while True:
        left = [task for task in waiting if task.id not in begun]
        ready = [
            task for task in left if all(over.get(need, math.inf) <= sitting.clock for need in task.needs)
        ]
        fits = [task for task in ready if not done or sitting.clock + task.minutes <= limit]
        kept = [task for task in fits if _may_begin(task, left, done, over, sitting)]
        choice = kept or ([] if done else fits)
        if not choice:
            return done
        task = min(choice, key=lambda task: (task.wait <= 0, task.setup != sitting.setup, rank[task.id]))
        done.append(task)
        begun.add(task.id)
        clock = sitting.clock + task.minutes
        over[task.id] = clock + task.wait
        sitting = Sitting(limit, clock, task.setup)


def _may_begin(
    task: Task, left: list[Task], done: list[Task], over: Mapping[str, float], sitting: Sitting
) -> bool:
    """Whether a task that belongs to a group may start now: the group was begun in this session, or all of
    it fits and everything else it needs is done. Of a group too long for any session two tasks must fit,
    for one is not worth setting up for."""
    group = _TOGETHER.get(task.action)
    if group is None or any(_TOGETHER.get(other.action) == group for other in done):
        return True
    members = [other for other in left if _TOGETHER.get(other.action) == group]
    length = sum(other.minutes for other in members)
    if length > sitting.limit:
        return sitting.clock + min(2, len(members)) * task.minutes <= sitting.limit
    names = {other.id for other in members}
    needs = {need for other in members for need in other.needs} - names
    return sitting.clock + length <= sitting.limit and all(
        over.get(need, math.inf) <= sitting.clock for need in needs
    )
