"""Gauges print at true size: one user unit is one millimetre, marks lie at their distances, pages join."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import pytest

from hoopwright.render.drawing.gauge import STRIP
from hoopwright.source.quantity import length_text

SVG = "{http://www.w3.org/2000/svg}"
PAPER = {"A4": (210.0, 297.0), "letter": (215.9, 279.4)}


@dataclass(frozen=True)
class Piece:
    """A printed stretch: its head, where its zero would lie, and the y of marks, joins, top and foot."""

    head: str
    marks: tuple[float, ...]
    joins: tuple[tuple[str, float], ...]
    top: float
    foot: float


def _pages(cage: Any) -> list[Any]:
    count = sum(1 for name in cage.trees if name.startswith("gauge-"))
    return [cage.tree(f"gauge-{number}") for number in range(1, count + 1)]


def _pieces(page: Any) -> list[Piece]:
    """The stretches of a page by their edges, in the order they were drawn."""
    lines = [{key: float(line.attrib[key]) for key in ("x1", "y1", "x2", "y2", "stroke-width")}
             | {"dash": "stroke-dasharray" in line.attrib} for line in page.iter(f"{SVG}line")]
    texts = [(float(text.attrib["x"]), float(text.attrib["y"]), text.text or "")
             for text in page.iter(f"{SVG}text")]
    found = []
    for edge in lines:
        if edge["x1"] != edge["x2"] or edge["dash"]:
            continue
        x, top, foot = edge["x1"], edge["y1"], edge["y2"]
        mine = [line for line in lines if line["x1"] == x and line["x2"] == pytest.approx(x + STRIP)
                and top - 1e-6 <= line["y1"] <= foot + 1e-6]
        head = next((text for at, y, text in texts if at == x and y == pytest.approx(top - 6.5)), None)
        if head is None:
            continue
        joins = [line["y1"] for line in mine if line["dash"]]
        named = tuple((next(text for at, y, text in texts
                            if at == pytest.approx(x + 12.6) and y == pytest.approx(join + 1.1)), join)
                      for join in joins)
        marks = tuple(sorted(line["y1"] for line in mine if line["stroke-width"] == 0.5))
        found.append(Piece(head, marks, named, top, foot))
    return found


def test_a_unit_is_a_millimetre_on_the_paper_asked_for(cage: Any) -> None:
    width, height = PAPER[cage.plan.spec.workshop.paper]
    for page in _pages(cage):
        assert float(page.attrib["width"].removesuffix("mm")) == width
        assert float(page.attrib["height"].removesuffix("mm")) == height
        assert [float(each) for each in page.attrib["viewBox"].split()] == [0, 0, width, height]


def test_every_page_has_a_square_of_100_mm_that_says_so(cage: Any) -> None:
    for number, page in enumerate(_pages(cage), start=1):
        (square,) = cage.rects(f"gauge-{number}", "test-square")
        assert (square["width"], square["height"]) == (100.0, 100.0)
        assert [text.text for text in page.iter(f"{SVG}text")].count("measure me: 100 mm") == 2
        assert f"Tape gauge, page {number} of {len(_pages(cage))}" in cage.texts(f"gauge-{number}")


def test_nothing_lies_in_the_margin_a_printer_leaves_white(cage: Any) -> None:
    width, height = PAPER[cage.plan.spec.workshop.paper]
    for page in _pages(cage):
        for line in page.iter(f"{SVG}line"):
            assert 9.9 <= float(line.attrib["x1"]) <= width - 9.9
            assert 9.9 <= float(line.attrib["y1"]) <= height - 9.9


def test_every_mark_is_printed_at_its_true_distance(cage: Any) -> None:
    pieces = [piece for page in _pages(cage) for piece in _pieces(page)]
    turning = cage.plan.spec.allowances.tape_top * 1000
    tapes = {tape.id: tape for tape in cage.plan.shape.tapes}
    runs = _runs(pieces)
    firsts = {head.replace(",", "").split()[0].rstrip("…") for head, _ in runs}
    assert firsts <= set(tapes)
    for head, run in runs:
        tape = tapes[head.replace(",", "").split()[0].rstrip("…")]
        starts = _starts(run, -turning)
        got = sorted({round(start + y - piece.top, 2) for start, piece in zip(starts, run, strict=True)
                      for y in piece.marks})
        wanted = [0.0, *(mark.at * 1000 for mark in tape.marks)]
        close = [min(abs(mark - each) for each in got) for mark in wanted]
        assert max(close) < 0.011
        assert all(min(abs(each - mark) for mark in wanted) < 0.011 for each in got)


def _runs(pieces: list[Piece]) -> list[tuple[str, list[Piece]]]:
    """Pieces of one kind of tape, in order."""
    runs: list[tuple[str, list[Piece]]] = []
    for piece in pieces:
        if runs and runs[-1][0] == piece.head:
            runs[-1][1].append(piece)
        else:
            runs.append((piece.head, [piece]))
    return runs


def _starts(run: list[Piece], first: float) -> list[float]:
    """Distance from zero at each piece's top, found only from laying equal letters on each other."""
    starts = [first]
    for before, after in pairwise(run):
        letter, low = before.joins[-1]
        again, high = after.joins[0]
        assert letter == again
        starts.append(starts[-1] + (low - before.top) - (high - after.top))
    return starts


def test_pages_overlap_by_enough_to_be_taped_together(cage: Any) -> None:
    for _, run in _runs([piece for page in _pages(cage) for piece in _pieces(page)]):
        for before, after in pairwise(run):
            assert before.foot - before.joins[-1][1] == pytest.approx(10)
            assert after.joins[0][1] - after.top == pytest.approx(10)


def test_marks_are_named_as_in_the_chart(harbour: Any) -> None:
    said = [text for number in range(1, 4) for text in harbour.texts(f"gauge-{number}")]
    for tape in harbour.plan.shape.tapes:
        for mark in tape.marks:
            assert length_text(mark.at, "inches") in said
            assert mark.hoop in said


def test_one_strip_for_each_kind_of_tape(harbour: Any) -> None:
    heads = [head for head, _ in _runs([piece for page in _pages(harbour) for piece in _pieces(page)])]
    assert heads == ["T1 and T6", "T2 and T5", "T3 and T4"]


def test_the_rule_on_the_edge_counts_whole_units_from_zero(harbour: Any) -> None:
    page = _pages(harbour)[0]
    ticks = [line for line in page.iter(f"{SVG}line") if line.get("stroke-width") == "0.2"
             and float(line.attrib["x1"]) == 10.0]
    ys = [float(line.attrib["y1"]) for line in ticks]
    assert [b - a for a, b in pairwise(ys)] == [pytest.approx(25.4, abs=0.002)] * (len(ys) - 1)
    assert ys[0] == pytest.approx(20 + harbour.plan.spec.allowances.tape_top * 1000, abs=0.002)
