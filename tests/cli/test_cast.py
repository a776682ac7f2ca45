"""Casts, bodies and variants on disk: what is built, where it goes, and what may not be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main
from hoopwright.cli.include import project_of

CAGE = """\
spec: 1
units: centimetres
wearer: {from: ../bodies/hand.yaml}
shape: {hem: {girth: 2.8 m}, hoops: {count: 4}}
variants: {wide: {shape: {hem: {girth: 3 m}}}, cone: {shape: {line: {kind: cone}}}}
"""
HAND = "body: 1\nwearer: {stature: 168 cm, waist: 72 cm}\n"


@pytest.fixture
def project(tmp_path: Path) -> Path:
    top = tmp_path / "project"
    for folder in ("designs", "bodies", ".git"):
        (top / folder).mkdir(parents=True)
    (top / "designs" / "cage.yaml").write_text(CAGE)
    (top / "bodies" / "hand.yaml").write_text(HAND)
    (top / "bodies" / "second.yaml").write_text(HAND.replace("72", "80"))
    return top


def plans(folder: Path) -> list[str]:
    return sorted(path.parent.relative_to(folder).as_posix() for path in folder.rglob("plan.md"))


def test_a_cast_builds_every_combination(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (project / "cast.yaml").write_text(
        "cast:\n  - {spec: designs/cage.yaml, wearer: [bodies/hand.yaml, bodies/second.yaml],"
        " variant: [wide, cone]}\n  - {spec: designs/cage.yaml, title: Understudy}\n")
    assert main(["build", str(project / "cast.yaml")]) == 0, capsys.readouterr().out
    assert plans(project) == ["cast/cage-hand-cone", "cast/cage-hand-wide", "cast/cage-second-cone",
                              "cast/cage-second-wide", "cast/understudy"]
    assert (project / "cast" / "understudy" / "plan.md").read_text().startswith("# Understudy\n")
    assert main(["build", "--check", str(project)]) == 1  # the design itself has no plan yet
    assert main(["build", str(project)]) == 0
    assert main(["build", "--check", str(project)]) == 0


@pytest.mark.parametrize(("cast", "code", "place"), [
    ("cast: []\n", "value-wrong-type", "1:1"),
    ("cast:\n  - {spec: designs/cage.yaml, wearers: x}\n", "key-unknown", "2:31"),
    ("cast:\n  - {wearer: bodies/hand.yaml}\n", "key-missing", "2:5"),
    ("cast:\n  - {spec: designs/cag.yaml}\n", "file-missing", "2:12"),
    ("cast:\n  - {spec: designs/cage.yaml, variant: wid}\n", "variant-unknown", "2:40"),
    ("cast:\n  - {spec: designs/cage.yaml, wearer: ../../hand.yaml}\n", "path-outside-project", "2:39"),
    ("cast:\n  - {spec: designs/cage.yaml, wearer: designs/cage.yaml}\n", "wearer-file-is-spec", "2:39"),
    ("cast:\n  - {spec: designs/cage.yaml, regrade: both}\n", "value-unknown", "2:40"),
])
def test_a_mistake_in_a_cast_is_told_at_its_place(
    project: Path, capsys: pytest.CaptureFixture[str], cast: str, code: str, place: str
) -> None:
    path = project / "cast.yaml"
    path.write_text(cast)
    assert main(["check", "--syntax", "--format", "short", str(path)]) == 1
    assert f"{path.as_posix()}:{place}: {code} " in capsys.readouterr().out


def test_a_variant_gets_a_folder_of_its_own(project: Path) -> None:
    spec = str(project / "designs" / "cage.yaml")
    assert main(["build", spec, "--variant", "wide"]) == 0
    assert plans(project) == ["designs/wide"]
    assert main(["build", spec, "--variant", "cone", "-o", str(project / "out")]) == 0
    assert plans(project) == ["designs/wide", "out"]


def test_no_file_outside_the_project_is_read(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (project.parent / "secret.yaml").write_text("body: 1\nwearer: {waist: hidden words}\n")
    (project / "bodies" / "link.yaml").symlink_to(project.parent / "secret.yaml")
    spec = project / "designs" / "cage.yaml"
    for name in ("../../secret.yaml", "../bodies/link.yaml", str(project.parent / "secret.yaml")):
        spec.write_text(CAGE.replace("../bodies/hand.yaml", name))
        assert main(["check", "--syntax", str(spec)]) == 1
        printed = capsys.readouterr().out
        assert "path-outside-project" in printed
        assert "hidden words" not in printed


def test_a_body_that_is_a_folder_or_missing_is_told(
    project: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    spec = project / "designs" / "cage.yaml"
    for name, code in (("../bodies", "file-unreadable"), ("../bodies/hnd.yaml", "file-missing")):
        spec.write_text(CAGE.replace("../bodies/hand.yaml", name))
        assert main(["check", "--syntax", "--format", "short", str(spec)]) == 1
        assert f"cage.yaml:3:16: {code} " in capsys.readouterr().out


def test_the_project_is_the_folder_of_git_else_the_one_above_the_specs_own(tmp_path: Path) -> None:
    spec = tmp_path / "a" / "b" / "cage.yaml"
    spec.parent.mkdir(parents=True)
    assert project_of(spec) == (tmp_path / "a").resolve() or (tmp_path / ".git").exists()
    (tmp_path / ".git").mkdir()
    assert project_of(spec) == tmp_path.resolve()
