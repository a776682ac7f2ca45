"""The cage as it hangs under its skirt beside the cage as it was wished, from the front and from the side.

Movements are drawn to scale; when they are too small to be seen, all are drawn larger by one stated number.
"""

from __future__ import annotations

from math import dist

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import figure_of, front_outlines, side_outlines
from hoopwright.render.drawing.marks import PAGE, TEXT, floor_line, heading, scale_bar
from hoopwright.render.drawing.page import MARGIN, figure, lines_of, write
from hoopwright.render.drawing.scene import View, draw_waistband
from hoopwright.render.drawing.sheet import GREY, INK, PALE, Sheet
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Point
from hoopwright.source.quantity import length_text
from hoopwright.spec.family import family_of
from hoopwright.strength.model import HoopLines

TOP = 62.0
TALLEST = 230.0
WIDEST = 200.0
TIMES = (1, 2, 5, 10, 20, 50, 100)
SEEN = 0.06
"""Movements are drawn larger while the largest stays below this share of the cage's height: our choice."""

Line = tuple[Point, ...]


def draw_loaded(plan: Plan) -> Figure | None:
    """Wished and loaded, front above side; None when no loaded shape was found."""
    lines = plan.assessment.lines
    if not lines:
        return None
    times, (part, most) = exaggeration(lines), largest(lines)
    loaded = {one.id: moved(one, times) for one in lines}
    wished = {one.id: one.wished for one in lines}
    ceiling = max(plan.shape.waist_heights) + plan.shape.waistband.width
    fixed = _fixed(plan, wished)
    scale = min(WIDEST / _width(lines, loaded), TALLEST / ceiling)
    height = ceiling * scale
    sheet = Sheet("loaded", PAGE, TOP + 2 * height + 152)
    heading(sheet, "Under its load", "left: as wished; right: as it hangs (dashed: as wished)")
    for row, kind in enumerate(("front", "side")):
        floor = TOP + height + row * (height + 46)
        for column, (words, hoops) in enumerate((("as wished", wished), ("as it hangs", loaded))):
            view = View(kind, scale, PAGE * (1 + 2 * column) / 4, floor)
            _body(sheet, plan, view, ceiling)
            if column:
                _cage(sheet, plan, view, wished, fixed, ghost=True)
            _cage(sheet, plan, view, hoops, fixed, ghost=False)
            draw_waistband(sheet, plan, view)
            floor_line(sheet, view.x - WIDEST / 2 - 8, view.x + WIDEST / 2 + 8, floor)
            whence = "front" if kind == "front" else "from her left"
            sheet.text(view.x, floor + 20, f"{whence}, {words}", size=TEXT, anchor="middle")
    said = _said(plan, times, part, most)
    below = TOP + 2 * height + 46
    write(sheet, lines_of(said), below + 44, 16)
    scale_bar(sheet, MARGIN, below + 78, scale, plan.spec.units)
    it = family_of(plan.spec)
    alt = f"The {it} as wished and as it hangs under its load, from the front and from the side. {said}"
    return figure(plan, sheet, "Under its load", alt)


def exaggeration(lines: tuple[HoopLines, ...]) -> int:
    """How many times larger than they are the movements are drawn."""
    most = largest(lines)[1]
    heights = [point[2] for one in lines for point in one.wished]
    room = SEEN * max(max(heights) - min(min(heights), 0.0), 1e-9)
    return max([times for times in TIMES if times * most <= room] or [1])


def largest(lines: tuple[HoopLines, ...]) -> tuple[str, float]:
    """The hoop that moves most, and by how much at its worst place, m."""
    moves = [(max(map(dist, one.wished, one.loaded)), one.id) for one in lines]
    most, part = max(moves)
    return part, most


def moved(line: HoopLines, times: int) -> Line:
    """A hoop's line with its movement drawn ``times`` as large."""
    return tuple((a[0] + times * (b[0] - a[0]), a[1] + times * (b[1] - a[1]), a[2] + times * (b[2] - a[2]))
                 for a, b in zip(line.wished, line.loaded, strict=True))


def _width(lines: tuple[HoopLines, ...], loaded: dict[str, Line]) -> float:
    """Twice the farthest reach from the waist's centre to any side, m."""
    points = [point for one in lines for point in (*one.wished, *loaded[one.id])]
    return 2 * max(max(abs(point[0]), abs(point[1])) for point in points)


def _body(sheet: Sheet, plan: Plan, view: View, ceiling: float) -> None:
    """The wearer up to the waist."""
    outlines = front_outlines(figure_of(plan)) if view.kind == "front" else side_outlines(figure_of(plan))
    for outline in outlines[-1:]:
        below = [(-x if view.kind == "side" else x, z) for x, z in outline if z <= ceiling]
        sheet.path([view.place(x, z) for x, z in below], closed=True, fill="#ededed", stroke=PALE, width=0.7)


def _fixed(plan: Plan, wished: dict[str, Line]) -> dict[str, list[tuple[str, int]]]:
    """Where each tape is fixed: hoop by hoop, the nearest of the points of the hoop's line."""
    fixed: dict[str, list[tuple[str, int]]] = {}
    for tape in plan.shape.tapes:
        fixed[tape.id] = []
        for mark in tape.marks:
            at = next(one.at for one in plan.shape.hoop(mark.hoop).fixings if one.tape == tape.id)
            far = [dist(point, at) for point in wished[mark.hoop]]
            fixed[tape.id].append((mark.hoop, far.index(min(far))))
    return fixed


def _cage(sheet: Sheet, plan: Plan, view: View, hoops: dict[str, Line],
          fixed: dict[str, list[tuple[str, int]]], *, ghost: bool) -> None:
    """Tapes, hoops, and spokes where there are some; a ghost is dashed and pale."""
    stroke, dash = (PALE, "4 3") if ghost else (INK, "")
    for tape in plan.shape.tapes:
        points = [tape.start, *(hoops[hoop][at] for hoop, at in fixed[tape.id])]
        near = view.near(points[-1]) >= -1e-9
        sheet.path([view.at(point) for point in points], stroke=stroke if ghost else GREY,
                   width=0.6 if ghost else (1.1 if near else 0.6), dash=dash or ("" if near else "3 3"))
    rings = {hoop.id for hoop in plan.shape.hoops}
    for id, line in hoops.items():
        if id not in rings:
            sheet.path([view.at(point) for point in line], stroke=stroke if ghost else GREY, width=0.6, dash=dash)
    for hoop in plan.shape.hoops:
        if hoop.id in hoops:
            sheet.curve([view.at(point) for point in hoops[hoop.id]], closed=hoop.closed, stroke=stroke,
                        width=0.7 if ghost else 1.5, dash=dash)


def _said(plan: Plan, times: int, part: str, most: float) -> str:
    units = plan.spec.units
    how = "Drawn to scale." if times == 1 else f"Movements are drawn {times} times as large as they are."
    size = length_text(most, units)
    small = "less than 1/8 in" if units == "inches" else "less than 0.1 cm"
    return f"{how} The largest movement is {small if size.startswith('0 ') else size}, at {part}."
