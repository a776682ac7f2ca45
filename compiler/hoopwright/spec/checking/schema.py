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


def _folder() -> Traversable:
    """The installed ``schemas`` folder, else the checkout's."""
    package = files("hoopwright")
    installed = package / "schemas"
    if installed.is_dir():
        return installed
    return Path(str(package)).parents[1] / "schemas"
