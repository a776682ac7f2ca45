"""The README is true: its excerpt stands in the plan, its commands run as they are written, its words exist."""

from __future__ import annotations

import importlib.util
import os
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

from hoopwright.cli import main
from hoopwright.cli.arguments import COMMANDS as KNOWN

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text()
INSTALLS = "python3 -m venv .venv && .venv/bin/pip install -q"


def _newcomer() -> ModuleType:
    """The command that follows the README in a fresh clone; this test runs the same lines without an installation."""
    spec = importlib.util.spec_from_file_location("newcomer", ROOT / "tests" / "hardening" / "newcomer.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


NEWCOMER = _newcomer()
COMMANDS = NEWCOMER.commands_of(README)
HERE = [line.removeprefix(f"{INSTALLS} . && ") for line in COMMANDS if "pytest" not in line]
"""What is run here: an installation is left to the command ``newcomer.py`` and to ``.ci/run``."""
HELD = [line for line in HERE if "--check" in line or line.startswith("git ")]
BENCH = [line for line in HERE if " bench " in line]
FIRST = [line for line in HERE if line not in HELD and line not in BENCH and "mill-fair" not in line
         and line != f"{INSTALLS} ."]
MILL = [line for line in HERE if "mill-fair" in line and line not in HELD]


@pytest.fixture
def clone(tmp_path: Path) -> Path:
    """A repository with the specs the README names and their plans, and the command where the README has it."""
    for name in ("harbour-play", "mill-fair", "starters"):
        shutil.copytree(ROOT / "specs" / name, tmp_path / "specs" / name)
    tool = tmp_path / ".venv" / "bin" / "hoopwright"
    tool.parent.mkdir(parents=True)
    tool.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m hoopwright "$@"\n')
    tool.chmod(0o755)
    return tmp_path


def ran(clone: Path, command: str) -> str:
    """What a command prints, run by a shell as the README writes it; it must come to a good end."""
    where = {**os.environ, "PATH": f"{clone / '.venv' / 'bin'}{os.pathsep}{os.environ['PATH']}"}
    done = subprocess.run(["bash", "-e", "-o", "pipefail", "-c", command], cwd=clone, env=where,
                          capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{command}\n{done.stdout}{done.stderr}"
    return done.stdout


def committed(clone: Path) -> None:
    """Two revisions, as the README's line with ``HEAD~1`` wants."""
    ran(clone, "git init -q . && git add specs && git -c user.name=maker -c user.email=maker@example.org"
               " commit -qm 'two designs' && git -c user.name=maker -c user.email=maker@example.org"
               " commit -q --allow-empty -m 'nothing more'")


def test_every_command_is_run_by_one_of_the_tests_below() -> None:
    left = [line for line in COMMANDS if line not in HELD + BENCH + FIRST + MILL]
    assert len(COMMANDS) >= 12
    assert all(line.startswith(INSTALLS) for line in left)
    assert [line.removeprefix(f"{INSTALLS} . && ") for line in left if "specs/" in line] == FIRST[:1]


def test_a_plan_and_a_design_of_ones_own_are_built_as_it_says(clone: Path) -> None:
    for line in FIRST:
        ran(clone, line)
    assert (clone / "specs" / "harbour-play" / "plan.md").is_file()
    assert {path.name for path in (clone / "mine").iterdir()} >= {"cage.yaml", "plan.md", "plan.json", "figures"}
    assert "5 ft 6 in" in (clone / "mine" / "cage.yaml").read_text()


def test_designs_are_compared_as_it_says(clone: Path) -> None:
    assert len(MILL) >= 3
    for line in MILL:
        assert ran(clone, line)


def test_a_design_in_git_is_held_and_told_as_it_says(clone: Path) -> None:
    committed(clone)
    for line in HELD:
        ran(clone, line)
    attributes, command = NEWCOMER.textconv_of(README)
    (clone / ".gitattributes").write_text(attributes + "\n")
    spec = clone / "specs" / "harbour-play" / "cage.yaml"
    spec.write_text(spec.read_text().replace("swell: 1.3", "swell: 1.4"))
    shown = ran(clone, f"{command}; git --no-pager diff")
    assert "+shape.line.swell = 1.4" in shown
    assert "kind: dome" not in shown


def test_an_unmarked_coil_is_tried_as_it_says(clone: Path) -> None:
    shutil.rmtree(clone / "specs" / "mill-fair")  # one cage shows it
    [line] = BENCH
    assert "harbour-play" in ran(clone, line)


def test_the_lines_that_install_are_those_of_the_clean_runs() -> None:
    """The line of the tests is that of ``.ci/run``; the others install the same way, and ``newcomer.py`` runs them."""
    [tests] = [line for line in COMMANDS if "pytest" in line]
    assert tests in (ROOT / ".ci" / "run").read_text().splitlines()
    others = [line for line in COMMANDS if "pip install" in line and line != tests]
    assert others
    assert all(line.startswith(f"{INSTALLS} .") for line in others)
    assert {"PIP_NO_CACHE_DIR", "PYTHONNOUSERSITE", "HOME"} <= set(NEWCOMER.surroundings(Path("/nowhere")))


def test_the_hooks_it_names_run_what_it_says() -> None:
    hooks = (ROOT / ".pre-commit-hooks.yaml").read_text()
    assert {"hoopwright check", "hoopwright build --check"} == set(re.findall(r"entry: (.*)", hooks))


def test_the_excerpt_stands_in_the_committed_plan() -> None:
    excerpt = README.split("<!-- excerpt:start -->")[1].split("<!-- excerpt:end -->")[0]
    plan = (ROOT / "specs" / "harbour-play" / "plan.md").read_text().splitlines()
    lines = [line.removeprefix("> ").rstrip() for line in excerpt.splitlines() if line not in ("", ">")]
    missing = [
        line for line in lines if line.replace("specs/harbour-play/", "") not in plan and line != "..."
    ]
    assert len(lines) > 10
    assert missing == []


def test_the_mistake_it_shows_is_told_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shown = README.split("<!-- mistake:start -->")[1].split("<!-- mistake:end -->")[0].strip().strip("`").strip()
    [new] = [line for line in COMMANDS if " new round" in line]
    monkeypatch.chdir(tmp_path)
    assert main(shlex.split(new)[1:]) == 0
    design = Path("mine/cage.yaml")
    design.write_text(design.read_text().replace("waist: 29 in ", "waist: 29    ", 1))
    capsys.readouterr()
    assert main(["check", design.as_posix()]) == 1
    assert capsys.readouterr().out.strip() == shown


def test_the_small_spec_builds(tmp_path: Path) -> None:
    blocks = re.findall(r"```yaml\n(.*?)```", README, re.DOTALL)
    small = next(block for block in blocks if block.startswith("spec: 1"))
    path = tmp_path / "cage.yaml"
    path.write_text(small)
    assert main(["build", str(path)]) == 0


def test_its_table_tells_of_every_command() -> None:
    table = re.findall(
        r"^\| `(\w+) ?.*?` \|", README.split("| command | does |")[1].split("\n\n")[0], re.MULTILINE
    )
    assert set(table) == set(KNOWN)
    for command in table:
        with pytest.raises(SystemExit) as stop:
            main([command, "--help"])
        assert stop.value.code == 0
