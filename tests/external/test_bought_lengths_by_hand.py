"""Tape, cord and lacing as they are bought, against lengths worked by hand from the rules of cutting.

Source: worked by hand, plain geometry; wraps, reserves and the sample's size are the rules the plan prints.
"""

from __future__ import annotations

from collections.abc import Callable
from math import hypot
from pathlib import Path
from types import SimpleNamespace

import pytest

from hoopwright.supply.cloth.bands import joins_of
from hoopwright.supply.cloth.model import Band, ClothPart, Gore
from hoopwright.supply.needs import cloth_needs, length_needs

Drawn = Callable[[str], SimpleNamespace]

INCH = 0.0254
TAPES = """\
  twill: {kind: tape, width: 1 in}
  lace: {kind: tape, width: 1/4 in}
"""
STRIP = """\
materials:
  strip: {grade: "spring steel, tempered", section: {kind: flat, width: 3/8 in, thickness: 0.02 in}}
""" + TAPES
BUSTLE = (Path(__file__).parent / "data" / "by_hand" / "half.yaml").read_text().replace(
    "build: {hoops: {material: strip}}", """build:
  hoops: {material: strip}
  tapes: {material: twill}
  lacing: {gap: 2 in, spacing: 1 in, cord: lace}""") + TAPES
OVAL = """\
spec: 1
units: inches
wearer: {stature: 65 in, waist: 26 in}
shape: {ground_plan: {kind: oval, width_over_depth: 1.2}, hem: {girth: 110 in}, hoops: {count: 5}}
build:
  hoops: {material: strip}
  tapes: {material: twill}
  ties: {material: lace, count: 1}
""" + STRIP
CORDED = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in, waist_height: 42 in}
shape: {hem: {girth: 108 in}, length: 38 in}
build:
  carried_by: cords
  panels: {breadths: 2, material: sheeting, waist: drawstring, cord: lace}
  cords: {material: cord, groups: [{cords: 24}], reserve: 5 %, sample: {cords: COUNT, length: 16 in}}
materials:
  sheeting: {kind: cloth, weight: 140 g/m2, width: 60 in}
  cord: {kind: cord, diameter: 1/8 in}
  lace: {kind: tape, width: 1/4 in}
allowances: {seam: 1/2 in}
"""


def pieces(drawn: Drawn, text: str, item: str) -> dict[str, float]:
    """What is cut from one article, inches by part."""
    made = drawn(text)
    need = next(one for one in length_needs(made.spec, made.shape) if one.item == item)
    return {piece.part: piece.length / INCH for piece in need.pieces}


def test_a_lacing_of_21_pairs_takes_182_inches_of_cord(drawn: Drawn) -> None:
    """17 1/2 in from first to last steel and 1 in beyond each: 19 1/2, so 20 steps of an inch, 21 pairs. Laced 2 in
    apart through folds of 1 1/2 a crossing is 3.64 long; two to each pair, and 0.75 m to draw it open and tie."""
    assert pieces(drawn, BUSTLE, "lace") == {
        "lacing cord": pytest.approx(2 * 21 * hypot(3.5, 1.0) + 750 / 25.4, abs=0.01)}
    assert 2 * 21 * hypot(3.5, 1.0) + 750 / 25.4 == pytest.approx(182.4, abs=0.05)


def test_every_tie_across_an_oval_is_bought_with_a_wrap_at_both_ends(drawn: Drawn) -> None:
    """A tie across the middle of the 110 in hem, 1.2 times as wide as deep, is as long as that is deep, 31.8; 1 1/2
    in go round the hoop at each end."""
    found = pieces(drawn, OVAL, "lace")
    assert sorted(found) == [f"H{k}-tie-1" for k in range(1, 6)]
    assert found["H5-tie-1"] == pytest.approx(31.8 + 3.0, abs=0.05)


@pytest.mark.parametrize(("count", "lengths"), [
    (6, {"sample cords": 100.8}),
    (8, {"sample cords": 100.8, "sample cords 2": 33.6}),
])
def test_the_samples_cords_are_cut_together_as_far_as_a_row_is_long(
    drawn: Drawn, count: int, lengths: dict[str, float]
) -> None:
    """16 in and 5 % more are 16.8; a row of 108 and 2 in of seams, with 5 %, is 115.5: six go into its length."""
    found = pieces(drawn, CORDED.replace("COUNT", str(count)), "cord")
    assert found["C24"] == pytest.approx(115.5)
    assert {part: length for part, length in found.items() if part.startswith("sample")} == pytest.approx(lengths)


def test_a_drawstring_is_as_long_as_the_edge_it_gathers_and_half_a_metre_to_tie(drawn: Drawn) -> None:
    assert pieces(drawn, CORDED.replace("COUNT", "6"), "lace") == {"drawstring": pytest.approx(108 + 500 / 25.4)}


SEWN = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in}
shape: {hem: {girth: 110 in}}
build:
  hoops: {material: strip}
  tapes: {material: twill}
  waistband: {material: calico, width: 1 in, overlap: 2 in}
  hem_band: {depth: 8 in, material: calico}
allowances: {seam: 1/2 in, waistband_turning: 1/2 in, band_join: 1 in}
""" + STRIP.replace("materials:\n", "materials:\n  calico: {kind: cloth, weight: 140 g/m2, width: 45 in}\n")
GORED = """\
spec: 1
units: inches
wearer: {stature: 67 in, waist: 28 in, waist_height: 43 1/2 in}
shape:
  line: {kind: cone}
  top_hoop: {below_waist: 8 in}
  hem: {girth: 110 in, off_floor: 6 13/16 in}
build:
  carried_by: channels
  hoops: {material: strip}
  panels: {gores: 6, top: 30 in, material: calico}
  waistband: {material: twill, width: 1 in}
allowances: {seam: 1/2 in}
""" + STRIP.replace("materials:\n", "materials:\n  calico: {kind: cloth, weight: 140 g/m2, width: 45 in}\n")


def cut_of_cloth(drawn: Drawn, text: str) -> dict[str, ClothPart]:
    made = drawn(text)
    [need] = cloth_needs(made.spec, made.shape)
    return {part.part: part for part in need.parts}


def test_a_cloth_waistband_is_cut_twice_as_high_as_it_is_wide_with_its_seams(drawn: Drawn) -> None:
    """28 and 2 of overlap, turned in 1/2 at each end: 31; an inch wide, folded, with 1/2 in seams: 3 high. Where
    it is pieced the seam takes an inch."""
    band = cut_of_cloth(drawn, SEWN)["waistband"]
    assert isinstance(band, Band)
    assert (band.length / INCH, band.height / INCH, band.join / INCH) == pytest.approx((31, 3, 1))
    assert (band.ring, band.count) == (False, 1)


def test_a_hem_band_goes_once_round_and_takes_an_inch_more_for_each_join(drawn: Drawn) -> None:
    """Three strips of 45 in: 110 round and three joins of an inch, which the layout adds, not the band."""
    band = cut_of_cloth(drawn, SEWN)["band"]
    assert isinstance(band, Band)
    assert (band.length / INCH, band.join / INCH, band.ring) == (pytest.approx(110), pytest.approx(1), True)
    assert joins_of(band, 3) == 3


def test_six_gores_from_6_to_19_and_three_eighths_are_laid_as_trapezoids(drawn: Drawn) -> None:
    """30 to 110 on a slant of 38.2, cut in six with 1/2 in seams: 6 at the waist's line and 19 3/8 at the hem hoop's;
    the gore goes on as steeply above and below for its turnings."""
    gore = cut_of_cloth(drawn, GORED)["gore"]
    assert isinstance(gore, Gore)
    assert gore.count == 6
    steep = (19.375 - 6) / 38.2
    assert (gore.bottom - gore.top) / gore.height == pytest.approx(steep, rel=0.02)
    assert 6 - steep * 2 < gore.top / INCH < 6
    assert 19.375 < gore.bottom / INCH < 19.375 + steep * 3
