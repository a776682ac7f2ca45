"""Tapes and their marks: numbers by hand, shortest way over the hips, symmetry."""

import itertools
from math import degrees, dist, hypot, pi

import pytest

from hoopwright.shape.body import Body
from hoopwright.shape.draw import draw
from hoopwright.shape.model import BodyRow
from hoopwright.shape.tapes import fraction_at_height, lean, over_body
from hoopwright.spec.model import Line, PlaceListed, TableRow

HEIGHTS, GIRTHS = (35.0, 28.0, 21.0, 14.0, 7.0), (50.0, 65.0, 80.0, 95.0, 110.0)


def round_waist_cage(make, **changes):
    """Waist 28 round, tapes from 40 1/2, five hoops of girth 50 to 110 at 35 to 7 in."""
    m = make.inch
    rows = tuple(TableRow(h * m, g * m) for h, g in zip(HEIGHTS[:4], GIRTHS[:4], strict=True))
    spec = make.spec(waist_oval=1.0, heights=(41.0,) * 4, hip=30.0, gap=None, band=None, count=5,
    off_floor=7 - 0.1875, spacing="listed", line=Line("table", 1.0, rows),
                     listed=tuple(PlaceListed(height=h * m) for h in HEIGHTS[:4]), **changes)
    shape, _ = draw(spec)
    assert shape is not None
    return shape


def test_marks_by_hand(make):
    """Plain geometry: radii 4.46, 7.96, 10.35 ... 17.51 in; marks 6.52, 13.92, 21.31, 28.71, 36.10 in."""
    for tape in round_waist_cage(make).tapes:
        assert [mark.at / make.inch for mark in tape.marks] == pytest.approx([6.52, 13.92, 21.31, 28.71,
        36.10], abs=0.006)


def test_strip_for_those_by_hand(make):
    """400 in of girth and five laps of 1 in."""
    assert round_waist_cage(make).total_hoop_length / make.inch == pytest.approx(405.0)


def test_lean_by_hand(make):
    """From radius 4.456 to 7.958 in a drop of 5 1/2: atan(3.501/5.5) = 32.5 degrees."""
    assert degrees(round_waist_cage(make).tapes[0].marks[0].lean) == pytest.approx(32.48, abs=0.01)


def test_cut_adds_turning_wrap_and_reserve(make):
    tape = round_waist_cage(make).tapes[0]
    assert (tape.cut - tape.marks[-1].at) / make.inch == pytest.approx(6.0)


def test_fraction_changes_evenly_with_depth_the_short_way():
    assert fraction_at_height(0.1, 0.2, 1.0, 0.0, 0.25) == pytest.approx(0.175)
    assert fraction_at_height(0.95, 0.05, 1.0, 0.0, 0.5) % 1.0 == pytest.approx(0.0, abs=1e-12)


def test_every_mark_is_the_sum_of_straight_stretches(make):
    shape, _ = draw(make.spec())
    for k, tape in enumerate(shape.tapes):
        points = [tape.start, *(hoop.fixings[k].at for hoop in shape.hoops)]
        run = 0.0
        for mark, (a, b) in zip(tape.marks, itertools.pairwise(points), strict=True):
            run += dist(a, b)
            assert mark.at == pytest.approx(run)
            assert mark.lean == pytest.approx(lean(a, b))


def test_fixings_lie_on_their_hoop(make):
    for hoop in draw(make.spec())[0].hoops:
        for fixing in hoop.fixings:
            assert hypot(fixing.at[0], fixing.at[1]) == pytest.approx(hoop.girth / (2 * pi))
            assert fixing.at[2] == hoop.height


def test_tapes_to_the_band_end_at_its_upper_hoop(make):
    to_hem, to_band = draw(make.spec())[0], draw(make.spec(to="band"))[0]
    assert {tape.ends_at for tape in to_band.tapes} == {"H6"}
    assert to_band.hoop("H7").fixings == ()
    for longer, shorter in zip(to_hem.tapes, to_band.tapes, strict=True):
        assert [mark.at for mark in longer.marks[:6]] == pytest.approx([mark.at for mark in shorter.marks])


def test_way_over_the_hips_by_hand():
    """A 3-4-5 pair: from (0, .3) out to .6 at .4 lower, then .4 in and .3 down: 0.5 + 0.5."""
    body = Body((BodyRow(1.0, 0.6, 0.6), BodyRow(0.6, 1.2, 1.2)))
    way = over_body((0.0, 0.3, 1.0), (0.0, 0.2, 0.3), body)
    assert [point[2] for point in way] == [1.0, 0.6, 0.3]
    assert sum(dist(a, b) for a, b in itertools.pairwise(way)) == pytest.approx(1.0)


def test_straight_where_the_body_is_clear_of_the_line():
    body = Body((BodyRow(1.0, 0.6, 0.6), BodyRow(0.6, 0.7, 0.7)))
    assert len(over_body((0.0, 0.3, 1.0), (0.0, 0.6, 0.3), body)) == 2


def test_rows_inside_the_hull_are_not_touched():
    """A row that a lower, wider one bridges over plays no part in the shortest way."""
    body = Body((BodyRow(0.9, 0.62, 0.62), BodyRow(0.6, 1.2, 1.2)))
    assert [p[2] for p in over_body((0.0, 0.3, 1.0), (0.0, 0.3, 0.3), body)] == [1.0, 0.6, 0.3]


def test_large_hips_push_the_first_stretch_out_and_are_reported(make):
    lean_body, _ = draw(make.spec(below=12.0, hem=80.0, line=Line("bell", 1.6)))
    stout, _ = draw(make.spec(below=12.0, hem=80.0, line=Line("bell", 1.6), hip=44.0))
    assert stout.tapes[0].marks[0].on_body
    assert stout.tapes[0].marks[0].at > lean_body.tapes[0].marks[0].at
    assert {contact.part for contact in stout.contacts} >= {"T1"}
