"""The centre of weight against the waist, worked by hand, and what half hoops leave of a chair."""

from dataclasses import replace
from math import pi

import pytest

from hoopwright.shape.draw import draw
from hoopwright.spec.model import Graded, GroundPlan
from hoopwright.strength.balance import balance_check, centre_of_weight, hoop_centre, off_centre, seat_room
from hoopwright.strength.problem import pose

BUSTLE = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 66 cm}
shape:
  ground_plan: {kind: half, chord: 30 cm, reach: %s, set_back: 5 cm}
  top_hoop: {below_waist: 12 cm}
  hem: {off_floor: 55 cm}
  hoops: {count: 4}
limits: {chair: {height: 45 cm, depth: 42 cm}}
"""


def back(make, by: float, **more):
    spec = make.spec(**more)
    plan = GroundPlan("thrown back", Graded(1.0, 1.0), Graded(by, by))
    return replace(spec, shape=replace(spec.shape, ground_plan=plan))


def test_hoops_all_set_back_alike_weigh_there(make):
    spec = back(make, 0.05)
    problem = pose(spec, draw(spec)[0])
    assert centre_of_weight(problem) == pytest.approx((0.0, -0.05))
    assert off_centre(problem)
    assert balance_check(problem).result == "holds"


def test_more_than_half_the_waists_depth_fails_and_hip_ties_soften_it(make):
    """A round waist of 28 in is 8.9 in deep: the limit is 4.46 in."""
    spec = back(make, 0.12, waist_oval=1.0)
    problem = pose(spec, draw(spec)[0])
    check = balance_check(problem)
    assert check.limit == pytest.approx(28 * make.inch / (2 * pi))
    assert check.result == "fails"
    assert "hip ties" in check.remedy


def test_a_round_cage_hangs_under_its_waist(make):
    spec = make.spec()
    assert not off_centre(pose(spec, draw(spec)[0]))


def test_a_half_circle_weighs_at_two_over_pi_of_its_radius(drawn):
    """A bow is nearly round: its centre of weight lies between that of a half circle and a triangle."""
    shape = drawn(BUSTLE % "15 cm").shape
    hoop = shape.hoops[-1]
    y = -hoop_centre(hoop)[1] - 0.05
    assert 0.5 * 0.15 < y < 2 / pi * 0.15 * 1.01


@pytest.mark.parametrize(("reach", "result"), [("15 cm", "holds"), ("30 cm", "marginal")])
def test_half_hoops_take_their_reach_off_the_chair(drawn, reach: str, result: str) -> None:
    made = drawn(BUSTLE % reach)
    [check] = seat_room(pose(made.spec, made.shape))
    behind = 0.05 + float(reach.split()[0]) / 100 - made.shape.body[0].depth / 2
    assert check.value == pytest.approx(0.42 - behind, abs=1e-6)
    assert check.result == result
