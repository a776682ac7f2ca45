"""Several materials offered for one use: one whole spec for each way to choose among them."""

from __future__ import annotations

from itertools import product
from typing import Any

from hoopwright.library.grades import GRADES
from hoopwright.library.joins import JOINS, suits
from hoopwright.source.record import record
from hoopwright.spec.reading.node import Node
from hoopwright.spec.reading.stocks import library_stock, read_stock

USES = (("build", "hoops", "material"), ("build", "hem_band", "material"))
"""The uses that may be offered a list of materials, the main one first."""


@record(frozen=True, slots=True)
class Design:
    """A spec's value with one material for each use, and the names taken of those offered in lists."""

    value: Any
    offered: tuple[str, ...]


def designs(value: Any) -> tuple[Design, ...]:
    """Every design of a well-formed spec, in the maker's order; one when no use is offered a list.

    A stated join that suits one of the materials but not another is left out for that other, with its lap, so
    that the usual join for it is taken.
    """
    lists = [_names(value, path) for path in USES]
    suited = {name for name in lists[0] if _join_suits(_with(value, USES[0], name), name)}
    found = []
    for chosen in product(*(names or (None,) for names in lists)):
        design = value
        for path, name in zip(USES, chosen, strict=True):
            if name is not None:
                design = _with(design, path, name)
        main = chosen[0]
        if main is not None and suited and main not in suited:
            design = _without_join(design)
        found.append(Design(design, tuple(name for name in chosen if name is not None)))
    return tuple(found)


def _names(value: Any, path: tuple[str, ...]) -> tuple[str, ...]:
    """The names in a list, each once; nothing when the use has one name or none."""
    return tuple(dict.fromkeys(name.text() or "" for name in _at(value, path).items()))


def _at(value: Any, path: tuple[str, ...]) -> Node:
    node = Node(value)
    for key in path:
        node = node[key]
    return node


def _with(value: Any, path: tuple[str, ...], name: str) -> Any:
    head, *rest = path
    inner = name if not rest else _with(value[head], tuple(rest), name)
    return {**value, head: inner}


def _without_join(value: Any) -> Any:
    hoops = {key: item for key, item in value["build"]["hoops"].items() if key not in ("join", "lap")}
    return {**value, "build": {**value["build"], "hoops": hoops}}


def _join_suits(value: Any, name: str) -> bool:
    join = JOINS.get(_at(value, ("build", "hoops", "join")).text() or "")
    if join is None:
        return True
    own = Node(value)["materials"][name]
    stock = (read_stock(name, own) if own or name not in GRADES else library_stock(name)).stock
    return suits(join, stock.section, stock.grade.metal)


