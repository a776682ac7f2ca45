"""Every field of the typed spec can be reached from the language, and every key of the language is used."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from hoopwright.source.read import Document, read
from hoopwright.spec.checking.schema import load_schema
from hoopwright.spec.model import Spec
from hoopwright.spec.reading.node import dotted_paths
from hoopwright.spec.resolve import resolve

SHORT = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}}
"""
FULL = """\
spec: 1
title: Everything
units: inches
wearer:
  name: second lady
  stature: 5 ft 7 in
  waist: 28 in
  waist_oval: 1.3
  hip: 40 in
  waist_to_hip: 8 in
  waist_height: {front: 41 in, left: 41 1/2 in, right: 41 1/4 in, back: 41 1/8 in}
  hip_rows:
    - {below_waist: 0 in, girth: 28 in, oval: 1.3}
    - {below_waist: 9 in, girth: 40 in}
  step: 26 in
  sitting: {waist: 10 in, thigh: 6 in, knee: 24 in}
shape:
  ground_plan: round
  line: {kind: bell, exponent: 1.7}
  top_hoop: {height: 35 in, girth: 50 in}
  hem: {girth: 110 in, off_floor: 7 in}
  hoops: {count: 6, spacing: widening, ratio: 1.2, names: [hip]}
build:
  carried_by: tapes
  hoops: {material: strip, join: lap riveted, lap: 2 1/2 in, casing: none, formed: sprung, splices: 1}
  tapes: {count: 5, front_gap: 8 in, material: narrow, to: band}
  waistband: {material: lawn, width: 1 1/2 in, overlap: 2 in, ease: 1/2 in, fastening: buckle}
  hem_band: {depth: 9 in, material: lawn, grain: across, cut_height: 20 in}
load:
  - {name: flounces, material: lawn, area: 3 yd2, weight: 1 lb, hang: flounced, at: [20 in], buy: true}
  - {name: gored, weight: 1 lb, hang: gored, gathered: true}
skirt: {off_floor: 2 in}
shops: {mill: 6 USD}
materials:
  strip:
    grade: stainless, full hard
    section: {kind: flat, width: 3/8 in, thickness: 0.03 in}
    modulus: 200 GPa
    elastic_limit: 1000 MPa
    density: 8000 kg/m3
    bench:
      - {test: droop, overhang: 18 in, hang: 100 g, drop: 6 in, turned: 6 1/2 in, clamp_angle: 2 degrees}
      - {test: wrap, around: 6 in, result: takes a set, keeps: 20 in}
      - {test: weight, length: 10 ft, weight: 6 oz}
    sold: [{length: 50 ft, price: 19.00 USD, at_most: 2, coil: 14 in}, {per: 1 ft, step: 2 ft, price: 1 USD}]
    on_hand: [14 ft]
    from: mill
  rod: {grade: rattan, section: {kind: round, diameter: 6 mm}}
  pipe: {grade: polyethylene, section: {kind: tube, diameter: 20 mm, wall: 2 mm}}
  narrow: {kind: tape, width: 3/4 in, weight: 5 g/m, shrinkage: 2 %, sold: [{length: 10 yd}], on_hand: [1 yd]}
  plait: {kind: braid, width: 3/8 in, weight: 3 g/m, shrinkage: 1 %, on_hand: [2 yd]}
  lawn:
    {kind: cloth, weight: 70 g/m2, width: 40 in, nap: true, head_to_tail: false, shrinkage: 3 %,
     on_hand: [1 yd, {length: 20 in, width: 10 in}], from: mill, sold: [{per: 1 yd}]}
  buckle: {kind: fastening, from: mill, sold: [{count: 2, price: 3 USD}], on_hand: 1}
  rivets: {kind: consumable, on_hand: 20}
allowances:
  seam: 5/8 in
  waistband_turning: 1/4 in
  casing_end: 1 in
  braid_take_up: 10 %
  band_join: 1/2 in
  band_ease: 1/8 in
  kerf: 1/8 in
  end_trim: 1/4 in
  splice_shortest: 20 in
  smallest_offcut: 10 in
  tape_top: 1 in
  tape_hem: 1 in
  tape_reserve: 2 in
  tape_stretch: 2 kN
  hoop_tolerance: 1/8 in
  tape_tolerance: 1/4 in
  hem_tolerance: 1/8 in
  small_stuff_reserve: 20 %
limits:
  budget: 85 USD
  door: 32 in
  weight: 4 lb
  sag: 1/4 in
  out_of_round: 2 %
  factor: 3
  stress_worn: 50 %
  stress_door: 80 %
  chair: {height: 18 in, depth: 18 in}
  car: 24 in
  bag: 22 in
  swing: 3 in
  reserve: 15 %
workshop: {tools: [drill, hammer], session: 90 min, helper: true, paper: A4}
variants:
  other:
    {title: Other, units: centimetres, wearer: {name: x}, shape: {hoops: {count: 5}},
     build: {tapes: {count: 6}}, skirt: {off_floor: 1 in}, allowances: {seam: 1 in}, limits: {door: 30 in},
     workshop: {helper: false}, regrade: sizes, materials: {rod: {on_hand: [1 m]}}, load: [{name: a, weight: 1 kg}]}
progress: {done: [mark-tapes], cut: {H1: 51 in}}
regrade: sizes
fittings:
  - {on: 2027-03-02, hem_height: {T1: 6 3/4 in}, notes: level}
  - {on: 2027-03-09, hoop_height: {hip: 35 in}, hoop_girth: {hip: 50 1/2 in}, waist: 28 1/2 in}
"""
RATES = ", ".join(
    f"{name}: {k} min"
    for k, name in enumerate(load_schema("spec")["properties"]["workshop"]["properties"]["rates"]["properties"], 1)
)
OTHERS = (
    SHORT.replace("}}\n", "}, line: {kind: table, rows: [{height: 90 cm, girth: 120 cm},"
                  " {below_waist: 85 cm, girth: 280 cm}]},\n"
                  "  hoops: {at: [{below_waist: 15 cm}, {height: 70 cm}, {down_tape: 60 cm}]}}\n")
    + "build: {tapes: {waist: [1/10, 1/2, 9/10], hem: [0.1, 0.5, 0.9]}}\n",
    SHORT.replace("}}\n", "}, line: {kind: dome, swell: 1.5}, top_hoop: {below_waist: 15 cm}}\n")
    + "allowances: {money_reserve: 5 %}\nworkshop: {paper: letter}\nbuild: {hoops: {casing: plait}}\n"
    "materials: {plait: {kind: braid, width: 1 cm, on_hand: [2 m], sold: [{per: 1 m}]}}\n",
    SHORT.replace("}}\n", "}, opening: {hoops: 2, gap: {top: 15 cm, hem: 20 cm}, straps: false},\n"
                  "  ground_plan: {kind: oval, width_over_depth: {top: 1.4, hem: 1.2}}}\n")
    + "build: {ties: {count: 3, material: twill, lengths: {H5: 30 in}}, hip_ties: {count: 2, material: twill}}\n",
    SHORT.replace("}}\n", "}, ground_plan: {kind: thrown back, set_back: {top: 1 cm, hem: 9 cm}}}\n"),
    SHORT.replace("}}\n", "}, ground_plan: {kind: thrown back, reach: {front: 30 cm, back: 50 cm}}}\n"),
    SHORT.replace("}}\n", "}, ground_plan: {kind: half, chord: {top: 20 cm, hem: 40 cm}, reach: 30 cm,"
                  " set_back: 0 cm, full: {count: 1, width_over_depth: 1.1}}}\n")
    + "build: {lacing: {material: calico, cord: twill, gap: 4 cm, spacing: 2 cm}}\n",
    SHORT.replace("}}\n", "}, line: {kind: cone}, hoops: {spacing: from hem, every: 10 cm}}\n")
    + "build: {carried_by: channels, channels: {kind: applied casing, material: lawn, feed_gap: 4 cm,\n"
    "  turning: 5 mm}, flounce: {depth: 20 cm, fullness: 1.5, rows: 2, material: lawn, cut_height: 23 cm},\n"
    "  panels: {gores: 7, gore: {top: 12 cm, hem: 40 cm}, material: lawn, top: 84 cm, placket: 20 cm}}\n",
    SHORT.replace("{hem: {girth: 2.8 m}}", "{line: {kind: drum}, hoops: {names: [hole]}}")
    + "build: {carried_by: wheel, wheel: {width: 90 cm, set_back: 10 cm, tilt: 8 degrees, rim_drop: 3 cm,\n"
    "  rings: 5, spokes: 10, roll: {thickness: 7 cm, length: 60 cm, material: lawn},\n"
    "  cover: {material: calico, slit: 18 cm}}}\n",
    SHORT.replace("{hem: {girth: 2.8 m}}", "{ground_plan: {kind: pair, front_to_back: 30 cm,"
                  " hoops: [{drop: 10 cm, reach: 9 cm}]}}")
    + "build: {carried_by: channels, side_hoops: {material: lawn, tie: twill, on_band: 14 cm, at: 0.24,\n"
    "  pocket_slit: 5 cm, shorter: 1 cm}}\n",
    SHORT + "build: {carried_by: channels, panels: {breadths: 4, waist: drawstring, cord: twill}}\n",
    SHORT.replace("2.8 m}}", "2.8 m}, length: 88 cm}")
    + "build: {carried_by: cords, cords: {material: line, held: sandwich, facing: lawn, first_row: 2 cm,\n"
    "  spacing: 7 mm, take_up: 2 mm, shrinkage: 3 %, shrinkage_round: 1 %, reserve: 5 %, starch: none,\n"
    "  groups: [{cords: 8}, {cords: 5, spacing: 9 mm, gap: 3 cm}], sample: {cords: 8, length: 50 cm,\n"
    "  bench: [{test: droop, overhang: 30 cm, drop: 6 cm}, {test: weight, length: 50 cm, weight: 20 g}]}}}\n"
    "materials: {line: {kind: cord, diameter: 4 mm, weight: 7 g/m}, lawn: {kind: cloth, weight: 70 g/m2}}\n",
    SHORT + "build: {hoops: {material: [rattan, polyethylene]}, hem_band: {depth: 20 cm, material: [calico, lawn]}}\n",
    SHORT + "workshop: {hands: [{name: Ann, skills: [cutting metal, fitting]}, {name: Bea}], order: exact,\n"
    f"  counts: {{clamps: 2}}, rates: {{{RATES}}}}}\n",
    SHORT.replace("}}\n", "}, line: {kind: cone}, top_hoop: {down_tape: 15 cm}}\n").replace(
        "waist: 72 cm", "waist: 72 cm, from: hand.yaml, waist_height: {side: 106 cm}"),
)


def document(text: str) -> Document:
    read_, said = read(text.encode(), "x.yaml")
    assert read_ is not None, said
    return read_


def resolved(text: str) -> Spec:
    spec, found = resolve(document(text))
    assert spec is not None, found
    return spec


def leaves(value: Any, at: str = "") -> Iterator[tuple[str, Any]]:
    """Every plain field below a dataclass, by name."""
    for item in fields(value):
        inner = getattr(value, item.name)
        if is_dataclass(inner):
            yield from leaves(inner, f"{at}{item.name}.")
        else:
            yield f"{at}{item.name}", inner


def test_every_field_can_be_set() -> None:
    short = dict(leaves(resolved(SHORT)))
    others = [dict(leaves(resolved(text))) for text in (FULL, *OTHERS)]
    library = ("build.hooped.join.", "build.hooped.material.grade.", "build.hooped.material.form")
    fixed = {"build.carried_by", "build.band", "build.waistband.fastening.width", "shape.ground_plan.half",
             "shape.opening", "build.lacing", "build.hip_ties", "build.channels", "build.panels",
             "build.wheel", "build.sides", "build.cords", "shape.ground_plan.pair"}
    kinds = {"kind", "source", "nap", "shrinkage", "areal_density", "linear_density", "diameter", "wall",
             "remnants", "shop"}
    same = [name for name, value in short.items()
            if all(other.get(name, value) == value for other in others)
            and name not in fixed and not name.startswith(library) and name.split(".")[-1] not in kinds]
    assert same == []


def test_every_key_of_the_language_is_accepted() -> None:
    written = {path for text in (FULL, *OTHERS) for path in dotted_paths(document(text).value)}
    names = {key for path in written for key in path if isinstance(key, str)}
    schema = load_schema("spec")
    told = set(keys_of(schema)) - {"variants"}
    assert told - names == set()


def keys_of(node: Any) -> Iterator[str]:
    """The name of every key the schema describes, ``drum`` apart, which is refused for now."""
    if isinstance(node, dict):
        for key, inner in node.get("properties", {}).items():
            yield key
            yield from keys_of(inner)
        for word in ("items", "additionalProperties", "then", "else"):
            yield from keys_of(node.get(word))
        for name, inner in node.get("$defs", {}).items():
            yield from keys_of(inner if name != "line_drum" else None)


@pytest.fixture(scope="module")
def full() -> Spec:
    return resolved(FULL)


def test_values_arrive_where_they_belong(full: Spec) -> None:
    assert full.build.tapes.waist_fractions == pytest.approx([1 / 7 + i * 5 / 28 for i in range(5)])
    assert full.build.hoops.lap == pytest.approx(2.5 * 0.0254)
    assert full.build.hoops.material.grade.e == 200e9
    assert full.build.hoops.material.grade.g == pytest.approx(200e9 / 2.58)
    assert full.allowances.money_reserve == pytest.approx(0.15)
    assert full.goods["rivets"].on_hand == (20.0,)
    assert full.goods["lawn"].nap
    assert full.wearer.hip_rows[1].oval == pytest.approx(1.5)
    assert full.load[0].mass == pytest.approx(0.45359237)
    assert full.paths["wearer.waist_height.left"] == ("wearer", "waist_height", "left")
    assert "load.0.at.0" in full.stated
