"""``compare``, ``values``, the CI formats and the hooks as they are called."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest
from ruamel.yaml import YAML

from hoopwright.cli import main
from hoopwright.cli.arguments import parser

ROOT = Path(__file__).resolve().parents[2]
CAGE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 3}}
variants: {heavy: {limits: {weight: 10 g}}, cone: {shape: {line: {kind: cone}}}}
"""


@pytest.fixture
def cage(tmp_path: Path) -> Path:
    path = tmp_path / "cage.yaml"
    path.write_text(CAGE)
    return path


def test_compare_takes_a_spec_and_all_its_variants(cage: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", str(cage), "--format", "json"]) == 0
    designs = json.loads(capsys.readouterr().out)["designs"]
    assert {one["design"] for one in designs} == {str(cage), f"{cage} (heavy)", f"{cage} (cone)"}
    assert designs[-1]["design"] == f"{cage} (heavy)"
    assert designs[-1]["failing"] == ["weight cage"]


def test_compare_of_some_variants(cage: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", str(cage), "--variant", "cone"]) == 0
    printed = capsys.readouterr().out
    assert "(cone)" in printed
    assert "(heavy)" not in printed
    assert main(["compare", str(cage), "--variant", "none"]) == 1


def test_values_flattens_a_spec_and_leaves_what_is_none(cage: Path, tmp_path: Path,
                                                        capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["values", str(cage)]) == 0
    assert "variants.heavy.limits.weight = 10 g\n" in capsys.readouterr().out
    broken = tmp_path / "broken.yaml"
    broken.write_text("a: [\n")
    assert main(["values", str(broken)]) == 0
    assert capsys.readouterr().out == "a: [\n"
    assert main(["values", str(tmp_path / "none.yaml")]) == 2


def test_git_shows_one_line_for_one_change(cage: Path, tmp_path: Path) -> None:
    """The documented textconv at work: a changed order of keys shows nothing, a changed value one line."""
    def git(*words: str) -> str:
        run = subprocess.run(["git", *words], cwd=tmp_path, capture_output=True, text=True, check=True)
        return run.stdout

    git("init", "-q")
    (tmp_path / ".gitattributes").write_text("*.yaml diff=hoopwright\n")
    git("config", "diff.hoopwright.textconv", f'"{sys.executable}" -m hoopwright values')
    git("add", ".")
    moved = "units: centimetres\n" + CAGE.replace("units: centimetres\n", "")
    cage.write_text(moved.replace("2.8 m", "2.9 m"))
    changed = [line for line in git("diff").splitlines() if line[:1] in "+-"]
    assert changed[2:] == ["-shape.hem.girth = 2.8 m", "+shape.hem.girth = 2.9 m"]


@pytest.mark.parametrize("command", ["check", "build"])
def test_one_document_for_many_specs(cage: Path, tmp_path: Path, command: str,
                                     capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "bad.yaml").write_text(CAGE.replace("72 cm", "72"))
    assert main([command, str(tmp_path), str(tmp_path / "none.yaml"), "--format", "sarif"]) == 2
    results = json.loads(capsys.readouterr().out)["runs"][0]["results"]
    assert {"unit-missing", "file-missing"} <= {one["ruleId"] for one in results}
    assert main([command, str(tmp_path), "--format", "junit"]) == 1
    root = ElementTree.fromstring(capsys.readouterr().out)
    assert len(root.findall("testsuite")) == 2


def test_a_stale_plan_is_a_finding_and_its_diff_stays_off_the_document(
    cage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", "--check", str(cage), "--format", "sarif"]) == 1
    printed = capsys.readouterr()
    [stale] = [one for one in json.loads(printed.out)["runs"][0]["results"] if one["ruleId"] == "plan-stale"]
    assert stale["level"] == "error"
    assert "+++ plan.md (built now)" in printed.err


def test_the_hooks_call_commands_that_there_are() -> None:
    hooks = YAML(typ="safe").load((ROOT / ".pre-commit-hooks.yaml").read_text())
    assert [hook["id"] for hook in hooks] == ["hoopwright-check", "hoopwright-build-check"]
    for hook in hooks:
        program, *words = hook["entry"].split()
        assert program == "hoopwright"
        options = parser().parse_args([*words, *hook["args"]])
        assert options.specs == ["specs"]
