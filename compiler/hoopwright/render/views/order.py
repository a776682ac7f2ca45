"""How good the order of work is, and where its minutes come from."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import counted, listed
from hoopwright.source.record import record
from hoopwright.work.model import Order, Spent

_PER = {"m": "metre", "piece": "piece", "mark": "mark", "fixing": "fixing", "task": "time"}


@record(frozen=True, slots=True)
class OrderView:
    """``said``: sentences about the order. ``rates``: (rate, how often, minutes for each, in all, source).
    ``chain``: the longest chain of needs, ``chain_time`` its minutes."""

    said: tuple[str, ...]
    chain: tuple[str, ...]
    chain_time: str
    rates: tuple[tuple[str, str, str, str, str], ...]


def order_view(plan: Plan) -> OrderView:
    """The chapter about the order of work."""
    work, p = plan.work, Printer.of(plan.spec)
    rates = tuple(
        (spent.rate, _often(spent.count, spent.per, p), _each(spent),
         p.minutes(spent.minutes * spent.count), spent.source)
        for spent in work.spent
    )
    return OrderView(_said(work.order, p) if work.order.sessions else (), work.critical,
                     p.minutes(work.critical_minutes), rates)


def _often(count: float, per: str, p: Printer) -> str:
    if per == "m":
        return p.long(count)
    return f"{count:g} {_PER[per] if count == 1 else _PER[per] + 's'}"


def _each(spent: Spent) -> str:
    return f"{spent.minutes:g} min{'/m' if spent.per == 'm' else ''}"


def _said(order: Order, p: Printer) -> tuple[str, ...]:
    """What the order comes to beside what no order can better."""
    said = [_sittings(order)]
    if order.hands:
        said.insert(0, f"{listed(order.hands)} work side by side.")
        said.append(f"The sittings last {p.minutes(order.lasting)} together; no order does with less than "
                    f"{p.minutes(order.lasting_least)}.")
        said.append(f"Within sittings the set-up is changed {_times(order.changes)}, hand by hand.")
    else:
        said.append(_changes(order))
    if order.way == "built-in" and not order.proven:
        said.append("`workshop: {order: exact}` looks longer and proves more.")
    return tuple(said)


def _sittings(order: Order) -> str:
    number = counted(order.sessions, "sitting")
    if order.sessions > order.sessions_least:
        return (f"The order takes {number} and has its first try-on in sitting {order.fitting}; no order does"
                f" with fewer than {order.sessions_least}, or has it before sitting {order.fitting_least}.")
    if order.fitting > order.fitting_least:
        return (f"No order does with fewer than {number}. The first try-on is in sitting {order.fitting}; it"
                f" cannot be before sitting {order.fitting_least}.")
    return f"No order does with fewer than {number}, nor has its first try-on before sitting {order.fitting}."


def _changes(order: Order) -> str:
    said = f"Within sittings the set-up is changed {_times(order.changes)}"
    if order.changes <= order.changes_least:
        return f"{said}; no order of so few sittings does with less."
    return f"{said}; how few it could be is not known, but not under {order.changes_least}."


def _times(count: int) -> str:
    words = {0: "never", 1: "once", 2: "twice"}
    return words.get(count, counted(count, "time"))
