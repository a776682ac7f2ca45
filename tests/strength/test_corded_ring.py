"""A corded petticoat's sample, and its rows as one ring: worked out here another way, limits, what changes it."""

from __future__ import annotations

from math import pi

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.source.quantity import parse_length
from hoopwright.spec.check import Check
from hoopwright.strength.families.corded import cords_needed
from hoopwright.strength.forms.droop import stiffness_from_droop

SPEC = """\
spec: 1
title: Ring
units: centimetres
wearer: {stature: 166 cm, waist: 70 cm, waist_height: 104 cm}
shape: {hem: {girth: 260 cm, off_floor: 14 cm}}
build:
  carried_by: cords
  panels: {material: cotton}
  cords:
    material: cord
    spacing: 6 mm
    groups: [{cords: CORDS}]
    sample: {cords: 6, length: 40 cm, bench: [BENCH]}
load: [{name: gown, weight: LOAD}]
materials:
  cotton: {kind: cloth, weight: 140 g/m2, width: 150 cm}
  cord: {kind: cord, diameter: 3 mm, weight: 4.2 g/m}
"""
WEIGHED = "{test: weight, length: 40 cm, weight: 20 g}"


def plan(drop: str = "6 cm", cords: int = 40, load: str = "1 kg", *more: str) -> Plan:
    bench = ", ".join((f"{{test: droop, overhang: 30 cm, drop: {drop}}}", WEIGHED, *more)) if drop else ""
    text = SPEC.replace("CORDS", str(cords)).replace("BENCH", bench).replace("LOAD", load)
    made = compile_spec(text.encode(), "ring.yaml")
    assert made.plan is not None, made.diagnostics
    return made.plan


def ring(made: Plan) -> Check:
    return next(check for check in made.checks if check.code == "cord-ring")


def test_the_factor_is_that_of_a_ring_worked_out_here() -> None:
    made = plan()
    cloth = made.shape.corded
    assert cloth is not None
    stiff = stiffness_from_droop(0.30, 0.0, 0.020 / 0.40 * 9.80665, 0.06)
    height = sum(row.height for row in cloth.rows) / 40
    radius = sum(row.girth for row in cloth.rows) / 40 / (2 * pi)
    band = 2.54e-2 / 2
    slope = (radius - 0.70 / (2 * pi)) / (1.04 - band - height)
    below = (1.04 - height) / 2 + (height - 0.0254)
    share = below / (1.04 - 0.0254)
    breadths = 2 * cloth.wide * cloth.high * 0.140
    mass = share * (1.0 + breadths) + 2 * cloth.wide * cloth.facing_high * 0.140 + cloth.run * 4.2e-3
    press = mass * 9.80665 * slope / (2 * pi * radius)
    assert ring(made).value == pytest.approx(3 * 40 * stiff / 6 / radius**3 / press, rel=1e-6)


def test_bending_length_is_the_cube_root_of_stiffness_over_weight() -> None:
    found = plan().assessment.corded
    assert found is not None
    assert found.stiffness is not None
    assert found.bending_length == pytest.approx((found.stiffness / (0.5 * 0.1 * 9.80665)) ** (1 / 3))


def test_without_a_droop_test_it_is_not_assessed_and_says_how_to_make_the_sample() -> None:
    made = plan(drop="")
    check = ring(made)
    assert (check.value, check.result) == (None, "not assessed")
    for words in ("6 cords", "40 cm long", "30 cm", "starch", "droop", "build.cords"):
        assert words in check.remedy
    assert made.assessment.verdict == "stands, but"


@pytest.mark.parametrize(("drop", "result"), [("1.5 cm", "holds"), ("6 cm", "marginal"), ("15 cm", "fails")])
def test_the_stiffer_the_sample_the_better_it_stands(drop: str, result: str) -> None:
    assert ring(plan(drop)).result == result


def test_below_one_it_will_not_stand() -> None:
    made = plan("15 cm")
    assert (ring(made).value or 1.0) < 1.0
    assert made.assessment.verdict == "will not stand"


def test_the_remedies_are_worked_out_and_true() -> None:
    check = ring(plan("4.5 cm"))
    assert check.result == "marginal"
    drop = check.remedy.split("should then drop ")[1].split(" instead")[0]
    mended = ring(plan(drop))
    assert mended.value == pytest.approx(2.5, rel=0.05)
    assert parse_length(drop) < 0.045


def test_as_many_cords_as_it_asks_for_bear_the_load() -> None:
    made = plan()
    found, cords = made.assessment.corded, made.spec.build.cords
    assert found is not None
    assert cords is not None
    count = cords_needed(cords, found, 2.0)
    assert count is not None
    here = found.factor or 0.0
    own = cords.material.linear_density * 2 * pi * found.radius
    carried = found.carried + (count - 40) * own
    assert here * count / 40 * found.carried / carried == pytest.approx(2.0, rel=0.03)


def test_more_load_lowers_the_factor_in_proportion() -> None:
    light, heavy = plan(load="1 kg").assessment.corded, plan(load="2 kg").assessment.corded
    assert light is not None
    assert heavy is not None
    assert (light.factor or 0) / (heavy.factor or 1) == pytest.approx(heavy.carried / light.carried)


def test_droop_tests_far_apart_are_told() -> None:
    text = SPEC.replace("CORDS", "40").replace("LOAD", "1 kg").replace(
        "BENCH", "{test: droop, overhang: 30 cm, drop: 3 cm}, {test: droop, overhang: 30 cm, drop: 8 cm}")
    made = compile_spec(text.encode(), "ring.yaml")
    assert "bench-contradictory" in [one.code for one in made.diagnostics]
