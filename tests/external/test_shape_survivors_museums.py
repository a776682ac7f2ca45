"""Surviving pieces as their museums record them, drawn from specs: girth, plan, number, spacing, weight.

Records (seen online): Philadelphia Museum of Art 1950-59-7, cage about 1865: hem 114 in, 30 hoops, long axis
39 in, about 20 oz; 1967-105-3, elliptic, 1867-68: hem 109 in, long axis 35 in; Historic Deerfield HD 2011.26,
1867-69: hem 95 in, 24 hoops, 82.5 cm long behind; HD 87.806, front cut away, 19 hoops, 6 tapes; Hopkins
collection: cage of 1860-70, 17 hoops, the top 8 open in front, 7 tapes, the lowest five in a band of
10 1/4 in, waistband 29 x 1 in; crinolette of 1872-75, 12 half hoops 2 1/4 in apart and one full hem hoop,
inner lacing; bustle of 1884-89, 6 half hoops about 3 1/2 in apart, inner ties. What a record does not say
(waists, heights, the section of the steel, about 1/8 x .010 in by their weight) is chosen here.
"""

from itertools import pairwise
from math import pi

import pytest

from hoopwright.strength.weight import weights

INCH = 0.0254
LIGHT = """\
materials:
  light: {grade: "spring steel, tempered", section: {kind: flat, width: 1/8 in, thickness: 0.012 in}}
  narrow: {kind: tape, width: 1 in, weight: 6.2 g/m}
"""


def cage(plan: str, girth: str, hoops: str, more: str = "", build: str = "",
         hem: str = "off_floor: 6 in") -> str:
    """A spec of the light stock of the time."""
    return f"""\
spec: 1
units: inches
wearer: {{stature: 63 in, waist: 25 in, hip: 36 in}}
shape:
  ground_plan: {plan}
  top_hoop: {{below_waist: 4 in, girth: 40 in}}
  hem: {{girth: {girth}, {hem}}}
  hoops: {hoops}
{more}build:
  hoops: {{material: light, casing: none, join: lap bound, lap: 1 in}}
  tapes: {{material: narrow, {build}}}
{LIGHT}"""


def test_philadelphia_1950_59_7(drawn):
    """114 in round and 39 in long from front to back leave 33.3 in of width; thirty such light hoops with
    their tapes weigh about 20 oz."""
    made = drawn(cage("{kind: thrown back, reach: {front: 16 in, back: 23 in}}", "114 in", "{count: 30}",
                      build="count: 6"))
    shape = made.shape
    hem = shape.hoops[-1].plan
    assert len(shape.hoops) == 30
    assert shape.hoops[-1].girth / INCH == pytest.approx(114.0)
    assert max(hem.width, hem.depth) / INCH == pytest.approx(39.0, abs=0.5)
    assert hem.width / INCH == pytest.approx(33.3, abs=0.3)
    grams = shape.total_hoop_length * made.spec.build.hoops.material.linear_density * 1000
    assert grams / shape.total_hoop_length == pytest.approx(7.6, abs=0.4)
    assert weights(made.spec, shape).total / 0.0283495 == pytest.approx(22, abs=2.5)


def test_philadelphia_1967_105_3(drawn):
    """109 in round with a long axis of 35 in is an ellipse all but round: 34.4 in the short way."""
    made = drawn(cage("{kind: thrown back, reach: {front: 14 in, back: 21 in}}", "109 in", "{count: 20}"))
    hem = made.shape.hoops[-1].plan
    assert made.shape.hoops[-1].girth / INCH == pytest.approx(109.0)
    assert hem.depth / INCH == pytest.approx(35.0, abs=0.5)
    assert hem.width / INCH == pytest.approx(34.4, abs=0.3)
    assert 109 / pi == pytest.approx(34.7, abs=0.05)  # a circle of that girth


def test_deerfield_2011_26(drawn):
    """95 in round, 24 hoops; 82.5 cm behind from the waist to the hem hoop, along the tape at centre back."""
    made = drawn(cage("{kind: thrown back, set_back: 2 in}", "95 in", "{count: 24}",
                      build="count: 7", hem="off_floor: 10 in"))
    behind = next(tape for tape in made.shape.tapes if abs(tape.hem_fraction - 0.5) < 1e-9)
    assert behind.marks[-1].at == pytest.approx(0.825, abs=0.01)
    assert len(made.shape.hoops) == 24


def test_deerfield_87_806(drawn):
    """Front cut away: 19 hoops on 6 tapes; such cages average 1 to 2 lb."""
    made = drawn(cage("round", "105 in", "{count: 19}", more="  opening: {hoops: 12}\n",
                      build="count: 6, front_gap: 8 in").replace("casing: none", "casing: braid"))
    assert sum(not hoop.closed for hoop in made.shape.hoops) == 12
    assert 0.8 < weights(made.spec, made.shape).total / 0.45359237 < 2.0


def test_hopkins_cage_of_1860_70(drawn):
    """Seventeen hoops on seven tapes, the top eight open in front, waistband 29 in long and 1 in wide."""
    made = drawn(cage("round", "100 in", "{count: 17}", more="  opening: {hoops: 8}\n",
                      build="count: 7, front_gap: 6 in").replace(
        "build:\n", "build:\n  waistband: {overlap: 3 in, width: 1 in}\n"))
    shape = made.shape
    assert [hoop.closed for hoop in shape.hoops] == [False] * 8 + [True] * 9
    assert len(shape.tapes) == 7
    assert (shape.waistband.cut / INCH, shape.waistband.width / INCH) == pytest.approx((29.0, 1.0))


def test_hopkins_crinolette_of_1872_75(drawn):
    """Twelve half hoops 2 1/4 in apart, one full hem hoop, an inner lacing."""
    text = cage("{kind: half, chord: {top: 10 in, hem: 22 in}, reach: {top: 5 in, hem: 15 in},"
                " full: {count: 1}}",
                "90 in", "{count: 13, spacing: level}", build="count: 7", hem="off_floor: 7 in")
    text = text.replace("{below_waist: 4 in, girth: 40 in}", "{height: 34 1/16 in}").replace(
        "build:\n", "build:\n  lacing: {}\n")
    shape = drawn(text).shape
    assert sum(hoop.plan.kind == "bow" for hoop in shape.hoops) == 12
    gaps = [(a.height - b.height) / INCH for a, b in pairwise(shape.hoops)]
    assert gaps == pytest.approx([2.25] * 12, abs=0.02)
    assert {tie.kind for tie in shape.ties} == {"lacing"}
    assert shape.panels[0].count == 2


def test_hopkins_bustle_of_1884_89(drawn):
    """Six half hoops about 3 1/2 in apart, inner ties."""
    text = cage("{kind: half, chord: 12 in, reach: {top: 4 in, hem: 8 in}}", "1 in",
                "{count: 6, spacing: level}", build="count: 5", hem="off_floor: 17 in")
    text = text.replace("{below_waist: 4 in, girth: 40 in}", "{height: 34 9/16 in}")
    text = text.replace("girth: 1 in, ", "")
    shape = drawn(text).shape
    assert len(shape.hoops) == 6
    gaps = [(a.height - b.height) / INCH for a, b in pairwise(shape.hoops)]
    assert gaps == pytest.approx([3.5] * 5, abs=0.02)
    assert [tie.kind for tie in shape.ties] == ["chord"] * 6
