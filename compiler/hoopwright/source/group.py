"""Groups being read, and values with a name that may be repeated."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple

from hoopwright.source.diagnostic import Path, Span

Value = Any
"""A plain value: dict, list, str, int, float, bool or None."""


class Group:
    """A mapping or list being read.

    ``key`` is the key whose value comes next, if any; ``last`` the place of the last thing read in it;
    ``height`` how deep groups nest from here; ``counted_before`` the count of values before it began.
    """

    __slots__ = ("anchor", "counted_before", "height", "key", "last", "path", "start", "value")

    def __init__(self, path: Path, value: dict[str, Value] | list[Value], start: Any, anchor: str | None,
                 counted_before: int) -> None:
        self.path, self.value, self.start, self.anchor = path, value, start, anchor
        self.counted_before = counted_before
        self.key: str | None = None
        self.height = 1
        self.last: Span | None = None


class Anchored(NamedTuple):
    """A finished value with a name: its path, how many values it holds and how deep it nests."""

    path: Path
    value: Value
    size: int
    height: int


def copy_places(named: Anchored, path: Path, places: dict[Path, Span]) -> None:
    """Give what lies inside a value repeated at ``path`` the places of the original's inside."""
    waiting: list[tuple[Path, Value]] = [((), named.value)]
    while waiting:
        below, value = waiting.pop()
        for key, inner in _entries(value):
            inside = (*below, key)
            original = places.get((*named.path, *inside))
            if original is not None:
                places[(*path, *inside)] = original
            waiting.append((inside, inner))


def _entries(value: Value) -> Iterable[tuple[str | int, Value]]:
    """Keys or places with their values, of a group or a list; nothing for a single value."""
    if isinstance(value, dict):
        return value.items()
    return enumerate(value) if isinstance(value, list) else ()
