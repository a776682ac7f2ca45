"""Mistakes in fittings, progress, variants and bodies, as ``check`` tells them: code, place, and what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

CAGE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 4}}
"""
BODY = "body: 1\nwearer: "
CASES = {
    "a fitting of an unknown tape": (
        "fittings: [{on: 2027-03-02, hem_height: {T9: 20 cm}}]", "5:42: fitting-part-unknown", "`T6`"),
    "a fitting on no date": (
        "fittings: [{on: 2027-13-02, hem_height: {T1: 9 cm}}]", "5:17: fitting-date", "hyphens"),
    "fittings out of order": (
        "fittings: [{on: 2027-03-09, waist: 72 cm}, {on: 2027-03-02, waist: 72 cm}]", "5:49: fitting-order",
        "in the order they were held"),
    "a hem above the waist": (
        "fittings: [{on: 2027-03-02, hem_height: {T1: 150 cm}}]", "5:46: height-above-waist", "from the floor up"),
    "a done task that is none": ("progress: {done: [pres]}", "5:19: task-unknown", "`press`"),
    "a done task that an edit took away": ("progress: {done: [cut-H5]}", "5:19: task-gone", "progress.cut"),
    "a piece that an edit made useless": (
        "progress: {done: [cut-H4], cut: {H4: 2.5 m}}", "5:34: cut-no-longer-fits", "make H2 of it"),
    "a variant that changes nothing": (
        "variants: {same: {shape: {hem: {girth: 280 cm}}}}", "5:12: variant-changes-nothing", "delete it"),
    "a variant with an unknown key": (
        "variants: {odd: {shape: {hem: {girht: 3 m}}}}", "5:32: key-unknown", "`girth`"),
}
BODIES = {
    "a wearer file that is a spec": ("whole.yaml", "designs/cage.yaml:3:16: wearer-file-is-spec", "body: 1"),
    "a wearer file outside the project": (
        "../../out.yaml", "designs/cage.yaml:3:16: path-outside-project", "below the folder `project`"),
    "wearer files that go in a circle": ("one.yaml", "designs/two.yaml:2:16: include-cycle", "hold the measures"),
    "a wearer file that is not there": ("on.yaml", "designs/cage.yaml:3:16: file-missing", ""),
}
FAILING = {"task-gone": 0, "cut-no-longer-fits": 0, "variant-changes-nothing": 0}
"""Exit codes of what only warns; everything else is an error."""


def told(path: Path, place: str, remedy: str, capsys: pytest.CaptureFixture[str]) -> None:
    code = place.split(": ")[1]
    assert main(["check", str(path), "--format", "short"]) == FAILING.get(code, 1)
    assert f"{place} " in capsys.readouterr().out
    main(["check", str(path)])
    said = capsys.readouterr().out.split(f" {code} at ")[1].split("\n\n")[0]
    assert "help: " in said
    assert remedy in said.split("help: ")[1]
    assert "^" in said


@pytest.mark.parametrize("case", CASES)
def test_a_mistake_in_a_record_is_told_with_place_and_remedy(
    case: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    written, place, remedy = CASES[case]
    path = tmp_path / "cage.yaml"
    path.write_text(f"{CAGE}{written}\n")
    told(path, f"cage.yaml:{place}", remedy, capsys)


@pytest.mark.parametrize("case", BODIES)
def test_a_mistake_in_a_body_is_told_with_place_and_remedy(
    case: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name, place, remedy = BODIES[case]
    folder = tmp_path / "project" / "designs"
    (tmp_path / "project" / ".git").mkdir(parents=True)
    folder.mkdir()
    (tmp_path / "out.yaml").write_text(f"{BODY}{{stature: 168 cm, waist: 72 cm}}\n")
    (folder / "whole.yaml").write_text(CAGE)
    (folder / "one.yaml").write_text(f"{BODY}{{from: two.yaml}}\n")
    (folder / "two.yaml").write_text(f"{BODY}{{from: one.yaml}}\n")
    path = folder / "cage.yaml"
    path.write_text(CAGE.replace("{stature: 168 cm, waist: 72 cm}", f"{{from: {name}}}"))
    told(path, place, remedy, capsys)
