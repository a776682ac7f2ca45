"""What no order of one maker can better: sessions, the goal's session, runs of one set-up.

Each bound is an argument of its own, and the best of them holds.

- work: a session takes no more minutes than it has;
- rests: a job whose rest outlasts its session keeps all that waits for it to a later one;
- packing: jobs, and groups that must lie in one session, are packed like boxes, all of them, and those on
  either side of a gate (a job that waits for much and that much waits for);
- runs: along any chain of needs the work comes back to a set-up as often as the chain does, and between two
  gates as often as its minutes fill sessions.
"""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.source.record import record
from hoopwright.work.schedule.network import Network
from hoopwright.work.schedule.packing import packing_bound, whole

_GATES = 8
_SMALL = 1e-9


@record(frozen=True, slots=True)
class Bounds:
    """``head``: the earliest session of each job; ``tail``: sessions that must follow its own; ``runs``: for
    each job and set-up, runs that the job and all behind it need; ``whole``: runs in all, by set-up."""

    sessions: int
    head: tuple[int, ...]
    tail: tuple[int, ...]
    runs: tuple[tuple[int, ...], ...]
    whole: tuple[int, ...]


def bounds(net: Network, limit: float, setups: Sequence[int], blocks: Sequence[int]) -> Bounds:
    """The bounds for sessions of ``limit`` minutes. ``setups`` numbers each job's set-up from 0; ``blocks``
    are masks of jobs that must share a session."""
    sizes = [min(job.minutes, limit) for job in net.jobs]
    gates = _gates(net)
    head = _heads(net, limit, sizes, gates, blocks)
    tail = _tails(net, limit, sizes, gates, blocks)
    ends = [a + b for a, b in zip(head, tail, strict=True)]
    packed = packing_bound(_boxes(sizes, blocks, (1 << len(sizes)) - 1), limit)
    runs, total = _runs(net, limit, sizes, setups, gates)
    return Bounds(max((packed, *ends)), head, tail, runs, total)


def overnight(net: Network, at: int, limit: float) -> bool:
    """Whether nothing that waits for a job can be done in its session."""
    job = net.jobs[at]
    least = min((net.jobs[then].minutes for then in net.after[at]), default=0.0)
    return job.rest > 0 and job.minutes + job.rest + least > limit + _SMALL


def minutes_of(mask: int, sizes: Sequence[float]) -> float:
    """The minutes of a set of jobs."""
    total = 0.0
    while mask:
        low = mask & -mask
        total += sizes[low.bit_length() - 1]
        mask ^= low
    return total


def _boxes(sizes: Sequence[float], blocks: Sequence[int], among: int) -> list[float]:
    """The minutes of what is packed as one: each block, and each job outside blocks, of those ``among``."""
    joined = 0
    for mask in blocks:
        joined |= mask
    single = [size for at, size in enumerate(sizes) if among & ~joined & 1 << at]
    return [*single, *(minutes_of(mask, sizes) for mask in blocks)]


def _gates(net: Network) -> frozenset[int]:
    """The jobs that wait for most and that most waits for."""
    busy = [(net.before[at].bit_count() + net.behind[at].bit_count(), -at) for at in range(len(net.jobs))]
    return frozenset(-at for _, at in sorted(busy, reverse=True)[:_GATES])


def _filled(
    mask: int, at: int, limit: float, sizes: Sequence[float], gates: frozenset[int], blocks: Sequence[int]
) -> int:
    """Sessions that a job fills with all that comes before it, or with all behind it; a block that has a job
    among these lies in those sessions as a whole."""
    mask |= 1 << at
    if at not in gates:
        return whole(minutes_of(mask, sizes), limit)
    touched = [block for block in blocks if block & mask]
    return packing_bound(_boxes(sizes, touched, mask), limit)


def _heads(
    net: Network, limit: float, sizes: Sequence[float], gates: frozenset[int], blocks: Sequence[int]
) -> tuple[int, ...]:
    head = [1] * len(sizes)
    for at in net.order:
        work = _filled(net.before[at], at, limit, sizes, gates, blocks)
        after = (head[need] + overnight(net, need, limit) for need in net.needs[at])
        head[at] = max((1, work, *after))
    return tuple(head)


def _tails(
    net: Network, limit: float, sizes: Sequence[float], gates: frozenset[int], blocks: Sequence[int]
) -> tuple[int, ...]:
    tail = [0] * len(sizes)
    for at in reversed(net.order):
        night = overnight(net, at, limit)
        work = _filled(net.behind[at], at, limit, sizes, gates, blocks) - 1
        if night:
            work = whole(minutes_of(net.behind[at], sizes), limit)
        tail[at] = max((0, work, *(tail[then] + night for then in net.after[at])))
    return tuple(tail)


def _runs(
    net: Network, limit: float, sizes: Sequence[float], setups: Sequence[int], gates: frozenset[int]
) -> tuple[tuple[tuple[int, ...], ...], tuple[int, ...]]:
    """Runs of each set-up from each job on, and in all."""
    count, kinds = len(sizes), max(setups, default=-1) + 1
    everything = (1 << count) - 1
    masks = [sum(1 << at for at in range(count) if setups[at] == kind) for kind in range(kinds)]
    nights = [overnight(net, at, limit) for at in range(count)]
    found = [[0] * kinds for _ in range(count)]
    for at in reversed(net.order):
        for kind in range(kinds):
            own = setups[at] == kind
            least = 1 if own else 0
            for then in net.after[at]:
                apart = own and (setups[then] != kind or nights[at])
                least = max(least, found[then][kind] + apart)
            if at in gates and not own:
                least = max(least, _between(net.behind[at] & masks[kind], kind, gates, net, found, limit,
                                            sizes, setups))
            found[at][kind] = least
    starts = [at for at in range(count) if not net.needs[at]]
    total = tuple(
        max([
            *(found[at][kind] for at in starts),
            _between(everything & masks[kind], kind, gates, net, found, limit, sizes, setups),
        ], default=0)
        for kind in range(kinds)
    )
    return tuple(map(tuple, found)), total


def _between(
    mine: int,
    kind: int,
    gates: frozenset[int],
    net: Network,
    found: Sequence[Sequence[int]],
    limit: float,
    sizes: Sequence[float],
    setups: Sequence[int],
) -> int:
    """Runs that the jobs ``mine`` of one set-up need: those before a gate, and those behind it."""
    best = whole(minutes_of(mine, sizes), limit)
    for gate in sorted(gates):
        if setups[gate] != kind and mine & net.behind[gate]:
            first = whole(minutes_of(mine & net.before[gate], sizes), limit)
            best = max(best, first + found[gate][kind])
    return best
