"""A build killed at any moment, or beside others into the same folder, leaves one whole plan."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest


@pytest.fixture(scope="module")
def killer() -> ModuleType:
    path = Path(__file__).with_name("kill_builds.py")
    module_spec = importlib.util.spec_from_file_location("kill_builds", path)
    assert module_spec is not None
    assert module_spec.loader is not None
    module = importlib.util.module_from_spec(module_spec)
    module_spec.loader.exec_module(module)
    return module


def test_twenty_killed_builds_leave_no_mixture(killer: ModuleType) -> None:
    old, new, mixed = killer.kill_builds(20, seed=7)
    assert mixed == 0
    assert old + new == 20


def test_builds_at_once_into_one_folder_leave_one_whole_plan(killer: ModuleType) -> None:
    assert killer.builds_together(1) == (1, 0)
