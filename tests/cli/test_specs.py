"""Which files a command means, and where their plans go."""

from __future__ import annotations

from pathlib import Path

from hoopwright.cli.specs import gather, plan_folder


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
    assert [plan_folder(spec, None, specs) for spec in specs] == [
        one.parent,
        two[0].parent / "a",
        two[1].parent / "b",
    ]
    alone, _ = gather([str(two[0])])
    assert plan_folder(alone[0], None, alone) == two[0].parent / "a"


def test_with_an_output_folder_several_specs_get_folders_of_their_names(tmp_path: Path) -> None:
    paths = [_spec(tmp_path / name) for name in ("x/cage.yaml", "y/cage.yaml", "z/hoop.yaml")]
    specs, _ = gather([str(path) for path in paths])
    assert [plan_folder(spec, "out", specs) for spec in specs] == [
        Path("out/x-cage"),
        Path("out/y-cage"),
        Path("out/hoop"),
    ]
    assert plan_folder(specs[0], "out", specs[:1]) == Path("out")
