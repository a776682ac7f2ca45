"""What a short spec leans on: sensible defaults, each listed with the key that overrides it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.diagnostic import Finding
from hoopwright.source.read import read
from hoopwright.spec.checking.schema import load_schema
from hoopwright.spec.model import Assumed, Spec
from hoopwright.spec.reading.node import Node
from hoopwright.spec.resolve import resolve
from hoopwright.supply.needs import cloth_needs, length_needs

SHORT = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}}
"""


def resolved(text: str) -> tuple[Spec, tuple[Finding, ...]]:
    document, said = read(text.encode(), "short.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    return spec, found


@pytest.fixture(scope="module")
def spec() -> Spec:
    spec, found = resolved(SHORT)
    assert found == ()
    return spec


def test_heights_follow_from_stature(spec: Spec) -> None:
    assert spec.wearer.side == pytest.approx(0.630 * 1.68)
    assert spec.wearer.hip == pytest.approx(0.72 / 0.837)
    assert spec.wearer.waist_to_hip == pytest.approx(0.119 * 1.68)
    assert spec.shape.hem_off_floor == pytest.approx(0.039 * 1.68 + 0.1016)


def test_the_cage_is_a_usual_one(spec: Spec) -> None:
    assert (spec.shape.line.kind, spec.shape.line.power) == ("dome", 1.3)
    assert 5 <= spec.shape.count <= 7
    assert spec.build.tapes.count == 6
    assert spec.build.tapes.front_gap is None
    assert spec.build.tapes.waist_fractions == spec.build.tapes.hem_fractions
    assert spec.build.hoops.material.grade.name == "spring steel, tempered"
    section = spec.build.hoops.material.section
    assert (section.width, section.thickness) == (0.01, 0.001)
    assert spec.build.hoops.join.name == "lap bound"
    assert spec.build.band is None


def test_a_design_without_a_title_is_called_by_its_file() -> None:
    document, _ = read(SHORT.encode(), "somewhere/second-act_cage.yaml")
    assert document is not None
    spec, _ = resolve(document)
    assert spec is not None
    assert spec.title == "Second act cage"
    assert resolved(SHORT + "title: '  Ball  '\n")[0].title == "Ball"


def test_no_shopping_without_prices(spec: Spec) -> None:
    assert spec.currency is None
    assert "allowances.money_reserve" not in {item.path for item in spec.assumed}


def test_assumed_values_are_sorted_and_named_once(spec: Spec) -> None:
    paths = [item.path for item in spec.assumed]
    assert paths == sorted(paths)
    assert len(paths) == len(set(paths))
    assert all(item.reason for item in spec.assumed)
    assert not {item.path for item in spec.assumed} & spec.stated


def leaf(path: str) -> bool:
    """Whether a dotted path is a key of the language."""
    node: object = {"properties": load_schema("spec")["properties"]}
    defs = load_schema("spec")["$defs"]
    parts = path.split(".")
    if parts[0] == "materials":
        kinds = [defs[name] for name in defs if name == "stock" or name.startswith("goods_")]
        return any(parts[-1] in kind["properties"] for kind in kinds)
    for key in parts:
        assert isinstance(node, dict)
        if "$ref" in node:
            node = defs[node["$ref"].rsplit("/", 1)[1]]
        keys = dict(node.get("properties", {}))
        for branch in (node.get("allOf") or []):
            keys |= defs[branch["then"]["$ref"].rsplit("/", 1)[1]]["properties"]
        if key not in keys:
            return False
        node = keys[key]
    return True


def test_each_assumed_value_names_a_key_of_the_language(spec: Spec) -> None:
    for item in spec.assumed:
        assert leaf(item.path), item.path
    assert not leaf("shape.hem.colour")


def test_a_stated_value_leaves_the_list(spec: Spec) -> None:
    said, _ = resolved(SHORT + "skirt: {off_floor: 2 cm}\nallowances: {kerf: 2 mm}\n")
    gone = {item.path for item in spec.assumed} - {item.path for item in said.assumed}
    assert gone == {"skirt.off_floor", "allowances.kerf"}
    assert said.skirt_off_floor == pytest.approx(0.02)
    assert said.allowances.kerf == pytest.approx(0.002)


def test_solder_is_taken_when_the_workshop_can() -> None:
    able, _ = resolved(SHORT + "workshop: {tools: [soldering iron, file, clamps]}\n")
    assert able.build.hoops.join.name == "lap soldered"
    unable, _ = resolved(SHORT + "workshop: {tools: [file, clamps]}\n")
    assert unable.build.hoops.join.name == "lap bound"
    cane, _ = resolved(SHORT + "build: {hoops: {material: rattan}}\n"
                       "workshop: {tools: [soldering iron, file, clamps]}\n")
    assert cane.build.hoops.join.name == "lap bound"
    assert cane.build.hoops.material.form == "cane"


def test_without_stature_the_waist_height_is_enough() -> None:
    spec, found = resolved(SHORT.replace("stature: 168 cm", "waist_height: 104 cm"))
    assert found == ()
    assert spec.wearer.stature is None
    assert spec.wearer.step is None
    assert spec.wearer.waist_to_hip == pytest.approx(0.192)


def test_left_and_right_may_differ() -> None:
    heights = "waist_height: {front: 105 cm, left: 107 cm, right: 104 cm, back: 106 cm}"
    spec, _ = resolved(SHORT.replace("waist: 72 cm", f"waist: 72 cm, {heights}"))
    assert (spec.wearer.left, spec.wearer.right) == pytest.approx((1.07, 1.04))
    assert spec.wearer.side == pytest.approx(1.055)


def test_the_only_material_is_taken_and_two_are_asked_about() -> None:
    one = SHORT + "materials:\n  cane: {grade: rattan, section: {kind: round, diameter: 6 mm}}\n"
    spec, _ = resolved(one)
    assert spec.build.hoops.material.name == "cane"
    why = "the only material for hoops in the spec"
    assert Assumed("build.hoops.material", "cane", "text", why) in spec.assumed
    document, _ = read((one + "  wire: {grade: music wire}\n").encode(), "two.yaml")
    assert document is not None
    none, found = resolve(document)
    assert none is None
    assert [finding.code for finding in found] == ["key-missing"]
    assert "`cane` or `wire`" in found[0].help


def test_a_tape_of_another_width_weighs_in_proportion() -> None:
    spec, _ = resolved(SHORT + "materials: {narrow: {kind: tape, width: 1/2 in}}\n"
                       "build: {tapes: {material: narrow}}\n")
    assert spec.build.tapes.material.linear_density == pytest.approx(0.0031)


def test_tapes_can_stand_where_the_maker_wants() -> None:
    spec, _ = resolved(SHORT + "build: {tapes: {waist: [1/12, 1/4, 1/2, 3/4, 0.9]}}\n")
    assert spec.build.tapes.count == 5
    assert spec.build.tapes.waist_fractions == pytest.approx((1 / 12, 0.25, 0.5, 0.75, 0.9))


def test_an_absent_key_reads_as_nothing() -> None:
    node = Node({"a": {"b": "3 cm"}})
    assert node["a"]["b"].length() == pytest.approx(0.03)
    assert node["a"]["c"].length() is None
    assert not node["x"]["y"][0]


STARTERS = sorted((Path(__file__).parents[2] / "specs" / "starters").glob("*.yaml"))


@pytest.mark.parametrize("starter", STARTERS, ids=lambda path: path.stem)
def test_an_allowance_that_changes_what_is_cut_is_listed_and_one_that_cannot_is_not(starter: Path) -> None:
    """Of every family: a length nobody stated stands under what was assumed, with the key that overrides it."""
    spec, _ = resolved(starter.read_text(encoding="utf-8"))
    told = {one.path.removeprefix("allowances.") for one in spec.assumed} | {
        path.removeprefix("allowances.") for path in spec.stated}

    def cut(changed: Spec) -> str:
        shape, _ = draw(changed)
        assert shape is not None
        return repr((shape, length_needs(changed, shape), cloth_needs(changed, shape)))

    for name in ("seam", "waistband_turning", "casing_end", "braid_take_up", "band_ease", "tape_top", "tape_hem",
                 "tape_reserve", "kerf"):
        longer = replace(spec.allowances, **{name: 1.1 * getattr(spec.allowances, name)})
        assert (cut(replace(spec, allowances=longer)) != cut(spec)) is (name in told), name
