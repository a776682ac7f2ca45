"""Check values of mechanics, got from specs: a text goes in, the stages run, and what the assessment says is
compared. The values are derived (each beside its formula in ``strength/``) and were checked by an independent
finite-element run; books stand beside those quoted from memory. Their formulas alone are tested in
``tests/strength``; here it is that a spec's numbers reach them in the right units and places.
"""

from __future__ import annotations

from functools import cache
from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve
from hoopwright.strength import closed
from hoopwright.strength.assess import assess
from hoopwright.strength.method import Problem
from hoopwright.strength.model import Assessment, Handling
from hoopwright.strength.problem import pose

MM4 = 1e-12
FLAT = "flat, width: 13 mm, thickness: 1.2 mm"
CAGE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 70 cm}
shape: {line: {kind: cone}, hem: {girth: 3.3 m}, hoops: {count: 5}}
build:
  hoops: {material: stock, join: lap bound, lap: 0 cm, casing: none}
limits: {door: DOOR}
materials:
  stock: {grade: "GRADE", section: {kind: SECTION}BENCH}
"""
STATICS = """\
spec: 1
units: centimetres
wearer: {waist: 659.7345 mm, waist_oval: 1, waist_height: 120 cm, hip: 67 cm}
shape:
  line: {kind: table, rows: [{height: 1127.3 mm, girth: 1382.3008 mm}, {height: 1027.3 mm, girth: 2073.4512 mm},
    {height: 887.3 mm, girth: 2607.5219 mm}, {height: 717.3 mm, girth: 2984.5130 mm},
    {height: 507.3 mm, girth: 3204.4245 mm}, {height: 267.3 mm, girth: 3299.9289 mm}]}
  top_hoop: {height: 1127.3 mm}
  hem: {girth: 3299.9289 mm, off_floor: 236.585 mm}
  hoops: {count: 6, spacing: listed,
    at: [{height: 1127.3 mm}, {height: 1027.3 mm}, {height: 887.3 mm}, {height: 717.3 mm}, {height: 507.3 mm}]}
build:
  hoops: {material: stock, join: lap bound, lap: 0 cm, casing: none}
  tapes: {count: 6}
materials:
  stock: {grade: "spring steel, tempered", section: {kind: flat, width: 61.43 mm, thickness: 4 mm}}
"""
"""Six hoops of R = .22 .33 .415 .475 .51 .5252 m at z = .06 .16 .30 .47 .68 .92 m below a round waist of R =
.105 m; each weighs 1.929 kg/m by itself (7850 kg/m3), and nothing hangs on them."""


@cache
def problem(grade: str = "spring steel, tempered", section: str = FLAT, bench: str = "",
            door: str = "75 cm") -> Problem:
    """A cage of one stock with a hem of 3.3 m."""
    return posed(CAGE.replace("GRADE", grade).replace("SECTION", section).replace("BENCH", bench)
                 .replace("DOOR", door))


def posed(text: str) -> Problem:
    document, said = read(text.encode(), "cage.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    shape, told = draw(spec)
    assert shape is not None, told
    return pose(spec, shape)


@cache
def assessed(door: str = "75 cm") -> Assessment:
    found = problem(door=door)
    assessment, told = assess(found.spec, found.shape, method=closed.solve)
    assert assessment is not None, told
    return assessment


def handled(situation: str, door: str = "75 cm") -> Handling:
    return next(one for one in assessed(door).handling if one.situation == situation)


@pytest.mark.parametrize(("grade", "section", "weak", "strong", "twist"), [
    ("spring steel, tempered", FLAT, 1.872, 219.7, 7.052),
    ("mild steel", "flat, width: 10 mm, thickness: 10 mm", 833.33, 833.33, 1406),
    ("polyethylene", "tube, diameter: 10 mm, wall: 1.5 mm", 373.0, 373.0, 746.1),
])
def test_stiffness_of_sections(grade: str, section: str, weak: float, strong: float, twist: float) -> None:
    """I weak, I strong and J in mm4; J of the square 0.1406 a^4 (Timoshenko and Goodier, from memory), of a tube
    2 I."""
    got, of = problem(grade, section).material, problem(grade, section).stock.grade
    assert got.ei_weak / of.e / MM4 == pytest.approx(weak, rel=2e-4)
    assert got.ei_strong / of.e / MM4 == pytest.approx(strong, rel=2e-4)
    assert got.gj / of.g / MM4 == pytest.approx(twist, rel=3e-4)


def test_droop_of_a_clamped_overhang() -> None:
    """50 cm, 100 g, 0.1225 kg/m, drop 150 mm: EI = 0.3052 N m2."""
    bench = (", bench: [{test: droop, overhang: 50 cm, hang: 100 g, drop: 150 mm},"
             " {test: weight, length: 2 m, weight: 245 g}]")
    got = problem("spring steel, tempered", FLAT, bench).material
    assert (got.origin, got.ei_weak) == ("bench", pytest.approx(0.3052, abs=5e-5))


def test_a_strip_that_springs_back_from_a_cylinder_bears_the_strain_of_the_wrap() -> None:
    """1.2 mm round 100 mm: 0.01186 of E."""
    got = problem("spring steel, tempered", FLAT, ", bench: [{test: wrap, around: 100 mm, result: springs back}]")
    assert got.material.elastic_limit / 205e9 == pytest.approx(0.01186, abs=5e-6)


def test_closing_a_straight_strip_into_a_ring() -> None:
    """The hem of 3.3 m in 1.2 mm strip carries pi E t/G = 234.2 MPa; the smallest hoop carries the most."""
    hem = assessed().hoops[-1]
    assert hem.stress is not None
    assert handled("closing").part == "H1"
    girth = problem().shape.hoops[0].girth
    assert handled("closing").stress * girth / 3.3 / 1e6 == pytest.approx(234.2, abs=0.1)
    assert hem.stress / 1e6 == pytest.approx(234.2, abs=25)


@pytest.mark.parametrize(("share", "force", "least"), [
    (0.95, 0.6254, 0.8918), (0.80, 2.115, 0.6769), (0.7178, 2.786, 0.5991), (0.50, 5.742, 0.4173)])
def test_the_hem_between_two_walls(share: float, force: float, least: float) -> None:
    """Force over A/R^2 and least radius over R for a gap over 2 R; from 0.7178 down the hoop lies flat on both
    walls, the least radius is 0.4173 of the gap, and every hoop wider than it presses alike."""
    radius = 3.3 / (2 * pi)
    found = handled("door", f"{share * 2 * radius * 1000:.4f} mm")
    assert found.radius / radius == pytest.approx(least, abs=6e-5)
    assert found.push * radius**2 / problem().material.ei_weak == pytest.approx(force, rel=4e-4)


def test_a_bag_asks_for_a_third_of_the_radius() -> None:
    """Folding a closed hoop into three: common practice, no source."""
    part = problem().shape.hoop(handled("bag").part)
    assert handled("bag").radius == pytest.approx(part.girth / (2 * pi) / 3)


def test_tapes_and_hoops_of_a_round_cage() -> None:
    """Tensions and inward pulls in N of the same cage at a tenth of the weight, and what the band is pulled
    outward by: the sum of the pulls. The joins, 3 g each, are a thousandth of a hoop."""
    solution = closed.solve(posed(STATICS))
    for tape in solution.tapes:
        tensions = [segment.tension / 10 for segment in tape.segments]
        assert tensions == pytest.approx([10.60, 6.642, 4.462, 3.173, 2.079, 1.042], rel=2e-3)
    pulls = [hoop.thrust * 2 * pi / 6 / 10 for hoop in solution.hoops]
    assert pulls == pytest.approx([4.484, 2.599, 1.260, 0.7141, 0.2759, 0.0659], rel=2e-3)
    assert solution.waist_pull / 10 == pytest.approx(6 * 9.4, rel=2e-3)


@pytest.mark.parametrize(("section", "per_metre"), [
    ("flat, width: 1/2 in, thickness: 0.020 in", 50.6), ("flat, width: 1/8 in, thickness: 0.010 in", 6.3)])
def test_a_strips_mass_per_metre(section: str, per_metre: float) -> None:
    """7.85 b t, g/m with b and t in mm; a trade table has the same."""
    of = problem("spring steel, tempered", section)
    grams = (of.own[-1] - 0.003) * 1000
    assert grams / of.shape.hoops[-1].girth == pytest.approx(per_metre, abs=0.05)
