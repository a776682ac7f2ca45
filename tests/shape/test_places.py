"""Hoop places: equal lengths from hoop to hoop on the line, level drops, widening, and listed."""

import itertools
from dataclasses import replace
from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.compile import compile_spec
from hoopwright.shape.draw import draw
from hoopwright.spec.model import Line, PlaceListed, TableRow


def drawn(spec):
    shape, findings = draw(spec)
    assert shape is not None, findings
    return shape


def refused(spec):
    shape, findings = draw(spec)
    assert shape is None
    return [found.code for found in findings]


def chords(shape):
    points = [(hoop.height, hoop.plan.width / 2) for hoop in shape.hoops]
    return [hypot(a[0] - b[0], a[1] - b[1]) for a, b in itertools.pairwise(points)]


@settings(max_examples=40, deadline=None)
@given(power=st.floats(1.05, 3.0), kind=st.sampled_from(["dome", "bell", "cone"]), count=st.integers(3, 14),
       below=st.floats(2.0, 15.0), hem=st.floats(60.0, 160.0), band=st.sampled_from([None, 6.0, 9.0]))
def test_by_tape_gives_equal_chords_on_the_line(make, power, kind, count, below, hem, band):
    shape = drawn(make.spec(line=Line(kind, power), count=count, below=below, hem=hem, band=band))
    lengths = chords(shape) if band is None else chords(shape)[:-1]
    assert lengths == pytest.approx([lengths[0]] * len(lengths), rel=1e-9)
    heights = [hoop.height for hoop in shape.hoops]
    assert heights == sorted(heights, reverse=True)
    assert [hoop.girth for hoop in shape.hoops] == sorted(hoop.girth for hoop in shape.hoops)


def test_level_gives_equal_drops(make):
    heights = [hoop.height for hoop in drawn(make.spec(spacing="level", band=None)).hoops]
    drops = [a - b for a, b in itertools.pairwise(heights)]
    assert drops == pytest.approx([drops[0]] * len(drops))


def test_widening_multiplies_each_stretch(make):
    lengths = chords(drawn(make.spec(spacing="widening", ratio=1.2)))[:-1]
    assert [b / a for a, b in itertools.pairwise(lengths)] == pytest.approx([1.2] * 4)


def test_cone_goes_on_through_the_band(make):
    """Cone from 28 at 41 to 110 at 7 3/16: girth grows 82/33.8125 in an inch of height."""
    shape = drawn(make.spec(line=Line("cone", 1.0)))
    slope = 82 / (41 - 7.1875)
    for hoop in shape.hoops:
        assert hoop.girth / make.inch == pytest.approx(28 + slope * (41 - hoop.height / make.inch))
    assert shape.hoops[-2].girth < shape.hoops[-1].girth
    assert (shape.hoops[-2].height - shape.hoops[-1].height) / make.inch == pytest.approx(9.0)


def test_dome_has_both_band_hoops_of_full_girth(make):
    assert drawn(make.spec()).hoops[-2].girth == pytest.approx(110 * make.inch)


def test_a_stated_top_girth_is_the_anchor(make):
    shape = drawn(make.spec(top_girth=50.0, line=Line("cone", 1.0), band=None))
    top, hem = shape.hoops[0], shape.hoops[-1]
    assert top.girth / make.inch == pytest.approx(50.0)
    middle = (top.height + hem.height) / 2
    near = min(shape.hoops, key=lambda hoop: abs(hoop.height - middle))
    share = (top.height - near.height) / (top.height - hem.height)
    assert near.girth / make.inch == pytest.approx(50 + 60 * share)


def test_listed_places_in_three_ways_agree(make):
    """The same three hoops by depth below the waist, by height, and by the length down a tape at the side."""
    m = make.inch
    by_depth = drawn(make.spec(count=4, band=None, spacing="listed",
                               listed=tuple(PlaceListed(below_waist=d * m) for d in (6, 12, 20))))
    by_height = drawn(make.spec(count=4, band=None, spacing="listed",
                                listed=tuple(PlaceListed(height=h * m) for h in (35.5, 29.5, 21.5))))
    start = (41.0 * m, 0.0)
    run, places = 0.0, []
    from hoopwright.shape.waist import waist_of

    last = waist_of(make.spec()).side_start
    assert last[0] == pytest.approx(start[0])
    for hoop in by_depth.hoops[:3]:
        run += hypot(last[0] - hoop.height, last[1] - hoop.girth / (2 * pi))
        last = (hoop.height, hoop.girth / (2 * pi))
        places.append(PlaceListed(down_tape=run))
    by_tape = drawn(make.spec(count=4, band=None, spacing="listed", listed=tuple(places)))
    for other in (by_height, by_tape):
        assert [hoop.height for hoop in other.hoops] == pytest.approx([hoop.height for hoop in
        by_depth.hoops])


def test_down_tape_is_the_mark_of_a_tape_at_the_side(make):
    """A tape that runs at the side from waist to hem has its marks where the hoops were asked for."""
    spec = make.spec(count=4, band=None, spacing="listed", tapes=4, gap=None,
                     listed=tuple(PlaceListed(down_tape=d * make.inch) for d in (5, 8, 20)))
    quarters = (0.0, 0.25, 0.5, 0.75)
    tapes = replace(spec.build.tapes, waist_fractions=quarters, hem_fractions=quarters)
    shape = drawn(replace(spec, build=replace(spec.build, tapes=tapes)))
    assert [mark.at / make.inch for mark in shape.tapes[1].marks[:3]] == pytest.approx([5, 8, 20])


def test_top_hoop_may_be_placed_down_the_tape(make):
    free = drawn(make.spec(top=PlaceListed(down_tape=7 * make.inch)))
    stated = drawn(make.spec(top=PlaceListed(down_tape=7 * make.inch), top_girth=58.0))
    for shape in (free, stated):
        top = shape.hoops[0]
        from hoopwright.shape.waist import waist_of

        start = waist_of(make.spec()).side_start
        assert hypot(start[0] - top.height, start[1] - top.plan.width / 2) / make.inch == pytest.approx(7.0)


def test_impossible_places_are_refused_each_by_its_name(make):
    m = make.inch
    listed = tuple(PlaceListed(height=h * m) for h in (30, 34, 20))
    assert refused(make.spec(below=35.0)) == ["top-hoop-below-hem"]
    assert refused(make.spec(below=35.0, top_girth=50.0)) == ["top-hoop-below-hem"]
    assert refused(make.spec(below=0.2)) == ["top-hoop-above-waistband"]
    assert refused(make.spec(hem=27.0)) == ["hem-not-wider"]
    assert refused(make.spec(count=400)) == ["hoops-do-not-fit"]
    assert refused(make.spec(count=1)) == ["hoops-do-not-fit"]
    free = {"band": None, "spacing": "listed", "listed": listed}
    assert refused(make.spec(count=4, **free)) == ["hoop-places-out-of-order"]
    assert refused(make.spec(count=7, **free)) == ["hoop-places-miscounted"]
    assert refused(make.spec(band=None, to="band")) == ["band-missing"]
    assert refused(make.spec(top=PlaceListed(down_tape=60 * m))) == ["down-tape-too-far"]
    assert refused(make.spec(off_floor=45.0)) == ["top-hoop-below-hem"]
    rows = (TableRow(30 * m, 60 * m), TableRow(31 * m, 70 * m))
    assert refused(make.spec(line=Line("table", 1.0, rows))) == ["table-not-falling"]


def table(make, *rows):
    return Line("table", 1.0, tuple(TableRow(h * make.inch, g * make.inch) for h, g in rows))


def test_table_rows_that_narrow_or_play_no_part_are_warned_of(make):
    rows = table(make, (36, 50), (30, 80), (20, 70))
    shape, findings = draw(make.spec(line=rows, band=None, top_girth=60.0))
    assert shape is not None
    assert [(found.code, found.path[-1]) for found in findings if found.code != "shelf"] == [
        ("table-row-unused", 0), ("table-narrows", 2)]


def test_rows_from_the_waist_to_the_hem_are_the_whole_line(make):
    """Where the rows reach over all hoops, nothing else bends the curve; knots as a cubic by itself."""
    from hoopwright.shape.curves.pchip import monotone_cubic

    rows = [(41.5, 28.0), (30.0, 70.0), (20.0, 100.0), (7.0, 110.0)]
    shape = drawn(make.spec(line=table(make, *rows), band=None, off_floor=7 - 0.1875))
    curve = monotone_cubic([-h for h, _ in rows], [g for _, g in rows])
    for hoop in shape.hoops:
        assert hoop.girth / make.inch == pytest.approx(curve(-hoop.height / make.inch))


def test_rows_that_begin_at_the_top_hoop_are_the_whole_line(make):
    from hoopwright.shape.curves.pchip import monotone_cubic

    rows = [(35.5, 58.0), (30.0, 70.0), (20.0, 100.0), (7.0, 110.0)]
    shape = drawn(make.spec(line=table(make, *rows), band=None, off_floor=7 - 0.1875))
    curve = monotone_cubic([-h for h, _ in rows], [g for _, g in rows])
    assert shape.hoops[3].girth / make.inch == pytest.approx(curve(-shape.hoops[3].height / make.inch))


def test_rows_that_disagree_with_the_hem_are_refused(make):
    spec = make.spec(line=table(make, (30, 80), (5, 100)))
    assert refused(spec) == ["table-hem-differs"]
    assert draw(spec)[1][0].path[-2:] == ("rows", 1)


def test_rows_that_begin_at_the_first_hoop_of_a_list_are_the_whole_line(make):
    """As where the top hoop's place is stated by itself: the waist's girth does not bend the curve."""
    from hoopwright.shape.curves.pchip import monotone_cubic

    rows = [(34.0, 60.0), (30.0, 70.0), (20.0, 100.0), (7.0, 110.0)]
    places = tuple(PlaceListed(height=h * make.inch) for h in (34, 29, 21))
    shape = drawn(make.spec(line=table(make, *rows), band=None, off_floor=7 - 0.1875, count=4, spacing="listed",
                            listed=places))
    curve = monotone_cubic([-h for h, _ in rows], [g for _, g in rows])
    for hoop in shape.hoops:
        assert hoop.girth / make.inch == pytest.approx(curve(-hoop.height / make.inch))


def test_a_list_may_begin_below_the_top_hoop_or_with_it_and_no_shorter(make):
    """Four hoops: three above the hem are listed, or two below the top hoop; one is too few, four too many."""
    places = [PlaceListed(height=h * make.inch) for h in (29.5, 21.5, 15, 12)]
    listed = {n: make.spec(count=4, band=None, spacing="listed", listed=tuple(places[:n])) for n in (1, 2, 3, 4)}
    two, three = drawn(listed[2]), drawn(listed[3])
    assert [hoop.height / make.inch for hoop in two.hoops[1:3]] == pytest.approx([29.5, 21.5])
    assert [hoop.height / make.inch for hoop in three.hoops[:3]] == pytest.approx([29.5, 21.5, 15])
    assert two.hoops[0].height > two.hoops[1].height
    assert refused(listed[1]) == refused(listed[4])


def test_one_hoop_is_a_hem_hoop(make):
    shape = drawn(make.spec(count=1, band=None))
    assert [(hoop.place, round(hoop.girth / make.inch, 6)) for hoop in shape.hoops] == [("hem", 110.0)]


@pytest.mark.parametrize("band", ["", ", hem_band: {depth: 8 in, material: calico}"], ids=["bare", "hem band"])
def test_how_many_hoops_fit_from_the_hem_up_is_told_as_the_maker_counts_them(band):
    """All hoops count, a hem band's two included: as many as are said to fit do, and one more does not."""
    def compiled(count):
        return compile_spec(f"""\
spec: 1
units: inches
wearer: {{stature: 65 in, waist: 28 in}}
shape: {{line: {{kind: cone}}, hem: {{girth: 110 in}}, hoops: {{count: {count}, spacing: from hem, every: 5 in}}}}
build: {{hoops: {{material: "spring steel, tempered"}}{band}}}
""".encode(), "cage.yaml")

    wrong = next(one for one in compiled(12).diagnostics if one.code == "hoops-do-not-fit")
    assert wrong.message.startswith("12 hoops")
    fit = int(wrong.help.split("at most ")[1].split()[0])
    made = compiled(fit).plan
    assert made is not None
    assert len(made.shape.hoops) == fit
    assert compiled(fit + 1).plan is None
