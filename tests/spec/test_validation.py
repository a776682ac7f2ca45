"""Mistakes of form: one finding for each cause, at the key or value, with the mend."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from hoopwright.source.diagnostic import Finding, failed
from hoopwright.source.read import Document
from hoopwright.spec.checking.validate import validate
from hoopwright.spec.reading.node import dotted_paths
from hoopwright.spec.resolve import resolve

BASE: dict[str, Any] = {
    "spec": 1,
    "units": "inches",
    "wearer": {"stature": "67 in", "waist": "28 in", "hip": "40 in",
               "waist_height": {"front": "41 in", "side": "41 1/2 in", "back": "41 in"}},
    "shape": {"line": {"kind": "dome", "swell": 1.3}, "hem": {"girth": "110 in", "off_floor": "7 in"},
              "hoops": {"count": 7, "spacing": "by tape"}},
    "build": {"hoops": {"material": "strip", "join": "lap soldered"},
              "tapes": {"count": 6, "front_gap": "7 in"},
              "hem_band": {"depth": "9 in", "material": "calico"}},
    "load": [{"name": "over-skirt", "weight": "1.9 kg"},
             {"name": "petticoat", "material": "calico", "area": "4 yd2"}],
    "materials": {
        "strip": {"grade": "spring steel, tempered",
                  "section": {"kind": "flat", "width": "3/8 in", "thickness": "0.042 in"},
                  "bench": [{"test": "wrap", "around": "6 in", "result": "springs back"}],
                  "sold": [{"length": "50 ft", "price": "19.00 USD"}], "on_hand": ["14 ft"]},
        "calico": {"kind": "cloth", "weight": "140 g/m2", "sold": [{"per": "1 yd", "price": "4.20 USD"}]}},
    "limits": {"budget": "85 USD"},
    "workshop": {"tools": ["soldering iron", "file", "clamps"]},
    "variants": {"wide": {"shape": {"hem": {"girth": "130 in"}}}},
}
PATHS = [path for path in dotted_paths(BASE) if path[0] != "variants"]


def with_value(path: tuple[str | int, ...], value: object) -> dict[str, Any]:
    """The base spec with one value replaced."""
    spec = copy.deepcopy(BASE)
    node: Any = spec
    for key in path[:-1]:
        node = node[key]
    node[path[-1]] = value
    return spec


def without(path: tuple[str | int, ...]) -> dict[str, Any]:
    spec = copy.deepcopy(BASE)
    node: Any = spec
    for key in path[:-1]:
        node = node[key]
    del node[path[-1]]
    return spec


def findings(value: dict[str, Any]) -> tuple[Finding, ...]:
    return resolve(Document("x.yaml", "", value, {}, {}))[1]


def errors(value: dict[str, Any]) -> list[tuple[str, tuple[str | int, ...]]]:
    return [(finding.code, finding.path) for finding in findings(value) if finding.severity.value == "error"]


def test_the_base_is_well_formed() -> None:
    assert validate(BASE) == ()
    assert errors(BASE) == []


def test_an_unknown_key_is_told_at_the_key_with_the_nearest_name() -> None:
    [wrong] = validate(with_value(("shape", "hem", "of_floor"), "7 in"))
    assert (wrong.code, wrong.path, wrong.at_key) == ("key-unknown", ("shape", "hem", "of_floor"), True)
    assert wrong.help == "a key with a similar name exists: `off_floor`"


def test_a_key_on_the_wrong_level_is_told_where_it_goes() -> None:
    [wrong] = validate(with_value(("hem",), {"girth": "110 in"}))
    assert wrong.code == "key-unknown"
    assert "`shape`" in wrong.help


def test_each_unknown_key_is_its_own_finding() -> None:
    spec = with_value(("colour",), "red")
    spec["shape"]["colour"] = "red"
    spec["wearer"]["colour"] = "red"
    assert sorted((f.code, f.path) for f in validate(spec)) == [
        ("key-unknown", ("colour",)), ("key-unknown", ("shape", "colour")),
        ("key-unknown", ("wearer", "colour"))]


def test_a_misspelt_key_is_not_also_missing() -> None:
    spec = without(("shape", "hem", "girth"))
    spec["shape"]["hem"]["girht"] = "110 in"
    assert errors(spec) == [("key-unknown", ("shape", "hem", "girht"))]


@pytest.mark.parametrize("path", [("units",), ("wearer", "waist"), ("shape", "hem", "girth"),
                                  ("shape", "hem"), ("build", "hem_band", "depth"), ("load", 0, "name"),
                                  ("materials", "strip", "section", "width")])
def test_a_missing_key_is_told_at_what_lacks_it(path: tuple[str | int, ...]) -> None:
    assert errors(without(path)) == [("key-missing", path[:-1])]


def test_a_bare_number_is_a_missing_unit_not_a_wrong_type() -> None:
    [wrong] = findings(with_value(("wearer", "waist"), 28))
    assert (wrong.code, wrong.path) == ("unit-missing", ("wearer", "waist"))
    assert "`28 in` or `28 cm`" in wrong.help


def test_an_unknown_kind_gives_no_trouble_with_the_other_kinds() -> None:
    [wrong] = validate(with_value(("shape", "line"), {"kind": "dme", "swell": 1.3, "exponent": 2}))
    assert (wrong.code, wrong.path) == ("value-unknown", ("shape", "line", "kind"))
    assert wrong.help.startswith("the nearest is `dome`")


def test_only_the_branch_that_was_meant_speaks() -> None:
    assert errors(with_value(("shape", "line"), {"kind": "cone", "swell": 1.3})) == [
        ("key-unknown", ("shape", "line", "swell"))]
    assert errors(with_value(("materials", "strip", "sold", 0), {"per": "1 ft", "count": 3})) == [
        ("key-unknown", ("materials", "strip", "sold", 0, "count"))]


def test_an_empty_value_is_told_as_such() -> None:
    for path in (("shape", "hem", "girth"), ("units",), ("materials",), ("load",)):
        [(code, place)] = errors(with_value(path, None))
        assert (code, place) == ("value-wrong-type", path)


def test_a_later_version_is_the_only_thing_told() -> None:
    spec = with_value(("spec",), 2)
    spec["colour"] = 3
    assert [finding.code for finding in findings(spec)] == ["spec-version"]


def test_several_mistakes_are_told_in_one_run() -> None:
    spec = with_value(("wearer", "waist"), 28)
    spec["shape"]["hem"]["of_floor"] = "7 in"
    spec["build"]["tapes"]["material"] = "twil"
    spec["limits"]["budget"] = "85 EUR"
    spec["workshop"]["helper"] = "yes"
    assert sorted(code for code, _ in errors(spec)) == [
        "currency-mixed", "key-unknown", "material-unknown", "unit-missing", "value-wrong-type"]


def test_a_malformed_material_is_not_also_unknown_or_of_the_wrong_kind() -> None:
    assert errors(with_value(("materials", "calico"), {"kind": "clth"})) == [
        ("value-unknown", ("materials", "calico", "kind"))]
    assert errors(with_value(("materials",), 3)) == [("value-wrong-type", ("materials",))]
    spec = without(("materials",))
    spec["materails"] = BASE["materials"]
    assert errors(spec) == [("key-unknown", ("materails",))]


def test_a_title_is_any_text() -> None:
    assert errors(with_value(("title",), "# {{ 7*7 }} <script>alert(1)</script> `x` ```mermaid")) == []


JUNK = st.one_of(
    st.none(), st.booleans(), st.integers(-3, 10**30), st.floats(allow_nan=False, allow_infinity=False),
    st.text(max_size=12),
    st.sampled_from(["5 in", "0 in", "-3 in", "12 %", "none", "twill", "strip", "1e400 m"]),
    st.lists(st.sampled_from(["5 in", 3, None]), max_size=2),
    st.dictionaries(st.sampled_from(["kind", "grade", "length", "x"]), st.sampled_from(["cloth", 1]),
                    max_size=2))


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(PATHS), JUNK)
def test_nonsense_anywhere_gives_findings_or_a_spec(path: tuple[str | int, ...], junk: object) -> None:
    spec, found = resolve(Document("x.yaml", "", with_value(path, junk), {}, {}))
    assert (spec is None) == failed(found)
    assert sum(finding.severity.value == "error" for finding in found) <= 4


@settings(max_examples=60, deadline=None)
@given(st.dictionaries(st.text(max_size=8), JUNK, max_size=4))
def test_any_mapping_gives_findings(value: dict[str, Any]) -> None:
    spec, found = resolve(Document("x.yaml", "", value, {}, {}))
    assert spec is None
    assert failed(found)
