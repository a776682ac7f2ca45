"""The tasks and their order, for ``plan.json``."""

from __future__ import annotations

from hoopwright.render.machine.values import Json, minutes
from hoopwright.work.model import Work


def tasks_json(work: Work) -> list[Json]:
    """The key ``tasks``, in working order."""
    return [{
        "id": task.id,
        "kind": task.kind,
        "title": task.title,
        "needs": list(task.needs),
        "minutes": minutes(task.minutes),
        "tools": list(task.tools),
        "parts": list(task.parts),
        "cautions": list(task.cautions),
        "session": task.session,
        "hand": task.hand,
    } for task in work.tasks]


def order_json(work: Work) -> Json:
    """The key ``order``: how good the order of work is."""
    order = work.order
    return {
        "way": order.way,
        "proven": order.proven,
        "hands": list(order.hands),
        "sittings": order.sessions,
        "sittings_at_least": order.sessions_least,
        "fitting": order.fitting,
        "fitting_at_least": order.fitting_least,
        "changes": order.changes,
        "changes_at_least": order.changes_least,
        "minutes": minutes(work.minutes),
        "lasting_minutes": minutes(sum(session.minutes for session in work.sessions)),
        "minutes_to_first_fitting": minutes(work.minutes_to_first_fitting),
        "longest_chain": list(work.critical),
        "longest_chain_minutes": minutes(work.critical_minutes),
    }
