"""The task graph: no circle, no arrow too many, and the order of the work kept."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

import networkx
import pytest

from hoopwright.plan.model import Plan
from hoopwright.render.views.graph import Graph, graph_view
from hoopwright.work.model import Session, Task, Work


def _drawn(graph: Graph) -> networkx.DiGraph[str]:
    drawn: networkx.DiGraph[str] = networkx.DiGraph()
    drawn.add_nodes_from(node.id for node in graph.nodes)
    drawn.add_edges_from(graph.arrows)
    return drawn


def _graph(plan: Plan) -> Graph:
    return graph_view(plan, defaultdict(lambda: "Heading"))


def _with_tasks(plan: Plan, *tasks: tuple[str, str, tuple[str, ...], bool]) -> Plan:
    """The plan with tasks (id, action, needs, stop), each in a session of its own."""
    made = tuple(
        Task(id, "sew", action, id, needs, 1, (), (id,), (), "table", stop=stop)
        for id, action, needs, stop in tasks
    )
    sessions = tuple(Session(at, (task.id,), 1, "") for at, task in enumerate(made, 1))
    return replace(plan, work=Work(made, sessions, 1, 1, (), "", 0, ()))


@pytest.fixture(params=["as compiled", "every action"])
def worked(request: pytest.FixtureRequest, made: Plan, plan: Plan) -> Plan:
    """A plan's own work, and one with every action in a row."""
    return made if request.param == "as compiled" else plan


def test_it_has_no_circle_and_no_arrow_that_follows_from_others(worked: Plan) -> None:
    drawn = _drawn(_graph(worked))
    assert networkx.is_directed_acyclic_graph(drawn)
    assert set(networkx.transitive_reduction(drawn).edges) == set(drawn.edges)


def test_every_step_stands_in_a_box(worked: Plan) -> None:
    labels = [node.label for node in _graph(worked).nodes]
    assert len(labels) < len(worked.work.tasks)
    assert all(": Heading" in label for label in labels)


def test_steps_of_one_action_share_a_box(plan: Plan) -> None:
    graph = _graph(
        _with_tasks(
            plan,
            ("H1", "case-hoop", (), False),
            ("x", "mark-hoop", ("H1",), False),
            ("H2", "case-hoop", (), False),
            ("y", "mark-hoop", ("H2",), False),
        )
    )
    assert [node.label for node in graph.nodes] == ["1, 3: Heading, H1, H2", "2, 4: Heading"]
    assert graph.arrows == (("n0", "n1"),)


def test_steps_on_both_sides_of_what_parts_them_do_not(plan: Plan) -> None:
    graph = _graph(
        _with_tasks(
            plan,
            ("H1", "sew-hoop", (), False),
            ("stop", "try-on-hem-alone", ("H1",), True),
            ("H2", "sew-hoop", ("stop", "H1"), False),
        )
    )
    assert [node.label for node in graph.nodes] == ["1: Heading, H1", "2: Heading", "3: Heading, H2"]
    assert graph.arrows == (("n0", "n1"), ("n1", "n2"))
    assert [node.stop for node in graph.nodes] == [False, True, False]


def test_a_need_of_the_same_action_is_no_arrow(plan: Plan) -> None:
    graph = _graph(_with_tasks(plan, ("H1", "cut-hoop", (), False), ("H2", "cut-hoop", ("H1",), False)))
    assert (len(graph.nodes), graph.arrows) == (1, ())
