"""Oval and thrown-back cages: worked numbers, tapes of different lengths, plans at odds with themselves."""

from dataclasses import replace
from math import dist, pi

import pytest

from hoopwright.shape.curves.ellipse import from_girth, point_at
from hoopwright.shape.curves.tied import tied_ring
from hoopwright.shape.draw import draw
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.waist import waist_of
from hoopwright.spec.model import Graded, GroundPlan, Line, PlaceListed, TieBuild


def oval_spec(make, plan: GroundPlan, **more):
    spec = make.spec(**more)
    build = replace(spec.build, ties=TieBuild(make.twill, 0))
    return replace(spec, shape=replace(spec.shape, ground_plan=plan), build=build)


BACK = GroundPlan("thrown back", Graded(1.2, 1.2), Graded(0.0, 5 * 0.0254))


def test_girth_110_at_six_to_five_thrown_back_five(make):
    """38.1 x 31.8; thrown back 5: 10.9 in front and 20.9 behind the waist's centre."""
    hem = draw(oval_spec(make, BACK))[0].hoops[-1].plan
    inch = make.inch
    assert (hem.width / inch, hem.depth / inch) == pytest.approx((38.1, 31.8), abs=0.05)
    assert (hem.depth / 2 - hem.offset) / inch == pytest.approx(10.9, abs=0.05)
    assert (hem.depth / 2 + hem.offset) / inch == pytest.approx(20.9, abs=0.05)
    assert hem.kind == "oval"


def test_straight_tapes_to_that_hoop_differ_all_round(make):
    """Waist 28 at 1.4 is 10.3 x 7.4; the hoop 33 1/2 below: front 34.3, quarter girth 36.6, back 37.7."""
    waist = from_girth(28.0, 1.4)
    assert (2 * waist.a, 2 * waist.b) == pytest.approx((10.3, 7.4), abs=0.06)
    spec = oval_spec(make, BACK, count=1, band=None, heights=(41.0,) * 4, tapes=4, gap=None,
                     off_floor=41 - 0.5 - 33.5 - 0.1875)
    quarters = (0.0, 0.25, 0.5, 0.75)
    tapes = replace(spec.build.tapes, waist_fractions=quarters, hem_fractions=quarters)
    narrow = tuple(replace(row, girth=0.1) for row in spec.wearer.hip_rows)
    spec = replace(spec, build=replace(spec.build, tapes=tapes), wearer=replace(spec.wearer, hip_rows=narrow))
    shape = draw(spec)[0]
    lengths = [tape.marks[-1].at / make.inch for tape in shape.tapes]
    assert lengths == pytest.approx([34.3, 36.6, 37.7, 36.6], abs=0.06)


def test_width_over_depth_and_set_back_are_even_with_height(make):
    plan = GroundPlan("thrown back", Graded(1.4, 1.0), Graded(0.02, 0.12))
    shape = draw(oval_spec(make, plan))[0]
    top, hem = shape.hoops[0], shape.hoops[-1]
    for hoop in shape.hoops:
        share = (top.height - hoop.height) / (top.height - hem.height)
        assert hoop.plan.width / hoop.plan.depth == pytest.approx(1.4 - 0.4 * share)
        assert hoop.plan.offset == pytest.approx(0.02 + 0.1 * share)
        assert from_girth(hoop.girth, 1.4 - 0.4 * share).perimeter == pytest.approx(hoop.girth)


def test_reaches_give_the_hems_oval(make):
    inch = make.inch
    plan = GroundPlan("thrown back", Graded(1.0, 0.0), Graded(0.0, 5 * inch), (10.9 * inch, 20.9 * inch))
    hem = draw(oval_spec(make, plan))[0].hoops[-1].plan
    assert hem.width / hem.depth == pytest.approx(1.2, abs=0.01)
    assert hem.depth / inch == pytest.approx(31.8)


def test_reaches_no_oval_has_are_refused(make):
    inch = make.inch
    far = GroundPlan("thrown back", Graded(1.0, 0.0), Graded(0.0, 0.0), (28 * inch, 28 * inch))
    assert [f.code for f in draw(oval_spec(make, far))[1]] == ["reach-too-far"]
    two = GroundPlan("thrown back", Graded(1.0, 1.4), Graded(0.0, 5 * inch), (10.9 * inch, 20.9 * inch))
    assert [f.code for f in draw(oval_spec(make, two))[1]] == ["reach-disagrees"]
    near = replace(two, oval=Graded(1.0, 1.19))
    assert "reach-disagrees" not in [f.code for f in draw(oval_spec(make, near))[1]]


def test_ties_lie_beside_the_legs_and_measure_the_oval(make):
    shape = draw(oval_spec(make, GroundPlan("oval", Graded(1.3, 1.3)), band=None, hip=36.0))[0]
    legs = shape.body[-1].width / 2
    assert len(shape.ties) >= 8
    for tie in shape.ties:
        hoop = shape.hoop(tie.hoop)
        ellipse = from_girth(hoop.girth, 1.3)
        (x1, y1), (x2, y2) = point_at(ellipse, tie.at), point_at(ellipse, tie.to)
        assert x1 == pytest.approx(x2)
        assert abs(x1) > legs
        assert tie.length == pytest.approx(y1 - y2)
        assert tie.pull > 0
    codes = {check.code: check.result for check in shape.checks}
    assert codes["tie-clear"] == "holds"
    assert codes["oval"] == "holds"


def test_a_single_tie_through_the_middle_is_told_as_in_the_way(make):
    spec = oval_spec(make, GroundPlan("oval", Graded(1.2, 1.2)))
    spec = replace(spec, build=replace(spec.build, ties=TieBuild(make.twill, 1)))
    shape = draw(spec)[0]
    assert {(round(tie.at, 9), round(tie.to, 9)) for tie in shape.ties} == {(0.0, 0.5)}
    assert next(check.result for check in shape.checks if check.code == "tie-clear") == "fails"


def test_a_single_tie_pulls_by_the_square_of_the_hoops_curvature(make):
    """A ring as deep as an oval of six to five wants A/R^2 times the pull of a ring of radius 1 (about 1.157 A/R^2 when
    it is drawn on until its width is 1.2 times its depth), whatever its size."""
    alone = tied_ring(1.2, (0.0,)).pulls[0]
    assert alone == pytest.approx(1.157, rel=0.06)
    for girth in (90.0, 110.0):
        spec = oval_spec(make, GroundPlan("oval", Graded(1.2, 1.2)), hem=girth)
        spec = replace(spec, build=replace(spec.build, ties=TieBuild(make.twill, 1)))
        shape, told = draw(spec)
        assert shape is not None, told
        tie = next(one for one in shape.ties if one.hoop == shape.hoops[-1].id)
        radius = girth * make.inch / (2 * pi)
        assert tie.pull * radius**2 == pytest.approx(alone, rel=1e-6)


def test_a_deep_oval_is_tied_behind_the_legs(make):
    plan = GroundPlan("thrown back", Graded(0.85, 0.85), Graded(0.06, 0.1))
    shape = draw(oval_spec(make, plan, band=None, hip=36.0))[0]
    crosses = [tie for tie in shape.ties if tie.hoop == shape.hoops[-1].id]
    assert crosses
    for tie in crosses:
        assert tie.at + tie.to == pytest.approx(1.0)


def across(shape, hoop):
    """Both ends of each tie of a hoop, m."""
    oval = ellipse_of(hoop.plan)
    return [(point_at(oval, tie.at), point_at(oval, tie.to)) for tie in shape.ties if tie.hoop == hoop.id]


def test_ties_keep_an_inch_clear_of_the_legs_where_half_way_out_is_too_near(make):
    """Half way out is the usual place; the hoop beside wide hips is tied an inch outside them."""
    shape = draw(oval_spec(make, GroundPlan("oval", Graded(1.3, 1.3)), band=None, hip=56.0))[0]
    assert all(abs(x) >= hoop.plan.width / 4 - 1e-9 for hoop in shape.hoops for (x, _), _ in across(shape, hoop))
    legs = shape.body[-1].width / 2
    low = [abs(a[0]) for hoop in shape.hoops if hoop.height < shape.body[-1].height for a, _ in across(shape, hoop)]
    assert min(low) >= legs + make.inch - 1e-9
    assert any(abs(x - legs - make.inch) < 1e-6 for x in low)


def test_three_ties_lie_evenly_one_through_the_middle(make):
    spec = oval_spec(make, GroundPlan("oval", Graded(1.3, 1.3)), band=None)
    shape = draw(replace(spec, build=replace(spec.build, ties=TieBuild(make.twill, 3))))[0]
    hem = shape.hoops[-1]
    xs = sorted(a[0] for a, _ in across(shape, hem))
    assert xs == pytest.approx([-xs[2], 0.0, xs[2]], abs=1e-9)
    assert xs[2] >= hem.plan.width / 4 - 1e-9


def test_a_deep_oval_with_one_tie_has_it_an_inch_behind_the_legs(make):
    """Its tie runs from side to side behind her, square to the long way."""
    spec = oval_spec(make, GroundPlan("oval", Graded(0.8, 0.8), Graded(0.0, 4 * make.inch)), band=None)
    shape = draw(replace(spec, build=replace(spec.build, ties=TieBuild(make.twill, 1))))[0]
    legs = shape.body[-1].depth / 2
    for hoop in shape.hoops:
        if hoop.height < shape.body[-1].height:
            [((x1, y1), (x2, y2))] = across(shape, hoop)
            assert (x1, y1) == pytest.approx((-x2, y2), abs=1e-9)
            assert y1 == pytest.approx(-legs - make.inch, abs=1e-9)


def test_a_round_cage_has_no_ties_and_no_tie_checks(make):
    shape = draw(oval_spec(make, GroundPlan()))[0]
    assert shape.ties == ()
    assert not {"oval", "tie-clear"} & {check.code for check in shape.checks}


def test_the_real_line_closes_round_the_girth(make):
    shape = draw(oval_spec(make, GroundPlan("oval", Graded(1.25, 1.25)), band=None))[0]
    hem = shape.hoops[-1]
    run = sum(dist(a, b) for a, b in zip(hem.real, (*hem.real[1:], hem.real[0]), strict=True))
    assert run == pytest.approx(hem.girth, rel=1e-3)
    assert hem.real[0][0] == pytest.approx(0.0, abs=1e-6)
    assert hem.real[0][1] > 0
    assert hem.real[len(hem.real) // 4][0] > 0  # by the wearer's left


def test_down_tape_finds_the_top_hoop_of_an_oval_too(make):
    plan = GroundPlan("oval", Graded(1.3, 1.1))
    spec = oval_spec(make, plan, top=PlaceListed(down_tape=8 * make.inch), line=Line("cone", 1.0))
    side, top = waist_of(spec).side_start, draw(spec)[0].hoops[0]
    run = ((side[0] - top.height) ** 2 + (side[1] - top.plan.width / 2) ** 2) ** 0.5
    assert run / make.inch == pytest.approx(8.0, abs=1e-6)
