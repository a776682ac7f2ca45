"""The network of needs and its longest chain, on small graphs worked by hand."""

from __future__ import annotations

import pytest

from hoopwright.work.schedule import Job, NeedsError, network
from hoopwright.work.schedule.network import longest_chain


def job(name: str, minutes: float, *needs: str) -> Job:
    return Job(name, minutes, needs)


def test_longest_chain_of_a_diamond_goes_through_the_longer_side() -> None:
    net = network((job("a", 3), job("b", 4, "a"), job("c", 6, "a"), job("d", 2, "b", "c"), job("e", 10)))
    chain = longest_chain(net)
    assert chain.jobs == ("a", "c", "d")
    assert chain.minutes == 11


def test_of_equal_chains_the_first_named_is_taken() -> None:
    net = network((job("a", 3), job("b", 4, "a"), job("c", 4, "a"), job("d", 2, "b", "c")))
    assert longest_chain(net).jobs == ("a", "b", "d")


def test_a_circle_is_refused_by_name() -> None:
    with pytest.raises(NeedsError, match="circle: b -> c -> b"):
        network((job("a", 1), job("b", 1, "a", "c"), job("c", 1, "b")))


def test_a_need_that_is_no_task_is_refused() -> None:
    with pytest.raises(NeedsError, match="a needs ghost"):
        network((job("a", 1, "ghost"),))


def test_a_name_given_twice_is_refused() -> None:
    with pytest.raises(NeedsError, match="two tasks are called a"):
        network((job("a", 1), job("a", 2)))
