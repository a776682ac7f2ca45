"""A spec as sorted ``path = value`` lines, for a diff that does not move when keys are reordered.

Items of lists go by what identifies them: a name, a date, a spec; single values by themselves. So a task that
is added to ``progress.done``, or a layer put first, is one line and not a shift of all that follow.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from hoopwright.source.read import Document

_IDS = ("name", "on", "spec", "part", "test", "height", "below_waist", "length", "per", "count")
"""Keys that tell one item of a list from another, the most telling first."""


def flattened(document: Document) -> str:
    """The lines, each ending in a line end."""
    return "".join(f"{line}\n" for line in sorted(_lines(document.value, "")))


def _lines(value: Any, path: str) -> Iterator[str]:
    if isinstance(value, dict) and value:
        for key, inner in value.items():
            yield from _lines(inner, f"{path}.{_key(key)}" if path else _key(key))
    elif isinstance(value, list) and value:
        for name, item in zip(_names(value), value, strict=True):
            if isinstance(item, dict | list):
                yield from _lines(item, f"{path}[{name}]")
            else:
                yield f"{path}[] = {_text(item)}" if name is None else f"{path}[{name}] = {_text(item)}"
    else:
        yield f"{path} = {_text(value)}"


def _names(items: list[Any]) -> list[str | None]:
    """A name for each item, the same wherever it stands; numbered when it comes again, counted when it has
    none. Single values are their own names."""
    found: list[str | None] = []
    seen: dict[str, int] = {}
    for index, item in enumerate(items):
        if not isinstance(item, dict | list):
            found.append(None)
            continue
        told = [item[key] for key in _IDS if isinstance(item, dict) and key in item]
        name = _text(told[0]) if told and not isinstance(told[0], dict | list) else str(index + 1)
        seen[name] = seen.get(name, 0) + 1
        found.append(name if seen[name] == 1 else f"{name} #{seen[name]}")
    return found


def _key(key: str) -> str:
    return key if key.replace("_", "a").replace("-", "a").replace(" ", "a").isalnum() else json.dumps(key)


def _text(value: Any) -> str:
    """A value as written, on one line."""
    if isinstance(value, str):
        plain = value.isprintable() and value == value.strip() and value
        return value if plain else json.dumps(value, ensure_ascii=False)
    return json.dumps(value, ensure_ascii=False)
