"""``hoopwright diff`` as it is called: files, variants, a revision on stdin, and its exit codes."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from hoopwright.cli import main

CAGE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 4}}
variants: {wide: {shape: {hem: {girth: 3 m}}}, cone: {shape: {line: {kind: cone}}}}
"""


@pytest.fixture
def cage(tmp_path: Path) -> Path:
    path = tmp_path / "cage.yaml"
    path.write_text(CAGE)
    return path


def said(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["diff", *arguments]) == 0
    return capsys.readouterr().out


def test_a_variant_against_its_spec_and_against_another(
    cage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    alone = said(capsys, str(cage), "--variant", "wide")
    assert "280 cm -> 300 cm" in alone
    assert f"{cage} (cone) -> {cage} (wide)" in said(
        capsys, str(cage), "--variant", "cone", "--variant", "wide")


def test_two_files_and_the_same_file_twice(cage: Path, tmp_path: Path,
                                           capsys: pytest.CaptureFixture[str]) -> None:
    other = tmp_path / "other.yaml"
    other.write_text(CAGE.replace("2.8 m", "290 cm"))
    assert "280 cm -> 290 cm" in said(capsys, str(cage), str(other))
    assert json.loads(said(capsys, "--format", "json", str(cage), str(cage)))["changes"] == []


def test_one_file_under_two_names(cage: Path, monkeypatch: pytest.MonkeyPatch,
                                  capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(cage.parent)
    (cage.parent / "link.yaml").symlink_to(cage)
    for other in ("./sub/../cage.yaml", "link.yaml", str(cage)):
        (cage.parent / "sub").mkdir(exist_ok=True)
        assert json.loads(said(capsys, "--format", "json", "cage.yaml", other))["changes"] == []
    assert "280 cm -> 300 cm" in said(capsys, "cage.yaml", "link.yaml", "--variant", "cone", "--variant", "wide")


def test_a_revision_from_stdin(cage: Path) -> None:
    run = subprocess.run([sys.executable, "-m", "hoopwright", "diff", "-", str(cage), "--format", "markdown"],
                         input=CAGE.replace("2.8 m", "2.6 m"), capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stderr
    assert run.stdout.startswith("**stdin → ")
    assert "| hem girth | 260 cm | 280 cm |" in run.stdout


@pytest.mark.parametrize("arguments", [
    ["CAGE"], ["-"], ["-", "-"], ["CAGE", "CAGE", "CAGE"], ["nothing.yaml", "CAGE"],
    ["CAGE", "--variant", "a", "--variant", "b", "--variant", "c"],
])
def test_wrong_use(cage: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["diff", *(str(cage) if word == "CAGE" else word for word in arguments)]) == 2
    printed = capsys.readouterr()
    assert printed.err or printed.out


def test_a_spec_that_does_not_compile_is_told(cage: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["diff", str(cage), "--variant", "wid"]) == 1
    assert "variant-unknown" in capsys.readouterr().out


def test_a_stock_is_told_as_the_maker_wrote_it_and_compared_by_size(
    cage: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    strip = ("build: {hoops: {material: strip}}\nmaterials: {strip: {grade: 'spring steel, tempered',"
             " section: {kind: flat, width: 10 mm, thickness: 1 mm}}}\nvariants:\n"
             "  thin: {materials: {strip: {section: {kind: flat, width: 1 cm, thickness: 0.8 mm}}}}\n")
    cage.write_text(CAGE[:CAGE.index("variants")] + strip)
    told = said(capsys, str(cage), "--variant", "thin")
    assert "stock's thickness  1 mm -> 0.8 mm" in told
    assert "stock's width" not in told
