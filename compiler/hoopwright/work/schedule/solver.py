"""The order of work of several hands by a kept solver: OR-Tools CP-SAT, an optional extra.

L. Perron and V. Furnon, OR-Tools, with interval variables for each hand. One search worker and a limit in the
solver's own deterministic time, so that every machine finds the same. The built-in rule's timetable is its
hint, and is what comes out when the solver finds nothing better.
"""

from __future__ import annotations

import math
from typing import Any

from hoopwright.source.record import record
from hoopwright.work.schedule.desk import desk
from hoopwright.work.schedule.judge import aim, faults
from hoopwright.work.schedule.model import Shop, Slot, Timetable
from hoopwright.work.schedule.network import Network
from hoopwright.work.schedule.several import least_several

_STEPS = 4
"""Steps of a minute that starts and lengths are counted in."""

_EFFORT = 1.5
"""Deterministic time of one search."""


class SolverMissing(Exception):
    """OR-Tools is not installed."""


@record(frozen=True, slots=True)
class _Model:
    model: Any
    session: list[Any]
    start: list[Any]
    hand: list[list[Any]]
    aims: tuple[Any, Any, Any]


def several_hands_exact(net: Network, shop: Shop, start: Timetable) -> Timetable:
    """The best timetable that the solver finds from ``start`` on; sessions, the goal's session and their
    whole length are least, each given those before. Raises :class:`SolverMissing`."""
    try:
        from ortools.sat.python import cp_model
    except ImportError as problem:
        raise SolverMissing from problem
    best, least = start, least_several(net, shop)
    made = _model(net, shop, start, cp_model)
    bounds: list[float] = []
    for part, goal in enumerate(made.aims):
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_deterministic_time = _EFFORT
        made.model.minimize(goal)
        status = solver.solve(made.model)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            break
        best = _better(best, net, shop, _read(made, net, shop, solver))
        bound = math.ceil(solver.best_objective_bound - 1e-6)
        bounds.append(bound / _STEPS if part == 2 else bound)
        if status != cp_model.OPTIMAL:
            break
        made.model.add(goal <= round(solver.objective_value))
        _hint(made, net, shop, best)
    known = [*bounds, 0.0, 0.0, 0.0]
    least = least._replace(sessions=max(least.sessions, round(known[0])),
                           goal_session=max(least.goal_session, round(known[1])) if least.goal_session else 0,
                           lasting=max(least.lasting, known[2]))
    return Timetable(best.slots, best.aim, least, best.aim[:3] == least[:3], "exact", best.looked)


def _model(net: Network, shop: Shop, start: Timetable, cp_model: Any) -> _Model:
    """Sessions, starts, hands; needs and rests; hands and tools one job at a time."""
    model = cp_model.CpModel()
    limit, most = round(shop.session * _STEPS), start.aim.sessions
    long = [round(job.minutes * _STEPS) for job in net.jobs]
    jobs = range(len(net.jobs))
    session = [model.new_int_var(1, most, f"session {at}") for at in jobs]
    begin = [model.new_int_var(0, max(0, limit - long[at]), f"start {at}") for at in jobs]
    room = max([limit, *long])
    times = [model.new_int_var(0, (most + 1) * room, f"time {at}") for at in jobs]
    for at in jobs:
        model.add(times[at] == session[at] * room + begin[at])
    hand = []
    for at in jobs:
        row = [model.new_bool_var(f"{at} by {other.name}") if other.can(net.jobs[at]) else None
               for other in shop.hands]
        model.add_exactly_one([chosen for chosen in row if chosen is not None])
        hand.append(row)
    for who in range(len(shop.hands)):
        model.add_no_overlap([
            model.new_optional_fixed_size_interval_var(times[at], long[at], hand[at][who], f"{at} {who}")
            for at in jobs if hand[at][who] is not None
        ])
    whole_ = [model.new_fixed_size_interval_var(times[at], long[at], f"job {at}") for at in jobs]
    for tool, count in sorted(shop.tools.items()):
        users = [at for at in jobs if tool in net.jobs[at].tools]
        model.add_cumulative([whole_[at] for at in users], [1] * len(users), count)
    _needs(model, net, session, begin, long)
    for mask in desk(net, shop.session).blocks:
        members = [at for at in jobs if mask >> at & 1]
        names = {net.jobs[at].name for at in members}
        if len({slot.session for slot in start.slots if slot.job in names}) == 1:
            for at in members[1:]:
                model.add(session[at] == session[members[0]])
    return _Model(model, session, begin, hand, _aims(model, net, session, begin, long, most, room))


def _needs(model: Any, net: Network, session: list[Any], begin: list[Any], long: list[int]) -> None:
    for at in range(len(net.jobs)):
        for need in net.needs[at]:
            later = model.new_bool_var(f"{need} a night before {at}")
            model.add(session[at] >= session[need] + 1).only_enforce_if(later)
            model.add(session[at] == session[need]).only_enforce_if(~later)
            rest = math.ceil(net.jobs[need].rest * _STEPS)
            model.add(begin[at] >= begin[need] + long[need] + rest).only_enforce_if(~later)


def _aims(
    model: Any, net: Network, session: list[Any], begin: list[Any], long: list[int], most: int, room: int
) -> tuple[Any, Any, Any]:
    """Sessions, the goal's session, and the minutes that all sessions last together."""
    last = model.new_int_var(1, most, "sessions")
    model.add_max_equality(last, session)
    lasting = [model.new_int_var(0, room, f"length {number}") for number in range(1, most + 1)]
    for at, number in enumerate(session):
        own = model.new_int_var(0, room, f"length of the session of {at}")
        model.add_element(number - 1, lasting, own)
        model.add(own >= begin[at] + long[at])
    goals = [session[at] for at, job in enumerate(net.jobs) if job.goal]
    return last, goals[0] if goals else last, sum(lasting)


def _hint(made: _Model, net: Network, shop: Shop, best: Timetable) -> None:
    made.model.clear_hints()
    at = {slot.job: slot for slot in best.slots}
    for number, job in enumerate(net.jobs):
        slot = at[job.name]
        made.model.add_hint(made.session[number], slot.session)
        made.model.add_hint(made.start[number], round(slot.start * _STEPS))
        for who, chosen in enumerate(made.hand[number]):
            if chosen is not None:
                made.model.add_hint(chosen, shop.hands[who].name == slot.hand)


def _read(made: _Model, net: Network, shop: Shop, solver: Any) -> tuple[Slot, ...]:
    """The solver's timetable as slots in working order."""
    slots = []
    for at, job in enumerate(net.jobs):
        who = next(k for k, chosen in enumerate(made.hand[at]) if chosen is not None and solver.value(chosen))
        start = solver.value(made.start[at]) / _STEPS
        slots.append((solver.value(made.session[at]), start, who, job))
    return tuple(Slot(job.name, shop.hands[who].name, number, start, start + job.minutes)
                 for number, start, who, job in sorted(slots, key=lambda item: item[:3]))


def _better(best: Timetable, net: Network, shop: Shop, slots: tuple[Slot, ...]) -> Timetable:
    worth = aim(net.jobs, shop, slots)
    if worth >= best.aim or faults(net.jobs, shop, slots):
        return best
    return Timetable(slots, worth, best.least, False, looked=best.looked)
