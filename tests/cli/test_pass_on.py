"""``build --cards`` and ``build --units``: what is passed on is written, kept and checked like the plan."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from hoopwright.cli import main

SPEC = """\
spec: 1
title: Lamp <dress> & all
units: inches
wearer: {name: Second lady, stature: 5 ft 7 in, waist: 28 in}
shape: {hem: {girth: 110 in}}
"""
MADE = {"cards.md", "wearing.md", "pass-on.html"}


@pytest.fixture
def spec(tmp_path: Path) -> Path:
    path = tmp_path / "cage.yaml"
    path.write_text(SPEC)
    return path


def test_cards_are_written_only_when_asked_for(spec: Path) -> None:
    assert main(["build", str(spec)]) == 0
    assert not MADE & {path.name for path in spec.parent.iterdir()}
    assert main(["build", str(spec), "--cards"]) == 0
    assert {path.name for path in spec.parent.iterdir()} >= MADE


def test_the_check_covers_them_when_asked_for(spec: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["build", str(spec), "--cards"]) == 0
    assert main(["build", str(spec), "--cards", "--check"]) == 0
    (spec.parent / "cards.md").write_text("gone")
    assert main(["build", str(spec), "--check"]) == 0
    capsys.readouterr()
    assert main(["build", str(spec), "--cards", "--check"]) == 1
    assert "cards.md" in capsys.readouterr().out


def test_a_card_changed_by_hand_is_kept_beside_the_new_one(spec: Path) -> None:
    assert main(["build", str(spec), "--cards"]) == 0
    (spec.parent / "cards.md").write_text("my notes")
    assert main(["build", str(spec), "--cards"]) == 0
    assert (spec.parent / "cards.yours-1.md").read_text() == "my notes"


def test_other_units_print_the_same_design(spec: Path, tmp_path: Path) -> None:
    assert main(["build", str(spec), "-o", str(tmp_path / "as")]) == 0
    assert main(["build", str(spec), "--units", "centimetres", "-o", str(tmp_path / "cm")]) == 0
    inches, metric = ((tmp_path / name / "plan.md").read_text() for name in ("as", "cm"))
    assert "279.4 cm" in metric
    assert "110 in" in inches
    chapter = metric.split("## Steps")[1].split("# Annex")[0]
    assert not re.search(r"\d in\b", re.sub(r"\(.*?\)", "", chapter.split("Take care")[0]))
    first, second = (json.loads((tmp_path / name / "plan.json").read_text()) for name in ("as", "cm"))
    assert (first.pop("units"), second.pop("units")) == ("inches", "centimetres")
    assert first["hoops"] == second["hoops"]
    assert first["tapes"] == second["tapes"]
    assert first["tasks"] == second["tasks"]


def test_the_specs_own_units_change_nothing(spec: Path, tmp_path: Path) -> None:
    for folder, more in (("a", []), ("b", ["--units", "inches"])):
        assert main(["build", str(spec), "-o", str(tmp_path / folder), *more]) == 0
    assert (tmp_path / "a" / "plan.md").read_text() == (tmp_path / "b" / "plan.md").read_text()
