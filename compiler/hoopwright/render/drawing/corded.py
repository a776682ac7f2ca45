"""A corded petticoat on its wearer from front and side, its edge from above, and how its cords lie in the cloth."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of
from hoopwright.render.drawing.columns import STEP, Label, draw_column
from hoopwright.render.drawing.hem import draw_feet
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar, upright
from hoopwright.render.drawing.page import (
    FROM_ABOVE,
    MARGIN,
    Above,
    figure,
    jambs,
    lines_of,
    waist_and_hips,
    write,
)
from hoopwright.render.drawing.scene import View, draw_waistband, waistline
from hoopwright.render.drawing.sheet import GREY, INK, PALE, XY, Sheet
from hoopwright.render.drawing.standing import TITLES, TOP, door_lines, head, scale_for, skirt_words, wearer
from hoopwright.render.figure import Figure
from hoopwright.render.quantities import exact_length
from hoopwright.shape.model import CordedPetticoat
from hoopwright.source.quantity import length_text


def corded_figures(plan: Plan, cloth: CordedPetticoat) -> tuple[Figure, ...]:
    """Front, side, the edge from above, and the rows in section."""
    return (_elevation(plan, cloth, "front"), _elevation(plan, cloth, "side"), _above(plan, cloth), _rows(plan, cloth))


def _elevation(plan: Plan, cloth: CordedPetticoat, kind: str) -> Figure:
    units, stature, front = plan.spec.units, figure_of(plan).stature, kind == "front"
    across_it = plan.shape.lowest.width
    scale = scale_for(plan, across_it, door=front)
    floor = TOP + max(stature * scale, (2 * cloth.groups + 4) * STEP)
    notes = [] if front else lines_of(f"dashed: {skirt_words(plan, 'hem at least')}")
    sheet = Sheet(kind, PAGE, floor + (128.0 if front else 66.0 + 16 * len(notes)))
    view = View(kind, scale, PAGE / 2, floor)
    head(sheet, kind)
    wearer(sheet, plan, view)
    if not front:
        _skirt(sheet, plan, cloth, view)
    _cloth(sheet, plan, cloth, view)
    draw_waistband(sheet, plan, view)
    _labels(sheet, plan, cloth, view)
    left, right = view.x - across_it / 2 * scale, view.x + across_it / 2 * scale
    if front:
        across(sheet, left, right, floor + 32, f"hem {length_text(across_it, units)} across")
        door_lines(sheet, plan, view)
        scale_bar(sheet, MARGIN, floor + 88, scale, units)
    else:
        write(sheet, notes, floor + 28, 16)
        scale_bar(sheet, MARGIN, floor + 30 + 16 * len(notes), scale, units)
    alt = (f"The corded petticoat {'from the front' if front else 'from the left'} on its wearer, to scale:"
           f" {len(cloth.rows)} rows of cord in {cloth.groups} groups up to {length_text(cloth.rows[-1].up, units)}"
           f" above the hem, which is {length_text(across_it, units)} across and"
           f" {length_text(cloth.hem_height, units)} above the floor.")
    return figure(plan, sheet, TITLES[kind], alt)


def _cloth(sheet: Sheet, plan: Plan, cloth: CordedPetticoat, view: View) -> None:
    """The cloth from waist to edge with its gathers, every row as a line across it."""
    line, half = waistline(plan, view, near=True), cloth.hem / (2 * pi) * view.scale
    low = view.y - cloth.hem_height * view.scale
    sheet.path([*line, (view.x + half, low), (view.x - half, low)], closed=True, fill=sheet.pattern("weave"), width=1.2)
    highest = cloth.rows[-1]
    top, wide = view.y - highest.height * view.scale, highest.girth / (2 * pi) * view.scale
    for k in range(1, 12):
        x, y = line[2 * k]
        sheet.line((x, y), (view.x + wide * (2 * k / 12 - 1), top - 8), stroke=PALE, width=0.8)
    for row in cloth.rows:
        y, r = view.y - row.height * view.scale, row.girth / (2 * pi) * view.scale
        sheet.line((view.x - r, y), (view.x + r, y), width=max(0.7, cloth.diameter * view.scale * 0.6))


def _labels(sheet: Sheet, plan: Plan, cloth: CordedPetticoat, view: View) -> None:
    """Left, heights above the floor; right, how far up the cloth the rows of each group lie."""
    units, line = plan.spec.units, waistline(plan, view, near=True)
    right = plan.shape.waist_heights[3]
    side = right if view.kind == "front" else plan.shape.waist_heights[0]
    heights, ups = [Label(line[0], "waist", length_text(side, units))], []
    for number in range(cloth.groups, 0, -1):
        rows = cloth.group(number)
        for row in dict.fromkeys((rows[-1], rows[0])):
            y, r = view.y - row.height * view.scale, row.girth / (2 * pi) * view.scale
            heights.append(Label((view.x - r, y), row.id, length_text(row.height, units)))
            ups.append(Label((view.x + r, y), row.id, length_text(row.up, units)))
    half, low = cloth.hem / (2 * pi) * view.scale, view.y - cloth.hem_height * view.scale
    heights.append(Label((view.x - half, low), "hem", length_text(cloth.hem_height, units)))
    ups.append(Label((view.x + half, low), "round", length_text(cloth.hem, units)))
    draw_column(sheet, heights, MARGIN, TOP + 10, view.y, side="left", title="above the floor")
    draw_column(sheet, ups, PAGE - MARGIN, TOP + 10, view.y, side="right", title="up the cloth", room=108.0)


def _skirt(sheet: Sheet, plan: Plan, cloth: CordedPetticoat, view: View) -> None:
    """The skirt over it: down the cloth, straight down from its edge."""
    line, half = waistline(plan, view, near=True), cloth.hem / (2 * pi) * view.scale
    low, edge = view.y - plan.shape.skirt.off_floor * view.scale, view.y - cloth.hem_height * view.scale
    for (x, y), sign in ((line[0], -1.0), (line[-1], 1.0)):
        out = view.x + sign * (half + 5)
        sheet.path([(x + sign * 5, y), (out, edge), (out, low)], stroke=GREY, width=1.0, dash="6 4")


def _above(plan: Plan, cloth: CordedPetticoat) -> Figure:
    """The edge from above, front at the foot of the page: waist, hips, highest row, a step, the door."""
    units, body, step = plan.spec.units, figure_of(plan), plan.spec.wearer.step
    wide, door = plan.shape.lowest.width, plan.spec.limits.door
    scale = 318.0 / max(wide, door or 0.0, 0.0 if step is None else 0.7 * body.stature)
    above = Above(scale, 240.0, 262.0)
    radius = wide / 2 * scale
    notes = lines_of(
        f"{length_text(cloth.hem, units)} round; dotted: {cloth.rows[-1].id}, the highest row; dashed: the hips. It"
        " stands out so far when its starch and its rows bear what hangs over it: measure it at the stop.")
    low = 262.0 + max(radius, 159.0) + 34
    sheet = Sheet("hem", PAGE, low + 56 + 17 * len(notes) + 30)
    heading(sheet, "Hem from above", FROM_ABOVE)
    if door is not None:
        jambs(sheet, plan, above.at(-door / 2, 0)[0], above.at(door / 2, 0)[0], (82, low - 20), 76)
    waist_and_hips(sheet, above, body.hip, body.waist)
    inner = cloth.rows[-1].girth / (2 * pi) * scale
    sheet.ellipse(above.at(0, 0), inner, inner, width=0.9, dash="2 3")
    sheet.ellipse(above.at(0, 0), radius, radius, width=2.4)
    draw_feet(sheet, plan, above)
    sheet.text(240, 262 + radius + 20, "FRONT", size=TEXT, anchor="middle", bold=True, halo=True)
    sheet.text(240, 262 - radius - 8, "BACK", size=TEXT, anchor="middle", bold=True, halo=True)
    across(sheet, 240 - radius, 240 + radius, low + 14, f"{length_text(wide, units)} across")
    write(sheet, notes, low + 44)
    scale_bar(sheet, 18, low + 44 + 17 * len(notes), scale, units)
    alt = (f"The petticoat's edge from above, a round {length_text(wide, units)} across, with waist and hips inside it,"
           " the highest row, a step and the door to scale.")
    return figure(plan, sheet, "Hem from above", alt)


def _rows(plan: Plan, cloth: CordedPetticoat) -> Figure:
    """The cords of the lowest group in section, enlarged, and all groups up the cloth to scale."""
    units, rows = plan.spec.units, cloth.group(1)
    sheet = Sheet("rows", PAGE, 434)
    sandwich = bool(cloth.facing)
    heading(sheet, "How the cords lie", "in a sandwich: between two layers, stitched on both sides" if sandwich
            else "in tucks: a fold of the cloth round each cord, stitched close below it")
    _section(sheet, plan, cloth)
    top, low = 72.0, 376.0
    scale = (low - top) / (cloth.rows[-1].up * 1.12)
    x = 296.0
    sheet.rect(x, top, 60, low - top, fill=sheet.pattern("weave"), line=1.1)
    if sandwich:
        high = max(top, low - cloth.band * scale)
        sheet.line((x - 6, low), (x - 6, high), width=2.0)
        sheet.text(x - 10, (low + high) / 2, "inner", size=SMALL, anchor="end", halo=True)
        sheet.text(x - 10, (low + high) / 2 + 14, "layer", size=SMALL, anchor="end", halo=True)
    labels = []
    for row in cloth.rows:
        y = low - row.up * scale
        sheet.line((x, y), (x + 60, y), width=max(0.8, cloth.diameter * scale * 0.7))
    for number in range(cloth.groups, 0, -1):
        group = cloth.group(number)
        labels += [Label((x + 60, low - row.up * scale), row.id, length_text(row.up, units))
                   for row in dict.fromkeys((group[-1], group[0]))]
    draw_column(sheet, labels, PAGE - 8, top - 6, low, side="right", title="up from the hem", room=84.0)
    sheet.text(x + 60, low + 16, "finished hem", size=SMALL, anchor="middle")
    apart = f", {exact_length(rows[1].up - rows[0].up, units)} from middle to middle" if len(rows) > 1 else ""
    where = "between two layers" if sandwich else "in tucks"
    alt = (f"Cords {exact_length(cloth.diameter, units)} thick{apart} {where}, in section; and {len(cloth.rows)} rows"
           f" up the cloth, the highest {length_text(cloth.rows[-1].up, units)} above the hem.")
    return figure(plan, sheet, "How the cords lie", alt)


def _section(sheet: Sheet, plan: Plan, cloth: CordedPetticoat) -> None:
    """Three cords enlarged: layers, stitches, thickness and spacing."""
    units, rows = plan.spec.units, cloth.group(1)
    apart = rows[1].up - rows[0].up if len(rows) > 1 else 2 * cloth.diameter
    unit = min(72.0 / apart, 44.0 / cloth.diameter)
    radius, step = cloth.diameter / 2 * unit, apart * unit
    x, ys = 130.0, [300.0 - k * step for k in range(3)]
    for y in ys:
        sheet.ellipse((x, y), radius, radius, fill="#ddd", width=1.3)
        sheet.line((x - radius * 0.5, y + radius * 0.5), (x + radius * 0.5, y - radius * 0.5), stroke=GREY, width=0.7)
    if cloth.facing:
        for sign in (-1.0, 1.0):
            sheet.path(_wave(x, sign, ys, radius, step), width=2.0)
        for y in [ys[0] + step / 2, *(y - step / 2 for y in ys)]:
            sheet.line((x - 9, y), (x + 9, y), width=1.6)
        sheet.text(x + radius + 12, ys[-1] - step / 2 + 4, "stitches", size=SMALL, halo=True)
        sheet.text(x - radius - 10, ys[0] + step / 2 + 30, "outer layer", size=SMALL, anchor="end", halo=True)
        sheet.text(x + radius + 10, ys[0] + step / 2 + 30, "inner layer", size=SMALL, halo=True)
    else:
        edge = x - radius - 22
        line = [(edge, 340.0)]
        for y in ys:
            line += [(edge, y + 2.5), *((x - radius * 1.12 * cos(pi * t / 10), y + radius * 1.12 * sin(pi * t / 10))
                                        for t in range(1, 20)), (edge, y - 2.5)]
            sheet.line((x - radius - 11, y - 9), (x - radius - 11, y + 9), width=1.6)
        sheet.path([*line, (edge, 84.0)], width=2.0)
        sheet.text(edge, 356, "cloth", size=SMALL, anchor="middle")
        sheet.text(x - radius - 2, ys[-1] - radius - 14, "stitches", size=SMALL, halo=True)
    upright(sheet, ys[1] - radius, ys[1] + radius, x + radius + 24, exact_length(cloth.diameter, units))
    upright(sheet, ys[1], ys[0], x - radius - 44, exact_length(apart, units), side="left")
    sheet.line((x - radius - 50, ys[1]), (x - radius, ys[1]), stroke=PALE, width=0.7)
    sheet.line((x - radius - 50, ys[0]), (x - radius, ys[0]), stroke=PALE, width=0.7)
    sheet.text(MARGIN, 420, f"enlarged; all rows take up {length_text(cloth.takes, units)} of the cloth's length",
               size=SMALL, fill=INK)


def _wave(x: float, sign: float, ys: list[float], radius: float, step: float) -> list[XY]:
    """One layer: flat between cords, half round each."""
    points = [(x + sign * 2, ys[0] + step / 2 + 26)]
    for y in ys:
        points += [(x + sign * max(2.0, radius * 1.08 * sin(pi * t / 8)), y + radius * 1.08 * cos(pi * t / 8))
                   for t in range(9)]
    return [*points, (x + sign * 2, ys[-1] - step / 2 - 26)]

