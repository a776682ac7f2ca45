"""``hoopwright bench`` as a maker meets it in the shop."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

CAGE = """
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}}
build: {hoops: {material: soft}}
load: [{name: skirt, weight: 2 kg}]
materials:
  soft:
    grade: mild steel
    section: {kind: flat, width: 8 mm, thickness: 0.8 mm}
    sold: [{length: 30 m, price: 6 EUR}]
  hard:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1.2 mm}
    sold: [{length: 30 m, price: 20 EUR}]
"""
DROOP = ["--overhang", "45 cm", "--hang", "20 nickels", "--drop", "16.3 cm"]
WRAP = ["--around", "17 cm", "--then", "springs back"]


def said(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["bench", *words]) == 0
    return capsys.readouterr().out


def test_one_test_without_a_spec(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys, "--section", "10 x 1 mm", *DROOP)
    assert "20 nickels as 100 g" in out
    assert "EI 0.17" in out
    assert "a wrap test tells them apart" in out


def test_several_tests_are_combined(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys, "--section", "10 mm x 1 mm", *DROOP, "--overhang", "40 cm", "--drop", "12 cm", *WRAP,
               "--length", "3 m", "--weight", "236 g")
    assert "the tests lie within" in out
    assert "at least up to 12" in out
    assert "78.7 g/m weighed; 78.5 g/m by section and grade" in out
    assert "likely          spring steel, tempered (stiffness, spring limit and weight fit)" in out
    assert "unlikely        mild steel (spring limit does not fit)" in out


def test_clashing_tests_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys, "--section", "10 x 1 mm", *DROOP, "--overhang", "45 cm", "--drop", "10 cm")
    assert "look again: the tests lie more than 30 % apart in stiffness" in out


def test_a_full_bottle_without_a_section(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys, "--overhang", "45 cm", "--hang", "a full half-litre bottle", "--drop", "30 cm")
    assert "a full half-litre bottle as 520 g" in out
    assert "own weight is left out" in out
    assert "without --section" in out


def test_corded_cloth(capsys: pytest.CaptureFixture[str]) -> None:
    out = said(capsys, "--form", "corded cloth", "--width", "10 cm", "--overhang", "20 cm", "--drop", "4 cm",
               "--length", "1 m", "--weight", "30 g")
    assert "for each metre of width" in out
    assert "GPa" not in out


def test_where_a_sample_will_do(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Thin to thick; the soft stock of the spec is refused with what would mend it, its price told."""
    spec = tmp_path / "cage.yaml"
    spec.write_text(CAGE)
    out = said(capsys, "--section", "10 x 1 mm", *DROOP, *WRAP, "--for", str(spec))
    table = out.partition("thin to thick:")[2].splitlines()
    names = [line.split("  ")[1].strip() for line in table if "N/m" in line]
    assert names == ["soft (the spec's)", "sample", "hard"]
    rows = {line.split("  ")[1].strip(): line for line in table if "N/m" in line}
    assert rows["sample"].endswith("stands")
    assert "stands, but" in rows["soft (the spec's)"]
    assert "6.00" in rows["soft (the spec's)"]
    assert "20.00" in rows["hard"]
    assert any("take a strip" in line or "spring steel" in line for line in table)


def test_the_stocks_of_a_folder_of_specs_are_ranked_without_a_sample(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in ("one", "two"):
        (tmp_path / f"{name}.yaml").write_text(CAGE)
    out = said(capsys, "--for", str(tmp_path))
    assert out.count("thin to thick:") == 2
    assert "Sample" not in out


@pytest.mark.parametrize(("words", "told"), [
    ([], "nothing was tested"),
    (["--overhang", "45 cm"], "one --overhang and one --drop"),
    (["--around", "66 mm"], "one --around and one --then"),
    (["--length", "1 m"], "one --length and one --weight"),
    (["--around", "66 mm", "--then", "springs back"], "needs the thickness"),
    (["--section", "10 mm", *DROOP], "is no section"),
    (["--section", "10 mm x 6 mm tube", *DROOP], "the wall fills the tube"),
    (["--overhang", "20 cm", "--hang", "a frog", "--drop", "3 cm"], "not among the everyday things"),
    (["--overhang", "20 cm", "--hang", "100 g", "--drop", "30 cm"], "droop test"),
    (["--overhang", "20 cm", "--drop", "3"], "unit"),
    (["--section", "10 x 1 mm", "--grade", "wood", *DROOP], "there is no grade `wood`"),
    (["--section", "10 x 1 mm", "--around", "20 cm", "--then", "10 cm"], "is tighter than"),
    (["--overhang", "20 cm", "--drop", "3 cm", "--hang", "1 g", "--hang", "2 g"], "--hang once"),
    (["--section", "10 x 1 mm", "--overhang", "20 cm", "--drop", "0 cm"], "above zero"),
])
def test_what_cannot_be_is_refused_with_what_to_do(
    words: list[str], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["bench", *words]) == 2
    assert told in capsys.readouterr().err


def test_a_spec_with_errors_is_told_and_the_exit_code_says_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    spec = tmp_path / "cage.yaml"
    spec.write_text(CAGE.replace("72 cm", "72"))
    assert main(["bench", "--section", "10 x 1 mm", *DROOP, "--for", str(spec)]) == 1
    assert "unit-missing" in capsys.readouterr().out
    assert main(["bench", "--section", "10 x 1 mm", *DROOP, "--for", str(tmp_path / "none.yaml")]) == 2
