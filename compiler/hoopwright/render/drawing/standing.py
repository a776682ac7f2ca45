"""The page on which the wearer stands, seen from the front or from her left: floor, body, skirt, door."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of, front_outlines, side_outlines
from hoopwright.render.drawing.marks import PAGE, floor_line, heading
from hoopwright.render.drawing.page import jambs
from hoopwright.render.drawing.scene import View, waistline
from hoopwright.render.drawing.sheet import GREY, PALE, XY, Sheet
from hoopwright.source.quantity import length_text

TOP = 66.0
MIDDLE = 264.0
TALLEST = 560.0
SHOULDERS = 0.46
"""Room that her figure wants across the page, as a share of her stature."""
TITLES = {"front": "Front view", "side": "Side view"}
_UNDER = {
    "front": "the wearer's right is on the left of the page, her left on its right",
    "side": "seen from the wearer's left: her front is on the left of the page",
}


def scale_for(plan: Plan, widest: float, door: bool = True) -> float:
    """User units a metre, so that what is ``widest`` m across, she herself and the ``door`` fit on the page."""
    body = figure_of(plan)
    limit = plan.spec.limits.door if door else None
    return min(MIDDLE / max(widest, limit or 0.0, SHOULDERS * body.stature), TALLEST / body.stature)


def head(sheet: Sheet, kind: str) -> None:
    """The title of a view, and how it lies on the page."""
    heading(sheet, TITLES[kind], _UNDER[kind])


def wearer(sheet: Sheet, plan: Plan, view: View) -> None:
    """The floor, and she on it."""
    floor_line(sheet, PAGE / 2 - MIDDLE / 2 - 6, PAGE / 2 + MIDDLE / 2 + 6, view.y)
    body, side = figure_of(plan), view.kind == "side"
    for outline in side_outlines(body) if side else front_outlines(body):
        sheet.curve([view.place(-x if side else x, z) for x, z in outline], closed=True, fill="#ededed",
                    stroke=PALE, width=0.9)


def standing(plan: Plan, kind: str, widest: float, below: float = 118.0) -> tuple[Sheet, View]:
    """A page with the wearer on it, and the view that shows ``widest`` m across; ``below`` is left under her."""
    scale = scale_for(plan, widest)
    floor = TOP + figure_of(plan).stature * scale
    sheet, view = Sheet(kind, PAGE, floor + below), View(kind, scale, PAGE / 2, floor)
    wearer(sheet, plan, view)
    return sheet, view


def skirt_lines(sheet: Sheet, plan: Plan, view: View, edges: tuple[list[XY], list[XY]]) -> None:
    """The skirt as dashed lines from the waistline's ends over page points, then straight down."""
    low = view.y - plan.shape.skirt.off_floor * view.scale
    line = waistline(plan, view, near=True)
    for end, points in zip((line[0], line[-1]), edges, strict=True):
        last = points[-1] if points else end
        sheet.path([end, *points, (last[0], low)], stroke=GREY, width=1.0, dash="6 4")


def skirt_words(plan: Plan, hem: str = "hem") -> str:
    """What the dashed lines say, the hem's girth as that of the ``hem``."""
    skirt, units = plan.skirt, plan.spec.units
    hangs = "as it hangs under its load, " if plan.assessment.skirt else ""
    return (f"the skirt over it {hangs}{length_text(skirt.front, units)} in front,"
            f" {length_text(skirt.side, units)} at the side and {length_text(skirt.back, units)} behind, from the"
            f" waistline to {length_text(skirt.off_floor, units)} off the floor; {hem}"
            f" {length_text(skirt.hem_girth, units)} round")


def door_lines(sheet: Sheet, plan: Plan, view: View) -> None:
    """The door's jambs and its clear width, when a door is stated."""
    door = plan.spec.limits.door
    if door is None:
        return
    half, top = door / 2 * view.scale, view.y - 1.02 * figure_of(plan).stature * view.scale
    jambs(sheet, plan, view.x - half, view.x + half, (view.y, top), view.y + 58)
