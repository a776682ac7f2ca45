"""Gauges to print: every kind of tape at its true size, cut into stretches that overlap, with a test square.

One user unit is one millimetre; the document states its size in millimetres, so that printed at 100 % a mark
lies where the tape's mark has to lie.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip, wrap
from hoopwright.render.drawing.sheet import GREY, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.render.drawing.tape_kinds import Kind, kinds_of
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record

PAPERS = {"A4": (210.0, 297.0), "letter": (215.9, 279.4)}
MARGIN = 10.0
ACROSS = 3
STRIP = 28.0
GAP = 2.0
TOP = 20.0
OVERLAP = 20.0
SQUARE = 100.0
TEXT = 3.2
SMALL = 2.9


@record(frozen=True, slots=True)
class Stretch:
    """A stretch of one kind of tape, ``number`` of ``count`` from 1: from ``start`` to ``start + long`` mm
    from zero, its upper left corner at (``x``, ``top``) of page ``page``, which counts from 0."""

    kind: Kind
    number: int
    count: int
    start: float
    long: float
    page: int
    x: float
    top: float

    def y(self, at: float) -> float:
        """Page place of a distance from zero, mm."""
        return self.top + at - self.start

    def shows(self, at: float) -> bool:
        """Whether the distance lies on this stretch."""
        return self.start - 1e-6 <= at <= self.start + self.long + 1e-6


def draw_gauges(plan: Plan) -> tuple[Figure, ...]:
    """All gauge pages, ``gauge-1`` on: every kind of tape, one after the other."""
    stretches = _lay(plan)
    count = stretches[-1].page + 1
    return tuple(_draw(plan, [one for one in stretches if one.page == page], page + 1, count)
                 for page in range(count))


def _lay(plan: Plan) -> list[Stretch]:
    """Every kind's stretches in their places: on each page three down its left side, then three under the
    test square."""
    width, height = PAPERS[plan.spec.workshop.paper]
    low = height - MARGIN - 2
    right, under = width - MARGIN - SQUARE, TOP + SQUARE + 16
    slots = [(MARGIN + at * (STRIP + GAP), TOP) for at in range(ACROSS)]
    slots += [(right + at * (STRIP + GAP), under) for at in range(ACROSS)]
    laid: list[Stretch] = []
    for kind in kinds_of(plan):
        end = (kind.marks[-1].at + plan.spec.allowances.tape_hem) * 1000
        mine: list[Stretch] = []
        while not mine or mine[-1].start + mine[-1].long < end:
            page, slot = divmod(len(laid) + len(mine), len(slots))
            x, top = slots[slot]
            start = (mine[-1].start + mine[-1].long - OVERLAP if mine
                     else -plan.spec.allowances.tape_top * 1000)
            mine.append(Stretch(kind, len(mine) + 1, 0, start, low - top, page, x, top))
        laid += [replace(one, count=len(mine)) for one in mine]
    return laid


def _draw(plan: Plan, stretches: list[Stretch], number: int, count: int) -> Figure:
    """One page."""
    paper = plan.spec.workshop.paper
    width, height = PAPERS[paper]
    sheet = Sheet(f"gauge-{number}", width, height, "mm")
    for stretch in stretches:
        _strip(sheet, plan, stretch)
    _square(sheet, plan, (number, count))
    title = f"Tape gauge at true size, page {number} of {count}"
    told = "; ".join(f"{one.kind.names} from {_far(plan, one.start)} to {_far(plan, one.start + one.long)}"
                     for one in stretches)
    name = "Letter" if paper == "letter" else "A4"
    alt = f"To be printed on {name} at 100 %: {told}; and a square to measure, 100 mm."
    style = f"@page{{size:{width:g}mm {height:g}mm;margin:0}}"
    return Figure(f"gauge-{number}", title, alt, sheet.svg(title, alt, style))


def _far(plan: Plan, millimetres: float) -> str:
    return length_text(max(0.0, millimetres) / 1000, plan.spec.units)


def _strip(sheet: Sheet, plan: Plan, page: Stretch) -> None:
    """One stretch: its edges, a rule along the left edge, its marks and the joins."""
    kind, x = page.kind, page.x
    end = min((kind.marks[-1].at + plan.spec.allowances.tape_hem) * 1000, page.start + page.long)
    sheet.text(x, page.top - 6.5, clip(kind.names, STRIP, TEXT, bold=True), size=TEXT, bold=True)
    sheet.text(x, page.top - 2.2, clip(kind.where, STRIP, SMALL), size=SMALL)
    zero = page.shows(0.0)
    if zero:
        sheet.rect(x, page.y(page.start), STRIP, -page.start, fill=sheet.pattern("hatch"), stroke="none")
    last = kind.marks[-1].at * 1000
    if end > last:
        first = max(last, page.start)
        sheet.rect(x, page.y(first), STRIP, end - first, fill=sheet.pattern("back-hatch"), stroke="none")
    for edge in (x, x + STRIP):
        sheet.line((edge, page.top), (edge, page.y(end)), width=0.25)
    if zero:
        sheet.line((x, page.top), (x + STRIP, page.top), width=0.25)
    if end < page.start + page.long - 1e-6:
        sheet.line((x, page.y(end)), (x + STRIP, page.y(end)), width=0.25)
    _rule(sheet, plan, page, x, end)
    _joins(sheet, page, x, end)
    _marks(sheet, plan, page)


def _rule(sheet: Sheet, plan: Plan, page: Stretch, x: float, end: float) -> None:
    """Short strokes along the left edge: every inch or centimetre from zero, longer ones every five."""
    unit = 25.4 if plan.spec.units == "inches" else 10.0
    step = max(0, ceil((page.start - 1e-6) / unit))
    while step * unit <= min(end, page.start + page.long) + 1e-6:
        if page.shows(step * unit):
            y = page.y(step * unit)
            sheet.line((x, y), (x + (3.0 if step % 5 == 0 else 1.5), y), stroke=GREY, width=0.2)
        step += 1


def _joins(sheet: Sheet, page: Stretch, x: float, end: float) -> None:
    """Where this stretch lies on its neighbours: the same dashed line, with a letter, on both."""
    for letter, at in ((page.number - 2, page.start + OVERLAP / 2),
                       (page.number - 1, page.start + page.long - OVERLAP / 2)):
        if 0 <= letter < page.count - 1 and at <= end:
            y = page.y(at)
            sheet.line((x, y), (x + STRIP, y), width=0.25, dash="2 1.2")
            sheet.ellipse((x + 12.6, y), 2.4, 2.4, fill="#fff", width=0.25)
            sheet.text(x + 12.6, y + 1.1, chr(65 + letter % 26), size=SMALL, anchor="middle", bold=True)


def _marks(sheet: Sheet, plan: Plan, page: Stretch) -> None:
    """Zero and every mark on this stretch, named."""
    kind, x = page.kind, page.x
    told = [(0.0, "0", "band's edge")]
    told += [(mark.at * 1000, mark.hoop, length_text(mark.at, plan.spec.units)) for mark in kind.marks]
    here = [item for item in told if page.shows(item[0])]
    wanted = [page.y(at) - 2.5 for at, _, _ in here]
    places = spread(wanted, [4.0] * len(here), page.top, page.top + page.long + 4)
    for (at, name, value), middle in zip(here, places, strict=True):
        y = page.y(at)
        sheet.line((x, y), (x + STRIP, y), width=0.5)
        if page.number > 1 and at - page.start < 5.0:
            continue  # told on the stretch before, which goes on below its dashed line
        name = clip(name, STRIP - 21.5, TEXT, bold=True)
        sheet.text(x + 3.6, middle + 1.2, name, size=TEXT, bold=True, halo=True)
        sheet.text(x + STRIP - 1, middle + 1.2, value, size=SMALL, anchor="end", halo=True)


def _square(sheet: Sheet, plan: Plan, pages: tuple[int, int]) -> None:
    """The test square, and in it how to print and join the pages."""
    left, top = sheet.width - MARGIN - SQUARE, TOP
    sheet.rect(left, top, SQUARE, SQUARE, line=0.4, kind="test-square")
    middle = left + SQUARE / 2
    sheet.text(middle, top + 6, "measure me: 100 mm", size=4.2, anchor="middle", bold=True)
    sheet.text(left + 6, top + SQUARE / 2 + 20, "measure me: 100 mm", size=4.2, bold=True, turned=True)
    number, count = pages
    lines = [(f"Tape gauge, page {number} of {count}", True)]
    lines += [(line, False) for line in wrap(plan.spec.title, 84, TEXT)[:2]]
    for paragraph in _said(plan):
        lines += [(line, False) for line in ("", *wrap(paragraph, 84, TEXT))]
    for at, (line, bold) in enumerate(lines):
        sheet.text(left + 12, top + 16 + 4.6 * at, line, size=TEXT, bold=bold)


def _said(plan: Plan) -> list[str]:
    """How to use the page."""
    unit = "inch" if plan.spec.units == "inches" else "centimetre"
    told = ["Print at 100 % (actual size), not fitted to the page. Measure this square both ways; if it is "
            "not 100 mm, print again.",
            f"0 is the waistband's lower edge. Strokes on the left edge: every {unit} from 0, a longer one "
            "every five. Hatched: top turning and hem wrap."]
    told.append("Cut the strips out. Cut each at its dashed line and lay it on the dashed line with the "
                "same letter of the same tape; the strokes must run on evenly. Tape them together.")
    told.append(f"Check one mark against the chart before marking: every mark to within "
                f"{length_text(plan.spec.allowances.tape_tolerance, plan.spec.units)}.")
    return told
