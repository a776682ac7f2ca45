"""The same spec gives the same bytes everywhere; the command ``same_bytes.py`` does it over every spec."""

from __future__ import annotations

import importlib.util
from pathlib import Path

import pytest


@pytest.mark.parametrize(
    "name", ["harbour-play/cage.yaml", "salt-masque/farthingale.yaml", "mill-fair/design.yaml"]
)
def test_a_plan_is_the_same_in_every_surrounding(name: str, tmp_path: Path) -> None:
    path = Path(__file__).with_name("same_bytes.py")
    module_spec = importlib.util.spec_from_file_location("same_bytes", path)
    assert module_spec is not None
    assert module_spec.loader is not None
    module = importlib.util.module_from_spec(module_spec)
    module_spec.loader.exec_module(module)
    assert module.differing(module.ROOT / "specs" / name, tmp_path) == []
