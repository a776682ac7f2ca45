"""The tasks, for ``plan.json``."""

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
    } for task in work.tasks]
