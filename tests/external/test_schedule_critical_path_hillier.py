"""Critical path and slack of a textbook project: F. S. Hillier and G. J. Lieberman, Introduction to
Operations Research, 7th edition, 2001, chapter 10: the Reliable Construction Co. project, 14 activities in
weeks; from memory. Known: 44 weeks, critical A B C E F J L N, slack 4 for D, G, H, M, 2 for I, 1 for K."""

from __future__ import annotations

from hoopwright.work.schedule import Job, network
from hoopwright.work.schedule.network import longest_chain, times

WEEKS = {
    "A": (2, ""), "B": (4, "A"), "C": (10, "B"), "D": (6, "C"), "E": (4, "C"), "F": (5, "E"), "G": (7, "D"),
    "H": (9, "EG"), "I": (7, "C"), "J": (8, "FI"), "K": (4, "J"), "L": (5, "J"), "M": (2, "H"),
    "N": (6, "KL"),
}
NET = network(Job(name, weeks, tuple(needs)) for name, (weeks, needs) in WEEKS.items())


def test_the_critical_path_is_the_books() -> None:
    chain = longest_chain(NET)
    assert ("".join(chain.jobs), chain.minutes) == ("ABCEFJLN", 44)


def test_every_slack_is_the_books() -> None:
    found = times(NET)
    assert found.length == 44
    slack = {name: found.latest[name] - found.earliest[name] for name in WEEKS}
    assert slack == {"A": 0, "B": 0, "C": 0, "D": 4, "E": 0, "F": 0, "G": 4, "H": 4, "I": 2, "J": 0, "K": 1,
                     "L": 0, "M": 4, "N": 0}


def test_a_rest_lengthens_the_chain_it_lies_in() -> None:
    rested = network((Job("glue", 5, rest=30), Job("sand", 5, ("glue",)), Job("cut", 20)))
    found = times(rested)
    assert (found.length, found.latest) == (40, {"glue": 0, "sand": 35, "cut": 20})
