"""Lengths to cut: each formula with its allowances, and the maker's own rule."""

from dataclasses import replace
from math import hypot, pi

import pytest

from hoopwright.library.model import Section
from hoopwright.shape.draw import draw
from hoopwright.shape.lengths import channel, waistband
from hoopwright.spec.model import Line


def test_band_of_a_3_8_in_strip_by_hand(make):
    """Hoops 8 in apart, 5/8 in seams, 3/8 in strip, 1/4 in ease: 2 (8 + 3/8 + 1/4) + 2 x 5/8 = 18 1/2 in
    high."""
    spec = make.spec(band=8.0)
    band = draw(replace(spec, allowances=replace(spec.allowances, seam=0.625 * make.inch)))[0].band
    assert band.height / make.inch == pytest.approx(18.5)
    assert band.length / make.inch == pytest.approx(110.0)


def test_band_without_strip_and_ease_by_hand(make):
    """Hoops 8 in apart, 5/8 in seams, no other ease: 17 1/4 in high, as her own rule."""
    band = draw(make.spec(band=8.0, cut_height=2 * 8 + 2 * 0.625))[0].band
    assert band.height / make.inch == pytest.approx(17.25)
    assert band.stated


def test_band_on_a_cone_follows_the_slope_of_the_cloth(make):
    shape = draw(make.spec(line=Line("cone", 1.0)))[0]
    upper, lower = shape.hoops[-2:]
    slant = hypot(9 * make.inch, (lower.girth - upper.girth) / (2 * pi))
    assert shape.band.depth == pytest.approx(slant)
    assert shape.band.height == pytest.approx(2 * (slant + 0.625 * make.inch) + make.inch)


def test_waistband_adds_overlap_and_two_turnings(make):
    band = waistband(make.spec())
    assert band.girth / make.inch == pytest.approx(28.0)
    assert band.cut / make.inch == pytest.approx(28 + 2 + 1)


def test_bare_hoops_need_no_casing(make):
    assert [hoop.casing for hoop in draw(make.spec(bare=True))[0].hoops] == [0.0] * 7


def test_channel_for_flat_and_round(make):
    """A 10 mm tube wants pi d/2 + 4 = 19.7 mm; a strip its width and 1/4 in."""
    assert channel(Section("tube", diameter=0.010, wall=0.0015)) == pytest.approx(0.0197, abs=5e-5)
    assert channel(make.strip.section) / make.inch == pytest.approx(0.625)
