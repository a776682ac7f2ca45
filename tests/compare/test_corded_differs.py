"""What a corded sample changes: diff tells cord, rows and cut lengths, and what of the cut cord still serves."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

SPEC = Path(__file__).parents[2] / "specs" / "quay-market" / "petticoat.yaml"


def told(path: Path, capsys: pytest.CaptureFixture[str], variant: str = "sampled") -> str:
    assert main(["diff", str(path), "--variant", variant]) == 0
    return capsys.readouterr().out


def test_a_sample_changes_cut_lengths_and_the_result(capsys: pytest.CaptureFixture[str]) -> None:
    said = told(SPEC, capsys)
    for words in ("cord to cut", "breadth cut long", "row of cord", "bending length", "not assessed -> marginal"):
        assert words in said
    assert "lowest row" not in said


def test_one_more_cord_is_told_by_its_group(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "petticoat.yaml"
    groups = "[{cords: 17}, {cords: 12, gap: 1 in}, {cords: 8, gap: 2 in}]"
    text = SPEC.read_text() + f"  fuller: {{build: {{cords: {{groups: {groups}}}}}}}\n"
    path.write_text(text)
    said = told(path, capsys, "fuller")
    assert "rows of cord" in said
    assert "group 1" in said
    assert "42 -> 37" in said


def test_cord_that_is_cut_serves_by_its_reserve(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "petticoat.yaml"
    done = "progress: {done: [wash, press, sew-sample, starch-sample, test-sample, cut-breadths, cut-cords]}\n"
    path.write_text(SPEC.read_text().replace("variants:\n", done + "variants:\n"))
    said = told(path, capsys)
    assert "cut-breadths" in said.split("Done work that no longer holds")[1]
    assert "serves nowhere" not in said
