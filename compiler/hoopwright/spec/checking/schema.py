"""The schemas that travel with the package: found beside it, or in the checkout it is run from."""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import Any

VERSION = 1


def schema_text(name: str, version: int = VERSION) -> str:
    """The text of a schema, ``spec``, ``plan`` or ``trip``. Raises FileNotFoundError when there is none."""
    return (_folder() / f"v{version}" / f"{name}.schema.json").read_text(encoding="utf-8")


@cache
def load_schema(name: str, version: int = VERSION) -> dict[str, Any]:
    """The schema as a mapping; read once, never fetched, not to be changed."""
    loaded: dict[str, Any] = json.loads(schema_text(name, version))
    return loaded


@cache
def whole_schema(name: str) -> dict[str, Any]:
    """The schema with what each ``$ref`` names in its place, under the reference's own description; what is named
    often is one mapping, shared. For schemas in which nothing holds itself."""
    schema = load_schema(name)
    known: dict[str, Any] = {}

    def whole(node: Any) -> Any:
        if isinstance(node, list):
            return [whole(item) for item in node]
        if not isinstance(node, dict):
            return node
        named = node.get("$ref")
        if named is None:
            return {key: whole(item) for key, item in node.items() if key != "$defs"}
        if named not in known:
            known[named] = whole(schema["$defs"][named.removeprefix("#/$defs/")])
        return {**known[named], **{key: item for key, item in node.items() if key != "$ref"}}

    found: dict[str, Any] = whole(schema)
    return found


def _folder() -> Traversable:
    """The installed ``schemas`` folder, else the checkout's."""
    package = files("hoopwright")
    installed = package / "schemas"
    if installed.is_dir():
        return installed
    return Path(str(package)).parents[1] / "schemas"
