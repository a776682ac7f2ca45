"""Closing, door, car, bag and coil: radius, stress, push, and the curve that is kept."""

from __future__ import annotations

from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.strength.assess import assess
from hoopwright.strength.forms.doorway import squeezed
from hoopwright.strength.forms.setting import kept_ratio
from hoopwright.strength.handling import handled, handlings
from hoopwright.strength.problem import pose

CAGE = """
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 2.8 m}, hoops: {count: 5}}
build: {hoops: {material: strip}}
limits: {door: 60 cm, car: 40 cm, bag: 50 cm}
materials:
  strip:
    grade: spring steel, tempered
    section: {kind: flat, width: 10 mm, thickness: 1 mm}
    sold: [{length: 20 m, coil: 25 cm}, {length: 100 m}]
"""
E, T = 205e9, 0.001
EI = E * 0.010 * T**3 / 12
HEM = 2.8 / (2 * pi)


def problem(make, text=CAGE):
    spec = make.yaml(text)
    return pose(spec, draw(spec)[0])


def test_every_situation_is_told_in_order(make):
    told = [found.situation for found in handlings(problem(make))]
    assert told == ["closing", "door", "chair", "car", "bag", "coil"]


@pytest.mark.parametrize(("situation", "gap"), [("door", 0.60), ("car", 0.40)])
def test_between_walls_by_the_elastica(make, situation, gap):
    """The worst hoop; lying flat, all have the radius 0.4173 of the gap, and the stiffest pushes most."""
    got = handled(situation, problem(make))
    found = squeezed(gap / (2 * HEM))
    assert found.flat
    assert got.radius == pytest.approx(0.4173 * gap, rel=1e-4)
    assert got.stress == pytest.approx(E * T / 2 / got.radius)
    assert got.push == pytest.approx(found.force * EI / HEM**2)
    assert got.keeps is None


def test_folded_into_three(make):
    cage = problem(make)
    wider = [hoop.girth / (2 * pi) for hoop in cage.shape.hoops if hoop.girth / pi > 0.50]
    got = handled("bag", cage)
    assert got.radius == pytest.approx(min(wider) / 3)
    assert got.push == pytest.approx(6 * EI / min(wider) ** 2)
    assert handled("bag", problem(make, CAGE.replace("bag: 50 cm", "bag: 3 m"))) is None


def test_the_narrowest_coil_counts(make):
    got = handled("coil", problem(make))
    assert got.stress == pytest.approx(E * T / 0.251)
    unstated = handled("coil", problem(make, CAGE.replace(", coil: 25 cm", "")))
    assert unstated.radius == pytest.approx(0.401 / 2)


def test_hoops_narrower_than_the_door_are_not_bent_in_it(make):
    assert handled("door", problem(make, CAGE.replace("door: 60 cm", "door: 90 cm"))) is None


def test_what_passes_the_elastic_limit_keeps_a_curve(make):
    cage = CAGE.replace("spring steel, tempered", "mild steel")
    got = handled("car", problem(make, cage))
    x = got.radius * 250e6 / (E * T)
    assert got.keeps == pytest.approx(2 * got.radius / kept_ratio(x))
    assert got.keeps > 2 * got.radius


@pytest.mark.parametrize("code", ["car", "bag", "coil"])
def test_soft_strip_is_told_of_but_not_refused_for_what_can_be_avoided(make, code):
    spec = make.yaml(CAGE.replace("spring steel, tempered", "mild steel"))
    shape, _ = draw(spec)
    checks = {check.code: check for check in assess(spec, shape)[0].checks}
    assert checks[code].result == "marginal"
    assert "spring steel, tempered" in checks[code].remedy


def test_without_packs_the_coil_is_not_assessed_and_says_why(make):
    spec = make.yaml(CAGE.replace("    sold: [{length: 20 m, coil: 25 cm}, {length: 100 m}]\n", ""))
    shape, _ = draw(spec)
    checks = {check.code: check for check in assess(spec, shape)[0].checks}
    assert checks["coil"].result == "not assessed"
    assert "packs" in checks["coil"].remedy


@pytest.mark.parametrize("sample", ["", "bench: [{test: droop, overhang: 30 cm, hang: 100 g, drop: 5 cm}]"])
def test_a_fifth_thinner_is_told_alike_of_every_bend(make, sample):
    """What was measured of a sample holds for the same stuff thinner, whichever check asks: a fifth less stress."""
    cage = CAGE.replace("door: 60 cm, car: 40 cm, bag: 50 cm", "door: 40 cm, car: 40 cm, stress_door: 46 %")
    spec = make.yaml(cage.replace("    sold:", f"    {sample}\n    sold:"))
    checks = {check.code: check for check in assess(spec, draw(spec)[0])[0].checks}
    used = checks["car"].value / checks["car"].limit
    words = f"take a strip a fifth thinner (from {used * 100:.0f} % to {0.8 * used * 100:.0f} % of what is allowed)"
    assert used > (1.15 if sample else 1.05)
    assert words in checks["door"].remedy
    assert words in checks["car"].remedy
