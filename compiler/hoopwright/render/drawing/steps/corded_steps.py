"""Sketches of a corded petticoat: the sample and its droop, ruling, cords sewn in, ends in the last seam, drying."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, across, upright
from hoopwright.render.drawing.sheet import GREY, PAPER
from hoopwright.render.drawing.steps.sketch import Sketch, begin, below, cloth, finish, stitches, tell
from hoopwright.render.figure import Figure
from hoopwright.render.views.corded import corded_view


def sew_sample(plan: Plan, action: str) -> Figure:
    """The sample flat, its cords along its length."""
    sheet, view = begin(action, 176), corded_view(plan)
    cloth(sheet, 20, 20, 250, 90)
    for k in range(view.sample.cords if view.sample.cords <= 8 else 8):
        y = 30 + 70 * k / (min(view.sample.cords, 8) - 1)
        sheet.line((20, y), (270, y), width=3.2)
    across(sheet, 20, 270, 132, view.sample.length)
    upright(sheet, 20, 110, 282, "")
    below(sheet, 156, f"{view.sample.cords} cords; measure across them before and after sewing.")
    return finish(sheet, "Cording a sample", f"A piece of cloth {view.sample.length} long with {view.sample.cords}"
                  " cords sewn in along it.")


def test_sample(plan: Plan, action: str) -> Figure:
    """The sample hung over a table's edge, and what is measured."""
    sheet, view = begin(action, 214), corded_view(plan)
    sheet.rect(14, 70, 110, 12, fill="#ddd", line=1.2)
    sheet.rect(24, 82, 10, 90, fill="#eee")
    sheet.rect(40, 46, 76, 12, fill="#eee", line=1.1)
    sheet.rect(60, 26, 34, 20, fill="#bbb", line=1.1)
    for up in (0.0, 5.0):
        sheet.curve([(20, 66 - up), (124, 66 - up), (180, 72 - up), (236, 96 - up), (272, 128 - up)], width=1.4)
    sheet.line((124, 66), (296, 66), stroke=GREY, width=0.8, dash="4 3")
    upright(sheet, 66, 126, 286, ("drop",))
    across(sheet, 124, 272, 52, f"{view.sample.over} along it")
    tell(sheet, (78, 36), (20, 20), "weight on a board")
    sheet.text(140, 150, "cords run out", size=SMALL)
    sheet.text(140, 165, "over the edge", size=SMALL)
    below(sheet, 196, "Read the drop; turn it over, read again; weigh it.")
    return finish(sheet, "Testing the sample", f"The sample under a weighted board, {view.sample.over} of it over the"
                  " table's edge, its cords running outward; the drop of its end is measured.")


def mark_rows(plan: Plan, action: str) -> Figure:
    """A breadth with the bounds of its groups ruled."""
    sheet, view = begin(action, 206), corded_view(plan)
    cloth(sheet, 30, 14, 130, 160)
    lines = [row for group in view.groups for row in dict.fromkeys((group.first, group.last))]
    by_id = {row.id: row.flat for row in plan.shape.corded.rows} if plan.shape.corded is not None else {}
    most = max(by_id.values(), default=1.0) * 1.15
    last = 400.0
    for row in lines:
        y = 174 - 160 * by_id[row.id] / most
        sheet.line((30, y), (160, y), width=1.0, dash="5 3")
        place = min(y + 4, last - 13)
        last = place
        sheet.text(168, place, f"{row.id}: {row.flat}", size=SMALL)
    below(sheet, 194, "Up from the cut edge, from side to side.")
    return finish(sheet, "Ruling the rows", "A breadth with the lowest and the highest row of each group ruled on it.")


def sew_cords(plan: Plan, action: str) -> Figure:
    """Cords between layers, or in tucks, the next one being pushed in."""
    sheet, view = begin(action, 190), corded_view(plan)
    cloth(sheet, 14, 16, 236, 130)
    for k, y in enumerate((122.0, 96.0, 70.0)):
        sheet.rect(14, y - 5, 236, 10, fill=PAPER if k < 2 else "#ddd", line=0.8)
        stitches(sheet, [(14, y + 11), (250, y + 11)])
    stitches(sheet, [(14, 59), (140, 59)])
    sheet.line((250, 70), (300, 56), width=4.0)
    tell(sheet, (140, 59), (150, 36), "needle, close to the cord")
    below(sheet, 166, "Row by row from the hem up, always the same way." if view.sandwich
          else "Fold round the cord, stitch close below it, row by row.")
    return finish(sheet, "Sewing the cords in", "Cords sewn in side by side on flat cloth, stitched close along each;"
                  " the next one is laid against the last line of stitches.")


def close_round(plan: Plan, action: str) -> Figure:
    """Cord ends meeting in the last seam."""
    sheet = begin(action, 180)
    for x in (14.0, 166.0):
        cloth(sheet, x, 16, 140, 120)
    sheet.line((160, 10), (160, 142), width=1.4)
    for y in (40.0, 70.0, 100.0):
        for x1, x2 in ((14, 158), (162, 306)):
            sheet.line((x1, y), (x2, y), width=4.0)
        sheet.path([(154, y - 6), (166, y + 6)], width=1.2)
        sheet.path([(154, y + 6), (166, y - 6)], width=1.2)
    tell(sheet, (160, 102), (186, 128), "butted and whipped")
    below(sheet, 162, "Every row meets its own other end in the seam; nothing overlaps.")
    return finish(sheet, "Sewing the last seam", "The two edges at the last seam: the ends of each cord meet in it,"
                  " butted and whipped together.")


def starch(plan: Plan, action: str) -> Figure:
    """The petticoat drying over a tub, drawn round."""
    sheet, view = begin(action, 190), corded_view(plan)
    sheet.rect(96, 96, 128, 44, fill="#eee", line=1.2)
    top, low = 24.0, 140.0
    sheet.path([(140, top), (180, top), (262, low), (58, low)], closed=True, fill=sheet.pattern("weave"), width=1.4)
    for k in range(7):
        y = 84 + 8 * k
        half = 20 + 82 * (y - top) / (low - top)
        sheet.line((160 - half, y), (160 + half, y), width=1.6)
    across(sheet, 58, 262, 158, view.across)
    below(sheet, 180, "Over a tub, drawn round, until it is dry.")
    return finish(sheet, "Drying it standing", f"The starched petticoat drying over a tub, drawn round to {view.across}"
                  " across its hem.")


SKETCHES: dict[str, Sketch] = {
    "sew-sample": sew_sample,
    "test-sample": test_sample,
    "mark-rows": mark_rows,
    "sew-cords": sew_cords,
    "close-round": close_round,
    "starch": starch,
}
