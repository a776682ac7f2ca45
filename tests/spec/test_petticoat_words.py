"""The language of petticoats: defaults that are listed, maps that clash, widths that do not add up."""

from __future__ import annotations

import pytest

from hoopwright.source.diagnostic import Finding, Severity
from hoopwright.source.read import read
from hoopwright.spec.model import Spec
from hoopwright.spec.resolve import resolve

SPEC = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 30 in, hip: 38 in}
shape:
  {line: {kind: cone}, hem: {girth: 110 in, off_floor: 4 in}, hoops: {count: 6, spacing: from hem,
   every: 5 in}}
build: {carried_by: channelsBUILD}
"""


def read_spec(build: str, text: str = SPEC) -> tuple[Spec | None, tuple[Finding, ...]]:
    document, said = read(text.replace("BUILD", build).encode(), "petticoat.yaml")
    assert document is not None, said
    return resolve(document)


@pytest.mark.parametrize(("build", "code"), [
    (", tapes: {count: 6}", "carrier-clash"),
    (", hem_band: {depth: 9 in}", "carrier-clash"),
    (", ties: {count: 1}", "carrier-clash"),
    (", hoops: {casing: braid}", "carrier-clash"),
    (", panels: {gores: 6, breadths: 4}", "keys-clash"),
    (", panels: {gores: 6, gore: {top: 5 in, hem: 17 in}}", "gores-miss-girth"),
    (", panels: {top: 120 in}", "petticoat-top-too-wide"),
    (", panels: {material: twill}", "material-wrong-kind"),
    (", channels: {kind: ruffle}", "value-unknown"),
    (", flounce: {fullness: 2}", "key-missing"),
])
def test_bad_petticoats_are_told_once(build: str, code: str) -> None:
    spec, found = read_spec(build)
    assert spec is None
    errors = [one for one in found if one.severity is Severity.ERROR]
    assert [one.code for one in errors] == [code]
    assert errors[0].help


def test_a_petticoat_has_no_opening_and_channels_no_tapes() -> None:
    _, found = read_spec("", SPEC.replace("hoops: {count", "opening: {hoops: 2}, hoops: {count"))
    assert [one.code for one in found] == ["carrier-clash"]
    tapes = SPEC.replace("carried_by: channels", "carried_by: tapes, panels: {gores: 6}")
    _, found = read_spec("", tapes)
    assert [one.code for one in found] == ["carrier-clash"]


def test_the_top_hoop_is_placed_once() -> None:
    _, found = read_spec("", SPEC.replace("hem: {girth", "top_hoop: {below_waist: 6 in}, hem: {girth"))
    assert [one.code for one in found] == ["keys-clash"]
    _, found = read_spec("", SPEC.replace("spacing: from hem", "spacing: level"))
    assert [one.code for one in found] == ["keys-clash"]


def test_tucks_on_gores_are_warned_of() -> None:
    spec, found = read_spec(", channels: {kind: tuck}")
    assert spec is not None
    assert [(one.code, one.severity) for one in found] == [("tucks-on-gores", Severity.WARNING)]


def test_gores_within_half_an_inch_of_the_girth_are_taken() -> None:
    spec, found = read_spec(", panels: {gores: 6, gore: {top: 5 in, hem: 18 3/8 in}}")
    assert found == ()
    assert spec is not None
    assert spec.build.panels is not None
    assert spec.build.panels.gore == pytest.approx((0.127, 0.466725))


def test_every_default_is_listed_and_tapes_have_none() -> None:
    spec, _ = read_spec("")
    assert spec is not None
    paths = {item.path for item in spec.assumed}
    assert {"build.panels.gores", "build.panels.material", "build.panels.top", "build.panels.placket",
            "build.panels.waist", "build.channels.kind", "build.channels.feed_gap", "build.channels.turning",
            "allowances.seam"} <= paths
    assert not [path for path in paths if "tape" in path or path == "build.hoops.casing"]
    assert spec.build.tapes is None
    assert spec.build.hoops.casing is None


def test_breadths_take_tucks_and_gores_casings() -> None:
    gores, _ = read_spec("")
    breadths, _ = read_spec(", panels: {breadths: 4}")
    assert gores is not None
    assert breadths is not None
    assert gores.build.channels is not None
    assert breadths.build.channels is not None
    assert (gores.build.channels.kind, breadths.build.channels.kind) == ("applied casing", "tuck")
    assert breadths.build.channels.material is None
    assert breadths.build.panels is not None
    assert breadths.build.panels.top == pytest.approx(110 * 0.0254)


def test_an_oval_petticoat_is_not_drawn_yet_and_says_so() -> None:
    spec, found = read_spec("", SPEC.replace("line:", "ground_plan: oval, line:"))
    assert spec is None
    assert [one.code for one in found] == ["not-yet"]
