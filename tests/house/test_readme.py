"""The README is true: its excerpt stands in the plan, its links resolve, its commands and keys exist."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from hoopwright.cli import main

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text()


def test_the_excerpt_stands_in_the_committed_plan() -> None:
    excerpt = README.split("<!-- excerpt:start -->")[1].split("<!-- excerpt:end -->")[0]
    plan = (ROOT / "specs" / "harbour-play" / "plan.md").read_text().splitlines()
    lines = [line.removeprefix("> ").rstrip() for line in excerpt.splitlines() if line not in ("", ">")]
    missing = [
        line for line in lines if line.replace("specs/harbour-play/", "") not in plan and line != "..."
    ]
    assert len(lines) > 10
    assert missing == []


def test_every_link_resolves() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        links = re.findall(r"\]\(([^)#]+)", (ROOT / name).read_text())
        assert links
        assert [link for link in links if not link.startswith("http") and not (ROOT / link).exists()] == []


def test_the_small_spec_builds(tmp_path: Path) -> None:
    blocks = re.findall(r"```yaml\n(.*?)```", README, re.DOTALL)
    small = next(block for block in blocks if block.startswith("spec: 1"))
    path = tmp_path / "cage.yaml"
    path.write_text(small)
    assert main(["build", str(path)]) == 0
    assert small.split() != []


@pytest.mark.parametrize(
    "line", re.findall(r"^\.venv/bin/hoopwright (.*?)(?:  +#.*)?$", README, re.MULTILINE)
)
def test_every_command_line_works(line: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import shlex

    monkeypatch.chdir(ROOT if " specs/" in line else tmp_path)
    words = shlex.split(line)
    if "mine/cage.yaml" in words and words[0] != "new":
        assert main(["new", "round-cage-inches", "-o", "mine/cage.yaml"]) == 0
    assert main(words) == 0


def test_every_command_of_the_table_exists() -> None:
    table = re.findall(
        r"^\| `(\w+) ?.*?` \|", README.split("| command | does |")[1].split("\n\n")[0], re.MULTILINE
    )
    assert {"check", "build", "new", "explain", "schema"} <= set(table)
    for command in table:
        with pytest.raises(SystemExit) as stop:
            main([command, "--help"])
        assert stop.value.code == 0
