"""The sample workflow: the commands that it runs are there, and its review step says what changed."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from hoopwright.cli.arguments import parser

ROOT = Path(__file__).resolve().parents[2]
CAGE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 3}}
"""


@pytest.fixture(scope="module")
def steps() -> list[dict[str, Any]]:
    sample = YAML(typ="safe").load((ROOT / ".github" / "workflows" / "plans.yaml").read_text())
    found: list[dict[str, Any]] = sample["jobs"]["plans"]["steps"]
    return found


def test_every_command_is_there_and_every_way_of_reporting_is_shown(steps: list[dict[str, Any]]) -> None:
    said = [shlex.split(found) for step in steps
            for found in re.findall(r"^\.venv/bin/hoopwright ([^>|\n]*)", step.get("run", ""))]
    options = [parser().parse_args(words) for words in said]
    assert all(option.specs == ["specs/"] for option in options)
    assert {option.format for option in options} == {"annotations", "summary", "sarif", "junit", "text"}
    assert [option.check for option in options if option.command == "build"] == [True]


def test_the_review_step_says_what_a_branch_changed(steps: list[dict[str, Any]], tmp_path: Path) -> None:
    def git(*words: str) -> None:
        who = ["-c", "user.name=A", "-c", "user.email=a@example.org"]
        subprocess.run(["git", *who, *words], cwd=tmp_path, capture_output=True, check=True)

    spec = tmp_path / "specs" / "one" / "cage.yaml"
    spec.parent.mkdir(parents=True)
    spec.write_text(CAGE)
    git("init", "-q", "-b", "main")
    git("add", ".")
    git("commit", "-q", "-m", "one")
    git("update-ref", "refs/remotes/origin/main", "HEAD")
    spec.write_text(CAGE.replace("2.8 m", "3 m"))
    git("commit", "-q", "-a", "-m", "two")
    script = steps[-1]["run"].replace(".venv/bin/hoopwright", f"{shlex.quote(sys.executable)} -m hoopwright")
    page = tmp_path / "summary.md"
    run = subprocess.run(["bash", "-euo", "pipefail", "-c", script], cwd=tmp_path, capture_output=True, text=True,
                         check=False,
                         env={**os.environ, "GITHUB_BASE_REF": "main", "GITHUB_STEP_SUMMARY": str(page)})
    assert run.returncode == 0, run.stderr
    assert "| hem girth | 280 cm | 300 cm |" in page.read_text()
