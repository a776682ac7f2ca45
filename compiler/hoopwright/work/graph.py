"""The task graph: what waits for what, and its longest chain."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from hoopwright.work.model import Task

if TYPE_CHECKING:
    import networkx as nx


@dataclass(frozen=True, slots=True)
class Chain:
    """A chain of needs: its tasks in order and the minutes of work in it, waiting not counted."""

    tasks: tuple[str, ...]
    minutes: float


def task_graph(tasks: Iterable[Task]) -> nx.DiGraph[str]:
    """The graph with an arrow from each need to the task that waits for it.

    Nodes carry ``task`` and ``rank`` (their place in ``tasks``). Raises ValueError for a name given twice,
    a need that is no task, or a circle: none of these can come from a spec.
    """
    import networkx as nx

    graph: nx.DiGraph[str] = nx.DiGraph()
    tasks = tuple(tasks)
    for rank, task in enumerate(tasks):
        if task.id in graph:
            raise ValueError(f"two tasks are called {task.id}")
        graph.add_node(task.id, task=task, rank=rank)
    for task in tasks:
        for need in task.needs:
            if need not in graph:
                raise ValueError(f"{task.id} needs {need}, which is no task")
            graph.add_edge(need, task.id)
    if not nx.is_directed_acyclic_graph(graph):
        circle = " -> ".join(step[0] for step in nx.find_cycle(graph))
        raise ValueError(f"tasks wait for each other in a circle: {circle}")
    return graph


def longest_chain(graph: nx.DiGraph[str]) -> Chain:
    """The critical path by minutes of work; of equal chains the one whose tasks come first."""
    import networkx as nx

    rank: dict[str, int] = {name: values["rank"] for name, values in graph.nodes(data=True)}
    best: dict[str, tuple[float, str]] = {}
    for name in nx.lexicographical_topological_sort(graph, key=lambda node: rank[node]):
        before = sorted(graph.predecessors(name), key=lambda need: (-best[need][0], rank[need]))
        reach = best[before[0]][0] if before else 0.0
        best[name] = (reach + graph.nodes[name]["task"].minutes, before[0] if before else "")
    if not best:
        return Chain((), 0.0)
    last = min(best, key=lambda name: (-best[name][0], rank[name]))
    chain, at = [], last
    while at:
        chain.append(at)
        at = best[at][1]
    return Chain(tuple(reversed(chain)), best[last][0])
