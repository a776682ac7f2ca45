"""The network of needs: order, what comes before and after each job, and the critical path with its slack.

The critical path method (Kelley and Walker, 1959): earliest times forward, latest times backward, slack
between them. Jobs are numbered as given; sets of jobs are bit masks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from hoopwright.source.record import record
from hoopwright.work.schedule.model import Job


class NeedsError(ValueError):
    """Needs that hold a circle, a name given twice, or a need that is no job."""


@record(frozen=True, slots=True)
class Network:
    """``needs`` and ``after`` hold each job's direct neighbours, ``before`` and ``behind`` all of them."""

    jobs: tuple[Job, ...]
    order: tuple[int, ...]
    needs: tuple[tuple[int, ...], ...]
    after: tuple[tuple[int, ...], ...]
    before: tuple[int, ...]
    behind: tuple[int, ...]


@record(frozen=True, slots=True)
class Chain:
    """A chain of needs: its jobs in order, and its minutes."""

    jobs: tuple[str, ...]
    minutes: float


@record(frozen=True, slots=True)
class Times:
    """Earliest and latest start of each job when hands are never short; between them lies its slack."""

    earliest: dict[str, float]
    latest: dict[str, float]
    length: float


def network(jobs: Iterable[Job]) -> Network:
    """The network of ``jobs``. Raises :class:`NeedsError` for what no order can satisfy."""
    jobs = tuple(jobs)
    number: dict[str, int] = {}
    for place, job in enumerate(jobs):
        if job.name in number:
            raise NeedsError(f"two tasks are called {job.name}")
        number[job.name] = place
    for job in jobs:
        for name in job.needs:
            if name not in number:
                raise NeedsError(f"{job.name} needs {name}, which is no task")
    needs = tuple(tuple(dict.fromkeys(number[name] for name in job.needs)) for job in jobs)
    after: list[list[int]] = [[] for _ in jobs]
    for place, mine in enumerate(needs):
        for need in mine:
            after[need].append(place)
    order, circle = _sorted(needs)
    if circle:
        names = " -> ".join(jobs[at].name for at in circle)
        raise NeedsError(f"tasks wait for each other in a circle: {names}")
    before, behind = [0] * len(jobs), [0] * len(jobs)
    for at in order:
        for one in needs[at]:
            before[at] |= before[one] | 1 << one
    for at in reversed(order):
        for then in after[at]:
            behind[at] |= behind[then] | 1 << then
    return Network(jobs, order, needs, tuple(map(tuple, after)), tuple(before), tuple(behind))


@lru_cache(maxsize=4)
def _sorted(needs: tuple[tuple[int, ...], ...]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Job numbers, needs first, else in the order given; a circle instead, from one job back to it, where there is
    no such order. Remembered: the longest chain and the timetable are of the same jobs."""
    import networkx as nx

    graph: nx.DiGraph[int] = nx.DiGraph()
    graph.add_nodes_from(range(len(needs)))
    graph.add_edges_from((need, at) for at, mine in enumerate(needs) for need in mine)
    try:
        return tuple(at for layer in nx.topological_generations(graph) for at in sorted(layer)), ()
    except nx.NetworkXUnfeasible:
        around = [need for need, _ in nx.find_cycle(graph)]
        first = around.index(min(around))
        return (), (*around[first:], *around[: first + 1])


def longest_chain(net: Network) -> Chain:
    """The critical path by minutes of work, rests not counted; of equal chains the first named."""
    best: dict[int, tuple[float, int]] = {}
    for at in net.order:
        into = min(net.needs[at], key=lambda need: (-best[need][0], need), default=-1)
        best[at] = ((best[into][0] if into >= 0 else 0.0) + net.jobs[at].minutes, into)
    if not best:
        return Chain((), 0.0)
    last = min(best, key=lambda at: (-best[at][0], at))
    chain, at = [], last
    while at >= 0:
        chain.append(net.jobs[at].name)
        at = best[at][1]
    return Chain(tuple(reversed(chain)), best[last][0])


def times(net: Network) -> Times:
    """Earliest and latest starts, rests counted, with as many hands as there are jobs."""
    early, late = [0.0] * len(net.jobs), [0.0] * len(net.jobs)
    for at in net.order:
        early[at] = max((_over(net, need, early) for need in net.needs[at]), default=0.0)
    length = max((early[at] + job.minutes for at, job in enumerate(net.jobs)), default=0.0)
    for at in reversed(net.order):
        until = min((late[then] - net.jobs[at].rest for then in net.after[at]), default=length)
        late[at] = until - net.jobs[at].minutes
    names = [job.name for job in net.jobs]
    return Times(dict(zip(names, early, strict=True)), dict(zip(names, late, strict=True)), length)


def _over(net: Network, need: int, early: Sequence[float]) -> float:
    """When the result of a job can be used."""
    return early[need] + net.jobs[need].minutes + net.jobs[need].rest
