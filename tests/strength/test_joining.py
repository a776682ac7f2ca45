"""Joins: heat against temper, the stiff length, and what lap and ends must bear."""

from __future__ import annotations

from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.strength.assess import assess
from hoopwright.strength.handling import handlings
from hoopwright.strength.problem import pose

CAGE = """
spec: 1
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: 2.8 m}}}}
build: {{hoops: {{material: strip, join: {join}, lap: {lap}}}}}
materials:
  strip: {{grade: "{grade}", section: {{kind: flat, width: 10 mm, thickness: 1 mm}}}}
"""
SPRING = "spring steel, tempered"
EI = 205e9 * 0.010 * 0.001**3 / 12


def text(join="lap soldered", lap="3 cm", grade=SPRING):
    return CAGE.format(join=join, lap=lap, grade=grade)


def checks(make, *words, **more):
    spec = make.yaml(text(*words, **more))
    shape, _ = draw(spec)
    return {check.code: check for check in assess(spec, shape)[0].checks}


def test_an_iron_leaves_the_temper_and_a_torch_takes_it(make):
    iron, torch = checks(make), checks(make, "lap brazed")
    got = iron["join-heat"]
    assert (got.value, got.limit, got.result) == (227.0, 330.0, "holds")
    assert torch["join-heat"].result == "fails"
    assert "lap soldered" in torch["join-heat"].remedy


def test_mild_steel_may_be_brazed(make):
    assert "join-heat" not in checks(make, "lap brazed", grade="mild steel")
    assert "join-heat" not in checks(make, "lap bound")


def test_a_lap_flattens_the_hoop_by_the_rise_of_its_arc(make):
    spec = make.yaml(text(lap="3 cm"))
    radius = min(hoop.girth for hoop in draw(spec)[0].hoops) / (2 * pi)
    got = checks(make)["join-stiff"]
    assert got.value == pytest.approx(0.03**2 / (8 * radius) * (1 - 1 / 8) / (2 * radius))
    assert got.result == "holds"
    assert checks(make, lap="40 cm")["join-stiff"].result == "fails"


def test_shear_along_a_soldered_lap(make):
    """Half of the axial force of a bar 2t thick under M: 3M/4t, over b l/2; and half a tread of 100 N."""
    spec = make.yaml(text())
    worst = max((one for one in handlings(pose(spec, draw(spec)[0])) if one.part), key=lambda one: one.stress)
    got = checks(make)["join-shear"]
    moment = EI / worst.radius
    assert got.value == pytest.approx(3 * moment / (4 * 0.001) + 50)
    assert got.limit == pytest.approx(20e6 * 0.010 * 0.015)
    assert checks(make, lap="6 mm")["join-shear"].result == "fails"


def test_peel_across_a_lap(make):
    """1.5 M/l, over a triangle on half of the lap's face where it is soldered."""
    spec = make.yaml(text())
    radius = min(hoop.girth for hoop in draw(spec)[0].hoops) / (2 * pi)
    got = checks(make)["join-peel"]
    assert got.value == pytest.approx(1.5 * EI / radius / 0.03)
    assert got.limit == pytest.approx(2e6 * 0.010 * 0.03 / 4)
    bound = checks(make, "lap bound", lap="10 cm")["join-peel"]
    assert bound.limit in (100.0, 200.0)
    assert bound.result == "holds"
    assert checks(make, "lap bound", lap="8 mm")["join-peel"].result == "fails"


@pytest.mark.parametrize("join", ["sleeve crimped", "lap bolted", "lap riveted"])
def test_every_join_is_judged(make, join):
    said = CAGE.format(join=join, lap="5 cm", grade=SPRING)
    spec = make.yaml(said)
    found = {check.code: check.result for check in assess(spec, draw(spec)[0])[0].checks}
    assert {found["join-stiff"], found["join-shear"], found["join-peel"]} == {"holds"}


@pytest.mark.parametrize("join", ["lap soldered", "lap bound", "lap bolted"])
def test_ends_that_do_not_overlap_bear_nothing(make, join):
    got = checks(make, join, "0 cm")
    assert (got["join-shear"].limit, got["join-shear"].result) == (0.0, "fails")
    assert "join-peel" not in got
