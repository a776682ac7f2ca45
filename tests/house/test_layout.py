"""What stands at the top of the repository, and what every file there may not say."""

from __future__ import annotations

import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FIXED = {"README.md", "DEVELOPERS.md", "pyproject.toml", "compiler", "schemas", "specs", "tests"}
MADE = {"build", "dist", "mine"}
"""What building a package and following the README leave behind."""


def test_top_level_is_the_fixed_one() -> None:
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert there - MADE == FIXED


def test_ci_runs_exactly_the_readme_test_command() -> None:
    command = next(
        line for line in (ROOT / ".ci" / "run").read_text().splitlines() if line.startswith("python3 -m venv")
    )
    assert f"\n{command}\n" in (ROOT / "README.md").read_text()


def test_licence_is_stated_in_both_places() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    assert project["license"] == "MIT"
    assert "MIT" in (ROOT / "README.md").read_text()
