"""What a maker may get wrong in a design, by the command itself: exit 1, a clear finding, nothing written."""

from __future__ import annotations

from pathlib import Path

import pytest

from hoopwright.cli import main

ROOT = Path(__file__).resolve().parents[2]
CAGE = (ROOT / "specs" / "harbour-play" / "cage.yaml").read_text()
FIVE = "spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\nshape: {hem: {girth: 2.8 m}}\n"
HEM = "hem: {girth: 2.8 m}"
COILS = "[{length: 50 ft, price: 19.00 USD}, {length: 100 ft, price: 33.00 USD}]"
TOOLS = "[bolt cutters, file, soldering iron, clamps, sewing machine]"
BOMB = "a: &a [x, x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"{new}: &{new} [{', '.join(['*' + old] * 10)}]\n" for old, new in zip("abcdef", "bcdefg", strict=True)
)


def five(old: str, new: str) -> str:
    assert old in FIVE
    return FIVE.replace(old, new)


def cage(old: str, new: str) -> str:
    assert old in CAGE
    return CAGE.replace(old, new)


def tapes(count: int, more: str = "") -> str:
    return FIVE + f"build: {{tapes: {{count: {count}{more}}}}}\n"


BAD = {
    "missing unit": (five("72 cm", "72"), "unit-missing", "`72 in` or `72 cm`"),
    "unknown unit": (five("72 cm", "72 furlong"), "unit-unknown", "mm, cm, m, in, ft or yd"),
    "negative length": (five("2.8 m", "-2.8 m"), "amount-not-positive", "above zero"),
    "zero length": (five("2.8 m", "0 m"), "amount-not-positive", "above zero"),
    "no number": (five("2.8 m", ".nan"), "number-not-finite", "a number and its unit"),
    "infinity": (five("2.8 m", ".inf"), "number-not-finite", "a number and its unit"),
    "beyond floats": (five("2.8 m", "1e400 m"), "number-not-finite", "too large"),
    "unknown key": (five("girth", "girht"), "key-unknown", "`girth`"),
    "unknown material": (cage("material: strip,", "material: stirp,"), "material-unknown", "`strip`"),
    "duplicate key": (FIVE + "units: inches\n", "duplicate-key", "the first one is here"),
    "hem below waist": (five("2.8 m", "60 cm"), "hem-not-wider", "check both girths"),
    "too many hoops": (five(HEM, HEM + ", hoops: {count: 150}"), "hoops-do-not-fit", "or fewer"),
    "top below hem": (five(HEM, HEM + ", top_hoop: {below_waist: 1.2 m}"), "top-hoop-below-hem", "off_floor"),
    "wide gap": (tapes(6, ", front_gap: 80 cm"), "front-gap-too-wide", "the waist"),
    "no tape": (tapes(0), "tapes-too-few", "at least 3"),
    "one tape": (tapes(1), "tapes-too-few", "at least 3"),
    "two tapes": (tapes(2), "tapes-too-few", "at least 3"),
    "sixty tapes": (tapes(60), "tapes-too-many", "at most 24"),
    "no currency": (cage("6.50 USD", "6.50"), "currency-missing", "three-letter code"),
    "two currencies": (cage("6.50 USD", "6.50 EUR"), "currency-mixed", "keep to one currency"),
    "short packs": (cage(COILS, "[{length: 8 ft, price: 4.00 USD}]"), "pack-too-short", "9 ft 3 in"),
    "missing tool": (cage(TOOLS, "[bolt cutters, file]"), "tool-missing", "`lap bound`"),
    "alias bomb": (BOMB, "too-many-values", "repeated by `*`"),
    "three hundred deep": (FIVE + "title: " + "[" * 300 + "]" * 300, "nesting-too-deep", "50 deep"),
    "directive": ("%YAML 1.1\n---\n" + FIVE, "yaml-directive", "YAML 1.2"),
    "tag": (FIVE + "title: !!python/object/apply:os.system ['true']\n", "yaml-tag", "delete the tag"),
    "tab": (five("units:", "\tunits:"), "tab", "write spaces"),
    "empty": ("", "file-empty", "hoopwright new"),
}


@pytest.mark.parametrize("name", BAD)
def test_a_bad_design_exits_1_says_what_mends_it_and_writes_nothing(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text, code, mend = BAD[name]
    path = tmp_path / "cage.yaml"
    path.write_text(text)
    assert main(["build", str(path)]) == 1
    printed = capsys.readouterr()
    assert f"error {code} at {path}" in printed.out
    assert mend in printed.out
    assert printed.out.count("\nerror ") + printed.out.startswith("error ") == 1, "one cause, one error"
    assert "nothing written" in printed.err
    assert [left.name for left in tmp_path.iterdir()] == ["cage.yaml"]


def test_waist_heights_that_do_not_fit_the_stature_still_build(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "cage.yaml"
    path.write_text(five("72 cm}", "72 cm, waist_height: {front: 1.5 m, side: 1.5 m, back: 1.5 m}}"))
    assert main(["build", str(path)]) == 0
    assert "warning waist-height-unlikely" in capsys.readouterr().out
    assert (tmp_path / "plan.md").exists()


def test_a_cage_heavier_than_its_limit_is_said_at_the_top_of_its_plan(tmp_path: Path) -> None:
    path = tmp_path / "cage.yaml"
    path.write_text(FIVE + "limits: {weight: 100 g}\n")
    assert main(["build", str(path)]) == 1
    top = (tmp_path / "plan.md").read_text().split("## At a glance")[0]
    assert "Does not pass yet" in top
    assert "wanted at most 100 g" in top
