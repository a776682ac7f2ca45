"""Sketches of the hoop stock: the coil opened, the stock tried, a hoop cut, a join proved."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.library.model import Droop
from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip
from hoopwright.render.drawing.marks import SMALL, across, arrow_line, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, Sheet
from hoopwright.render.drawing.steps.sketch import (
    WIDTH,
    Sketch,
    begin,
    below,
    finish,
    say,
    tell,
    torn,
    weight,
)
from hoopwright.render.figure import Figure


def open_coil(plan: Plan, action: str) -> Figure:
    """A coil tied in three places, clamped to the bench, and where its end flies."""
    sheet = begin(action, 190)
    x, y = 104.0, 86.0
    for radius in (46, 50, 54, 58):
        sheet.ellipse((x, y), radius, radius, width=1.3)
    for turn in (0.55, 1.22, 1.85):
        a = turn * pi
        sheet.line((x + 41 * cos(a), y + 41 * sin(a)), (x + 63 * cos(a), y + 63 * sin(a)), width=5)
    sheet.rect(x + 30, y + 30, 34, 26, fill="#ddd", line=1.2)
    sheet.text(x + 47, y + 47, "clamp", size=SMALL, anchor="middle")
    sheet.curve([(x, y - 58), (x + 40, y - 62), (x + 76, y - 58), (x + 110, y - 44)], width=2.2)
    arrow_line(sheet, (x + 122, y - 38), (x + 162, y - 14), 1.4)
    sheet.text(306, y + 8, "the end flies", size=SMALL, anchor="end")
    sheet.text(306, y + 23, "out this way", size=SMALL, anchor="end")
    tell(sheet, (x + 63 * cos(0.55 * pi), y + 63 * sin(0.55 * pi)), (176, 152), "tied in three places")
    below(sheet, 183, "Stand out of line; goggles and gloves on.")
    return finish(
        sheet,
        "Opening the coil",
        "A coil tied with string in three places and clamped to the bench; "
        "its free end springs outward, out of the worker's line.",
    )


def try_stock(plan: Plan, action: str) -> Figure:
    """The droop test: clamped overhang, hung weight, measured drop."""
    sheet = begin(action, 196)
    droop = next((test for test in plan.spec.build.hoops.material.bench if isinstance(test, Droop)), None)
    edge, y, tip = 92.0, 62.0, (226.0, 112.0)
    sheet.rect(10, y + 2, edge - 10, 16, fill=sheet.pattern("hatch"))
    sheet.text(48, y + 36, "table", size=SMALL, anchor="middle", fill=GREY)
    sheet.rect(58, y - 16, 28, 14, fill="#ddd")
    sheet.text(72, y - 22, "clamp", size=SMALL, anchor="middle")
    sheet.line((14, y), (edge, y), width=3)
    sheet.curve([(edge, y), (edge + 44, y + 5), (edge + 92, y + 22), tip], width=3)
    sheet.line((edge, y), (252, y), stroke=GREY, width=0.8, dash="4 3")
    weight(sheet, *tip, _grams(droop))
    over = say(plan, droop.overhang) if droop else "measured"
    across(sheet, edge, tip[0], 32, f"overhang, straight: {over}")
    upright(sheet, y, tip[1], 262, ("drop", say(plan, droop.drop) if droop else "?"))
    said = "As the spec has it; measure yours." if droop else "Write down overhang, weight and drop."
    below(sheet, 172, said + " Turn it over and take the mean.")
    flat = plan.spec.build.hoops.material.section.kind == "flat"
    return finish(
        sheet,
        "The droop test",
        f"A length of stock clamped at the table's edge{', broad side down' if flat else ''}, with a "
        "weight on its tip; overhang and drop are measured.",
    )


def _grams(droop: Droop | None) -> str:
    """The hung mass, short enough to stand on the weight."""
    return f"{droop.hang * 1000:.0f} g" if droop else "g"


def cut_hoop(plan: Plan, action: str) -> Figure:
    """A cut hoop laid straight: its length, the lap lines at its ends, its name on a flag of sticky tape, or pencilled
    on cane, which goes into water."""
    sheet = begin(action, 150)
    cut = {part for task in plan.work.tasks if task.action == action for part in task.parts}
    hoops = [hoop for hoop in plan.shape.hoops if hoop.id in cut] or list(plan.shape.hoops)
    hoop = next((hoop for hoop in hoops if hoop.closed), hoops[0])
    build = plan.spec.build.hoops
    lap, sleeve = build.lap, build.join.sleeve
    y, left, right = 66.0, 16.0, 304.0
    for a, b in ((left, 150.0), (170.0, right)):
        sheet.rect(a, y - 7, b - a, 14, fill="#ccc", line=1.2)
    for x in (150.0, 170.0):
        sheet.rect(x - 4, y - 8, 8, 16, fill=PAPER, stroke="none")
        torn(sheet, x, y - 8, y + 8)
    _name(sheet, hoop.id, y, pencilled=build.bent_wet)
    across(sheet, left, right, y - 42, f"cut {say(plan, hoop.cut)}")
    mark = (lap or sleeve / 2) if hoop.closed else 0.0
    if mark:
        for x, tip in ((left + 44, left), (right - 44, right)):
            sheet.line((x, y - 10), (x, y + 10), width=1.8)
            across(sheet, min(x, tip), max(x, tip), y + 34, say(plan, mark))
        words = "lap line" if lap else "half the sleeve"
        sheet.text(WIDTH / 2, y + 34, f"{words} at both ends", size=SMALL, anchor="middle")
    else:
        sheet.text(WIDTH / 2, y + 34, "no join: both tips stay on for good", size=SMALL, anchor="middle")
    below(sheet, 124, "When it is dry: ends rounded, tipped or taped." if build.bent_wet else
          "Corners rounded, burr filed off, ends tipped or taped at once." if build.material.grade.metal else
          "Ends rounded, tipped or taped at once.")
    ends = f"a line {say(plan, mark)} from each end" if mark else "both ends tipped for good"
    alt = f"{hoop.id} laid straight, {say(plan, hoop.cut)} long, {ends}."
    return finish(sheet, "Cutting a hoop", alt)


def _name(sheet: Sheet, id: str, y: float, *, pencilled: bool) -> None:
    """A hoop's name by its piece: beside the pencil's strokes, or on its flag."""
    if pencilled:
        for x in (232, 236, 240, 244, 248):
            sheet.line((x - 2, y + 3), (x + 2, y - 3), stroke=INK, width=1.0)
        tell(sheet, (240, y - 5), (240, y - 20), f"{clip(id, 44, SMALL, bold=True)} in pencil", anchor="middle")
        return
    sheet.path([(216, y - 7), (216, y - 30), (264, y - 30), (264, y - 7)], closed=True, fill=PAPER)
    sheet.text(240, y - 15, clip(id, 44, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)


def prove_join(plan: Plan, action: str) -> Figure:
    """Two offcuts joined, hung up, and a weight on them."""
    sheet, build = begin(action, 208), plan.spec.build.hoops
    x = 70.0
    sheet.line((30, 12), (110, 12), width=2)
    sheet.curve([(x, 12), (x, 22), (x + 5, 26), (x, 31), (x - 5, 27)], width=1.4)
    sheet.rect(x - 4, 26, 8, 78, fill="#ccc")
    sheet.rect(x + 1, 78, 8, 78, fill="#999")
    long = build.lap or build.join.sleeve
    sheet.rect(x - 7, 78, 20, 26, fill=sheet.pattern("hatch"), stroke=INK, line=1.2)
    weight(sheet, x + 5, 154, "2 kg")
    words = ("lap" if build.lap else "sleeve", say(plan, long)) if long else (build.join.name,)
    upright(sheet, 78, 104, x + 34, words)
    sheet.text(168, 40, clip(build.join.name, 140, SMALL, bold=True), size=SMALL, bold=True)
    sheet.text(168, 56, "two offcuts", size=SMALL)
    sheet.text(168, 150, "hangs over night,", size=SMALL)
    sheet.text(168, 165, "nothing may creep", size=SMALL)
    alt = f"Two offcuts joined ({build.join.name}), hung from a hook over night with 2 kg on them."
    return finish(sheet, "Proving the join", alt)


SKETCHES: dict[str, Sketch] = {
    "open-coil": open_coil,
    "test-stock": try_stock,
    "cut-hoop": cut_hoop,
    "prove-join": prove_join,
}
