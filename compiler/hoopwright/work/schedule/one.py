"""The order of work of one maker: searched ever more widely until it is proven or the limit is reached."""

from __future__ import annotations

from hoopwright.work.schedule.beam import Part, Search
from hoopwright.work.schedule.desk import Desk, desk
from hoopwright.work.schedule.judge import aim
from hoopwright.work.schedule.model import Aim, Shop, Slot, Timetable
from hoopwright.work.schedule.network import Network

_TRIES = ((6, False), (3, False), (4, True))
"""Part-orders kept, and whether full sessions are preferred, in each try."""

_FEW, _WIDE = 30, 40
"""So few jobs are looked at once more, so widely, with every job that can be next."""

_MOST = 8_000
"""Part-orders looked at in each try; a count, so that a slow machine finds the same order."""


def one_maker(net: Network, shop: Shop) -> Timetable:
    """The timetable of one maker."""
    return ordered(net, shop)[0]


def ordered(net: Network, shop: Shop) -> tuple[Timetable, Desk]:
    """The timetable of one maker, and the desk it was found at: one that forgets the groups when no order was
    found that keeps each of them in one session."""
    table = desk(net, shop.session)
    search = Search(table)
    found = _sought(search, net, shop)
    if found is None:
        table = desk(net, shop.session, together=False)
        search = Search(table, search.looked)
        found = _sought(search, net, shop)
    assert found is not None, "a job that fits nowhere else begins the next session"
    part, worth = found
    least = least_aim(table, worth.sessions)
    return Timetable(slots_of(part, net, shop), worth, least, proven(worth, least), looked=search.looked), table


def _sought(search: Search, net: Network, shop: Shop) -> tuple[Part, Aim] | None:
    """The best order of all tries, None where none leads to a whole one. Tries go on while sessions or the goal's
    session might yet be fewer."""
    least = least_aim(search.desk)
    best: tuple[Part, Aim] | None = None
    wide = ((_WIDE, True),) if len(net.jobs) <= _FEW else ()
    for width, tight in (*_TRIES, *wide):
        part = search.run(width, _MOST, tight=tight, every=width == _WIDE, best=best and best[1])
        if part is not None:
            worth = aim(net.jobs, shop, slots_of(part, net, shop))
            best = (part, worth) if best is None or worth < best[1] else best
        if best is not None and best[1][:2] == least[:2]:
            break
    return best


def least_aim(table: Desk, sessions: int = 0) -> Aim:
    """What no order can better: its changes, no order of ``sessions`` sessions (0: of as few as can be)."""
    found = table.found
    has_goal = table.goal >= 0
    return Aim(
        sessions=found.sessions,
        goal_session=found.head[table.goal] if has_goal else 0,
        lasting=0.0,
        changes=max(0, sum(found.whole) - (sessions or found.sessions)),
        before_goal=sum(table.minutes[at] for at in range(len(table.minutes))
                        if table.net.before[table.goal] >> at & 1) if has_goal else 0.0,
    )


def proven(found: Aim, least: Aim) -> bool:
    """Whether nothing up to the changes of set-up can be better."""
    return found[:4] == least[:4]


def slots_of(part: Part, net: Network, shop: Shop) -> tuple[Slot, ...]:
    """The slots of a whole order."""
    slots, placed = [], part.last
    while placed is not None:
        job = net.jobs[placed.job]
        slots.append(Slot(job.name, shop.hands[0].name, placed.session, placed.start,
                          placed.start + job.minutes))
        placed = placed.before
    return tuple(reversed(slots))
