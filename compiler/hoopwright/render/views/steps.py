"""The steps: tasks in working order by sitting, those of one action drawn together where order allows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from hoopwright.library.cautions import CAUTIONS
from hoopwright.plan.model import Plan
from hoopwright.render.escape import Md, code_text
from hoopwright.render.figure import Figure
from hoopwright.render.quantities import Printer
from hoopwright.render.views.conditions import ConditionView, condition_view
from hoopwright.render.views.parts import HoopView
from hoopwright.render.words import plain_key
from hoopwright.work.model import Task


@dataclass(frozen=True, slots=True)
class Row:
    """One task of a step. ``ref`` is its id for ``progress``, blank when the step has but one task."""

    label: str
    hoop: HoopView | None
    crossings: int
    ref: Md


@dataclass(frozen=True, slots=True)
class Step:
    """Tasks of one action done one after the other. ``again`` names cautions already printed in full."""

    number: int
    action: str
    rows: tuple[Row, ...]
    parts: tuple[str, ...]
    ids: tuple[str, ...]
    minutes: str
    wait: str
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    again: tuple[str, ...]
    figure: Figure | None
    stop: bool
    conditions: tuple[ConditionView, ...]


@dataclass(frozen=True, slots=True)
class Sitting:
    """One session of work: how long, its steps, and why it ends."""

    number: int
    minutes: str
    steps: tuple[Step, ...]
    ends: str


def sittings(plan: Plan, hoops: Mapping[str, HoopView], figures: Mapping[str, Figure]) -> tuple[Sitting, ...]:
    """All sittings with numbered steps. A caution is printed in full at the first step it belongs to."""
    printer = Printer.of(plan.spec)
    tasks = {task.id: task for task in plan.work.tasks}
    found: list[Sitting] = []
    said: set[str] = set()
    number = 0
    for session in plan.work.sessions:
        steps: list[Step] = []
        for group in runs([tasks[id] for id in session.tasks]):
            number += 1
            steps.append(_step(number, group, said, plan, hoops, figures, printer))
            said.update(key for task in group for key in task.cautions)
        found.append(Sitting(session.number, printer.minutes(session.minutes), tuple(steps), session.ends))
    return tuple(found)


def runs(tasks: list[Task]) -> list[list[Task]]:
    """Tasks of one action drawn together, in an order that still keeps every need before its task.

    A group takes, from the tasks that follow, those of its action that wait for nothing but what is
    already placed. A stop always stands alone.
    """
    left = list(tasks)
    groups: list[list[Task]] = []
    while left:
        group = [left.pop(0)]
        open_ids = {task.id for task in left}
        for task in list(left):
            if task.action == group[0].action and not task.stop and open_ids.isdisjoint(task.needs):
                group.append(task)
                left.remove(task)
                open_ids.remove(task.id)
        groups.append(group)
    return groups


def _step(number: int, group: list[Task], said: set[str], plan: Plan, hoops: Mapping[str, HoopView],
          figures: Mapping[str, Figure], p: Printer) -> Step:
    first = group[0]
    keys = list(dict.fromkeys(key for task in group for key in task.cautions))
    wait = max(task.wait for task in group)
    return Step(
        number=number,
        action=first.action,
        rows=tuple(_row(task, len(group) > 1, plan, hoops) for task in group),
        parts=tuple(dict.fromkeys(part for task in group for part in task.parts)),
        ids=tuple(task.id for task in group),
        minutes=p.minutes(sum(task.minutes for task in group)),
        wait=p.minutes(wait) if wait else "",
        tools=tuple(dict.fromkeys(tool for task in group for tool in task.tools)),
        cautions=tuple(CAUTIONS[key].text for key in keys if key not in said and key in CAUTIONS),
        again=tuple(plain_key(key) for key in keys if key in said or key not in CAUTIONS),
        figure=figures.get(f"step-{first.action}"),
        stop=first.stop,
        conditions=tuple(condition_view(one, p) for task in group for one in task.conditions),
    )


def _row(task: Task, several: bool, plan: Plan, hoops: Mapping[str, HoopView]) -> Row:
    id = next((part for part in task.parts if part in hoops), "")
    crossings = len(plan.shape.hoop(id).fixings) if id else 0
    return Row(
        label=id or ", ".join(task.parts) or task.title,
        hoop=hoops.get(id),
        crossings=crossings,
        ref=Md(f" · {code_text(task.id)}") if several else Md(""),
    )
