"""A build killed at any moment leaves a whole plan."""

from __future__ import annotations

import importlib.util
from pathlib import Path


def test_twenty_killed_builds_leave_no_mixture() -> None:
    path = Path(__file__).with_name("kill_builds.py")
    module_spec = importlib.util.spec_from_file_location("kill_builds", path)
    assert module_spec is not None
    assert module_spec.loader is not None
    module = importlib.util.module_from_spec(module_spec)
    module_spec.loader.exec_module(module)
    old, new, mixed = module.kill_builds(20, seed=7)
    assert mixed == 0
    assert old + new == 20
