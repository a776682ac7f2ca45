"""One maker's jobs laid out for the search: numbers for names, masks for sets, and which jobs share a
session."""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.work.schedule.bounds import Bounds, bounds, minutes_of
from hoopwright.work.schedule.network import Network
from hoopwright.work.schedule.packing import weights


@record(frozen=True, slots=True)
class Desk:
    """Everything the search looks up. ``blocks`` are masks of jobs that must share a session, ``closures``
    the same with all that comes before them; ``sizes`` are minutes, none more than a session; ``weights``
    are those of :mod:`hoopwright.work.schedule.packing`."""

    net: Network
    limit: float
    minutes: tuple[float, ...]
    sizes: tuple[float, ...]
    needs: tuple[int, ...]
    setups: tuple[int, ...]
    blocks: tuple[int, ...]
    closures: tuple[int, ...]
    block_of: tuple[int, ...]
    goal: int
    weights: tuple[tuple[float, ...], ...]
    found: Bounds


def desk(net: Network, limit: float, *, together: bool = True) -> Desk:
    """The desk for sessions of ``limit`` minutes; ``together`` False forgets the groups."""
    names = list(dict.fromkeys(job.setup for job in net.jobs))
    setups = tuple(names.index(job.setup) for job in net.jobs)
    blocks = _blocks(net, limit) if together else ()
    closures = tuple(mask | _all(net.before, mask) for mask in blocks)
    block_of = tuple(
        next((k for k, mask in enumerate(blocks) if mask >> at & 1), -1) for at in range(len(net.jobs))
    )
    goal = next((at for at, job in enumerate(net.jobs) if job.goal), -1)
    minutes = tuple(job.minutes for job in net.jobs)
    needs = tuple(sum(1 << need for need in mine) for mine in net.needs)
    sizes = tuple(min(each, limit) for each in minutes)
    shares = tuple(weights(each / limit) for each in sizes)
    return Desk(net, limit, minutes, sizes, needs, setups, blocks, closures, block_of, goal, shares,
                bounds(net, limit, setups, blocks))


def _blocks(net: Network, limit: float) -> tuple[int, ...]:
    """A mask for every group that fits into one session, with what must be done between its jobs."""
    minutes = [job.minutes for job in net.jobs]
    found: list[int] = []
    for group in dict.fromkeys(job.group for job in net.jobs if job.group):
        members = sum(1 << at for at, job in enumerate(net.jobs) if job.group == group)
        mask = members | _all(net.before, members) & _all(net.behind, members)
        resting = sum(
            job.rest for at, job in enumerate(net.jobs) if mask >> at & 1 and net.behind[at] & mask
        )
        if minutes_of(mask, minutes) + resting <= limit and not any(mask & other for other in found):
            found.append(mask)
    return tuple(found)


def _all(sets: tuple[int, ...], mask: int) -> int:
    joined = 0
    for at, other in enumerate(sets):
        if mask >> at & 1:
            joined |= other
    return joined
