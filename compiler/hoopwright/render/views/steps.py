"""The steps: tasks in working order by sitting, those of one action drawn together where order allows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from hoopwright.library.cautions import CAUTIONS
from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.escape import Md, code_text
from hoopwright.render.figure import Figure
from hoopwright.render.quantities import Printer
from hoopwright.render.views.conditions import ConditionView, condition_views
from hoopwright.render.views.parts import HoopView
from hoopwright.render.words import plain_key
from hoopwright.source.record import record
from hoopwright.work.model import Condition, Task

_JOINING = frozenset({"prove-join", "splice-hoop", "join-hoop", "join-hoop-shielded"})
"""Actions that make joins."""


@record(frozen=True, slots=True)
class Row:
    """One task of a step. ``ref`` is its id for ``progress``, blank when the step has but one task."""

    label: str
    hoop: HoopView | None
    crossings: int
    ref: Md


@record(frozen=True, slots=True)
class Step:
    """Tasks of one action done one after the other. ``again`` names cautions already printed in full,
    ``first`` tells that the action comes up for the first time. ``done`` are the ids of its done tasks.
    ``hand`` does it, blank for the one maker."""

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
    first: bool
    stop: bool
    conditions: tuple[ConditionView, ...]
    done: tuple[str, ...] = ()
    hand: str = ""


@record(frozen=True, slots=True)
class Sitting:
    """One session of work: how long, its steps, and why it ends."""

    number: int
    minutes: str
    steps: tuple[Step, ...]
    ends: str


def sittings(plan: Plan, hoops: Mapping[str, HoopView], figures: Mapping[str, Figure]) -> tuple[Sitting, ...]:
    """All sittings with numbered steps. A caution is printed in full at the first step it belongs to."""
    tasks = {task.id: task for task in plan.work.tasks}
    teller = _Teller(plan, hoops, figures)
    found: list[Sitting] = []
    for session in plan.work.sessions:
        steps = tuple(teller.step(group) for group in runs([tasks[id] for id in session.tasks]))
        found.append(Sitting(session.number, teller.printer.minutes(session.minutes), steps, session.ends))
    return tuple(found)


def runs(tasks: list[Task]) -> list[list[Task]]:
    """Tasks of one action and one hand drawn together, in an order that still keeps every need before its task.

    A group takes, from the tasks that follow, those of its action that wait for nothing but what is
    already placed. A stop always stands alone.
    """
    left = list(tasks)
    groups: list[list[Task]] = []
    while left:
        group = [left.pop(0)]
        open_ids = {task.id for task in left}
        for task in list(left):
            alike = (task.action, task.hand) == (group[0].action, group[0].hand)
            if alike and not task.stop and open_ids.isdisjoint(task.needs):
                group.append(task)
                left.remove(task)
                open_ids.remove(task.id)
        groups.append(group)
    return groups


class _Teller:
    """Words steps one after the other and remembers what has been said."""

    def __init__(self, plan: Plan, hoops: Mapping[str, HoopView], figures: Mapping[str, Figure]) -> None:
        self.plan, self.hoops, self.figures = plan, hoops, figures
        self.printer = Printer.of(plan.spec)
        self.number = 0
        self.order = {hoop.id: place for place, hoop in enumerate(plan.shape.hoops)}
        self.cautioned: set[str] = set()
        self.explained: set[str] = set()

    def step(self, group: list[Task]) -> Step:
        """The next step, its tasks in the order of their hoops."""
        self.number += 1
        group = sorted(group, key=lambda task: self.order.get(task.parts[0] if task.parts else "", 0))
        first = group[0]
        keys = list(dict.fromkeys(key for task in group for key in task.cautions))
        wait = max(task.wait for task in group)
        step = Step(
            number=self.number,
            action=first.action,
            rows=tuple(self._row(task, len(group) > 1) for task in group),
            parts=tuple(dict.fromkeys(part for task in group for part in task.parts)),
            ids=tuple(task.id for task in group),
            minutes=self.printer.minutes(sum(task.minutes for task in group)),
            wait=self.printer.minutes(wait) if wait else "",
            tools=tuple(dict.fromkeys((*self._used_up(first), *(tool for task in group for tool in task.tools)))),
            cautions=tuple(CAUTIONS[key].text for key in keys if self._is_new(key)),
            again=tuple(plain_key(key) for key in keys if not self._is_new(key)),
            figure=self.figures.get(f"step-{first.action}"),
            first=first.action not in self.explained,
            stop=first.stop,
            conditions=self._conditions([one for task in group for one in task.conditions]),
            done=tuple(task.id for task in group if task.done),
            hand=first.hand,
        )
        self.cautioned.update(keys)
        self.explained.add(first.action)
        return step

    def _conditions(self, conditions: list[Condition]) -> tuple[ConditionView, ...]:
        """What must be true, the design spoken of by its word."""
        views = condition_views(conditions, self.printer)
        return tuple(replace(view, must=named(self.plan.spec, view.must)) for view in views)

    def _used_up(self, task: Task) -> tuple[str, ...]:
        """What a join uses up, where one is made."""
        hooped = self.plan.spec.build.hooped
        if hooped is None or task.action not in _JOINING:
            return ()
        return tuple(need.goods for need in hooped.join.consumes)

    def _is_new(self, key: str) -> bool:
        return key in CAUTIONS and key not in self.cautioned

    def _row(self, task: Task, several: bool) -> Row:
        id = next((part for part in task.parts if part in self.hoops), "")
        return Row(
            label=id or ", ".join(task.parts) or task.title,
            hoop=self.hoops.get(id),
            crossings=len(self.plan.shape.hoop(id).fixings) if id else 0,
            ref=Md(f" · {code_text(task.id)}") if several else Md(""),
        )
