"""The plans committed under specs/ are what their specs build."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

ROOT = Path(__file__).resolve().parents[2]
SPECS = sorted(
    path
    for path in (ROOT / "specs").rglob("*.yaml")
    if "starters" not in path.parts
    and path.read_text().startswith(("spec:", "#"))
    and "\nspec: 1" in "\n" + path.read_text()
)


def test_there_are_specs() -> None:
    assert len(SPECS) >= 3


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.relative_to(ROOT / "specs").as_posix())
def test_the_committed_plan_is_current(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["build", "--check", str(path)])
    printed = capsys.readouterr()
    assert "up to date" in printed.err, printed.out[-4000:] + printed.err
    assert code == 0, printed.err
