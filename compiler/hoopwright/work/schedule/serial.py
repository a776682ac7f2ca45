"""Several hands: jobs placed one by one, each as early as a hand that can do it and the shared tools allow.

Serial schedule generation (R. Kolisch, 1996; from memory): a priority decides which job is placed next; a
job goes to the earliest session and minute at which its needs are over and a hand and its tools are free.
Of hands free at the same minute, the one that has its set-up before it is taken, then the one that can do
the least else.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from hoopwright.work.schedule.model import Hand, Job, Shop, Slot
from hoopwright.work.schedule.network import Network

_SMALL = 1e-9


@dataclass(slots=True)
class Floor:
    """The workshop while it is being filled: slots by session, and job numbers to their slots."""

    net: Network
    shop: Shop
    sessions: list[list[Slot]] = field(default_factory=list)
    placed: dict[int, Slot] = field(default_factory=dict)
    jobs: dict[str, Job] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.jobs = {job.name: job for job in self.net.jobs}

    def place(self, at: int, not_before: int = 1) -> Slot:
        """Put a job into the earliest place from session ``not_before`` on."""
        job = self.net.jobs[at]
        needs = [self.placed[need] for need in self.net.needs[at]]
        number = max((not_before, *(slot.session for slot in needs)))
        while True:
            while len(self.sessions) < number:
                self.sessions.append([])
            over = (slot.end + self._job(slot).rest for slot in needs if slot.session == number)
            ready = max(over, default=0.0)
            found = self._in_session(job, number, ready)
            if found is not None:
                self.sessions[number - 1].append(found)
                self.placed[at] = found
                return found
            number += 1

    def _job(self, slot: Slot) -> Job:
        return self.jobs[slot.job]

    def _in_session(self, job: Job, number: int, ready: float) -> Slot | None:
        """The earliest place in a session, or None."""
        here = self.sessions[number - 1]
        starts = sorted({ready, *(slot.end for slot in here if slot.end > ready)})
        if job.minutes > self.shop.session:
            starts = [0.0] if ready <= 0 else []
        for start in starts:
            end = start + job.minutes
            if end > self.shop.session + _SMALL and job.minutes <= self.shop.session:
                return None
            hands = [hand for hand in self.shop.hands if hand.can(job) and self._free(hand, here, start, end)]
            if hands and self._tools_free(job, here, start, end):
                return Slot(job.name, min(hands, key=lambda hand: self._liking(hand, job, here, start)).name,
                            number, start, end)
        return None

    def _free(self, hand: Hand, here: Sequence[Slot], start: float, end: float) -> bool:
        return not any(slot.hand == hand.name and slot.start < end - _SMALL and slot.end > start + _SMALL
                       for slot in here)

    def _tools_free(self, job: Job, here: Sequence[Slot], start: float, end: float) -> bool:
        """Whether no shared tool is wanted more often than there are, at any minute of the job."""
        for tool in job.tools:
            if tool not in self.shop.tools:
                continue
            users = [slot for slot in here if slot.start < end - _SMALL and slot.end > start + _SMALL
                     and tool in self._job(slot).tools]
            for moment in (start, *(slot.start for slot in users if slot.start > start)):
                if sum(slot.start <= moment + _SMALL < slot.end for slot in users) >= self.shop.tools[tool]:
                    return False
        return True

    def _liking(self, hand: Hand, job: Job, here: Sequence[Slot], start: float) -> tuple[bool, int, int]:
        """Less is better: no change of set-up, few skills, first named."""
        own = [slot for slot in here if slot.hand == hand.name and slot.end <= start + _SMALL]
        last = max(own, key=lambda slot: slot.end, default=None)
        change = last is not None and self._job(last).setup != job.setup
        skills = 99 if hand.skills is None else len(hand.skills)
        return (change, skills, self.shop.hands.index(hand))


def generate(
    net: Network, shop: Shop, priority: Sequence[float], together: Sequence[int]
) -> tuple[Slot, ...]:
    """The slots that a priority (less is sooner) leads to, in working order.

    ``together`` are masks of jobs that should share a session: when they fall apart, all of them are kept
    back to the last one's session and the jobs are placed anew, a few times.
    """
    floor_of = [1] * len(net.jobs)
    for _ in range(2 * len(together) + 1):
        floor = _filled(net, shop, priority, floor_of)
        apart = False
        for mask in together:
            members = [at for at in range(len(net.jobs)) if mask >> at & 1]
            last = max(floor.placed[at].session for at in members)
            for at in members:
                apart |= floor.placed[at].session < last
                floor_of[at] = max(floor_of[at], last)
        if not apart:
            break
    hands = [hand.name for hand in shop.hands]
    slots = [slot for session in floor.sessions for slot in session]
    return _renumbered(sorted(slots, key=lambda slot: (slot.session, slot.start, hands.index(slot.hand))))


def _filled(net: Network, shop: Shop, priority: Sequence[float], floor_of: Sequence[int]) -> Floor:
    floor = Floor(net, shop)
    left = set(range(len(net.jobs)))
    while left:
        ready = [at for at in left if all(need in floor.placed for need in net.needs[at])]
        at = min(ready, key=lambda at: (priority[at], at))
        floor.place(at, floor_of[at])
        left.remove(at)
    return floor


def _renumbered(slots: Sequence[Slot]) -> tuple[Slot, ...]:
    """The slots with sessions counted from 1 and no session empty."""
    number = {session: k for k, session in enumerate(dict.fromkeys(slot.session for slot in slots), 1)}
    return tuple(Slot(slot.job, slot.hand, number[slot.session], slot.start, slot.end) for slot in slots)
