"""The source stage, the pages of explain and the diagnostic formats load none of the heavy libraries."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

HEAVY = ("numpy", "scipy", "networkx", "jinja2", "highspy")
READ = "from hoopwright.source.read import read; assert read(b'a: 1', 'a.yaml')[0] is not None"


def loaded(code: str) -> set[str]:
    """Top-level modules loaded after a piece of code has run in a fresh interpreter."""
    tail = "; import sys, json; print(json.dumps(sorted({name.split('.')[0] for name in sys.modules})))"
    ran = subprocess.run([sys.executable, "-c", code + tail], capture_output=True, text=True, check=True)
    return set(json.loads(ran.stdout))


@pytest.mark.parametrize("code", [
    READ,
    "import hoopwright.source.quantity, hoopwright.source.locate",
    "from hoopwright.explain.pages import listing; assert listing()",
    "from hoopwright.render import report; report.text([], {})",
])
def test_no_heavy_library_is_loaded(code: str) -> None:
    assert not loaded(code) & set(HEAVY)


def test_yaml_is_loaded_only_to_read() -> None:
    assert "ruamel" in loaded(READ)
    assert "ruamel" not in loaded("import hoopwright.source.read, hoopwright.source.locate")
