"""The tape marking chart: a strip for each kind of tape, zero at the waistband's lower edge, to scale."""

from __future__ import annotations

from math import cos, hypot, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip, text_width
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, leader, scale_bar
from hoopwright.render.drawing.page import figure, lines_of, write
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.render.drawing.tape_kinds import Kind, kinds_of
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text

ACROSS = 3
COLUMN = (PAGE - 28) / ACROSS
STRIP = 26.0
STEP = 16.0
LONGEST = 380.0
HEAD_ROOM = 62.0


def draw_tapes_chart(plan: Plan) -> Figure:
    """The chart, in rows of three kinds of tape; the same scale throughout."""
    kinds, units = kinds_of(plan), plan.spec.units
    allow = plan.spec.allowances
    longest = max(kind.tapes[0].cut for kind in kinds)
    most = max(len(kind.marks) for kind in kinds)
    scale = max(LONGEST, (most + 4) * STEP) / longest
    deep = HEAD_ROOM + longest * scale + 26
    rows = -(-len(kinds) // ACROSS)
    notes = lines_of(*_notes(plan))
    sheet = Sheet("tapes", PAGE, 58 + rows * deep + 17 * len(notes) + 172)
    heading(sheet, "Tape marking chart", f"0 = the waistband's lower edge; every mark to within "
                                         f"{length_text(allow.tape_tolerance, units)}")
    for at, kind in enumerate(kinds):
        _strip(sheet, plan, kind, 14 + COLUMN * (at % ACROSS), 66 + deep * (at // ACROSS), scale)
    y = 58 + rows * deep + 14
    write(sheet, notes, y)
    _map(sheet, plan, 330, y + 17 * len(notes) + 62)
    scale_bar(sheet, 18, y + 17 * len(notes) + 6, scale, units)
    alt = "Marks from the waistband's lower edge. " + " ".join(_told(plan, kind) for kind in kinds)
    return figure(plan, sheet, "Tape marking chart", alt)


def _strip(sheet: Sheet, plan: Plan, kind: Kind, x: float, y: float, scale: float) -> None:
    """One strip with its head, turning, marks, wrap and reserve; y is the head's first line."""
    units, allow, tape = plan.spec.units, plan.spec.allowances, kind.tapes[0]
    room = COLUMN - 10
    sheet.text(x, y + 4, clip(kind.names, room, TEXT, bold=True), size=TEXT, bold=True)
    sheet.text(x, y + 20, clip(kind.where, room, SMALL), size=SMALL)
    count = f"cut {len(kind.tapes)}, {length_text(tape.cut, units)}"
    sheet.text(x, y + 36, clip(count, room, SMALL), size=SMALL)
    top = y + HEAD_ROOM - 16
    zero = top + allow.tape_top * scale
    last = zero + kind.marks[-1].at * scale
    end = top + tape.cut * scale
    sheet.rect(x, top, STRIP, zero - top, fill=sheet.pattern("hatch"), line=0.9)
    sheet.rect(x, zero, STRIP, last - zero, fill=PAPER, line=1.1)
    sheet.rect(x, last, STRIP, end - last, fill=sheet.pattern("back-hatch"), line=0.9)
    sheet.line((x - 4, zero), (x + STRIP + 8, zero), width=2.4)
    _labels(sheet, plan, kind, x, zero, scale, (top, end))


def _labels(sheet: Sheet, plan: Plan, kind: Kind, x: float, zero: float, scale: float,
            ends: tuple[float, float]) -> None:
    """Zero, every mark and the end, told beside the strip."""
    units, room = plan.spec.units, COLUMN - STRIP - 34
    told = [("", "turn over", min((ends[0] + zero) / 2, zero - STEP)), ("0", "", zero)]
    told += [(mark.hoop, length_text(mark.at, units), zero + mark.at * scale) for mark in kind.marks]
    told.append(("", "wrap, reserve", max((told[-1][2] + ends[1]) / 2, told[-1][2] + STEP)))
    places = spread([y for _, _, y in told], [STEP] * len(told), ends[0] - 8, ends[1] + 12)
    for (name, value, at), y in zip(told, places, strict=True):
        marked = bool(name) and name != "0"
        if marked:
            sheet.line((x, at), (x + STRIP, at), stroke=INK, width=1.6)
        if name:
            leader(sheet, [(x + STRIP, at), (x + STRIP + 8, at), (x + STRIP + 15, y)])
        gap = text_width(value, SMALL)
        name = clip(name, max(22.0, room - gap), SMALL, bold=True)
        sheet.text(x + STRIP + 18, y + 4.3, name, size=SMALL, bold=True)
        shift = text_width(name, SMALL, bold=True) + 6 if name else 0.0
        sheet.text(x + STRIP + 18 + shift, y + 4.3, value, size=SMALL, fill=INK if marked else GREY)


def _map(sheet: Sheet, plan: Plan, x: float, y: float) -> None:
    """The waistband from above with every tape's place, front at the bottom, centred on (x, y)."""
    sheet.ellipse((x, y), 60, 43, width=3.0)
    for tape in plan.shape.tapes:
        side, ahead = sin(tape.waist_angle), cos(tape.waist_angle)
        reach = 1 / hypot(side / 60, ahead / 43)
        at = (x + reach * side, y + reach * ahead)
        name = (x + (reach + 15) * side, y + (reach + 14) * ahead + 4)
        sheet.ellipse(at, 3.2, 3.2, fill=PAPER, width=1.4)
        sheet.text(*name, clip(tape.id, 40, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)
    for words, place in (("front", (x, y + 34)), ("back", (x, y - 26))):
        sheet.text(*place, words, size=SMALL, anchor="middle", fill=GREY)
    sheet.text(x + 52, y + 4, "left", size=SMALL, anchor="end", fill=GREY)
    sheet.text(x - 52, y + 4, "right", size=SMALL, fill=GREY)


def _notes(plan: Plan) -> list[str]:
    """How to read and use the chart."""
    units, allow = plan.spec.units, plan.spec.allowances
    top, rest = length_text(allow.tape_top, units), length_text(allow.tape_hem + allow.tape_reserve, units)
    return [f"Every mark is measured from 0, not from the mark before it. Above 0: {top} to turn over and "
            f"sew to the waistband. Below the last mark: {rest} to wrap round the hoop and to spare, trimmed "
            "after the last fitting.",
            "Tapes are numbered from centre front by the wearer's left. Pull each with 1 kg while marking."]


def _told(plan: Plan, kind: Kind) -> str:
    """A kind of tape in words."""
    marks = ", ".join(f"{mark.hoop} at {length_text(mark.at, plan.spec.units)}" for mark in kind.marks)
    return f"{kind.names}: {marks}."
