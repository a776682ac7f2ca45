"""Who works on it: the hands and what they know, the workshop's own rates, how many there are of a tool."""

from __future__ import annotations

from collections.abc import Mapping

from hoopwright.library.tools import tool_name, tool_names
from hoopwright.source.diagnostic import error, warning
from hoopwright.spec.checking.nearest import offer
from hoopwright.spec.model import Worker
from hoopwright.spec.reading.node import Node, Notebook


def read_hands(node: Node, notes: Notebook) -> tuple[Worker, ...]:
    """The hands in the maker's order; a name given twice is an error."""
    found: dict[str, Worker] = {}
    first: dict[str, Node] = {}
    for item in node.items():
        name = item["name"].text() or ""
        if name in found:
            notes.tell(error("hand-twice", item["name"].path, f"two hands are called `{name}`",
                             "give each a name of their own", related=((first[name].path, "the first"),)))
            continue
        skills = tuple(skill.text() or "" for skill in item["skills"].items()) if item["skills"] else None
        found[name], first[name] = Worker(name, skills), item["name"]
    return tuple(found.values())


def read_rates(node: Node) -> Mapping[str, float]:
    """The workshop's own rates, minutes by name."""
    return {name: node[name].minutes() or 0.0 for name in node.names()}


def read_counts(node: Node, notes: Notebook) -> Mapping[str, int]:
    """How many there are of each tool, under the library's names; unknown ones are passed over."""
    found: dict[str, int] = {}
    for name in node.names():
        known = tool_name(name)
        if known is None:
            notes.tell(warning("tool-unknown", node[name].path,
                               f"no tool is called `{name}`; it is passed over",
                               offer(name, tool_names(), "tool"), at_key=True))
        else:
            found[known] = node[name].whole() or 1
    return found
