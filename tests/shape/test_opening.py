"""Hoops open in front: where they end, what is cut, straps, loose ends, and which hoops must stay closed."""

from dataclasses import replace
from math import dist

import pytest

from hoopwright.shape.draw import draw
from hoopwright.spec.model import Graded, Opening, TieBuild


def opened(make, opening: Opening, **more):
    spec = make.spec(tapes=8, gap=8.0, **more)
    build = replace(spec.build, ties=TieBuild(make.twill, 0))
    return replace(spec, shape=replace(spec.shape, opening=opening), build=build)


def test_the_upper_hoops_end_at_the_first_and_the_last_tape(make):
    shape = draw(opened(make, Opening(3, None, True)))[0]
    assert [hoop.closed for hoop in shape.hoops] == [False] * 3 + [True] * 4
    whole = draw(make.spec(tapes=8, gap=8.0))[0]
    for hoop, closed in zip(shape.hoops[:3], whole.hoops[:3], strict=True):
        assert hoop.start == pytest.approx(hoop.fixings[0].fraction)
        assert hoop.end == pytest.approx(hoop.fixings[-1].fraction)
        assert hoop.girth == pytest.approx(closed.girth * (hoop.end - hoop.start))
        assert hoop.cut == hoop.girth  # no lap: the ends are tipped
        assert hoop.casing == pytest.approx(hoop.girth * 1.08 + 0.0254)
        assert hoop.plan.path[0][:2] == pytest.approx(hoop.fixings[0].at[:2])
        assert hoop.plan.width == pytest.approx(closed.plan.width)
    assert shape.hoops[3].girth == pytest.approx(whole.hoops[3].girth)


def test_a_stated_gap_is_measured_along_the_hoop(make):
    shape = draw(opened(make, Opening(2, Graded(0.2, 0.3), True)))[0]
    whole = draw(make.spec(tapes=8, gap=8.0))[0]
    gaps = [closed.girth - hoop.girth for hoop, closed in zip(shape.hoops[:2], whole.hoops[:2], strict=True)]
    assert gaps == pytest.approx([0.2, 0.3])


def test_a_strap_spans_each_opening(make):
    shape = draw(opened(make, Opening(3, None, True)))[0]
    assert [tie.kind for tie in shape.ties] == ["strap"] * 3
    for tie in shape.ties:
        path = shape.hoop(tie.hoop).plan.path
        assert tie.length == pytest.approx(dist(path[0], path[-1]))
    assert draw(opened(make, Opening(3, None, False)))[0].ties == ()


def test_ends_beyond_their_tapes_are_told(make):
    codes = [one.code for one in draw(opened(make, Opening(2, Graded(0.02, 0.02), True)))[1]]
    assert "ends-loose" in codes
    assert "ends-loose" not in [one.code for one in draw(opened(make, Opening(2, None, True)))[1]]


def test_only_closed_hoops_have_to_pass_over_the_hips(make):
    shape = draw(opened(make, Opening(3, None, True), hip=52.0))[0]
    step = next(check for check in shape.checks if check.code == "step-in")
    assert step.part == "H4"
