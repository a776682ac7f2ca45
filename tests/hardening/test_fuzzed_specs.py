"""Damaged specs end in findings or in a plan; the command ``fuzz_specs.py`` tries many thousands."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest


def _fuzzer() -> ModuleType:
    path = Path(__file__).with_name("fuzz_specs.py")
    module_spec = importlib.util.spec_from_file_location("fuzz_specs", path)
    assert module_spec is not None
    assert module_spec.loader is not None
    module = importlib.util.module_from_spec(module_spec)
    module_spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def fuzzer() -> ModuleType:
    return _fuzzer()


@pytest.mark.parametrize("seed", range(1, 9))
def test_damaged_specs_never_raise(fuzzer: ModuleType, seed: int) -> None:
    """1,000 in all, in eight lots."""
    for data in fuzzer.mutations(125, seed):
        wrong = fuzzer.trouble(data)
        assert wrong is None, data.decode(errors="replace")


@pytest.mark.parametrize("seed", range(21, 31))
def test_as_real_processes_they_end_in_0_1_or_2_without_a_trace(
    fuzzer: ModuleType, tmp_path: Path, seed: int
) -> None:
    """50 in all, in ten lots."""
    for number, data in enumerate(fuzzer.mutations(5, seed)):
        path = tmp_path / f"{number}" / "cage.yaml"
        path.parent.mkdir()
        path.write_bytes(data)
        run = subprocess.run(
            [sys.executable, "-m", "hoopwright", "build", str(path)],
            capture_output=True,
            check=False,
            timeout=60,
        )
        assert run.returncode in (0, 1, 2), data.decode(errors="replace")
        assert b"Traceback" not in run.stdout + run.stderr
        if not run.stdout:
            assert run.returncode == 0 or b"does not pass" in run.stderr, data.decode(errors="replace")
