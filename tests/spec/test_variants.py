"""Variants are checked as whole specs: mistakes in them are told at their own place, once."""

from __future__ import annotations

import pytest

from hoopwright.source.overlay import merged
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

BASE = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in}
shape: {hem: {girth: 110 in}, line: {kind: dome, swell: 1.4}}
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 3/8 in, thickness: 0.042 in}}
variants:
  other: """


def codes(variant: str, base: str = BASE) -> list[tuple[str, tuple[str | int, ...]]]:
    document, said = read(f"{base}{variant}\n".encode(), "x.yaml")
    assert document is not None, said
    found = resolve(document)[1]
    return [(finding.code, finding.path) for finding in found if finding.severity.value == "error"]


@pytest.mark.parametrize("good", [
    "{shape: {line: {kind: cone}}}",
    "{shape: {hem: {girth: 120 in}}}",
    "{materials: {cane: {grade: rattan}}, build: {hoops: {material: cane}}}",
    "{materials: {strip: {sold: [{length: 50 ft}]}}}",
    "{load: [{name: skirt, weight: 2 kg}]}",
])
def test_a_good_variant_is_silent(good: str) -> None:
    assert codes(good) == []


@pytest.mark.parametrize(("bad", "code", "path"), [
    ("{shape: {hem: {girht: 3 in}}}", "key-unknown", ("shape", "hem", "girht")),
    ("{shape: {hem: {girth: 120}}}", "unit-missing", ("shape", "hem", "girth")),
    ("{colour: red}", "key-unknown", ("colour",)),
    ("{shape: {line: {kind: bell, swell: 2}}}", "key-unknown", ("shape", "line", "swell")),
    ("{build: {hoops: {material: stripe}}}", "material-unknown", ("build", "hoops", "material")),
    ("{build: {hem_band: {material: calico}}}", "key-missing", ("build", "hem_band")),
    ("{materials: {new: {section: {kind: round, diameter: 3 mm}}}}", "key-missing", ("materials", "new")),
])
def test_a_mistake_is_told_once_within_the_variant(bad: str, code: str, path: tuple[str, ...]) -> None:
    assert codes(bad) == [(code, ("variants", "other", *path))]


def test_a_mistake_in_the_spec_is_not_told_again_for_each_variant() -> None:
    broken = BASE.replace("waist: 28 in", "waist: 28")
    assert codes("{shape: {hem: {girth: 120 in}}}", broken) == [("unit-missing", ("wearer", "waist"))]


def test_merging_replaces_lists_and_other_kinds() -> None:
    base = {"a": {"x": 1, "y": 2}, "line": {"kind": "dome", "swell": 2}, "l": [1, 2]}
    over = {"a": {"y": 3}, "line": {"kind": "cone"}, "l": [4]}
    assert merged(base, over) == {"a": {"x": 1, "y": 3}, "line": {"kind": "cone"}, "l": [4]}
    assert merged(base, {"line": {"swell": 3}})["line"] == {"kind": "dome", "swell": 3}
