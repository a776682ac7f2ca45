"""The small drawing kit: numbers, escaping, label placing, curves, and its refusals."""

from __future__ import annotations

from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from hoopwright.render.drawing.body import oval
from hoopwright.render.drawing.letters import Box, clip, escape, free, text_box, text_width, wrap
from hoopwright.render.drawing.sheet import Sheet, num
from hoopwright.render.drawing.spread import spread
from hoopwright.render.drawing.steps import SKETCHES, WITHOUT
from hoopwright.work.actions import ACTIONS

PLACES = st.floats(-1e4, 1e4)
SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize(("value", "text"), [
    (0.0, "0"), (-0.0, "0"), (-0.0001, "0"), (1.0, "1"), (1.5, "1.5"), (1 / 3, "0.333"), (-2.25, "-2.25"),
    (1e6, "1000000"),
])
def test_numbers_are_short_and_never_minus_nothing(value: float, text: str) -> None:
    assert num(value) == text


@given(st.text(st.characters(exclude_categories=["Cs", "Cc", "Cn"]) | st.sampled_from("<>&\"'\t\n")))
def test_any_text_survives_the_way_through_xml(text: str) -> None:
    sheet = Sheet("t", 10, 10)
    sheet.text(1, 1, text)
    root = ElementTree.fromstring(sheet.svg(text, text))
    assert (root.findtext(f"{SVG}text") or "") == text
    assert (root.findtext(f"{SVG}title") or "") == text


@given(st.text(st.characters()))
def test_no_text_makes_a_document_that_is_not_xml(text: str) -> None:
    sheet = Sheet("t", 10, 10)
    sheet.text(1, 1, text)
    assert ElementTree.fromstring(sheet.svg(text, text)).tag == f"{SVG}svg"


def test_what_xml_forbids_is_replaced() -> None:
    assert escape("a\x00b\x0b\ud800c") == "a\ufffdb\ufffd\ufffdc"
    assert escape("<a href='x'>\"&") == "&lt;a href=&#39;x&#39;&gt;&quot;&amp;"


def test_widths_are_those_of_the_family_it_asks_for() -> None:
    """Advance widths of Helvetica, from Adobe's published font metrics (AFM), quoted from memory: H 722,
    i 222, 0 556, space 278 thousandths; the narrow letters are taken a little wider here."""
    for letter, thousandths in (("H", 722), ("0", 556), (" ", 278)):
        assert text_width(letter, 1000) == pytest.approx(thousandths * 1.04, rel=1e-9)
    assert text_width("i", 1000) >= 222
    assert text_width("ab", 10) == pytest.approx(text_width("a", 10) + text_width("b", 10))
    assert text_width("ab", 10, bold=True) > text_width("ab", 10)


@given(st.text(), st.floats(20, 200))
def test_clipped_text_fits(text: str, room: float) -> None:
    assert text_width(clip(text, room, 12), 12) <= max(room, text_width("…", 12))


@given(st.text(alphabet="ab c", max_size=60), st.floats(30, 200))
def test_wrapped_lines_fit_and_keep_the_words(text: str, room: float) -> None:
    lines = wrap(text, room, 12)
    assert all(text_width(line, 12) <= room for line in lines)
    if all(text_width(word, 12) <= room for word in text.split()):
        assert " ".join(lines).split() == text.split()


def test_boxes_that_only_touch_do_not_meet() -> None:
    assert not Box(0, 0, 1, 1).meets(Box(1, 0, 2, 1))
    assert Box(0, 0, 1, 1).meets(Box(0.9, 0.9, 2, 2))
    assert free(Box(0, 0, 1, 1), [Box(2, 2, 3, 3)])
    assert not free(Box(0, 0, 1, 1), [Box(2, 2, 3, 3), Box(0.5, 0.5, 3, 3)])


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_a_text_box_hangs_on_its_anchor(anchor: str) -> None:
    box = text_box(50, 20, "abc", 10, anchor)
    hold = {"start": box.left, "middle": (box.left + box.right) / 2, "end": box.right}[anchor]
    assert hold == pytest.approx(50)
    assert box.top < 20 < box.bottom


@given(st.lists(st.floats(0, 100), min_size=1, max_size=12), st.floats(1, 20))
def test_spread_labels_keep_order_and_distance(wanted: list[float], room: float) -> None:
    wanted.sort()
    got = spread(wanted, [room] * len(wanted), -1000, 2000)
    assert all(b - a >= room - 1e-6 for a, b in pairwise(got))


def test_spread_moves_nothing_that_has_room() -> None:
    assert spread([10, 30, 50], [10, 10, 10], 0, 100) == (10, 30, 50)


def test_spread_shares_the_shift_out_evenly() -> None:
    assert spread([50, 50], [10, 10], 0, 100) == pytest.approx((45, 55))
    assert spread([0, 0], [10, 10], 0, 100) == pytest.approx((5, 15))
    assert spread([100, 100], [10, 10], 0, 100) == pytest.approx((85, 95))
    assert spread([], [], 0, 1) == ()


@given(st.lists(st.tuples(PLACES, PLACES), max_size=6))
@example([(0.0, -0.0), (-0.0004, 100.0), (-10.05, 1000.0001), (0.5, -0.0005)])
def test_a_chain_of_numbers_is_written_like_each_of_them(points: list[tuple[float, float]]) -> None:
    sheet = Sheet("sheet", 10, 10)
    sheet.path(points)
    written = " ".join(f"{'L' if at else 'M'}{num(x)},{num(y)}" for at, (x, y) in enumerate(points))
    assert f'<path d="{written}"' in sheet.svg("a", "b")


def test_a_curve_goes_through_its_points() -> None:
    sheet = Sheet("t", 10, 10)
    sheet.curve([(0, 0), (1, 5), (4, 4)])
    path = ElementTree.fromstring(sheet.svg("t", "t")).find(f"{SVG}path")
    assert path is not None
    assert [step.split(" ")[-1] for step in path.attrib["d"].split(" C")] == ["M0,0", "1,5", "4,4"]


def test_the_waist_oval_of_the_worked_numbers() -> None:
    """A waist of 28 in at width over depth 1.4 is 10.3 by 7.4 in: plain geometry, done by hand."""
    width, depth = oval(28, 1.4)
    assert (round(width, 1), round(depth, 1)) == (10.3, 7.4)


def test_every_action_has_a_sketch_or_a_reason_for_none() -> None:
    assert set(SKETCHES) | set(WITHOUT) == set(ACTIONS)
    assert set(SKETCHES).isdisjoint(WITHOUT)
    assert all(WITHOUT.values())
