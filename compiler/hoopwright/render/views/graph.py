"""The task graph for a Mermaid drawing: steps of one action as one box, arrows thinned out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from hoopwright.plan.model import Plan
from hoopwright.render.views.steps import runs
from hoopwright.render.words import ids_text
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Node:
    """A box: its id, its label, and whether it is a stop."""

    id: str
    label: str
    stop: bool


@record(frozen=True, slots=True)
class Graph:
    """Boxes in working order, and arrows from what is done first."""

    nodes: tuple[Node, ...]
    arrows: tuple[tuple[str, str], ...]


@dataclass(slots=True)
class _Box:
    """A box in the making: its step numbers, hoops, and the boxes it waits for, by place in the list."""

    action: str
    stop: bool
    heading: str
    steps: list[int] = field(default_factory=list)
    hoops: list[str] = field(default_factory=list)
    needs: set[int] = field(default_factory=set)


def graph_view(plan: Plan, headings: Mapping[int, str]) -> Graph:
    """The graph of a plan's steps. ``headings`` are the steps' headings by number.

    Steps of one action share a box unless something between them waits for the one and is waited for by
    the other. An arrow that follows from a chain of other arrows is left out.
    """
    boxes = _boxes(plan, headings)
    needs = {at: box.needs for at, box in enumerate(boxes)}
    nodes = tuple(Node(f"n{at}", _label(box), box.stop) for at, box in enumerate(boxes))
    arrows = tuple((f"n{first}", f"n{then}") for then in needs for first in sorted(_direct(then, needs)))
    return Graph(nodes, arrows)


def _boxes(plan: Plan, headings: Mapping[int, str]) -> list[_Box]:
    tasks = {task.id: task for task in plan.work.tasks}
    hoops = {hoop.id: place for place, hoop in enumerate(plan.shape.hoops)}
    boxes: list[_Box] = []
    box_of: dict[str, int] = {}
    number = 0
    for session in plan.work.sessions:
        for group in runs([tasks[id] for id in session.tasks]):
            number += 1
            first = group[0]
            needs = {box_of[need] for task in group for need in task.needs if need in box_of}
            at = _same(first.action, needs, boxes) if not first.stop else None
            if at is None:
                boxes.append(_Box(first.action, first.stop, headings[number]))
                at = len(boxes) - 1
            boxes[at].steps.append(number)
            boxes[at].hoops.extend(part for task in group for part in task.parts if part in hoops)
            boxes[at].needs |= needs - {at}
            box_of.update((task.id, at) for task in group)
    for box in boxes:
        box.hoops.sort(key=hoops.__getitem__)
    return boxes


def _same(action: str, needs: set[int], boxes: list[_Box]) -> int | None:
    """The latest box of the action that a step with these needs can join without going in a circle."""
    at = next((at for at in reversed(range(len(boxes))) if boxes[at].action == action), None)
    if at is None or at in _before(needs - {at}, {place: box.needs for place, box in enumerate(boxes)}):
        return None
    return at


def _label(box: _Box) -> str:
    parts = ids_text(box.hoops)
    steps = ids_text(str(step) for step in box.steps)
    return f"{steps}: {box.heading}" + (f", {parts}" if parts else "")


def _direct(box: int, needs: Mapping[int, set[int]]) -> set[int]:
    """The needs of a box that no other of its needs already waits for."""
    return {need for need in needs[box] if need not in _before(needs[box] - {need}, needs)}


def _before(boxes: Iterable[int], needs: Mapping[int, set[int]]) -> set[int]:
    """These boxes and every box that must come before them."""
    found = set(boxes)
    left = list(found)
    while left:
        for need in needs[left.pop()] - found:
            found.add(need)
            left.append(need)
    return found
