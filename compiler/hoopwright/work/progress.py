"""Work that is done: tasks ticked off, and what is odd about what the maker says is done."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from hoopwright.source.diagnostic import Finding, error, warning
from hoopwright.spec.checking.nearest import listed, nearest
from hoopwright.spec.model import Spec
from hoopwright.work.actions import ACTIONS
from hoopwright.work.model import Task

_OF_A_HOOP = re.compile(r"([a-z]+)-H[0-9]+\Z")


def ticked(tasks: tuple[Task, ...], spec: Spec) -> tuple[Task, ...]:
    """The tasks, those done marked so."""
    done = set(spec.progress.done)
    return tuple(replace(task, done=True) if task.id in done else task for task in tasks)


def progress_findings(tasks: tuple[Task, ...], spec: Spec) -> tuple[Finding, ...]:
    """Tasks that are none (errors), that a change took away, or that came before what they wait for."""
    known = {task.id: task for task in tasks}
    done = set(spec.progress.done)
    found: list[Finding] = []
    for index, name in enumerate(spec.progress.done):
        path = ("progress", "done", index)
        if name not in known:
            found.append(_gone(name, path) if _was_one(name, known) else _unknown(name, path, known))
            continue
        waits = [need for need in known[name].needs if need not in done]
        if waits:
            found.append(warning("done-out-of-order", path,
                                 f"`{name}` is done, and `{waits[0]}`, which comes before it, is not",
                                 f"add `{waits[0]}` when it is done, or look again at what is"))
    return tuple(found)


def _was_one(name: str, known: Iterable[str]) -> bool:
    """Whether it is a task of other designs: of a hoop there is no more, or an action not wanted here."""
    verb = _OF_A_HOOP.match(name)
    return name in ACTIONS or (verb is not None and any(one.startswith(f"{verb[1]}-") for one in known))


def _gone(name: str, path: tuple[str | int, ...]) -> Finding:
    return warning("task-gone", path, f"the design has no task `{name}` any more",
                   "delete it here; what was cut for it may serve elsewhere, noted under `progress.cut`")


def _unknown(name: str, path: tuple[str | int, ...], known: Iterable[str]) -> Finding:
    """The nearest name; of a name that ends in a part of the design, all tasks of that part."""
    part = name.rpartition("-")[2]
    same = [one for one in known if part and one.endswith(f"-{part}")]
    near = nearest(name, known)
    if same:
        mend = f"the tasks of {part} are {listed(same, 'and')}"
    else:
        mend = (f"a task with a similar name exists: `{near[0]}`" if near else
                "the plan shows each task's name beside its step")
    return error("task-unknown", path, f"no task is called `{name[:60]}`", mend)
