"""Which files a command means, and where their plans go."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli.places import plan_folders
from hoopwright.cli.specs import gather


def _spec(path: Path, text: str = "spec: 1\n") -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)
    return path


def test_a_folder_means_every_spec_below_it_except_starters(tmp_path: Path) -> None:
    wanted = [_spec(tmp_path / "a" / "cage.yaml"), _spec(tmp_path / "b.yml", "# a comment\nspec: 1\n")]
    _spec(tmp_path / "starters" / "round.yaml")
    _spec(tmp_path / ".hidden" / "cage.yaml")
    _spec(tmp_path / "ci.yaml", "jobs: {}\n")
    specs, problems = gather([str(tmp_path)])
    assert [spec.path for spec in specs] == wanted
    assert problems == []


def test_a_file_named_twice_is_built_once(tmp_path: Path) -> None:
    path = _spec(tmp_path / "cage.yaml")
    specs, _ = gather([str(path), str(tmp_path), str(tmp_path / "." / "cage.yaml")])
    assert len(specs) == 1


def test_missing_files_and_empty_folders_are_told_and_the_rest_goes_on(tmp_path: Path) -> None:
    path = _spec(tmp_path / "good" / "cage.yaml")
    (tmp_path / "none").mkdir()
    specs, problems = gather([str(tmp_path / "nix.yaml"), str(tmp_path / "none"), str(path)])
    assert [spec.path for spec in specs] == [path]
    assert [problem.code for problem in problems] == ["file-missing", "folder-without-specs"]


def test_a_path_through_a_file_is_unreadable(tmp_path: Path) -> None:
    path = _spec(tmp_path / "cage.yaml")
    _, problems = gather([str(path / "inside.yaml")])
    assert [problem.code for problem in problems] == ["file-unreadable"]


def test_a_plan_goes_beside_its_spec_unless_others_live_there(tmp_path: Path) -> None:
    one = _spec(tmp_path / "one" / "cage.yaml")
    two = [_spec(tmp_path / "two" / "a.yaml"), _spec(tmp_path / "two" / "b.yaml")]
    specs, _ = gather([str(one), *map(str, two)])
    assert plan_folders(specs, None) == [
        one.parent,
        two[0].parent / "a",
        two[1].parent / "b",
    ]
    alone, _ = gather([str(two[0])])
    assert plan_folders(alone, None) == [two[0].parent / "a"]


def test_with_an_output_folder_several_specs_get_folders_of_their_names(tmp_path: Path) -> None:
    paths = [_spec(tmp_path / name) for name in ("x/cage.yaml", "y/cage.yaml", "z/hoop.yaml")]
    specs, _ = gather([str(path) for path in paths])
    assert plan_folders(specs, "out") == [
        Path("out/x-cage"),
        Path("out/y-cage"),
        Path("out/hoop"),
    ]
    assert plan_folders(specs[:1], "out") == [Path("out")]


def test_a_folder_of_many_specs_is_looked_through_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for number in range(9):
        _spec(tmp_path / f"{number}.yaml")
    specs, _ = gather([str(tmp_path)])
    asked, look = list[Path](), Path.iterdir
    monkeypatch.setattr(Path, "iterdir", lambda folder: (asked.append(folder), look(folder))[1])
    assert plan_folders(specs, None) == [tmp_path / str(number) for number in range(9)]
    assert asked == [tmp_path]
