"""Petticoat cloth as statics: forces balance, hoops are pressed inward, an even load leaves them level."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.spec.model import Spec
from hoopwright.strength.assess import assess
from hoopwright.strength.cloth import flounce_mass, petticoat_mass
from hoopwright.strength.families.petticoat import solve
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.load import cloth_masses
from hoopwright.strength.problem import pose
from hoopwright.strength.weight import weights

CONE = """\
spec: 1
units: inches
wearer: {stature: 5 ft 5 in, waist: 30 in, hip: 38 in, waist_height: 41 in}
shape:
  line: {kind: cone}
  hem: {girth: 110 in, off_floor: 4 in}
  hoops: {count: 6, spacing: from hem, every: 5 in}
build: {carried_by: channels, flounce: {depth: 8 in}}
load:
  - {name: kirtle, weight: 2.4 kg}
"""


@pytest.fixture(scope="module")
def spec(make) -> Spec:
    return make.yaml(CONE)


def test_all_that_hangs_pulls_the_waist_outward_with_the_slope_of_the_cone(spec: Spec) -> None:
    """Sum of inward pulls = V_1 s_1; the sum of thrusts is that over 2 pi."""
    shape = draw(spec)[0]
    assert shape is not None
    problem = pose(spec, shape)
    found = solve(problem)
    hangs = (sum(problem.skirt) + sum(problem.own)) * GRAVITY
    top = shape.hoops[0]
    slope = (top.girth - spec.wearer.waist) / (2 * pi) / (spec.wearer.side - top.height)
    assert found.waist_pull == pytest.approx(hangs * slope)
    assert sum(hoop.thrust for hoop in found.hoops) * 2 * pi == pytest.approx(hangs * slope)
    assert all(hoop.thrust > 0 for hoop in found.hoops)


def test_every_hoop_carries_its_own_load(spec: Spec) -> None:
    shape = draw(spec)[0]
    assert shape is not None
    problem = pose(spec, shape)
    solved = solve(problem).hoops
    for hoop, found, skirt, own in zip(shape.hoops, solved, problem.skirt, problem.own, strict=True):
        assert found.load * hoop.girth == pytest.approx((skirt + own) * GRAVITY)
        assert (found.sag, found.inward, found.outward) == (0.0, 0.0, 0.0)


def test_twice_the_load_halves_the_factor(spec: Spec) -> None:
    shape = draw(spec)[0]
    assert shape is not None
    once = pose(spec, shape)
    twice = replace(once, skirt=tuple(2 * a for a in once.skirt), own=tuple(2 * a for a in once.own))
    first, second = solve(once).buckling.value, solve(twice).buckling.value
    assert first is not None
    assert second is not None
    assert second == pytest.approx(first / 2)
    assert solve(once).buckling.at_least


def test_cloth_and_flounces_are_weighed_once(spec: Spec) -> None:
    """Six gores as trapezoids, strips and the flounce, of 140 g/m2; the waistband bears some of the gores."""
    shape = draw(spec)[0]
    assert shape is not None
    assert shape.petticoat is not None
    (x0, _), (x1, _), (x2, top), (x3, _) = shape.panels[0].outline
    gores = 6 * (x1 - x0 + x2 - x3) / 2 * top * 0.140
    strips = sum(one.strip * one.height for one in shape.petticoat.channels) * 0.140
    assert petticoat_mass(spec, shape) == pytest.approx(gores + strips)
    flounce = shape.petticoat.flounces[0]
    assert flounce_mass(spec, shape) == pytest.approx(flounce.length * flounce.height * 0.140)
    assert weights(spec, shape).cloth == pytest.approx(petticoat_mass(spec, shape) + flounce_mass(spec, shape))
    hung = sum(cloth_masses(spec, shape))
    assert flounce_mass(spec, shape) < hung < weights(spec, shape).cloth


def test_the_checks_speak_of_cloth_and_none_of_tapes(spec: Spec) -> None:
    shape = draw(spec)[0]
    assert shape is not None
    found, told = assess(spec, shape)
    assert found is not None, told
    codes = {check.code for check in found.checks}
    assert "slack" not in codes
    assert {"buckling", "sag", "set-closed", "weight"} <= codes
    assert not [check for check in found.checks if "tape" in check.says]
    assert found.verdict == "stands"
    assert "cloth" in found.method


def test_a_weak_hoop_fails_and_a_remedy_is_found(spec: Spec) -> None:
    heavy = replace(spec, load=tuple(replace(layer, mass=60.0) for layer in spec.load))
    shape = draw(heavy)[0]
    assert shape is not None
    found, _ = assess(heavy, shape)
    assert found is not None
    check = next(check for check in found.checks if check.code == "buckling")
    assert check.result in ("fails", "marginal")
    assert "strip" in check.remedy or "skirt" in check.remedy
