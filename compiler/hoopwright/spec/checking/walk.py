"""Where quantities stand in a spec: the schema and a value walked side by side.

Knows only the few constructs the schema is written in: ``$ref`` into ``$defs``, ``properties``,
``additionalProperties``, ``items``, ``allOf``, and ``if``/``then``/``else`` on ``type``, ``required`` or a
``const``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from hoopwright.source.diagnostic import Path

Schema = Mapping[str, Any]


def titled(value: object, schema: Schema) -> Iterator[tuple[Path, str, object]]:
    """Every value whose schema has a ``title``: its path, the title, the value. Quantities have one.

    Values of a wrong shape are passed over: the schema's own check speaks about them.
    """
    yield from _walk(value, schema, (), schema)


def _walk(value: object, node: Schema, path: Path, root: Schema) -> Iterator[tuple[Path, str, object]]:
    if "$ref" in node:
        yield from _walk(value, root["$defs"][node["$ref"].rsplit("/", 1)[1]], path, root)
    if path and "title" in node:
        yield path, node["title"], value
    for part in node.get("allOf", ()):
        yield from _walk(value, part, path, root)
    if "if" in node:
        branch = node.get("then" if _matches(value, node["if"]) else "else")
        if branch:
            yield from _walk(value, branch, path, root)
    if isinstance(value, dict):
        yield from _walk_keys(value, node, path, root)
    if isinstance(value, list) and "items" in node:
        for index, item in enumerate(value):
            yield from _walk(item, node["items"], (*path, index), root)


def _walk_keys(value: Mapping[str, object], node: Schema, path: Path,
               root: Schema) -> Iterator[tuple[Path, str, object]]:
    known = node.get("properties", {})
    others = node.get("additionalProperties")
    for key, item in value.items():
        if key in known:
            yield from _walk(item, known[key], (*path, key), root)
        elif isinstance(others, dict):
            yield from _walk(item, others, (*path, key), root)


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
