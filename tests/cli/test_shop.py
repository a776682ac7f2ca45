"""``hoopwright shop``: the list on stdout, a folder of its own, and when there is no trip."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from hoopwright.cli import main

SPEC = """\
spec: 1
title: {title}
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: {hem} cm}}}}
materials:
  strip:
    grade: spring steel, tempered
    section: {{kind: flat, width: 10 mm, thickness: 1 mm}}
    sold: [{{length: 25 m, price: 44.00 EUR}}]
"""


@pytest.fixture
def two(tmp_path: Path) -> list[str]:
    names = []
    for title, hem in (("First", 280), ("Second", 260)):
        path = tmp_path / f"{title.lower()}.yaml"
        path.write_text(SPEC.format(title=title, hem=hem))
        names.append(str(path))
    return names


def test_it_prints_the_list(two: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shop", *two]) == 0
    said = capsys.readouterr().out
    assert said.startswith("# One shopping trip\n")
    assert "| **A** | First |" in said
    assert "B H1" in said


def test_it_prints_json(two: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shop", *two, "--format", "json"]) == 0
    assert json.loads(capsys.readouterr().out)["trip"] == 1


def test_it_writes_a_folder_again_without_leaving_copies(two: list[str], tmp_path: Path) -> None:
    folder = tmp_path / "trip"
    for designs in (two, two[:1]):
        assert main(["shop", *designs, "-o", str(folder)]) == 0
    found = sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())
    assert found == ["figures/coils.svg", "shopping.json", "shopping.md"]


def test_it_does_not_write_over_a_plan(two: list[str], tmp_path: Path) -> None:
    (tmp_path / "plan.md").write_text("mine")
    assert main(["shop", *two, "-o", str(tmp_path)]) == 2
    assert not (tmp_path / "shopping.md").exists()


def test_a_design_that_cannot_be_planned_means_no_trip(
    two: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    Path(two[1]).write_text("spec: 1\nunits: centimetres\n")
    assert main(["shop", *two, "-o", str(tmp_path / "trip")]) == 1
    assert not (tmp_path / "trip").exists()
    assert "no shopping list" in capsys.readouterr().err


@pytest.mark.parametrize("ticked", [False, True], ids=["as made", "ticked by hand"])
def test_a_plan_is_not_built_over_a_shopping_trip(
    two: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str], ticked: bool
) -> None:
    folder = tmp_path / "trip"
    assert main(["shop", *two, "-o", str(folder)]) == 0
    if ticked:
        page = folder / "shopping.md"
        page.write_text(page.read_text().replace("# One", "# Our", 1))
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    assert main(["build", two[0], "-o", str(folder)]) == 2
    assert "a shopping trip stands here; name a folder of the plan's own with -o" in capsys.readouterr().err
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before


def test_a_plan_is_built_beside_a_list_of_the_makers_own(two: list[str], tmp_path: Path) -> None:
    folder = tmp_path / "own"
    folder.mkdir()
    (folder / "shopping.md").write_text("tape, thread\n")
    assert main(["build", two[0], "-o", str(folder)]) == 0
    assert (folder / "shopping.md").read_text() == "tape, thread\n"
