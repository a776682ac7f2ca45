"""The task graph and its longest chain, on small graphs worked by hand."""

from __future__ import annotations

import pytest

from hoopwright.work.graph import longest_chain, task_graph
from hoopwright.work.model import Task


def job(name: str, minutes: float, *needs: str) -> Task:
    return Task(name, "sew", "press", name, needs, minutes, (), (), (), "table")


def test_longest_chain_of_a_diamond_goes_through_the_longer_side() -> None:
    graph = task_graph((job("a", 3), job("b", 4, "a"), job("c", 6, "a"), job("d", 2, "b", "c"), job("e", 10)))
    chain = longest_chain(graph)
    assert chain.tasks == ("a", "c", "d")
    assert chain.minutes == 11


def test_of_equal_chains_the_first_named_is_taken() -> None:
    graph = task_graph((job("a", 3), job("b", 4, "a"), job("c", 4, "a"), job("d", 2, "b", "c")))
    assert longest_chain(graph).tasks == ("a", "b", "d")


def test_a_circle_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="circle: a -> b"):
        task_graph((job("a", 1, "b"), job("b", 1, "a")))


def test_a_need_that_is_no_task_is_refused() -> None:
    with pytest.raises(ValueError, match="a needs ghost"):
        task_graph((job("a", 1, "ghost"),))


def test_a_name_given_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="two tasks are called a"):
        task_graph((job("a", 1), job("a", 2)))
