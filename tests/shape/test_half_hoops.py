"""Half hoops: springs at a chord behind the body, full hoops below them, lacings; bad plans told."""

from dataclasses import replace
from itertools import pairwise
from math import dist
from pathlib import Path

import pytest

from hoopwright.shape.body import Body
from hoopwright.shape.curves.bow import of_length
from hoopwright.shape.draw import draw
from hoopwright.shape.tying.lacing import cord_length, eyelet_count
from hoopwright.source.quantity import length_text
from hoopwright.spec.model import Graded

BUSTLE = (Path(__file__).parents[1] / "external" / "data" / "by_hand" / "half.yaml").read_text()
CRINOLETTE = """\
spec: 1
units: inches
wearer: {stature: 65 in, waist: 26 in, hip: 37 in}
shape:
  ground_plan:
    {kind: half, chord: {top: 11 in, hem: 24 in}, reach: {top: 5 in, hem: 15 in},
     full: {count: 1, width_over_depth: 0.9}}
  top_hoop: {below_waist: 7 in}
  hem: {girth: 92 in}
  hoops: {count: 13}
"""


def test_six_steels_three_and_a_half_apart_are_17_and_a_half_from_first_to_last(drawn):
    shape = drawn(BUSTLE).shape
    heights = [hoop.height / 0.0254 for hoop in shape.hoops]
    assert heights[0] - heights[-1] == pytest.approx(17.5, abs=0.01)
    assert [a - b for a, b in pairwise(heights)] == pytest.approx([3.5] * 5, abs=0.002)


def test_each_steel_is_the_bow_of_its_chord_and_reach(drawn):
    shape = drawn(BUSTLE).shape
    low = shape.hoops[-1]
    assert low.girth / 0.0254 == pytest.approx(22.02, abs=0.005)  # a circle would ask for 23.2
    assert low.cut == low.girth
    assert low.plan.depth / 0.0254 == pytest.approx(8.0)
    assert (low.plan.kind, low.closed, low.start, low.end) == ("bow", False, 0.25, 0.75)
    for hoop in shape.hoops:
        bow = of_length(hoop.girth, 12 * 0.0254)
        assert hoop.plan.depth == pytest.approx(bow.reach)
        assert dist(hoop.plan.path[0], hoop.plan.path[-1]) == pytest.approx(12 * 0.0254)
        assert hoop.plan.path[0][1] == pytest.approx(-2 * 0.0254)
        assert hoop.plan.path[0][0] > 0  # begins at the wearer's left
        assert min(y for _, y in hoop.plan.path) == pytest.approx(-2 * 0.0254 - bow.reach)


def test_ties_hold_the_chords_with_the_bows_pull(drawn):
    shape = drawn(BUSTLE).shape
    assert [tie.kind for tie in shape.ties] == ["chord"] * 6
    for tie, hoop in zip(shape.ties, shape.hoops, strict=True):
        assert tie.span == pytest.approx(12 * 0.0254)
        assert tie.length > tie.span  # the ends lie 2 in behind the waist's centre, the body farther
        assert tie.cut == pytest.approx(tie.length + 3 * 0.0254)
        assert tie.pull == pytest.approx(of_length(hoop.girth, tie.span).pull)


def test_tapes_run_round_the_back_from_end_to_end(drawn):
    shape = drawn(BUSTLE).shape
    assert [tape.waist_fraction for tape in shape.tapes] == [0.25, 0.375, 0.5, 0.625, 0.75]
    for hoop in shape.hoops:
        assert hoop.fixings[0].at[:2] == pytest.approx(hoop.plan.path[0])
        assert hoop.fixings[-1].at[:2] == pytest.approx(hoop.plan.path[-1])


def test_the_skirt_hangs_straight_in_front_and_over_the_steels_behind(drawn):
    skirt = drawn(BUSTLE).shape.skirt
    assert skirt.back > skirt.front
    assert skirt.front / 0.0254 == pytest.approx(40.0, abs=1.0)
    assert "stride" not in {check.code for check in drawn(BUSTLE).shape.checks}


def test_a_crinolette_has_half_hoops_and_a_full_hem_hoop_as_far_back(drawn):
    shape = drawn(CRINOLETTE).shape
    assert [hoop.closed for hoop in shape.hoops] == [False] * 12 + [True]
    hem = shape.hoops[-1]
    assert hem.girth / 0.0254 == pytest.approx(92.0)
    assert hem.plan.width / hem.plan.depth == pytest.approx(0.9)
    assert (hem.plan.depth / 2 + hem.plan.offset) / 0.0254 == pytest.approx(15.0)
    assert {tape.id for tape in shape.tapes} - {fix.tape for fix in shape.hoops[-2].fixings} == {"T1", "T7"}
    assert len(hem.fixings) == 7


def test_the_top_hoops_ends_rest_on_the_body_unless_said_otherwise(drawn):
    shape = drawn(CRINOLETTE).shape
    top = shape.hoops[0]
    oval = Body(shape.body).outline(top.height)
    x, y = top.plan.path[0]
    assert (x / oval.a) ** 2 + (y / oval.b) ** 2 == pytest.approx(1.0)
    backs = [-hoop.plan.path[0][1] for hoop in shape.hoops[:-1]]
    falls = [(a - b) / (h.height - k.height)
             for a, b, h, k in zip(backs, backs[1:], shape.hoops, shape.hoops[1:], strict=False)]
    assert falls == pytest.approx([falls[0]] * len(falls))  # evenly forward to under the waist


def test_a_lacing_holds_the_chords_and_is_cut_as_two_panels_and_cord(drawn):
    made = drawn(BUSTLE).spec
    laced = drawn(BUSTLE.replace("build: {", "build: {lacing: {gap: 2 in, spacing: 1 in}, "))
    shape = laced.shape
    [panel] = shape.panels
    assert (panel.count, panel.mirrored, panel.grain) == (2, True, "up")
    assert {tie.kind for tie in shape.ties} == {"lacing"}
    assert all(tie.cut == 0.0 for tie in shape.ties)
    widest = max(tie.length for tie in shape.ties) / 0.0254
    assert panel.width / 0.0254 == pytest.approx((widest - 2) / 2 + 1.5 + 0.5)  # half less the gap, the facing, a seam
    assert panel.height / 0.0254 == pytest.approx(17.5 + 2 + 1, abs=0.01)
    assert eyelet_count(laced.spec, shape.panels) == 2 * 21
    assert cord_length(laced.spec, shape.panels) > 2 * 42 / 2 * 2 * 0.0254
    assert cord_length(made, shape.panels) == 0.0


@pytest.mark.parametrize(("old", "new", "code"), [
    ("chord: 12 in, reach: {top: 4 in, hem: 8 in}", "chord: 0 in, reach: 4 in", "amount-not-positive"),
    ("reach: {top: 4 in, hem: 8 in}, ", "", "key-missing"),
    ("off_floor: 19 13/16 in", "off_floor: 20 in, girth: 23 in", "keys-clash"),
    ("build: {", "build: {tapes: {front_gap: 6 in}, ", "gap-with-half-hoops"),
    ("build: {", "build: {hem_band: {depth: 5 in}, ", "band-with-half-hoops"),
    ("  hem:", "  opening: {hoops: 2}\n  hem:", "opening-with-half-hoops"),
    ("set_back: 2 in", "set_back: 2 in, full: {count: 9}", "opening-too-deep"),
])
def test_half_hoops_at_odds_with_themselves_are_refused(old: str, new: str, code: str) -> None:
    from hoopwright.source.read import read
    from hoopwright.spec.resolve import resolve

    document, _ = read(BUSTLE.replace(old, new).encode(), "cage.yaml")
    assert document is not None
    spec, found = resolve(document)
    assert spec is None
    assert code in {one.code for one in found}


def test_a_chord_as_long_as_the_steel_is_refused(drawn):
    spec = drawn(BUSTLE).spec
    plan = spec.shape.ground_plan
    bare = replace(plan.half, reach=None)
    shape = replace(spec.shape, ground_plan=replace(plan, half=bare), top_girth=0.25, hem_girth=0.5)
    assert [one.code for one in draw(replace(spec, shape=shape))[1]] == ["chord-too-long"]


def test_a_chord_that_is_too_long_is_told_with_its_end_and_both_lengths(drawn):
    spec = drawn(BUSTLE).spec
    half = replace(spec.shape.ground_plan.half, reach=None)
    told = {}
    for chord in (Graded(0.3, 0.2), Graded(0.2, 0.5)):
        plan = replace(spec.shape.ground_plan, half=replace(half, chord=chord))
        shape = replace(spec.shape, ground_plan=plan, top_girth=0.25, hem_girth=0.45)
        (finding,) = draw(replace(spec, shape=shape))[1]
        told[finding.path[-1]] = (finding.message, finding.help)
    long = {metres: length_text(metres, spec.units) for metres in (0.2, 0.25, 0.3, 0.45, 0.5)}
    assert told["top"][0].startswith(f"at the top the chord is {long[0.3]} and the steel {long[0.25]}")
    assert "`girth` under `top_hoop`" in told["top"][1]
    assert told["hem"][0].startswith(f"at the hem the chord is {long[0.5]} and the steel {long[0.45]}")
    assert f"less than {long[0.45]} at the hem" in told["hem"][1]
