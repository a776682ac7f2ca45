"""The scheduler: an order of work, cut into sessions, for one maker or several hands.

Independent of everything else in the compiler. :func:`timetable` is its one entry point; the models it takes
and gives are in :mod:`hoopwright.work.schedule.model`.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from hoopwright.work.schedule.model import Aim, Hand, Job, Shop, Slot, Timetable, Way
from hoopwright.work.schedule.network import NeedsError, Network, network

__all__ = (
    "Aim",
    "Hand",
    "Job",
    "NeedsError",
    "Network",
    "Shop",
    "Slot",
    "Timetable",
    "network",
    "timetable",
)


def timetable(jobs: Iterable[Job], shop: Shop, way: Way = "built-in") -> Timetable:
    """The order of ``jobs`` in ``shop``, and what no order can better.

    ``exact`` looks for the proven best: for one maker with HiGHS, for several hands with OR-Tools (an
    optional extra). Raises :class:`NeedsError` for needs that no order satisfies, ValueError when a job
    wants a skill that no hand has or a tool of which there is none, and
    :class:`hoopwright.work.schedule.solver.SolverMissing`.
    """
    return _timetable(tuple(jobs), shop.session, shop.hands, tuple(sorted(shop.tools.items())), way)


@lru_cache(maxsize=4)
def _timetable(
    jobs: tuple[Job, ...], session: float, hands: tuple[Hand, ...], tools: tuple[tuple[str, int], ...], way: Way
) -> Timetable:
    """The timetable, kept for a while: choices of material and small changes often leave the work as it was."""
    net, shop = network(jobs), Shop(session, hands, dict(tools))
    for job in net.jobs:
        if not any(hand.can(job) for hand in shop.hands):
            raise ValueError(f"no hand can do {job.name}, which wants {job.skill}")
        for tool in job.tools:
            if shop.tools.get(tool, 1) < 1:
                raise ValueError(f"{job.name} wants {tool}, of which there is none")
    if len(shop.hands) == 1:
        from hoopwright.work.schedule.one import one_maker
        from hoopwright.work.schedule.tidy import tidied

        if way == "built-in":
            return tidied(net, shop, one_maker(net, shop))
        from hoopwright.work.schedule.exact import one_maker_exact

        return tidied(net, shop, one_maker_exact(net, shop))
    from hoopwright.work.schedule.several import several_hands

    found = several_hands(net, shop)
    if way == "built-in" or found.proven:
        return found
    from hoopwright.work.schedule.solver import several_hands_exact

    return several_hands_exact(net, shop, found)
