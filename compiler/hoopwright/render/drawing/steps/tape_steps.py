"""Sketches of the tapes: marked under a pull, cut, sewn to the waistband, trimmed at the hem."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip
from hoopwright.render.drawing.marks import SMALL, across, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    finish,
    say,
    stitches,
    tell,
    torn,
    weight,
)
from hoopwright.render.figure import Figure


def mark_tapes(plan: Plan, action: str) -> Figure:
    """A tape pinned at one end and pulled at the other, each mark measured from zero."""
    sheet, tape = begin(action, 178), plan.shape.tapes[0]
    y, left, zero, edge = 34.0, 14.0, 58.0, 276.0
    marks = tape.marks[:2]
    scale = 158 / marks[-1].at
    sheet.line((4, y + 22), (edge, y + 22), width=2)
    sheet.line((edge, y + 22), (edge, y + 70), width=2)
    sheet.rect(left, y, zero - left, 18, fill=sheet.pattern("hatch"))
    sheet.rect(zero, y, edge - 26 - zero, 18, fill=PAPER)
    torn(sheet, edge - 26, y, y + 18)
    sheet.path([(edge - 14, y + 9), (edge + 6, y + 9), (edge + 14, y + 20), (edge + 14, y + 36)], width=1.2)
    weight(sheet, edge + 14, y + 36, "1 kg")
    sheet.ellipse((left + 8, y + 9), 3, 3, fill=INK)
    sheet.line((zero, y - 6), (zero, y + 24), width=2.2)
    sheet.text(zero, y - 10, "0", size=SMALL, anchor="middle", bold=True)
    room = min(60.0, marks[0].at * scale * 1.5, (marks[-1].at - marks[0].at) * scale or 60.0) - 6
    for row, mark in enumerate(marks):
        x = zero + mark.at * scale
        sheet.line((x, y), (x, y + 18), width=1.8)
        sheet.text(x, y - 6, clip(mark.hoop, room, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)
        across(sheet, zero, x, y + 54 + 24 * row, say(plan, mark.at))
    top = say(plan, plan.spec.allowances.tape_top)
    tell(sheet, (left + 26, y + 14), (8, y + 98), "turned in")
    sheet.text(8, y + 112, top, size=SMALL)
    below(sheet, 168, f"{tape.id}: every mark from 0, the tape pulled straight")
    alt = (
        f"A tape pulled with 1 kg; {tape.id} is marked from zero at "
        + ", ".join(f"{say(plan, mark.at)} for {mark.hoop}" for mark in marks)
        + " and so on."
    )
    return finish(sheet, "Marking a tape", alt)


def cut_tapes(plan: Plan, action: str) -> Figure:
    """The lower end of a tape: its last mark, the wrap, the reserve, the cut."""
    sheet, allow = begin(action, 128), plan.spec.allowances
    y, x = 36.0, 74.0
    scale = 190 / (allow.tape_hem + allow.tape_reserve)
    wrap, end = x + allow.tape_hem * scale, x + 190
    torn(sheet, 20, y, y + 20)
    sheet.path([(20, y), (end, y), (end, y + 20), (20, y + 20)], width=1.2)
    sheet.rect(x, y, end - x, 20, fill=sheet.pattern("back-hatch"))
    for at, words in ((x, clip(plan.shape.tapes[0].ends_at, 70, SMALL, bold=True)), (end, "cut")):
        sheet.line((at, y - 6), (at, y + 26), width=2)
        sheet.text(at, y - 10, words, size=SMALL, anchor="middle", bold=at == x)
    across(sheet, x, wrap, y + 52, say(plan, allow.tape_hem))
    across(sheet, wrap, end, y + 52, say(plan, allow.tape_reserve))
    sheet.text((x + wrap) / 2, y + 68, "wrap", size=SMALL, anchor="middle")
    sheet.text((wrap + end) / 2, y + 68, "reserve", size=SMALL, anchor="middle")
    alt = (
        f"Below the last mark {say(plan, allow.tape_hem)} stay for the wrap and "
        f"{say(plan, allow.tape_reserve)} in reserve."
    )
    return finish(sheet, "Cutting a tape", alt)


def sew_tapes(plan: Plan, action: str) -> Figure:
    """A tape on the waistband: top turned in behind it, zero on its lower edge, sewn in a box."""
    sheet, allow = begin(action, 190), plan.spec.allowances
    top, low, x, half = 40.0, 82.0, 126.0, 20.0
    sheet.rect(14, top, 292, low - top, fill=PAPER, line=1.4)
    turned = min(low - top - 4, max(9.0, (allow.tape_top / plan.shape.waistband.width - 1) * (low - top)))
    sheet.rect(
        x - half, top, 2 * half, turned, fill=sheet.pattern("hatch"), stroke=GREY, line=0.9, dash="3 2"
    )
    sheet.rect(x - half, top, 2 * half, low - top, line=1.4)
    sheet.path([(x - half, low), (x - half, 150)], width=1.4)
    sheet.path([(x + half, low), (x + half, 150)], width=1.4)
    sheet.line((x - half - 8, low), (x + half + 8, low), width=2.4)
    box = [(x - 13, top + 8), (x + 13, top + 8), (x + 13, low - 8), (x - 13, low - 8), (x - 13, top + 8)]
    stitches(sheet, box)
    tell(sheet, (x + half + 4, low), (176, 112), "0 on the lower edge")
    tell(sheet, (x + 13, top + 20), (176, 66), "box of stitches")
    tell(sheet, (x + half - 3, top + 6), (176, 26), "end turned in")
    sheet.text(28, top + 26, "waistband", size=SMALL, fill=GREY)
    sheet.text(x, 140, "tape", size=SMALL, anchor="middle", fill=GREY)
    below(
        sheet, 168, f"{say(plan, allow.tape_top)} of tape above 0: up to the band's upper edge and turned in."
    )
    alt = "A tape sewn to the waistband in a box, its zero on the band's lower edge, its top turned in."
    return finish(sheet, "Sewing a tape to the waistband", alt)


def trim_tapes(plan: Plan, action: str) -> Figure:
    """The end of a tape in section: round the lowest hoop, up behind itself, sewn, the rest cut off."""
    sheet, allow = begin(action, 178), plan.spec.allowances
    x, y = 112.0, 132.0
    sheet.rect(x - 5, y - 34, 10, 34, fill=INK)
    sheet.curve(
        [
            (x - 10, 16),
            (x - 10, y - 30),
            (x - 10, y - 6),
            (x - 7, y + 5),
            (x, y + 8),
            (x + 7, y + 5),
            (x + 10, y - 6),
            (x + 10, y - 30),
            (x + 10, y - 74),
        ],
        width=2.6,
    )
    sheet.path([(x + 10, y - 74), (x + 22, y - 104)], width=2.2, stroke=GREY, dash="4 3")
    for at in (y - 46, y - 58):
        sheet.line((x - 15, at), (x + 15, at), width=1.6)
    upright(sheet, y + 8, y - 74, x + 50, ("wrap", say(plan, allow.tape_hem)))
    tell(sheet, (x + 20, y - 98), (170, 24), "reserve: cut off")
    tell(sheet, (x - 15, y - 52), (84, 62), "sewn", anchor="end")
    tell(sheet, (x - 5, y - 14), (84, 108), clip(plan.shape.tapes[0].ends_at, 60, SMALL), anchor="end")
    below(sheet, 166, "Only when the hem has been levelled.")
    alt = f"A tape wrapped {say(plan, allow.tape_hem)} round the lowest hoop, sewn, its reserve cut off."
    return finish(sheet, "Finishing the tapes at the hem", alt)


SKETCHES: dict[str, Sketch] = {
    "mark-tapes": mark_tapes,
    "cut-tapes": cut_tapes,
    "sew-tapes": sew_tapes,
    "trim-tapes": trim_tapes,
}
