"""The best order of one maker, proven: assignments to sessions, each put in order, cuts learnt from it.

Logic-based Benders decomposition (J. N. Hooker and G. Ottosson, 2003; from memory): the program of
:mod:`hoopwright.work.schedule.assign` says which session each job falls in; the fewest runs of each session
are found exactly; where they are more than the program counted on, it learns why. Sessions first, then the
goal's session, then changes of set-up; each is proven before the next is asked for.
"""

from __future__ import annotations

from hoopwright.work.schedule.assign import NODES, Assignment, Cut, Program
from hoopwright.work.schedule.desk import Desk
from hoopwright.work.schedule.judge import aim, faults
from hoopwright.work.schedule.model import Aim, Shop, Slot, Timetable
from hoopwright.work.schedule.network import Network
from hoopwright.work.schedule.one import least_aim, ordered, proven
from hoopwright.work.schedule.runs import fewest_runs, reason

_ROUNDS, _IDLE = 30, 6
"""Most assignments that are put in order, and most of them in vain one after the other, before the search
gives up with a gap; it does so too when they have taken as many nodes as one search may."""


def one_maker_exact(net: Network, shop: Shop) -> Timetable:
    """The best order, or the best found and what no order can better."""
    start, table = ordered(net, shop)
    if start.proven:
        return _named(start)
    best, sessions, goal = _widths(table, shop, start)
    least = least_aim(table, best.aim.sessions)._replace(sessions=sessions, goal_session=goal)
    if best.aim[:2] != (sessions, goal):
        return _named(best, least)
    program = Program(table, sessions, goal or sessions)
    best, changes = _fewest_changes(program, table, shop, best)
    least = least._replace(changes=max(least.changes, min(changes, best.aim.changes)))
    return _named(best, least)


def _fewest_changes(program: Program, table: Desk, shop: Shop, best: Timetable) -> tuple[Timetable, int]:
    """The best order, and changes of set-up that no order has fewer of."""
    changes, idle = 0, 0
    for _ in range(_ROUNDS):
        before = (best.aim.changes, changes)
        if best.aim.changes <= changes or idle > _IDLE or program.nodes >= NODES:
            break
        found = program.solve()
        changes = max(changes, found.runs - program.sessions)
        if not found.sessions:
            break
        best = _better(best, table, shop, found)
        idle = idle + 1 if (best.aim.changes, changes) == before else 0
        if not _learn(program, found):
            break
    return best, changes


def _widths(table: Desk, shop: Shop, start: Timetable) -> tuple[Timetable, int, int]:
    """The best order and the least sessions and goal's session, as far as they can be proven."""
    best, sessions = start, table.found.sessions
    while sessions < best.aim.sessions:
        found = Program(table, sessions, sessions).solve(runs=False)
        if found.possible:
            best = _better(best, table, shop, found)
            break
        sessions += 1
    goal = table.found.head[table.goal] if table.goal >= 0 else 0
    while best.aim.sessions == sessions and goal < best.aim.goal_session:
        found = Program(table, sessions, goal).solve(runs=False)
        if found.possible:
            best = _better(best, table, shop, found)
            break
        goal += 1
    return best, sessions, goal


def _learn(program: Program, found: Assignment) -> bool:
    """Add a cut for every session that needs more runs than were counted for it; whether any was new."""
    net, setups = program.desk.net, program.desk.setups
    fresh = []
    for jobs in found.sessions:
        runs = len(fewest_runs(net, setups, jobs))
        if runs > len({setups[at] for at in jobs}):
            cut = Cut(reason(net, setups, jobs), runs)
            if cut not in program.cuts and cut not in fresh:
                fresh.append(cut)
    program.cuts.extend(fresh)
    return bool(fresh)


def _better(best: Timetable, table: Desk, shop: Shop, found: Assignment) -> Timetable:
    """The assignment put in order, if that is better than ``best`` and can be worked."""
    slots: list[Slot] = []
    for number, jobs in enumerate(found.sessions, 1):
        clock = 0.0
        for at in (at for run in fewest_runs(table.net, table.setups, jobs) for at in run):
            job = table.net.jobs[at]
            slots.append(Slot(job.name, shop.hands[0].name, number, clock, clock + job.minutes))
            clock += job.minutes
    worth = aim(table.net.jobs, shop, slots) if slots else best.aim
    if worth >= best.aim or faults(table.net.jobs, shop, slots):
        return best
    return Timetable(tuple(slots), worth, best.least, False, looked=best.looked)


def _named(best: Timetable, least: Aim | None = None) -> Timetable:
    least = least or best.least
    return Timetable(best.slots, best.aim, least, proven(best.aim, least), "exact", best.looked)
