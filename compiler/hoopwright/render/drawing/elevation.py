"""Front and side view: the wearer, the cage on her, floor and door, to one scale, with measures."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of
from hoopwright.render.drawing.columns import STEP, Label, draw_column
from hoopwright.render.drawing.marks import PAGE, SMALL, across, scale_bar
from hoopwright.render.drawing.page import MARGIN, figure, lines_of, write
from hoopwright.render.drawing.scene import (
    View,
    draw_band,
    draw_hoops,
    draw_petticoat,
    draw_tapes,
    draw_waistband,
    waistline,
)
from hoopwright.render.drawing.sheet import XY, Sheet
from hoopwright.render.drawing.standing import (
    MIDDLE,
    SHOULDERS,
    TITLES,
    TOP,
    door_lines,
    head,
    scale_for,
    skirt_lines,
    skirt_words,
    wearer,
)
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text
from hoopwright.spec.family import family_of


def draw_front(plan: Plan) -> Figure:
    """The cage from the front, with heights on its left, girths on its right, and the door it must pass."""
    sheet, view, low = _begin(plan, "front", 122.0)
    units = plan.spec.units
    head(sheet, "front")
    _draw(sheet, plan, view)
    _front_gap(sheet, plan, view)
    door_lines(sheet, plan, view)
    _tape_names(sheet, plan, view)
    _columns(sheet, plan, view, low, "girth", [hoop.girth for hoop in plan.shape.hoops],
             plan.spec.wearer.waist)
    hem = plan.shape.hoops[-1]
    left, right = view.reach(hem)
    across(sheet, left, right, view.y + 32, f"hem {length_text(hem.plan.width, units)} across")
    over = 0.0 if plan.spec.limits.door is None else hem.plan.width - plan.spec.limits.door
    if over > 0:
        sheet.text(view.x, view.y + 76, f"the hem must give {length_text(over, units)} to pass", size=SMALL,
                   anchor="middle")
    scale_bar(sheet, MARGIN, view.y + 92, view.scale, units)
    return figure(plan, sheet, TITLES["front"], _alt(plan, "from the front"))


def draw_side(plan: Plan) -> Figure:
    """The cage from the wearer's left, with the skirt that will hang over it."""
    sheet, view, low = _begin(plan, "side", 112.0)
    head(sheet, "side")
    _skirt(sheet, plan, view)
    _draw(sheet, plan, view)
    _tape_names(sheet, plan, view)
    _columns(sheet, plan, view, low, "front to back", [hoop.plan.depth for hoop in plan.shape.hoops], None)
    write(sheet, lines_of(f"dashed: {skirt_words(plan)}"), view.y + 28, 16)
    scale_bar(sheet, MARGIN, view.y + 82, view.scale, plan.spec.units)
    return figure(plan, sheet, TITLES["side"], _alt(plan, "from the wearer's left"))


def _begin(plan: Plan, kind: str, below: float) -> tuple[Sheet, View, float]:
    """An empty page, the view that fits on it, and the y of the highest label."""
    stature = figure_of(plan).stature
    scale = scale_for(plan, max(hoop.plan.width for hoop in plan.shape.hoops))
    middle = PAGE / 2
    if kind == "side":
        plain = View(kind, 1.0, 0.0, 0.0)
        ends = [end for hoop in plan.shape.hoops for end in plain.reach(hoop)]
        front, back = min(0.0, *ends), max(0.0, *ends)
        scale = min(scale, MIDDLE / (back - front))
        if back - front > SHOULDERS * stature:
            middle -= (front + back) / 2 * scale
    height = max(stature * scale, (len(plan.shape.hoops) + 3) * STEP)
    floor = TOP + height
    return Sheet(kind, PAGE, floor + below), View(kind, scale, middle, floor), TOP + 10


def _draw(sheet: Sheet, plan: Plan, view: View) -> None:
    """Floor, wearer and cage, what is behind first."""
    wearer(sheet, plan, view)
    draw_tapes(sheet, plan, view, near=False)
    draw_petticoat(sheet, plan, view)
    draw_band(sheet, plan, view)
    draw_tapes(sheet, plan, view, near=True)
    draw_hoops(sheet, plan, view)
    draw_waistband(sheet, plan, view)


def _columns(sheet: Sheet, plan: Plan, view: View, low: float, word: str, sizes: list[float],
             waist: float | None) -> None:
    """Heights above the floor on the left of the page, girths or depths on its right."""
    units = plan.spec.units
    line = waistline(plan, view, near=True)
    ends = [view.reach(hoop) for hoop in plan.shape.hoops]
    ys = [view.y - hoop.height * view.scale for hoop in plan.shape.hoops]
    _, left, _, right = plan.shape.waist_heights
    side = right if view.kind == "front" else plan.shape.waist_heights[0]
    heights = [Label(line[0], "waist", length_text(side, units))]
    heights += [Label((end[0], y), hoop.id, length_text(hoop.height, units))
                for hoop, end, y in zip(plan.shape.hoops, ends, ys, strict=True)]
    other = left if view.kind == "front" else plan.shape.waist_heights[2]
    beyond = [Label(line[-1], "waist", f"at {length_text(other, units)}")] if other != side else []
    girths = [Label(line[-1], "waist", length_text(waist, units))] if waist is not None else []
    girths += [Label((end[1], y), hoop.id, length_text(size, units))
               for hoop, end, y, size in zip(plan.shape.hoops, ends, ys, sizes, strict=True)]
    draw_column(sheet, heights, MARGIN, low, view.y, side="left", title="above the floor")
    draw_column(sheet, beyond + girths, PAGE - MARGIN, low, view.y, side="right", title=word,
                room=108.0)


def _front_gap(sheet: Sheet, plan: Plan, view: View) -> None:
    """The gap between the first and the last tape, measured along the waistband."""
    gap = plan.spec.build.tapes.front_gap if plan.spec.build.tapes is not None else None
    if gap is None:
        return
    first, last = view.at(plan.shape.tapes[0].start), view.at(plan.shape.tapes[-1].start)
    top = min(first[1], last[1]) - plan.shape.waistband.width * view.scale - 12
    for x, y in (first, last):
        sheet.line((x, top - 4), (x, y), width=0.6)
    across(sheet, last[0], first[0], top, f"front gap {length_text(gap, plan.spec.units)}")


def _tape_names(sheet: Sheet, plan: Plan, view: View) -> None:
    """The names of the tapes on the eye's side, under their ends."""
    for tape in plan.shape.tapes:
        ends = [fixing.at for hoop in plan.shape.hoops if tape.marks and hoop.id == tape.marks[-1].hoop
                for fixing in hoop.fixings if fixing.tape == tape.id]
        if ends and view.near(ends[0]) >= -1e-9:
            x, y = view.at(ends[0])
            sheet.text(x, y + 17, tape.id, size=SMALL, anchor="middle", halo=True)


def _skirt(sheet: Sheet, plan: Plan, view: View) -> None:
    """The skirt as dashed lines: stretched from the waist over the hoops, straight down from the hem."""
    line, edges = waistline(plan, view, near=True), []
    for end, pick in ((line[0], 0), (line[-1], 1)):
        sign = -1.0 if pick == 0 else 1.0
        points = [(view.reach(hoop)[pick] + sign * 4, view.y - hoop.height * view.scale)
                  for hoop in plan.shape.hoops]
        edges.append(_taut([end, *points], sign)[1:])
    skirt_lines(sheet, plan, view, (edges[0], edges[1]))


def _taut(points: list[XY], sign: float) -> list[XY]:
    """The outward side of the convex hull of points given top down: cloth bridges what lies inside it."""
    hull: list[XY] = []
    for point in points:
        while len(hull) > 1 and sign * _turn(hull[-2], hull[-1], point) <= 0:
            hull.pop()
        hull.append(point)
    return hull


def _turn(a: XY, b: XY, c: XY) -> float:
    """Positive when b lies to the right of the way from a to c, going down the page."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _alt(plan: Plan, whence: str) -> str:
    """What the view shows, in a sentence."""
    units, hem = plan.spec.units, plan.shape.hoops[-1]
    on = f"on {len(plan.shape.tapes)} tapes" if plan.shape.tapes else "in its channels"
    return (f"The {family_of(plan.spec)} {whence} on its wearer, to scale: {len(plan.shape.hoops)} hoops {on}, "
            f"the lowest {length_text(hem.plan.width, units)} across and its "
            f"centre {length_text(hem.height, units)} above the floor.")

