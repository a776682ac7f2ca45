"""The task graph for a Mermaid drawing: steps as boxes, sittings as frames, arrows thinned out."""

from __future__ import annotations

from dataclasses import dataclass

from hoopwright.plan.model import Plan
from hoopwright.render.views.steps import runs
from hoopwright.render.words import ids_text


@dataclass(frozen=True, slots=True)
class Node:
    """A box: ``s7``, its label, and whether it is a stop."""

    id: str
    label: str
    stop: bool


@dataclass(frozen=True, slots=True)
class Graph:
    """Boxes by sitting and arrows from what is done first."""

    frames: tuple[tuple[int, tuple[Node, ...]], ...]
    arrows: tuple[tuple[str, str], ...]


def graph_view(plan: Plan, headings: dict[int, str]) -> Graph:
    """The graph of steps. ``headings`` are the steps' headings by number.

    An arrow that follows from a chain of other arrows is left out.
    """
    tasks = {task.id: task for task in plan.work.tasks}
    hoops = {hoop.id for hoop in plan.shape.hoops}
    step_of: dict[str, int] = {}
    frames: list[tuple[int, tuple[Node, ...]]] = []
    number = 0
    for session in plan.work.sessions:
        nodes: list[Node] = []
        for group in runs([tasks[id] for id in session.tasks]):
            number += 1
            step_of.update((task.id, number) for task in group)
            parts = ids_text(part for task in group for part in task.parts if part in hoops)
            label = f"{number} {headings[number]}" + (f", {parts}" if parts else "")
            nodes.append(Node(f"s{number}", label, group[0].stop))
        frames.append((session.number, tuple(nodes)))
    needs: dict[int, set[int]] = {step: set() for step in range(1, number + 1)}
    for task in plan.work.tasks:
        if task.id in step_of:
            needs[step_of[task.id]] |= {step_of[need] for need in task.needs if need in step_of}
    arrows = tuple((f"s{first}", f"s{then}") for then in needs for first in sorted(_direct(then, needs)))
    return Graph(tuple(frames), arrows)


def _direct(step: int, needs: dict[int, set[int]]) -> set[int]:
    """The needs of a step that no other of its needs already waits for."""
    own = needs[step] - {step}
    implied: set[int] = set()
    for need in own:
        implied |= _before(need, needs)
    return own - implied


def _before(step: int, needs: dict[int, set[int]]) -> set[int]:
    """Every step that must come before ``step``."""
    found: set[int] = set()
    open_steps = [step]
    while open_steps:
        for need in needs[open_steps.pop()] - found - {step}:
            found.add(need)
            open_steps.append(need)
    return found
