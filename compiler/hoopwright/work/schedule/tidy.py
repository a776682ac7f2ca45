"""A timetable of one maker put into fewer runs of one kind of job, where that costs nothing.

Sessions keep their jobs. Within each, jobs of one kind are done one after the other as far as their needs and rests
allow, if the session gets no longer, the changes of set-up no more, and the goal begins no later.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from hoopwright.work.schedule.judge import aim
from hoopwright.work.schedule.model import Job, Shop, Slot, Timetable
from hoopwright.work.schedule.network import Network

_SMALL = 1e-9


def tidied(net: Network, shop: Shop, found: Timetable) -> Timetable:
    """The same timetable with its sessions in fewer runs of one kind, or as it was."""
    place = {job.name: at for at, job in enumerate(net.jobs)}
    slots: list[Slot] = []
    best = found.aim
    rest = list(found.slots)
    while rest:
        count = sum(slot.session == rest[0].session for slot in rest)
        here, rest = rest[:count], rest[count:]
        new = _one_session(net, place, here)
        if (_runs(net, place, new) < _runs(net, place, here) and new[-1].end <= min(here[-1].end, shop.session) + _SMALL
                and (worth := aim(net.jobs, shop, [*slots, *new, *rest])) <= best):
            here, best = new, worth
        slots += here
    return Timetable(tuple(slots), best, found.least, found.proven, found.way, found.looked)


def _one_session(net: Network, place: dict[str, int], here: Sequence[Slot]) -> list[Slot]:
    """The jobs of a session in another order: next what can begin at once, of the same kind, of the same set-up, of a
    kind of which all that is left here can be done, as it was before."""
    left = {place[slot.job]: number for number, slot in enumerate(here)}
    done: dict[int, float] = {}
    found: list[Slot] = []
    clock, last = 0.0, Job("", 0.0)
    while left:
        starts = {at: max([clock, *(done[need] for need in net.needs[at] if need in done)])
                  for at in left if not any(need in left for need in net.needs[at])}
        waiting = {net.jobs[at].kind for at in left if at not in starts}

        def rank(at: int, starts: dict[int, float] = starts, waiting: set[str] = waiting, last: Job = last,
                 clock: float = clock) -> tuple[bool, bool, bool, bool, int]:
            job = net.jobs[at]
            same = job.kind == last.kind
            return (starts[at] > clock + _SMALL, not same, job.setup != last.setup, job.kind in waiting,
                    at if same else left[at])

        at = min(starts, key=rank)
        last, start = net.jobs[at], starts[at]
        clock = start + last.minutes
        done[at] = clock + last.rest
        del left[at]
        found.append(Slot(last.name, here[0].hand, here[0].session, start, clock))
    return found


def _runs(net: Network, place: dict[str, int], slots: Sequence[Slot]) -> int:
    """How often a job of one kind follows one of another."""
    return sum(1 for _ in groupby(net.jobs[place[slot.job]].kind for slot in slots))
