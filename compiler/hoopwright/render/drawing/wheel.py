"""A wheel on its wearer from the front and the side, and from above with its spokes, hole and slit."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of
from hoopwright.render.drawing.columns import Label, draw_column
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar
from hoopwright.render.drawing.page import MARGIN, Above, figure, lines_of, write
from hoopwright.render.drawing.scene import View, draw_waistband
from hoopwright.render.drawing.sheet import GREY, Sheet
from hoopwright.render.drawing.spokes import draw_spokes
from hoopwright.render.drawing.standing import (
    TITLES,
    TOP,
    door_lines,
    head,
    skirt_lines,
    skirt_words,
    standing,
)
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Hoop, Point, Wheel
from hoopwright.source.quantity import angle_text, length_text

_POINTS = 72
_ROOM = 330.0


def wheel_figures(plan: Plan, wheel: Wheel) -> tuple[Figure, ...]:
    """Front, side and top view of a wheel, and the chart of its spokes."""
    views = (_elevation(plan, wheel, "front"), _elevation(plan, wheel, "side"), _above(plan, wheel))
    return (*views, draw_spokes(plan, wheel))


def ring_points(plan: Plan, hoop: Hoop) -> list[Point]:
    """Points round a ring in space."""
    tilt, drawn = hoop.plan.tilt, hoop.plan
    _, left, _, right = plan.shape.waist_heights
    waist = (left + right) / 2
    drop = (waist + drawn.offset * sin(tilt) - hoop.height) / cos(tilt)
    middle = -drawn.offset * cos(tilt) - drop * sin(tilt)
    gap = 0.0 if hoop.closed else 2 * pi * hoop.start
    turns = [gap + (2 * pi - 2 * gap) * k / _POINTS for k in range(_POINTS + 1)]
    return [
        (
            drawn.width / 2 * sin(t),
            middle + drawn.depth / 2 * cos(t) * cos(tilt),
            hoop.height - drawn.depth / 2 * cos(t) * sin(tilt),
        )
        for t in turns
    ]


def _elevation(plan: Plan, wheel: Wheel, kind: str) -> Figure:
    sheet, view = standing(plan, kind, wheel.width)
    units, rim = plan.spec.units, plan.shape.hoops[-1]
    head(sheet, kind)
    edge = [view.at(point) for point in ring_points(plan, rim)]
    left, right = min(edge), max(edge)
    skirt_lines(sheet, plan, view, ([left], [right]))
    for spoke in wheel.spokes:
        sheet.line(view.at(spoke.hole), view.at(spoke.rim), stroke=GREY, width=1.2)
    _roll(sheet, plan, wheel, view)
    for hoop in plan.shape.hoops:
        sheet.path([view.at(point) for point in ring_points(plan, hoop)], width=2.2 if hoop is rim else 1.0)
    draw_waistband(sheet, plan, view)
    names = {
        "front": ((6, "right"), (0, "front"), (2, "left"), (4, "back")),
        "side": ((0, "front"), (2, "side"), (4, "back")),
    }[kind]
    labels = [
        Label(view.at(_at(plan, wheel, k)), word, length_text(wheel.rim[k].height, units))
        for k, word in names
    ]
    draw_column(
        sheet,
        sorted(labels, key=lambda label: label.at[1]),
        MARGIN,
        TOP + 20,
        view.y,
        side="left",
        title="rim off floor",
        room=120.0,
    )
    across(sheet, left[0], right[0], view.y + 32, f"{length_text(wheel.width, units)} across the rim")
    if kind == "front":
        door_lines(sheet, plan, view)
    else:
        said = (f"dashed: {skirt_words(plan)}; tilted {angle_text(wheel.tilt)}, set back"
                f" {length_text(wheel.set_back, units)}")
        write(sheet, lines_of(said), view.y + 52, 16)
    scale_bar(sheet, MARGIN, view.y + 96, view.scale, units)
    alt = (
        f"The wheel on its wearer {'from the front' if kind == 'front' else 'from her left'}, to scale: "
        f"{len(plan.shape.hoops)} rings on {len(wheel.spokes)} spokes, {length_text(wheel.width, units)}"
        f" across, "
        f"its rim {length_text(wheel.rim[0].height, units)} above the floor in front and "
        f"{length_text(wheel.rim[4].height, units)} behind."
    )
    return figure(plan, sheet, TITLES[kind], alt)


def _at(plan: Plan, wheel: Wheel, k: int) -> Point:
    """The point of the rim in one of the eight directions, on the drawn ring."""
    wanted = wheel.rim[k]
    return min(ring_points(plan, plan.shape.hoops[-1]), key=lambda p: abs(_turned(p, wanted.angle)))


def _turned(point: Point, angle: float) -> float:
    """How far a point lies off a direction from the waist's centre, as a chord."""
    far = hypot(point[0], point[1])
    return hypot(point[0] / far - sin(angle), point[1] / far - cos(angle))


def _roll(sheet: Sheet, plan: Plan, wheel: Wheel, view: View) -> None:
    """The roll's ends as dotted rounds under the wheel."""
    hole = ring_points(plan, plan.shape.hoops[0])
    half = wheel.roll / 2
    for point in (min(hole), max(hole)) if view.kind == "front" else (min(hole, key=lambda p: p[1]),):
        x, y = view.at((point[0], point[1], point[2] - half))
        away = half * view.scale * (1 if x > view.x or view.kind == "side" else -1)
        sheet.ellipse(
            (x + away, y), half * view.scale, half * view.scale, fill=sheet.pattern("dots"), width=0.9
        )


def _above(plan: Plan, wheel: Wheel) -> Figure:
    """The wheel looked at square to it, front at the foot of the page."""
    units, rim = plan.spec.units, plan.shape.hoops[-1]
    scale = _ROOM / max(wheel.width, plan.spec.limits.door or 0.0)
    half = wheel.width / 2 * scale
    above = Above(scale, PAGE / 2, 84 + half + wheel.set_back * scale)
    above = Above(scale, PAGE / 2, 84 + half - wheel.set_back * scale) if wheel.set_back < 0 else above
    low = above.y + (wheel.width / 2 - wheel.set_back) * scale
    sheet = Sheet("hem", PAGE, low + 150)
    heading(
        sheet,
        "The wheel from above",
        "square to the wheel; front at the bottom, her left on the page's right",
    )
    body = figure_of(plan)
    sheet.ellipse(
        above.at(0, 0),
        body.hip[0] / 2 * scale,
        body.hip[1] / 2 * scale,
        fill="#f2f2f2",
        stroke=GREY,
        width=1.0,
        dash="5 3",
    )
    for hoop in plan.shape.hoops:
        gap = 0.0 if hoop.closed else 2 * pi * hoop.start
        turns = [gap + (2 * pi - 2 * gap) * k / _POINTS for k in range(_POINTS + 1)]
        sheet.path(
            [
                above.at(hoop.plan.width / 2 * sin(t), hoop.plan.depth / 2 * cos(t) - hoop.plan.offset)
                for t in turns
            ],
            width=2.2 if hoop is rim else 1.2,
        )
    hole = plan.shape.hoops[0].plan
    for k, spoke in enumerate(wheel.spokes):
        t = 2 * pi * (k + 0.5) / len(wheel.spokes)
        first = above.at(hole.width / 2 * sin(t), hole.depth / 2 * cos(t) - hole.offset)
        last = above.at(rim.plan.width / 2 * sin(t), rim.plan.depth / 2 * cos(t) - rim.plan.offset)
        sheet.line(first, last, width=1.3)
        sheet.text(
            last[0] + 14 * sin(t),
            last[1] + 14 * cos(t) + 4,
            spoke.id,
            size=TEXT,
            anchor="middle",
            bold=True,
            halo=True,
        )
    foot = hole.depth / 2
    sheet.line(above.at(0, foot), above.at(0, foot + wheel.slit), width=2.0, dash="2 3")
    sheet.text(*above.at(0, 0), "waist", size=SMALL, anchor="middle")
    across(sheet, above.x - half, above.x + half, low + 44, f"{length_text(wheel.width, units)} across")
    said = (f"dotted: the slit of the cover, {length_text(wheel.slit, units)} from the hole to the front; dashed: the"
            f" hips; rim {length_text(wheel.rim[0].reach, units)} from the waist in front,"
            f" {length_text(wheel.rim[2].reach, units)} at the side, {length_text(wheel.rim[4].reach, units)}"
            " behind, along the wheel")
    write(sheet, lines_of(said), low + 70, 16)
    scale_bar(sheet, MARGIN, low + 124, scale, units)
    alt = (
        f"The wheel from above: {len(plan.shape.hoops)} rings and {len(wheel.spokes)} spokes, the waist"
        f" in its hole"
        f" and set back {length_text(wheel.set_back, units)}."
    )
    return figure(plan, sheet, "The wheel from above", alt)
