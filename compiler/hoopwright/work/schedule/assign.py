"""Which session each job falls in, as a mixed-integer program for HiGHS.

Unknowns: x, whether a job lies in a session; y, whether a run of a set-up lies in a session, once for each
stretch between gates that the order passes one after the other (a run cannot reach across a gate of another
set-up); e, runs that a session needs beyond those, learnt as cuts. Least sum of y and e: no order of this
many sessions has fewer runs. HiGHS: Q. Huangfu and J. A. J. Hall, 2018. One thread and a limit in nodes, so
that every machine finds the same.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Any

from hoopwright.highs import quiet_solver
from hoopwright.source.record import record
from hoopwright.work.schedule.bounds import overnight
from hoopwright.work.schedule.desk import Desk

NODES = 500
"""Nodes of branch and bound that one search may take."""

_GATES = 6


@record(frozen=True, slots=True)
class Cut:
    """Jobs that need ``runs`` runs of their set-ups when they lie in one session."""

    jobs: tuple[int, ...]
    runs: int


@record(frozen=True, slots=True)
class Assignment:
    """``sessions``: the jobs of each, empty when none was found; ``possible`` False when it is proven that
    there is none; ``runs``: no order has fewer."""

    sessions: tuple[tuple[int, ...], ...]
    possible: bool
    runs: int


@dataclass(slots=True)
class Program:
    """The program for ``sessions`` sessions, the goal in session ``goal_by`` at the latest. ``nodes`` counts
    those that its searches took."""

    desk: Desk
    sessions: int
    goal_by: int
    cuts: list[Cut] = field(default_factory=list)
    gates: tuple[int, ...] = ()
    nodes: int = 0

    def __post_init__(self) -> None:
        self.gates = _gates(self.desk)

    def solve(self, *, runs: bool = True) -> Assignment:
        """The best assignment; with ``runs`` False any assignment at all."""
        import highspy

        solver = quiet_solver(mip_max_nodes=NODES, mip_rel_gap=0.0)
        where = self._places(solver)
        if where is None:
            return Assignment((), False, 0)
        cost = self._rows(solver, where, runs)
        solver.minimize(cost)
        status = solver.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            return Assignment((), False, 0)
        info = solver.getInfo()
        self.nodes += max(0, info.mip_node_count)
        least = math.ceil(info.mip_dual_bound - 1e-6) if runs else 0
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            return Assignment((), True, max(0, least))
        values = solver.getSolution().col_value
        lists: list[list[int]] = [[] for _ in range(self.sessions)]
        for (at, number), unknown in where.items():
            if values[unknown.index] > 0.5:
                lists[number - 1].append(at)
        return Assignment(tuple(map(tuple, lists)), True, least)

    def _places(self, solver: Any) -> dict[tuple[int, int], Any] | None:
        """The unknowns x by job and session, or None when a job has no session left."""
        desk, net = self.desk, self.desk.net
        first = list(desk.found.head)
        last = [self.sessions - tail for tail in desk.found.tail]
        if desk.goal >= 0:
            last[desk.goal] = min(last[desk.goal], self.goal_by)
        for at in reversed(net.order):
            night = overnight(net, at, desk.limit)
            last[at] = min((last[at], *(last[then] - night for then in net.after[at])))
        if any(low > high for low, high in zip(first, last, strict=True)):
            return None
        return {(at, number): solver.addBinary()
                for at in range(len(first)) for number in range(first[at], last[at] + 1)}

    def _rows(self, solver: Any, where: dict[tuple[int, int], Any], runs: bool) -> Any:
        """Every condition; gives what is to be least."""
        desk = self.desk
        jobs, numbers = range(len(desk.minutes)), range(1, self.sessions + 1)
        for at in jobs:
            solver.addConstr(sum(where[at, n] for n in numbers if (at, n) in where) == 1)
        for n in numbers:
            load = [desk.sizes[at] * where[at, n] for at in jobs if (at, n) in where]
            if load:
                solver.addConstr(sum(load) <= desk.limit)
        self._needs(solver, where)
        for mask in desk.blocks:
            members = [at for at in jobs if mask >> at & 1]
            for at in members[1:]:
                for n in numbers:
                    mine, first = where.get((at, n), 0), where.get((members[0], n), 0)
                    solver.addConstr(mine - first + _zero(where) == 0)
        return self._runs(solver, where) if runs else _zero(where)

    def _needs(self, solver: Any, where: dict[tuple[int, int], Any]) -> None:
        """By the end of any session no job is done whose needs are not, those that rest a night earlier."""
        desk, net = self.desk, self.desk.net
        for at in range(len(desk.minutes)):
            for need in net.needs[at]:
                night = overnight(net, need, desk.limit)
                for n in (n for other, n in where if other == at):
                    early = [where[need, m] for m in range(1, n - night + 1) if (need, m) in where]
                    mine = [where[at, m] for m in range(1, n + 1) if (at, m) in where]
                    if early:
                        solver.addConstr(sum(mine) <= sum(early))
                    else:
                        solver.addConstr(sum(mine) <= 0)

    def _runs(self, solver: Any, where: dict[tuple[int, int], Any]) -> Any:
        """The runs: a job lies in one of the stretches it can lie in; cuts learnt so far."""
        desk = self.desk
        own: dict[tuple[int, int, int], Any] = {}
        extra = {n: solver.addIntegral(0, len(desk.minutes)) for n in range(1, self.sessions + 1)} \
            if self.cuts else {}
        for (at, n), unknown in where.items():
            keys = [(desk.setups[at], stretch, n) for stretch in self._stretches(at)]
            for key in keys:
                if key not in own:
                    own[key] = solver.addBinary()
            solver.addConstr(unknown <= sum(own[key] for key in keys))
        for cut in self.cuts:
            kinds = {desk.setups[at] for at in cut.jobs}
            for n in range(1, self.sessions + 1):
                here = [where[at, n] for at in cut.jobs if (at, n) in where]
                if len(here) == len(cut.jobs):
                    counted = [run for (kind, _, m), run in own.items() if m == n and kind in kinds]
                    least = 2 * sum(here) - (2 * len(here) - cut.runs)
                    solver.addConstr(sum(counted) + extra[n] >= least)
        return sum((*own.values(), *extra.values()))

    def _stretches(self, at: int) -> list[int]:
        """The stretches between gates of other set-ups in which a job can lie; each named by its first."""
        net, setups = self.desk.net, self.desk.setups
        before = [k for k, gate in enumerate(self.gates, 1)
                  if setups[gate] != setups[at] and net.before[at] >> gate & 1]
        behind = [k for k, gate in enumerate(self.gates)
                  if setups[gate] != setups[at] and net.behind[at] >> gate & 1]
        low, high = max(before, default=0), min(behind, default=len(self.gates))
        same = {k for k, gate in enumerate(self.gates, 1) if setups[gate] == setups[at]}
        named = []
        for k in range(low, high + 1):
            while k in same:
                k -= 1
            named.append(k)
        return sorted(set(named))


def _gates(desk: Desk) -> tuple[int, ...]:
    """The busiest jobs that come one after the other in every order, in that order."""
    net = desk.net
    busy = sorted(range(len(desk.minutes)),
                  key=lambda at: (-net.before[at].bit_count() - net.behind[at].bit_count(), at))
    found: list[int] = []
    for at in busy:
        if len(found) < _GATES and all((net.before[at] | net.behind[at]) >> gate & 1 for gate in found):
            found.append(at)
    return tuple(sorted(found, key=lambda at: net.before[at].bit_count()))


def _zero(where: dict[tuple[int, int], Any]) -> Any:
    """Nothing, as a linear expression."""
    return 0 * next(iter(where.values()))
