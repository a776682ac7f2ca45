"""Where quantities stand in a spec: the schema and a value walked side by side.

Knows only the few constructs the schema is written in, its references replaced by what they name: ``properties``,
``additionalProperties``, ``items``, ``allOf``, and ``if``/``then``/``else`` on ``type``, ``required`` or a
``const``.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from hoopwright.source.diagnostic import Path

Schema = Mapping[str, Any]


def titled(value: object, schema: Schema) -> list[tuple[Path, str, object]]:
    """Every value whose schema has a ``title``: its path, the title, the value. Quantities have one.

    Values of a wrong shape are passed over: the schema's own check speaks about them.
    """
    found: list[tuple[Path, str, object]] = []
    _walk(value, schema, (), found)
    return found


def _walk(value: object, node: Schema, path: Path, found: list[tuple[Path, str, object]]) -> None:
    if path and "title" in node:
        found.append((path, node["title"], value))
    for part in node.get("allOf", ()):
        _walk(value, part, path, found)
    if "if" in node:
        branch = node.get("then" if _matches(value, node["if"]) else "else")
        if branch:
            _walk(value, branch, path, found)
    if isinstance(value, dict):
        known, others = node.get("properties", {}), node.get("additionalProperties")
        for key, item in value.items():
            if key in known:
                _walk(item, known[key], (*path, key), found)
            elif isinstance(others, dict):
                _walk(item, others, (*path, key), found)
    elif isinstance(value, list) and "items" in node:
        for index, item in enumerate(value):
            _walk(item, node["items"], (*path, index), found)


def _matches(value: object, test: Schema) -> bool:
    """Whether an ``if`` holds. Only an object meets ``required``; constants are compared as they are."""
    if not isinstance(value, dict):
        return "type" not in test and "required" not in test
    if any(key not in value for key in test.get("required", ())):
        return False
    return all(
        value.get(key) == wanted["const"] if "const" in wanted else _matches(value.get(key), wanted)
        for key, wanted in test.get("properties", {}).items()
    )
