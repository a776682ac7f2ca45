"""The order of work cut into sittings: tasks as the scheduler's jobs, and its timetable as sessions.

Dressing the cage with its fitting, and joining with the washing of the joins, are kept in one sitting
whenever they fit into one. A night between two sessions ends any wait. The tools of a sewing household, goggles
and gloves are one each to a hand; of any other tool there is one, unless the workshop counts more.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from hoopwright.library.tools import HOUSEHOLD, PROTECTION
from hoopwright.source.record import record
from hoopwright.spec.model import Workshop
from hoopwright.work.endings import ending
from hoopwright.work.model import Order, Session, Task
from hoopwright.work.schedule import Hand, Job, Shop, Timetable, timetable
from hoopwright.work.schedule.judge import lengths

MAKER = "maker"

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
_SKILLS = {"metal": "cutting metal", "machine": "machine", "hand": "hand sewing", "body": "fitting"}
_COLD = "cutting metal"
_HOT = "soldering"
_OWN = frozenset((*HOUSEHOLD, *PROTECTION))
"""What every hand has, so that no turns are taken at it."""


@record(frozen=True, slots=True)
class Planned:
    """All tasks in working order with session, hand and start; the sessions; how good the order is."""

    tasks: tuple[Task, ...]
    sessions: tuple[Session, ...]
    order: Order


def plan_sessions(tasks: Iterable[Task], workshop: Workshop, goal: str = "") -> Planned:
    """The tasks cut into sessions, the task ``goal`` as early as can be.

    Raises ValueError when needs hold a circle, and when a task wants a skill that no hand has; SolverMissing
    when the workshop asks for the exact order of several hands and OR-Tools is not there.
    """
    tasks = tuple(tasks)
    shop = shop_of(workshop, tasks)
    found = timetable((_job(task, goal) for task in tasks), shop, workshop.order)
    return _planned(tasks, found, shop)


def shop_of(workshop: Workshop, tasks: Iterable[Task]) -> Shop:
    """Who works, how long, and how many there are of each tool that hands may have to share."""
    hands = tuple(
        Hand(hand.name, None if hand.skills is None else frozenset(hand.skills)) for hand in workshop.hands
    )
    shared = sorted({tool for task in tasks for tool in task.tools} - _OWN)
    counts: Mapping[str, int] = {tool: workshop.counts.get(tool, 1) for tool in shared}
    return Shop(workshop.session, hands or (Hand(MAKER),), counts)


def skill_of(task: Task) -> str:
    """What its hand must know, blank for nothing special: by the place it is done at, joining by its heat;
    a seam for the machine is hand sewing where no machine stands ready."""
    if task.setup == "joining":
        return _HOT if "hot-iron" in task.cautions else _COLD
    if task.setup == "machine" and "sewing machine" not in task.tools:
        return _SKILLS["hand"]
    return _SKILLS.get(task.setup, "")


def unskilled(tasks: Iterable[Task], workshop: Workshop) -> dict[str, str]:
    """Skills that tasks want and no hand has, each with the first task that wants it."""
    if not workshop.hands or any(hand.skills is None for hand in workshop.hands):
        return {}
    known = {skill for hand in workshop.hands for skill in hand.skills or ()}
    found: dict[str, str] = {}
    for task in tasks:
        skill = skill_of(task)
        if skill and skill not in known:
            found.setdefault(skill, task.id)
    return found


def _job(task: Task, goal: str) -> Job:
    return Job(
        task.id,
        task.minutes,
        task.needs,
        task.wait,
        task.setup,
        skill_of(task),
        tuple(tool for tool in task.tools if tool not in _OWN),
        _TOGETHER.get(task.action, ""),
        task.id == goal,
        task.action,
    )


def _planned(tasks: tuple[Task, ...], found: Timetable, shop: Shop) -> Planned:
    known = {task.id: task for task in tasks}
    several = len(shop.hands) > 1
    ordered = tuple(
        replace(known[slot.job], session=slot.session, start=slot.start, hand=slot.hand if several else "")
        for slot in found.slots
    )
    sessions = []
    lasts = lengths(found.slots)
    for number, minutes in lasts.items():
        done = [task for task in ordered if task.session == number]
        names = tuple(task.id for task in done)
        sessions.append(Session(number, names, minutes, ending(done, number < len(lasts))))
    aim, least = found.aim, found.least
    order = Order(
        found.way,
        found.proven,
        tuple(hand.name for hand in shop.hands) if several else (),
        aim.sessions,
        least.sessions,
        aim.goal_session,
        least.goal_session,
        aim.changes,
        least.changes,
        aim.lasting,
        least.lasting,
    )
    return Planned(ordered, tuple(sessions), order)
