"""The hem from above: the lowest hoop, waist and hips inside it, the tapes' places, a step, the door."""

from __future__ import annotations

from itertools import pairwise
from math import acos, cos, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of
from hoopwright.render.drawing.letters import free, text_box
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar, upright
from hoopwright.render.drawing.page import FROM_ABOVE, Above, figure, jambs, lines_of, waist_and_hips, write
from hoopwright.render.drawing.sheet import GREY, Sheet
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Hoop, Point
from hoopwright.source.quantity import length_text

MIDDLE = (240.0, 286.0)
ROOM = 318.0
FOOT = 0.152  # length of a foot over stature, for the drawing only


def draw_hem(plan: Plan) -> Figure:
    """The hem hoop from above, front at the foot of the page, so that her left is on the page's right."""
    units, hem = plan.spec.units, plan.shape.hoops[-1]
    scale = ROOM / max(hem.plan.width, hem.plan.depth, plan.spec.limits.door or 0.0, 1.8 * _reach(plan, hem))
    above = Above(scale, MIDDLE[0], MIDDLE[1] + hem.plan.offset * scale)
    notes = lines_of(*_notes(plan))
    bottom = MIDDLE[1] + _deep(plan, hem, scale) + 50
    sheet = Sheet("hem", PAGE, bottom + 38 + 17 * len(notes) + 36)
    heading(sheet, "Hem from above", FROM_ABOVE)
    _door(sheet, plan, hem, above)
    _body(sheet, plan, above)
    _cage(sheet, plan, hem, above)
    _names(sheet, plan, hem, above)
    draw_feet(sheet, plan, above)
    half = hem.plan.width / 2 * scale
    across(sheet, MIDDLE[0] - half, MIDDLE[0] + half, bottom, f"{length_text(hem.plan.width, units)} across")
    write(sheet, notes, bottom + 34)
    scale_bar(sheet, 18, bottom + 34 + 17 * len(notes), scale, units)
    ends = f"the ends of {len(plan.shape.tapes)} tapes round it, " if plan.shape.tapes else ""
    alt = (f"The hem hoop from above, {length_text(hem.plan.width, units)} across, with the waist and hips "
           f"inside it, {ends}a step and the door to scale.")
    return figure(plan, sheet, "Hem from above", alt)


def _cage(sheet: Sheet, plan: Plan, hem: Hoop, above: Above) -> None:
    """Top hoop and hem hoop, and every tape from the waistband out to its end."""
    for hoop, width in ((plan.shape.hoops[0], 0.8), (hem, 2.4)):
        if hoop.plan.path:
            line = [above.at(x, y) for x, y in hoop.plan.path]
            sheet.path(line, width=width, dash="" if hoop is hem else "2 3")
            continue
        sheet.ellipse(above.at(0, -hoop.plan.offset), hoop.plan.width / 2 * above.scale,
                      hoop.plan.depth / 2 * above.scale, width=width, dash="" if hoop is hem else "2 3")
    for tape in plan.shape.tapes:
        points: list[Point] = [tape.start]
        marks = {mark.hoop for mark in tape.marks}
        points += [fixing.at for hoop in plan.shape.hoops if hoop.id in marks
                   for fixing in hoop.fixings if fixing.tape == tape.id]
        places = [above.at(x, y) for x, y, _ in points]
        if len(places) < 2:
            continue
        sheet.path(places, width=1.3)
        sheet.ellipse(places[-1], 3.2, 3.2, fill="#fff", width=1.4)


def _body(sheet: Sheet, plan: Plan, above: Above) -> None:
    """Waist and hips, both named."""
    body = figure_of(plan)
    waist_and_hips(sheet, above, body.hip, body.waist)
    low = above.y + body.hip[1] / 2 * above.scale
    sheet.text(above.x, low - 4, "hips", size=SMALL, anchor="middle", halo=True)


def _names(sheet: Sheet, plan: Plan, hem: Hoop, above: Above) -> None:
    """Tape names outside the hoop, and which way the wearer looks."""
    centre = above.at(0, -hem.plan.offset)
    for tape in plan.shape.tapes:
        for fixing in plan.shape.hoop(tape.marks[-1].hoop).fixings if tape.marks else ():
            if fixing.tape == tape.id:
                x, y = above.at(fixing.at[0], fixing.at[1])
                away = ((x - centre[0]) ** 2 + (y - centre[1]) ** 2) ** 0.5 or 1.0
                sheet.text(x + 18 * (x - centre[0]) / away, y + 18 * (y - centre[1]) / away + 4.5, tape.id,
                           size=TEXT, anchor="middle", bold=True, halo=True)
    half, deep = hem.plan.width / 2 * above.scale, _deep(plan, hem, above.scale)
    aside = 0.0 if hem.closed else 64.0  # where no hoop goes, a foot does
    sheet.text(centre[0] - aside, centre[1] + deep + 20, "FRONT", size=TEXT, anchor="middle", bold=True, halo=True)
    sheet.text(centre[0], centre[1] - deep - 10, "BACK", size=TEXT, anchor="middle", bold=True, halo=True)
    sides = (("left", centre[0] + half + 16, "start"), ("right", centre[0] - half - 16, "end"))
    for words, x, anchor in sides:
        places = (text_box(x, centre[1] + down, words, TEXT, anchor) for down in (-26, 34, -48, 56, -70, 78))
        box = next((place for place in places if free(place, sheet.boxes)), None)
        if box is not None:
            sheet.text(x, box.bottom - 0.22 * TEXT, words, size=TEXT, anchor=anchor, fill=GREY)


def draw_feet(sheet: Sheet, plan: Plan, above: Above) -> None:
    """Two feet a step apart, heel to heel, and the step's length."""
    step = plan.spec.wearer.step
    if step is None:
        return
    long = FOOT * figure_of(plan).stature
    side = 0.05 * figure_of(plan).stature
    for left, ahead in ((-side, -step / 2), (side, step / 2)):
        heel = ahead - long / 2
        shape = [(0.0, 0.0), (0.16, 0.10), (0.15, 0.45), (0.20, 0.72), (0.13, 0.95), (0.0, 1.0), (-0.12, 0.9),
                 (-0.17, 0.7), (-0.12, 0.4), (-0.15, 0.10)]
        outline = [above.at(left + u * long * 0.9, heel + v * long) for u, v in shape]
        sheet.curve(outline, closed=True, fill=sheet.pattern("dots"), stroke=GREY, width=0.9)
    back, front = (above.at(0, sign * step / 2 - long / 2)[1] for sign in (-1, 1))
    words = ("step", length_text(step, plan.spec.units))
    for away in (2.0, -2.0, 3.2, -3.2, 4.4, -4.4):
        x, beside = above.at(away * side, 0)[0], "right" if away > 0 else "left"
        anchor, at = ("start", x + 8) if away > 0 else ("end", x - 8)
        boxes = [text_box(at, (back + front) / 2 + 14.4 * row, line, SMALL, anchor)
                 for line, row in zip(words, (-0.2, 0.8), strict=True)]
        if all(free(box, sheet.boxes) for box in boxes):
            break
    upright(sheet, back, front, x, words, side=beside)


def _door(sheet: Sheet, plan: Plan, hem: Hoop, above: Above) -> None:
    """The door's clear width as two upright lines; what of the hem lies outside it is hatched."""
    door = plan.spec.limits.door
    if door is None:
        return
    half, radius = door / 2, hem.plan.width / 2
    deep = hem.plan.depth / 2
    if half < radius:
        turn = acos(half / radius)
        for sign in (1, -1):
            turns = [turn * at / 12 for at in range(-12, 13)]
            edge = [above.at(sign * radius * cos(t), deep * sin(t) - hem.plan.offset) for t in turns]
            sheet.path(edge, closed=True, fill=sheet.pattern("hatch"), stroke="none")
    top = MIDDLE[1] - _deep(plan, hem, above.scale) - 28
    low = MIDDLE[1] + hem.plan.depth / 2 * above.scale + 8
    jambs(sheet, plan, above.at(-half, 0)[0], above.at(half, 0)[0], (top, low), top - 4)


def _reach(plan: Plan, hem: Hoop) -> float:
    """How far the drawing goes to front and back of the hem hoop's centre, m."""
    step = plan.spec.wearer.step
    return max(hem.plan.depth / 2, (step + FOOT * figure_of(plan).stature) / 2 if step is not None else 0.0)


def _deep(plan: Plan, hem: Hoop, scale: float) -> float:
    """Half the drawing's depth on the page: hoop and feet, and room for a tape's name outside the hoop."""
    return max(_reach(plan, hem) * scale, hem.plan.depth / 2 * scale + 26)


def _notes(plan: Plan) -> list[str]:
    """What the drawing cannot show by itself."""
    units, hem = plan.spec.units, plan.shape.hoops[-1]
    ends = [tape.hem_fraction for tape in plan.shape.tapes]
    whole = hem.girth / (hem.end - hem.start)
    steps = [(b - a) * whole for a, b in pairwise(ends)]
    along = "round" if hem.closed else "from end to end"
    notes = [f"{length_text(hem.girth, units)} {along}; dotted: the top hoop {plan.shape.hoops[0].id}; dashed: "
             f"the hips{'; circles: where the tapes end' if ends else ''}."]
    if steps and max(steps) - min(steps) < 0.001:
        start = "centre front" if hem.closed else "its end"
        first = (ends[0] - hem.start) * whole
        notes.append(f"Tapes at the hem: {length_text(first, units)} from {start} to "
                     f"{plan.shape.tapes[0].id}, then {length_text(steps[0], units)} from tape to tape.")
    if plan.spec.limits.door is not None and plan.spec.limits.door < hem.plan.width:
        over = length_text(hem.plan.width - plan.spec.limits.door, units)
        notes.append(f"Hatched: what the door presses in, {over} in all.")
    return notes


