"""Plans are written whole or not at all, and nobody's changes are lost."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from hoopwright.cli.output import Refused, differences, intact, put, seal

OLD = {
    "plan.md": "# old\n",
    "plan.json": '{\n  "plan": 1,\n "title": "old"\n}\n',
    "figures/front.svg": "<svg/>\n",
}
NEW = {
    "plan.md": "# new\n",
    "plan.json": '{\n  "plan": 1,\n "title": "new"\n}\n',
    "figures/hem.svg": "<svg id='h'/>\n",
}


def _state(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def _sealed(files: dict[str, str]) -> dict[str, str]:
    return {name: seal(name, text) for name, text in files.items()}


def test_writes_every_file_and_leaves_no_trace(tmp_path: Path) -> None:
    assert put(tmp_path / "a" / "b", OLD) == []
    assert _state(tmp_path / "a" / "b") == _sealed(OLD)


def test_a_new_plan_takes_away_figures_it_no_longer_has(tmp_path: Path) -> None:
    put(tmp_path, OLD)
    put(tmp_path, NEW)
    assert _state(tmp_path) == _sealed(NEW)


def test_a_figure_of_the_makers_own_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "figures").mkdir()
    (tmp_path / "figures" / "photo.svg").write_text("<svg>mine</svg>")
    put(tmp_path, NEW)
    assert (tmp_path / "figures" / "photo.svg").read_text() == "<svg>mine</svg>"


def test_ticks_made_by_hand_are_kept_beside_the_new_plan(tmp_path: Path) -> None:
    put(tmp_path, OLD)
    ticked = (tmp_path / "plan.md").read_text().replace("old", "old, ticked")
    (tmp_path / "plan.md").write_text(ticked)
    kept = put(tmp_path, NEW)
    assert kept == [tmp_path / "plan.yours-1.md"]
    assert kept[0].read_text() == ticked
    (tmp_path / "plan.md").write_text("again")
    assert put(tmp_path, OLD) == [tmp_path / "plan.yours-2.md"]


def test_building_twice_touches_nothing(tmp_path: Path) -> None:
    put(tmp_path, OLD)
    before = {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")}
    put(tmp_path, OLD)
    assert {path: path.stat().st_mtime_ns for path in tmp_path.rglob("*")} == before


def test_an_output_folder_that_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("mine")
    with pytest.raises(Refused, match="a file, not a folder"):
        put(tmp_path / "out", NEW)
    assert (tmp_path / "out").read_text() == "mine"


def test_differences_name_changed_missing_and_stale_files(tmp_path: Path) -> None:
    assert "+# old" in differences(tmp_path, OLD)
    put(tmp_path, OLD)
    assert differences(tmp_path, OLD) == ""
    before = os.listdir(tmp_path)
    text = differences(tmp_path, NEW)
    assert "-# old" in text
    assert "figures/front.svg (on disk)" in text
    assert os.listdir(tmp_path) == before


def test_a_seal_tells_a_changed_text(tmp_path: Path) -> None:
    sealed = seal("plan.md", "# plan\n")
    assert intact("plan.md", sealed)
    assert not intact("plan.md", sealed.replace("plan", "plum", 1))
    assert not intact("plan.md", "# plan\n")


@pytest.mark.parametrize("name", ["plan.json", "shopping.json"])
def test_a_seal_in_json_is_its_last_key(name: str) -> None:
    sealed = seal(name, '{\n  "plan": 1,\n  "title": "old"\n}\n')
    assert list(json.loads(sealed)) == ["plan", "title", "sum"]
    assert intact(name, sealed)
    assert intact(name, sealed.replace("\n", "\r\n"))
    assert not intact(name, sealed.replace("old", "new"))
    assert not intact(name, json.dumps(json.loads(sealed)))


def test_two_builds_into_one_folder_leave_one_whole_plan(tmp_path: Path) -> None:
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda number: put(tmp_path, OLD if number % 2 else NEW), range(40)))
    assert _state(tmp_path) in (_sealed(OLD), _sealed(NEW))
