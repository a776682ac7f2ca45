"""What the figures of wheels and side hoops share: the page with body and floor, skirt, door, names."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of, front_outlines, side_outlines
from hoopwright.render.drawing.letters import wrap
from hoopwright.render.drawing.marks import PAGE, SMALL, across, floor_line, scale_bar
from hoopwright.render.drawing.scene import View, waistline
from hoopwright.render.drawing.sheet import GREY, PALE, XY, Sheet
from hoopwright.source.quantity import length_text

TOP = 66.0
MIDDLE = 264.0
TALLEST = 560.0
MARGIN = 14.0


def page(plan: Plan, kind: str, widest: float, below: float = 118.0) -> tuple[Sheet, View]:
    """An empty page with floor and body, and the view that shows ``widest`` m across."""
    body = figure_of(plan)
    scale = min(
        MIDDLE / max(widest, plan.spec.limits.door or 0.0, 0.46 * body.stature), TALLEST / body.stature
    )
    floor = TOP + body.stature * scale
    sheet, view = Sheet(kind, PAGE, floor + below), View(kind, scale, PAGE / 2, floor)
    floor_line(sheet, PAGE / 2 - MIDDLE / 2 - 6, PAGE / 2 + MIDDLE / 2 + 6, floor)
    mirror = -1.0 if kind == "side" else 1.0
    for outline in side_outlines(body) if kind == "side" else front_outlines(body):
        sheet.curve(
            [view.place(mirror * x, z) for x, z in outline],
            closed=True,
            fill="#ededed",
            stroke=PALE,
            width=0.9,
        )
    return sheet, view


def skirt_lines(sheet: Sheet, plan: Plan, view: View, edges: tuple[list[XY], list[XY]]) -> None:
    """The skirt as dashed lines from the waistline's ends over page points, then straight down."""
    low = view.y - plan.shape.skirt.off_floor * view.scale
    line = waistline(plan, view, near=True)
    for end, points in zip((line[0], line[-1]), edges, strict=True):
        last = points[-1] if points else end
        sheet.path([end, *points, (last[0], low)], stroke=GREY, width=1.0, dash="6 4")


def door_lines(sheet: Sheet, plan: Plan, view: View, below: float = 58.0) -> None:
    """The door's jambs and its clear width, when a door is stated."""
    door = plan.spec.limits.door
    if door is None:
        return
    half, top = door / 2 * view.scale, view.y - 1.02 * figure_of(plan).stature * view.scale
    for x in (view.x - half, view.x + half):
        sheet.line((x, view.y), (x, top), stroke=GREY, width=1.2, dash="9 4")
    across(
        sheet,
        view.x - half,
        view.x + half,
        view.y + below,
        f"door {length_text(door, plan.spec.units)} clear",
    )


def note(sheet: Sheet, words: str, y: float) -> None:
    """A note under a figure, wrapped to the page."""
    for at, line in enumerate(wrap(words, PAGE - 2 * MARGIN, SMALL)):
        sheet.text(MARGIN, y + 16 * at, line, size=SMALL)


def bar(sheet: Sheet, plan: Plan, y: float, scale: float) -> None:
    """The scale bar."""
    scale_bar(sheet, MARGIN, y, scale, plan.spec.units)


def skirt_words(plan: Plan) -> str:
    """What the dashed line says."""
    skirt, units = plan.shape.skirt, plan.spec.units
    return (
        f"dashed: the skirt over it, {length_text(skirt.front, units)} in front, "
        f"{length_text(skirt.side, units)} at the side and {length_text(skirt.back, units)} behind, from the "
        f"waistline to {length_text(skirt.off_floor, units)} off the floor; hem "
        f"{length_text(skirt.hem_girth, units)} round"
    )


def titled(plan: Plan, title: str) -> str:
    """The figure's title with the plan's."""
    return f"{title}: {plan.spec.title}" if plan.spec.title else title
