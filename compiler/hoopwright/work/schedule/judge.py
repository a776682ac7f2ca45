"""What a timetable comes to, worked out from its slots alone."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from hoopwright.work.schedule.model import Aim, Job, Shop, Slot


def aim(jobs: Iterable[Job], shop: Shop, slots: Sequence[Slot]) -> Aim:
    """The :class:`Aim` of slots in working order."""
    named = {job.name: job for job in jobs}
    lasts = lengths(slots)
    goal = next((slot for slot in slots if named[slot.job].goal), None)
    changes = 0
    before: dict[tuple[int, str], str] = {}
    for slot in sorted(slots, key=lambda slot: (slot.session, slot.start, slot.end)):
        place, setup = (slot.session, slot.hand), named[slot.job].setup
        changes += before.get(place, setup) != setup
        before[place] = setup
    return Aim(
        sessions=len(lasts),
        goal_session=goal.session if goal else 0,
        lasting=sum(lasts.values()) if len(shop.hands) > 1 else 0.0,
        changes=changes,
        before_goal=sum(lasts[number] for number in lasts if number < goal.session) + goal.start
        if goal else 0.0,
    )


def lengths(slots: Iterable[Slot]) -> dict[int, float]:
    """How long each session lasts, minutes, by number."""
    lasts: dict[int, float] = {}
    for slot in slots:
        lasts[slot.session] = max(lasts.get(slot.session, 0.0), slot.end)
    return dict(sorted(lasts.items()))


def faults(jobs: Iterable[Job], shop: Shop, slots: Sequence[Slot]) -> list[str]:
    """What is wrong with a timetable, in words; empty when it can be worked as it stands."""
    jobs = tuple(jobs)
    named = {job.name: job for job in jobs}
    said = [] if sorted(slot.job for slot in slots) == sorted(named) else ["not every job exactly once"]
    at = {slot.job: slot for slot in slots}
    hands = {hand.name: hand for hand in shop.hands}
    for slot in slots:
        job = named[slot.job]
        if abs(slot.end - slot.start - job.minutes) > 1e-6 or slot.start < -1e-9:
            said.append(f"{slot.job} takes {slot.end - slot.start:g} minutes")
        if slot.end > shop.session + 1e-6 and (slot.start > 0 or job.minutes <= shop.session):
            said.append(f"{slot.job} runs over its session")
        if not hands[slot.hand].can(job):
            said.append(f"{slot.hand} cannot do {slot.job}")
        for need in (at[name] for name in job.needs if name in at):
            ready = need.session < slot.session or (
                need.session == slot.session and need.end + named[need.job].rest <= slot.start + 1e-6
            )
            if not ready:
                said.append(f"{slot.job} begins before {need.job} can be used")
    return [*said, *_crowded(named, shop, slots)]


def _crowded(named: dict[str, Job], shop: Shop, slots: Sequence[Slot]) -> list[str]:
    """Hands with two jobs at once, and shared tools wanted more often than there are."""
    said = []
    for slot in slots:
        now = [other for other in slots if other.session == slot.session
               and other.start <= slot.start + 1e-9 < other.end - 1e-9]
        if sum(other.hand == slot.hand for other in now) > 1:
            said.append(f"{slot.hand} does two jobs at once beside {slot.job}")
        for tool in named[slot.job].tools:
            if sum(tool in named[other.job].tools for other in now) > shop.tools.get(tool, len(slots)):
                said.append(f"too few of {tool} for {slot.job}")
    return said
