"""Side hoops on their wearer from the front and the side, and from above."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.drawing.body import figure_of
from hoopwright.render.drawing.columns import Label, draw_column
from hoopwright.render.drawing.marks import PAGE, TEXT, across, heading, scale_bar
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
from hoopwright.render.drawing.scene import draw_waistband, waistline
from hoopwright.render.drawing.sheet import GREY, INK, Sheet
from hoopwright.render.drawing.standing import (
    TITLES,
    TOP,
    door_lines,
    head,
    skirt_lines,
    skirt_words,
    standing,
)
from hoopwright.render.drawing.steels import draw_steels
from hoopwright.render.figure import Figure
from hoopwright.shape.model import SidePair
from hoopwright.source.quantity import length_text

_ROOM = 350.0


def pair_figures(plan: Plan, pair: SidePair) -> tuple[Figure, ...]:
    """Front, side and top view of side hoops, and their steels."""
    return (_front(plan, pair), _side(plan, pair), _above(plan, pair), draw_steels(plan, pair))


def _front(plan: Plan, pair: SidePair) -> Figure:
    sheet, view = standing(plan, "front", pair.across, 126.0)
    units, waist = plan.spec.units, plan.spec.wearer.side
    head(sheet, "front")
    line = waistline(plan, view, near=True)
    edges = []
    for sign, end in ((-1.0, line[0]), (1.0, line[-1])):
        outs = [view.place(sign * (pair.hip + one.wished), waist - one.drop) for one in pair.channels]
        ins = [view.place(sign * pair.hip, waist - one.drop) for one in pair.channels]
        sheet.path([end, *outs, *ins[::-1]], closed=True, fill=sheet.pattern("weave"), width=1.0)
        for inner, outer in zip(ins, outs, strict=True):
            sheet.line(inner, outer, width=2.6)
        edges.append([(x + 4 * sign, y) for x, y in outs])
    skirt_lines(sheet, plan, view, (edges[0], edges[1]))
    draw_waistband(sheet, plan, view)
    labels = [
        Label(
            view.place(-pair.hip - one.wished, waist - one.drop),
            one.hoops[1],
            length_text(waist - one.drop, units),
        )
        for one in pair.channels
    ]
    draw_column(sheet, labels, MARGIN, TOP + 20, view.y, side="left", title="above the floor")
    reaches = [
        Label(
            view.place(pair.hip + one.wished, waist - one.drop), one.hoops[0], length_text(one.wished, units)
        )
        for one in pair.channels
    ]
    draw_column(sheet, reaches, PAGE - MARGIN, TOP + 20, view.y, side="right", title="beyond the hip")
    half = pair.across / 2 * view.scale
    across(sheet, view.x - half, view.x + half, view.y + 32, _over_both(plan, pair))
    door_lines(sheet, plan, view)
    scale_bar(sheet, MARGIN, view.y + 96, view.scale, units)
    alt = (
        f"Side hoops on their wearer from the front, to scale: {len(pair.channels)} hoops at each side, "
        f"{_over_both(plan, pair)}."
    )
    return figure(plan, sheet, TITLES["front"], alt)


def _over_both(plan: Plan, pair: SidePair) -> str:
    """``30 in over both``, and that this is the wish where it is known how they hang."""
    wish = ", as wished" if plan.assessment.sides else ""
    return f"{length_text(pair.across, plan.spec.units)} over both{wish}"


def _side(plan: Plan, pair: SidePair) -> Figure:
    sheet, view = standing(plan, "side", 3 * pair.front_to_back)
    units, waist, half = plan.spec.units, plan.spec.wearer.side, pair.front_to_back / 2
    head(sheet, "side")
    line = waistline(plan, view, near=True)
    rows = [(half, waist - one.drop) for one in pair.channels]
    left = [view.place(-deep, z) for deep, z in rows]
    right = [view.place(deep, z) for deep, z in rows]
    band = pair.on_band / 2 * view.scale
    top = line[len(line) // 2][1]
    sheet.path(
        [(view.x - band, top), *left, *right[::-1], (view.x + band, top)],
        closed=True,
        fill=sheet.pattern("weave"),
        width=1.0,
    )
    for a, b in zip(left, right, strict=True):
        sheet.line(a, b, width=2.6)
    draw_waistband(sheet, plan, view)
    if pair.pocket:
        ends = [view.place(0.0, z) for z in slit_heights(plan, pair)]
        sheet.line(ends[0], ends[1], stroke=INK, width=1.6, dash="2 3")
    labels = [
        Label(a, one.hoops[0], length_text(one.drop, units))
        for a, one in zip(left, pair.channels, strict=True)
    ]
    draw_column(sheet, labels, MARGIN, TOP + 20, view.y, side="left", title="below the waist")
    across(
        sheet,
        view.x - half * view.scale,
        view.x + half * view.scale,
        view.y + 32,
        f"{length_text(pair.front_to_back, units)} front to back",
    )
    words = skirt_words(plan)
    write(sheet, lines_of(f"{words}; dotted: the pocket slit" if pair.pocket else words), view.y + 52, 16)
    scale_bar(sheet, MARGIN, view.y + 96, view.scale, units)
    alt = (
        f"A side hoop from the wearer's left, {length_text(pair.front_to_back, units)} from front to"
        f" back, with "
        f"{len(pair.channels)} hoops."
    )
    return figure(plan, sheet, TITLES["side"], alt)


def slit_heights(plan: Plan, pair: SidePair) -> tuple[float, float]:
    """Upper and lower end of the pocket slit above the floor, m: it lies along the slope of the outer panel, a
    waistband's width below its edge, above the first channel."""
    band, first = plan.spec.build.waistband.width, pair.channels[0]
    edge = plan.spec.wearer.side - band / 2
    fall = (edge - (plan.spec.wearer.side - first.drop)) / first.down
    return edge - band * fall, edge - (band + pair.pocket) * fall


def _above(plan: Plan, pair: SidePair) -> Figure:
    units, body = plan.spec.units, figure_of(plan)
    scale = _ROOM / max(pair.across, plan.spec.limits.door or 0.0)
    deep = max(pair.front_to_back, body.hip[1]) / 2 * scale
    above = Above(scale, PAGE / 2, 96 + deep)
    sheet = Sheet("hem", PAGE, above.y + deep + 178)
    heading(sheet, "From above", FROM_ABOVE)
    waist_and_hips(sheet, above, body.hip, body.waist)
    for hoop in plan.shape.hoops:
        sheet.path([above.at(x, y) for x, y in hoop.plan.path], width=2.0 if hoop.place == "hem" else 1.2)
        if hoop.real:
            sheet.path([above.at(x, y) for x, y in hoop.real], stroke=GREY, width=1.0, dash="4 3")
        (x0, y0), (x1, y1) = hoop.plan.path[0], hoop.plan.path[-1]
        sheet.line(above.at(x0, y0), above.at(x1, y1), stroke=GREY, width=0.9)
    _door(sheet, plan, above, deep)
    half = pair.across / 2 * scale
    across(
        sheet,
        above.x - half,
        above.x + half,
        above.y + deep + 46,
        _over_both(plan, pair),
    )
    sheet.text(above.x, above.y + deep + 18, "FRONT", size=TEXT, anchor="middle", bold=True, halo=True)
    said = ("firm: the half ovals wished; dashed: where each steel lies by itself, its ends held by inner panel and"
            " tie (the thin straight lines); the lowest hoop is thick")
    write(sheet, lines_of(named(plan.spec, said)), above.y + deep + 76, 16)
    scale_bar(sheet, MARGIN, above.y + deep + 134, scale, units)
    alt = f"Both side hoops from above beside waist and hips, {_over_both(plan, pair)}."
    return figure(plan, sheet, "From above", alt)


def _door(sheet: Sheet, plan: Plan, above: Above, deep: float) -> None:
    door = plan.spec.limits.door
    if door is None:
        return
    a, b = above.at(-door / 2, 0)[0], above.at(door / 2, 0)[0]
    jambs(sheet, plan, a, b, (above.y - deep - 22, above.y + deep + 26), above.y - deep - 20)
