"""A spec and a choice joined to one document: variants, bodies from files, proportions; findings where things
were written."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.compile import Compiled, compile_spec
from hoopwright.source.fetch import Fetched, Unread
from hoopwright.source.overlay import merged
from hoopwright.spec.document.choice import Choice

SPEC = """\
spec: 1
units: centimetres
wearer: {from: bodies/hand.yaml, waist: 71 cm}
shape: {hem: {girth: 2.8 m, off_floor: 16 cm}, hoops: {count: 5}}
build: {hem_band: {depth: 20 cm}}
fittings: [{on: 2027-03-02, notes: level}]
variants:
  wide: {shape: {hem: {girth: 3 m}}}
  broken: {shape: {hem: {girth: 3}}}
  second:
    wearer: {from: bodies/second.yaml}
"""
FILES = {
    "bodies/hand.yaml": "body: 1\nwearer: {stature: 168 cm, waist: 72 cm, waist_height: 106 cm}\n",
    "bodies/second.yaml": "body: 1\nwearer: {from: bodies/tall.yaml, waist: 80 cm}\n",
    "bodies/tall.yaml": "body: 1\nwearer: {stature: 180 cm, waist_height: 116.6 cm}\n",
    "bodies/loop.yaml": "body: 1\nwearer: {from: bodies/loop-2.yaml}\n",
    "bodies/loop-2.yaml": "body: 1\nwearer: {from: bodies/loop.yaml}\n",
    "bodies/no-unit.yaml": "body: 1\nwearer:\n  waist: 72\n  stature: 168 cm\n",
    "bodies/bare.yaml": "waist: 72 cm\n",
    "bodies/empty.yaml": "body: 1\n",
    "cage.yaml": SPEC,
}


def fetch(name: str, file: str) -> Fetched | Unread:
    if name in FILES:
        return Fetched(name, FILES[name].encode())
    return Unread("file-missing", f"`{name}` is not there", "look for it")


def compiled(choice: Choice, text: str = SPEC) -> Compiled:
    return compile_spec(text.encode(), "cage.yaml", choice=choice, fetch=fetch, syntax_only=True)


def said(run: Compiled) -> list[tuple[str, str, int]]:
    return [(one.code, one.span.file, one.span.line) for one in run.diagnostics
            if one.span and one.severity.value == "error"]


GOOD = SPEC.replace("  broken: {shape: {hem: {girth: 3}}}\n", "")


def test_a_body_comes_from_its_file_and_keys_beside_it_outrank_it() -> None:
    spec = compiled(Choice(), GOOD).spec
    assert spec is not None
    assert (spec.wearer.waist, spec.wearer.stature, spec.wearer.side) == pytest.approx((0.71, 1.68, 1.06))


def test_a_body_may_be_taken_from_another() -> None:
    spec = compiled(Choice(wearer="bodies/second.yaml"), GOOD).spec
    assert spec is not None
    assert (spec.wearer.waist, spec.wearer.stature) == pytest.approx((0.80, 1.80))


def test_a_variant_with_another_body_forgets_the_first_one() -> None:
    spec = compiled(Choice(variant="second"), GOOD).spec
    assert spec is not None
    assert spec.wearer.waist == pytest.approx(0.80)


def test_sizes_are_kept_unless_proportions_are_asked_for() -> None:
    sizes = compiled(Choice(variant="second"), GOOD).spec
    larger = compiled(Choice(variant="second", regrade="proportions"), GOOD)
    assert sizes is not None
    assert larger.spec is not None
    assert (sizes.shape.hem_girth, sizes.shape.hem_off_floor) == pytest.approx((2.8, 0.16))
    assert (larger.spec.shape.hem_girth, larger.spec.shape.hem_off_floor) == pytest.approx((3.08, 0.176))
    band = larger.spec.build.band
    assert band is not None
    assert band.depth == pytest.approx(0.22)
    assert larger.spec.wearer.waist == pytest.approx(0.80)
    assert [one.code for one in larger.diagnostics].count("regraded") == 1


def test_proportions_on_the_same_body_change_nothing() -> None:
    spec = compiled(Choice(variant="wide", regrade="proportions"), GOOD).spec
    assert spec is not None
    assert spec.shape.hem_girth == 3.0


def test_fittings_stay_with_the_body_they_were_made_on() -> None:
    kept, other = compiled(Choice(variant="wide"), GOOD), compiled(Choice(variant="second"), GOOD)
    assert kept.document is not None
    assert other.document is not None
    assert "fittings" in kept.document.value
    assert "fittings" not in other.document.value


def test_a_mistake_in_a_chosen_variant_is_told_in_the_variant() -> None:
    assert said(compiled(Choice(variant="broken"))) == [("unit-missing", "cage.yaml", 9)]


def test_a_mistake_in_a_body_is_told_in_its_file() -> None:
    wrong = compiled(Choice(wearer="bodies/no-unit.yaml"), GOOD)
    assert said(wrong) == [("unit-missing", "bodies/no-unit.yaml", 3)]


@pytest.mark.parametrize(("choice", "code", "file", "line"), [
    (Choice(variant="wid"), "variant-unknown", "cage.yaml", 7),
    (Choice(wearer="bodies/loop.yaml"), "include-cycle", "bodies/loop-2.yaml", 2),
    (Choice(wearer="bodies/bare.yaml"), "wearer-file-unlike", "bodies/bare.yaml", 1),
    (Choice(wearer="bodies/empty.yaml"), "wearer-file-unlike", "bodies/empty.yaml", 1),
])
def test_what_cannot_be_joined_is_told_where_it_is_written(
    choice: Choice, code: str, file: str, line: int
) -> None:
    run = compiled(choice, GOOD)
    assert said(run) == [(code, file, line)]
    assert run.spec is None
    assert all(one.help for one in run.diagnostics)


def test_a_spec_is_no_body() -> None:
    text = GOOD.replace("bodies/hand.yaml", "cage-2.yaml")
    FILES["cage-2.yaml"] = SPEC
    [told] = compiled(Choice(), text).diagnostics
    assert told.code == "wearer-file-is-spec"
    assert told.span is not None
    assert (told.span.line, told.labels[0].span.file) == (3, "cage-2.yaml")


def test_the_nearest_variant_is_offered() -> None:
    [told] = compiled(Choice(variant="wid"), GOOD).diagnostics
    assert "`wide`" in told.help


def test_a_variant_that_changes_nothing_is_told() -> None:
    idle = GOOD + "  idle: {shape: {hem: {off_floor: 160 mm}}}\n"
    assert [(one.code, one.span and one.span.line) for one in compiled(Choice(), idle).diagnostics
            if one.code == "variant-changes-nothing"] == [("variant-changes-nothing", 11)]


BASE: dict[str, Any] = {
    "spec": 1, "units": "inches", "wearer": {"stature": "66 in", "waist": "28 in"},
    "shape": {"hem": {"girth": "108 in"}, "hoops": {"count": 5}, "line": {"kind": "dome", "swell": 1.4}},
    "load": [{"name": "skirt", "weight": "4 lb"}],
}
CHANGES = st.fixed_dictionaries({}, optional={
    "shape": st.fixed_dictionaries({}, optional={
        "hem": st.fixed_dictionaries({"girth": st.sampled_from(["100 in", "9 ft", "2.9 m"])}),
        "hoops": st.fixed_dictionaries({"count": st.integers(3, 6)}),
        "line": st.sampled_from([{"kind": "cone"}, {"kind": "bell"}, {"swell": 1.6}]),
    }),
    "build": st.fixed_dictionaries({"tapes": st.fixed_dictionaries({"count": st.integers(5, 8)})}),
    "load": st.lists(st.just({"name": "lining", "weight": "12 oz"}), max_size=1),
    "limits": st.fixed_dictionaries({"sag": st.sampled_from(["1/4 in", "1 cm"])}),
})


@given(CHANGES)
@settings(max_examples=12, deadline=None)
def test_a_variant_builds_the_plan_of_the_merged_spec(change: dict[str, Any]) -> None:
    """The plan of spec and variant is the plan of the spec with the variant written into it."""
    from dataclasses import replace

    from hoopwright.render.machine import plan_json

    chosen = compile_spec(json.dumps({**BASE, "variants": {"v": change}}).encode(), "cage.yaml",
                          choice=Choice(variant="v")).plan
    written = compile_spec(json.dumps(merged(BASE, change)).encode(), "cage.yaml").plan
    assert chosen is not None
    assert written is not None
    assert plan_json(replace(chosen, findings=())) == plan_json(replace(written, findings=()))
