"""On a chair: where hoops lie, how they bend there, and what that does to soft and to tempered strip."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import cos, dist, hypot, pi, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.shape.draw import draw
from hoopwright.strength.assess import assess
from hoopwright.strength.handling import seated
from hoopwright.strength.problem import pose
from hoopwright.strength.seat import STEEPEST, Sitter, drawn_in, place, steepest_radius

WOMAN = Sitter(seat=0.45, depth=0.43, waist=0.25, thigh=0.16, knee=0.60, body=0.20)
CAGE = """
spec: 1
units: centimetres
wearer: {{stature: 168 cm, waist: 72 cm}}
shape: {{hem: {{girth: 2.8 m}}, hoops: {{count: 7}}}}
build: {{hoops: {{material: strip}}}}
limits: {{chair: {{height: 45 cm, depth: 43 cm}}}}
materials:
  strip: {{grade: "{grade}", section: {{kind: flat, width: 10 mm, thickness: 1 mm}}}}
"""


def check(make, grade, code="chair"):
    spec = make.yaml(CAGE.format(grade=grade))
    shape, _ = draw(spec)
    assessment, _ = assess(spec, shape)
    return next(check for check in assessment.checks if check.code == code)


def test_a_mild_steel_hoop_takes_a_set_on_the_chair_and_a_tempered_one_does_not(make):
    mild, tempered = check(make, "mild steel"), check(make, "spring steel, tempered")
    assert (mild.result, tempered.result) == ("fails", "holds")
    assert mild.value == pytest.approx(tempered.value, rel=1e-12)
    assert mild.limit == pytest.approx(0.9 * 250e6)
    assert "take spring steel, tempered, of the same section (from" in mild.remedy


def test_a_hoop_above_the_thighs_hangs_free():
    got = place(WOMAN, 0.25, 0.08, 0.10, 0.005)
    assert (got.lies, got.back, got.curvature) == ("hangs free", pytest.approx(0.62), pytest.approx(4.0))


def test_a_large_hoop_stands_round_the_knees_and_only_tilts():
    """Seat 0.45 m, hem 0.9 m across: from the back of the body at the seat to the floor before the knees
    takes sqrt(0.60^2 + 0.445^2) = 0.747 m."""
    got = place(WOMAN, 0.45, 0.90, 1.10, 0.005)
    assert (got.lies, got.front, got.gap) == ("round the knees", 0.005, None)
    assert got.curvature == pytest.approx(1 / 0.45)
    assert place(WOMAN, 0.37, 0.90, 1.10, 0.005).lies == "over the thighs"


def test_a_hoop_held_back_by_its_tape_needs_room_behind_on_the_seat():
    """Its front would lie sqrt(0.9^2 - 0.1^2) = 0.894 m before her back; the tape of 0.40 m, down 0.35 m,
    lets it come 0.20 + 0.194 m. Of 0.501 m only the seat's depth less 0.20 m is there."""
    got = place(WOMAN, 0.45, 0.35, 0.40, 0.005)
    room = sqrt(0.9**2 - 0.1**2) - 0.20 - sqrt(0.40**2 - 0.35**2)
    assert got.room == pytest.approx(room)
    assert got.gap == pytest.approx(0.9 - (room - 0.23))
    deep = replace(WOMAN, depth=0.75)
    assert place(deep, 0.45, 0.35, 0.40, 0.005).gap is None


def test_a_saddle_keeps_the_length_of_its_line():
    r = drawn_in(0.35, 0.08)
    steps = 2000
    turns = [2 * pi * k / steps for k in range(steps + 1)]
    points = [(r * cos(t), r * sin(t), 0.08 * cos(2 * t)) for t in turns]
    length = sum(dist(p, q) for p, q in pairwise(points))
    assert length == pytest.approx(2 * pi * 0.35, rel=1e-5)


def test_the_sharpest_curvature_is_that_of_the_curve_in_space():
    """Curvature of (r cos t, r sin t, d cos 2t) on top, where the line runs level, by differences."""
    got = place(WOMAN, 0.30, 0.45, 0.60, 0.005)
    r, d, h = got.radius, got.saddle, 1e-4

    def at(t):
        return (r * cos(t), r * sin(t), d * cos(2 * t))

    bend = hypot(*((a - 2 * b + c) / h**2 for a, b, c in zip(at(-h), at(0.0), at(h), strict=True))) / r**2
    assert got.saddle > 0.05
    assert got.curvature == pytest.approx(bend, rel=1e-5)


@given(st.floats(0.15, 0.8), st.floats(0.1, 1.0), st.floats(0.3, 0.6))
def test_no_saddle_is_steeper_than_45_degrees_and_none_is_wider_than_its_hoop(radius, below, seat):
    sitter = Sitter(seat, 0.43, 0.25, 0.16, 0.60, 0.20)
    got = place(sitter, radius, below, 1.2 * below, 0.005)
    assert 2 * got.saddle <= got.radius * (1 + 1e-9)
    assert got.radius <= radius
    assert got.sides >= 0.005 - 1e-9
    assert got.curvature >= 1 / radius * (1 - 1e-9)
    assert steepest_radius(radius) * 2 * STEEPEST <= radius


def test_a_higher_chair_bends_a_hoop_more(make):
    low = make.yaml(CAGE.format(grade="mild steel"))
    high = make.yaml(CAGE.format(grade="mild steel").replace("height: 45", "height: 60"))
    tight = [min(row.radius for row in seated(pose(spec, draw(spec)[0]))) for spec in (low, high)]
    assert tight[1] < tight[0]
