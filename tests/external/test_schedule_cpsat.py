"""The scheduler against OR-Tools CP-SAT on generated instances.

PSPLIB's j30 instances (R. Kolisch and A. Sprecher, 1997) could not be had and are too many figures to
re-type from memory, so networks of their kind are generated: random needs of a
stated density, set-ups, skills, tools.
For one maker CP-SAT proves the fewest sessions of a plain model written here; for several hands the kept
solver's own model is held against the built-in rule: never worse, its bounds never above.
"""

from __future__ import annotations

import pytest
from ortools.sat.python import cp_model

from hoopwright.work.schedule import Hand, Job, Shop, timetable
from hoopwright.work.schedule.judge import faults

LIMIT = 60
HANDS = (Hand("Ann", frozenset({"metal"})), Hand("Bea", frozenset({"sewing"})), Hand("Cee"))


def generated(seed: int, count: int) -> tuple[Job, ...]:
    """Jobs of 3 to 30 minutes, each waiting for about one and a half of the six before it."""
    state = seed

    def draw(below: int) -> int:
        nonlocal state
        state = (1103515245 * state + 12345) % 2**31
        return (state >> 12) % below

    jobs = []
    for k in range(count):
        needs = tuple(f"j{n}" for n in range(max(0, k - 6), k) if draw(4) == 0)
        skill = ("metal", "sewing", "")[draw(3)]
        jobs.append(Job(f"j{k}", 3 + draw(28), needs, rest=(0, 0, 0, 600)[draw(4)], setup=f"s{draw(3)}",
                        skill=skill, tools=("iron",) if draw(4) == 0 else (), goal=k == count // 2))
    return tuple(jobs)


def fewest_sessions(jobs: tuple[Job, ...]) -> tuple[int, int]:
    """Sessions, and then the goal's session, proven by a model of which session each job lies in."""
    model = cp_model.CpModel()
    most = len(jobs)
    where = {job.name: model.new_int_var(1, most, job.name) for job in jobs}
    lies = {(job.name, s): model.new_bool_var("") for job in jobs for s in range(1, most + 1)}
    for job in jobs:
        model.add_exactly_one(lies[job.name, s] for s in range(1, most + 1))
        model.add(where[job.name] == sum(s * lies[job.name, s] for s in range(1, most + 1)))
        for need in job.needs:
            rest = next(other.rest for other in jobs if other.name == need)
            model.add(where[job.name] >= where[need] + (1 if rest else 0))
    for s in range(1, most + 1):
        model.add(sum(round(job.minutes) * lies[job.name, s] for job in jobs) <= LIMIT)
    last = model.new_int_var(1, most, "last")
    model.add_max_equality(last, list(where.values()))
    found = []
    for goal in (last, next(where[job.name] for job in jobs if job.goal)):
        model.minimize(goal)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        assert solver.solve(model) == cp_model.OPTIMAL
        found.append(round(solver.objective_value))
        model.add(goal == found[-1])
    return found[0], found[1]


@pytest.mark.parametrize("seed", range(1, 9))
def test_one_maker_needs_no_more_sessions_than_cp_sat_proves(seed: int) -> None:
    jobs = generated(seed, 18)
    best = fewest_sessions(jobs)
    exact, built_in = timetable(jobs, Shop(LIMIT), "exact"), timetable(jobs, Shop(LIMIT))
    assert exact.aim[:2] == exact.least[:2] == best
    assert built_in.least[:2] <= best <= built_in.aim[:2]
    assert built_in.aim.sessions <= best[0] + 1


@pytest.mark.parametrize("seed", range(1, 4))
def test_several_hands_by_the_solver_are_no_worse_and_its_bounds_hold(seed: int) -> None:
    jobs, shop = generated(seed, 12), Shop(LIMIT, HANDS, {"iron": 1})
    built_in, exact = timetable(jobs, shop), timetable(jobs, shop, "exact")
    assert faults(jobs, shop, built_in.slots) == faults(jobs, shop, exact.slots) == []
    assert exact.aim <= built_in.aim
    assert built_in.least[:2] <= exact.aim[:2]
    assert all(low <= high for low, high in zip(exact.least, exact.aim, strict=True))
