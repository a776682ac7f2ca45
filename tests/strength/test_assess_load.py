"""Where the weight goes, and what the cage weighs."""

import itertools
from dataclasses import replace
from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.shape.draw import draw
from hoopwright.spec.model import Layer, Line
from hoopwright.strength.load import layer_shares, own_masses, skirt_masses
from hoopwright.strength.weight import weights


def shares(spec, hang, heights=()):
    shape, _ = draw(spec)
    return shape, layer_shares(Layer("skirt", 1.0, hang, tuple(heights)), spec, shape)


def test_straight_by_hand(make):
    """Level hoops at 35.5, 26.06, 16.63, 7.19 in without a band, waist at 41.5, skirt to 1 in: halves of
    neighbouring stretches over 40.5 in; below the hem hoop all 6.19 in are its own."""
    spec = make.spec(count=4, band=None, spacing="level")
    _, got = shares(spec, "straight")
    step = (35.5 - 7.1875) / 3
    expected = [3, 3 + step / 2, step, step, step / 2 + 7.1875 - 1]
    assert got == pytest.approx([amount / 40.5 for amount in expected])


def test_what_lies_beside_a_band_hangs_from_its_upper_hoop(make):
    _, got = shares(make.spec(), "straight")
    assert got[-1] == 0.0
    upper, hem, fifth = 16.1875, 7.1875, 20.29
    assert got[-2] * 40.5 == pytest.approx((fifth - upper) / 2 + (upper - hem) + hem - 1, abs=0.01)


def test_a_cone_band_does_not_stand_vertical(make):
    _, got = shares(make.spec(line=Line("cone", 1.0)), "straight")
    assert got[-1] > 0.1


def test_gored_puts_more_of_it_low_down(make):
    spec = make.spec(count=4, band=None, spacing="level", line=Line("cone", 1.0))
    _, straight = shares(spec, "straight")
    _, gored = shares(spec, "gored")
    assert gored[0] < straight[0]
    assert gored[-1] > straight[-1]


def test_gored_by_mantles_of_cones(make):
    """pi (r + r') times the slant, by hand for two hoops and no skirt below the hem hoop."""
    spec = make.spec(count=2, band=None, line=Line("cone", 1.0), skirt_off_floor=7.1875 * make.inch)
    shape, got = shares(spec, "gored")
    points = [(41.5, 28.0), (35.5, shape.hoops[0].girth / make.inch), (7.1875, 110.0)]
    halves = []
    for (z0, g0), (z1, g1) in itertools.pairwise(points):
        middle = ((z0 + z1) / 2, (g0 + g1) / 2)
        for (za, ga), (zb, gb) in (((z0, g0), middle), (middle, (z1, g1))):
            halves.append((ga + gb) / 2 * hypot(za - zb, (gb - ga) / (2 * pi)))
    expected = [halves[0], halves[1] + halves[2], halves[3]]
    assert got == pytest.approx([amount / sum(expected) for amount in expected])


def test_flounces_hang_where_they_are_sewn(make):
    spec = make.spec(count=4, band=None, spacing="level")
    _, got = shares(spec, "flounced", [h * make.inch for h in (40.0, 30.0, 8.0, 5.0)])
    assert got == pytest.approx((0.25, 0.0, 0.25, 0.0, 0.5))


@settings(max_examples=30, deadline=None)
@given(st.sampled_from(["straight", "gored", "flounced"]), st.integers(2, 10), st.floats(0.2, 1.0),
       st.sampled_from([None, 9.0]), st.sampled_from(["dome", "cone", "bell"]))
def test_nothing_is_lost(make, hang, count, height, band, kind):
    spec = make.spec(count=max(count, 3), band=band, line=Line(kind, 1.4))
    _, got = shares(spec, hang, [height])
    assert sum(got) == pytest.approx(1.0)
    assert min(got) >= 0.0


def test_all_layers_add_up(make):
    spec = make.spec()
    shape, _ = draw(spec)
    assert sum(skirt_masses(spec, shape)) == pytest.approx(1.9 + 0.468)


def test_worked_example_weighs_about_3_7_lb(make):
    """By hand: strip 2.86 lb, band 0.44, casing 0.25, tapes and band of the waist 0.1, joins 0.05."""
    spec = make.spec()
    shape, _ = draw(spec)
    got = weights(spec, shape)
    assert got.total / 0.45359237 == pytest.approx(3.7, abs=0.05)
    assert got.hoops / 0.45359237 == pytest.approx(2.863, abs=0.005)
    assert got.band == pytest.approx(0.51435 * 2.794 * 0.140)


def test_hoops_carry_their_own_casing_join_and_half_the_band(make):
    spec = make.spec()
    shape, _ = draw(spec)
    own, parts = own_masses(spec, shape), weights(spec, shape)
    assert sum(own) == pytest.approx(parts.hoops + parts.casings + parts.band + parts.joins)
    assert own[-1] - own[-2] == pytest.approx(0.0)


def test_tapes_are_weighed_as_trimmed(make):
    spec = make.spec()
    shape, _ = draw(spec)
    finished = sum(tape.marks[-1].at + 3 * make.inch for tape in shape.tapes)
    assert weights(spec, shape).tapes == pytest.approx(finished * 0.0062)


def test_a_cloth_waistband_is_weighed_double(make):
    spec = make.spec()
    band = replace(spec.build.waistband, material=make.calico)
    shape, _ = draw(spec)
    got = weights(replace(spec, build=replace(spec.build, waistband=band)), shape)
    assert got.waistband == pytest.approx(31 * make.inch * 2 * make.inch * 0.140)
