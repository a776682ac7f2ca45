"""The order of work of several hands: a few priorities tried, the best bettered by small changes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hoopwright.work.schedule.bounds import overnight
from hoopwright.work.schedule.desk import Desk, desk
from hoopwright.work.schedule.judge import aim
from hoopwright.work.schedule.model import Aim, Job, Shop, Slot, Timetable
from hoopwright.work.schedule.network import Network, longest_chain, times
from hoopwright.work.schedule.packing import whole
from hoopwright.work.schedule.serial import generate

_LOOKS = 3000
"""Jobs placed in all tries together, about."""


def several_hands(net: Network, shop: Shop) -> Timetable:
    """The timetable of several hands. Every skill that a job wants must be known to a hand."""
    table = desk(net, shop.session)
    best: tuple[Aim, tuple[Slot, ...], Sequence[float]] | None = None
    looked = 0
    for priority in _rules(net):
        best = _better(best, net, shop, table, priority)
        looked += 1
    assert best is not None
    for step in _steps(len(net.jobs), max(8, _LOOKS // max(1, len(net.jobs)))):
        order = list(best[2])
        for at, other in step:
            order[at], order[other] = order[other], order[at]
        best = _better(best, net, shop, table, order)
        looked += 1
    least = least_several(net, shop)
    return Timetable(best[1], best[0], least, best[0][:3] == least[:3], looked=looked)


def least_several(net: Network, shop: Shop) -> Aim:
    """What no order can better, each from an argument of its own: work over hands, work that wants a skill
    over the hands that have it, the longest chain of needs, nights that must lie between."""
    goal = next((at for at, job in enumerate(net.jobs) if job.goal), -1)
    everything = (1 << len(net.jobs)) - 1
    head, tail = _heads(net, shop), _tails(net, shop)
    ends = [before + after for before, after in zip(head, tail, strict=True)]
    return Aim(
        sessions=max((whole(_load(net, shop, everything), shop.session), *ends)) if net.jobs else 0,
        goal_session=head[goal] if goal >= 0 else 0,
        lasting=max(longest_chain(net).minutes, _load(net, shop, everything, whole_=True)),
        changes=0,
        before_goal=0.0 if goal < 0 else _chain_before(net, goal),
    )


def _load(net: Network, shop: Shop, mask: int, *, whole_: bool = False) -> float:
    """Minutes that a set of jobs keeps the hands busy who can do them, no job counted longer than a session
    unless ``whole_``."""
    minutes: dict[str, float] = {}
    for at, job in enumerate(net.jobs):
        if mask >> at & 1:
            own = job.minutes if whole_ else min(job.minutes, shop.session)
            minutes[job.skill] = minutes.get(job.skill, 0.0) + own
    able = {skill: sum(hand.can(Job("", 0, skill=skill)) for hand in shop.hands) for skill in minutes}
    return max((sum(minutes.values()) / len(shop.hands),
                *(minutes[skill] / able[skill] for skill in sorted(minutes))))


def _heads(net: Network, shop: Shop) -> list[int]:
    """The earliest session of each job: by its chain of needs, and by all the work before it."""
    ends: list[tuple[int, float]] = [(1, 0.0)] * len(net.jobs)
    for at in net.order:
        minutes = net.jobs[at].minutes
        filled = whole(_load(net, shop, net.before[at] | 1 << at), shop.session)
        session, clock = max(((filled, 0.0), *(_usable(net, need, ends[need], shop.session)
                                               for need in net.needs[at])))
        if clock + minutes > shop.session + 1e-9 and clock > 0:
            session, clock = session + 1, 0.0
        ends[at] = (session, clock + minutes)
    return [session for session, _ in ends]


def _tails(net: Network, shop: Shop) -> list[int]:
    """Sessions that must follow that of each job."""
    tails = [0] * len(net.jobs)
    for at in reversed(net.order):
        night = overnight(net, at, shop.session)
        filled = whole(_load(net, shop, net.behind[at] | 1 << at), shop.session) - 1
        tails[at] = max((filled, *(tails[then] + night for then in net.after[at])))
    return tails


def _usable(net: Network, need: int, end: tuple[int, float], limit: float) -> tuple[int, float]:
    """From when the result of a job that ends at ``end`` can be used."""
    session, clock = end[0], end[1] + net.jobs[need].rest
    return (session, clock) if clock < limit else (session + 1, 0.0)


def _chain_before(net: Network, goal: int) -> float:
    longest: dict[int, float] = {}
    for at in net.order:
        longest[at] = max((longest[need] + net.jobs[need].minutes for need in net.needs[at]), default=0.0)
    return longest[goal]


def _rules(net: Network) -> Iterator[list[float]]:
    """Priorities: latest start first; what the goal waits for first; most behind it first; as named."""
    late = times(net).latest
    goal = next((at for at, job in enumerate(net.jobs) if job.goal), -1)
    needed = net.before[goal] | 1 << goal if goal >= 0 else 0
    jobs = range(len(net.jobs))
    yield [late[net.jobs[at].name] for at in jobs]
    yield [late[net.jobs[at].name] + (0 if needed >> at & 1 else 1e6) for at in jobs]
    yield [-float(net.behind[at].bit_count()) for at in jobs]
    yield [float(at) for at in jobs]


def _better(
    best: tuple[Aim, tuple[Slot, ...], Sequence[float]] | None,
    net: Network,
    shop: Shop,
    table: Desk,
    priority: Sequence[float],
) -> tuple[Aim, tuple[Slot, ...], Sequence[float]]:
    """The better of the best so far and what a priority leads to; of equals the new one, to move on."""
    slots = generate(net, shop, priority, table.blocks)
    worth = aim(net.jobs, shop, slots)
    return (worth, slots, priority) if best is None or worth <= best[0] else best


def _steps(count: int, times_: int) -> Iterator[list[tuple[int, int]]]:
    """Pairs of jobs whose priorities change places: drawn by a fixed rule, so that every run draws alike."""
    state = 12345
    for _ in range(times_ if count > 1 else 0):
        pairs = []
        for _ in range(3):
            state = (1103515245 * state + 12345) % 2**31
            first = (state >> 8) % count
            state = (1103515245 * state + 12345) % 2**31
            pairs.append((first, (first + 1 + (state >> 8) % (count - 1)) % count))
        yield pairs
