"""Hoops with ties from above: the wished line, the line the tied spring takes, and every tie's length.

A tied oval leaves its wished line by a hundredth of its width or so, which nobody would see: departures are drawn
several times as large as they are, and told in figures.
"""

from __future__ import annotations

from math import ceil, hypot

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import oval
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, scale_bar
from hoopwright.render.drawing.page import FROM_ABOVE, figure, lines_of, write
from hoopwright.render.drawing.sheet import GREY, INK, XY, Sheet
from hoopwright.render.figure import Figure
from hoopwright.render.quantities import Printer
from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse, point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.model import Hoop, Tie
from hoopwright.source.quantity import length_text

TOP = 60.0
TIMES = (1, 2, 5, 10, 20)
SEEN = 0.09
"""Departures from the wished oval are drawn as many times as large as stay below this share of its width."""
MOST = 12
"""More tied hoops than this are drawn every second, third ... one."""


def draw_ties(plan: Plan) -> Figure:
    """Every hoop that has ties, seen from above to one scale, front at the foot."""
    hoops = _shown(plan)
    columns = min(3, len(hoops))
    rows = ceil(len(hoops) / columns)
    cell = (PAGE - 20) / columns
    left = min(min(x for x, _ in _line(hoop)) for hoop in hoops)
    right = max(max(x for x, _ in _line(hoop)) for hoop in hoops)
    spans = [_span(plan, hoops[row * columns:(row + 1) * columns]) for row in range(rows)]
    scale = min((cell - 34) / (right - left), 230 / max(front - back for back, front in spans))
    tops = [TOP]
    for back, front in spans:
        tops.append(tops[-1] + (front - back) * scale + 46 + 16 * _lines(plan, hoops))
    times = _times(hoops)
    notes = lines_of(_said(plan, times))
    sheet = Sheet("ties", PAGE, tops[-1] + 17 * len(notes) + 44)
    heading(sheet, "Ties from above", FROM_ABOVE)
    for at, hoop in enumerate(hoops):
        x = 10 + cell * (at % columns) + cell / 2 - (left + right) / 2 * scale
        y = tops[at // columns] + 12 - spans[at // columns][0] * scale
        _hoop(sheet, plan, hoop, (x, y), scale, times)
    foot = tops[-1] + 14
    write(sheet, notes, foot)
    scale_bar(sheet, 18, foot + 17 * len(notes), scale, plan.spec.units)
    count = sum(1 for tie in plan.shape.ties if tie.hoop in {hoop.id for hoop in hoops})
    alt = f"{len(hoops)} hoops from above with {count} ties, each with its length; dashed the wished line."
    return figure(plan, sheet, "Ties from above", alt)


def _span(plan: Plan, hoops: list[Hoop]) -> tuple[float, float]:
    """How far a row of hoops goes back (negative) and forward, the waist's front included, m."""
    ys = [y for hoop in hoops for _, y in _line(hoop)]
    return min(ys), max(*(_front(plan, hoop) for hoop in hoops), *ys)


def _front(plan: Plan, hoop: Hoop) -> float:
    """How far the wearer goes forward where she is drawn, m."""
    waist = oval(plan.spec.wearer.waist, plan.spec.wearer.waist_oval)[1] / 2
    hips = _hips(plan, hoop)
    return waist if hips is None else max(waist, hips.b)


def _hips(plan: Plan, hoop: Hoop) -> Ellipse | None:
    """The body round which a tie of a hoop lies, at its height; None where none does."""
    if not any(tie.way for tie in plan.shape.ties if tie.hoop == hoop.id):
        return None
    body = Body(plan.shape.body)
    return body.outline(hoop.height) or body.lowest


def _lines(plan: Plan, hoops: list[Hoop]) -> int:
    """The most lines a caption takes."""
    return max(len(_caption(plan, hoop)) for hoop in hoops)


def _shown(plan: Plan) -> list[Hoop]:
    tied = {tie.hoop for tie in plan.shape.ties}
    hoops = [hoop for hoop in plan.shape.hoops if hoop.id in tied]
    every = ceil(len(hoops) / MOST)
    return hoops[::-1][::every][::-1]


def _line(hoop: Hoop) -> tuple[XY, ...]:
    """The wished line of a hoop."""
    if hoop.plan.path:
        return hoop.plan.path
    outline = ellipse_of(hoop.plan)
    return tuple(point_at(outline, k / 72) for k in range(72))


def _off(hoop: Hoop, point: XY) -> float:
    """How far a point lies outside (inside: negative) the wished oval, along the line from its centre, m."""
    x, y = point[0] - hoop.plan.sideways, point[1] + hoop.plan.offset
    far = hypot(x, y)
    return far - far / hypot(x / (hoop.plan.width / 2), y / (hoop.plan.depth / 2))


def _most(hoop: Hoop) -> float:
    """The greatest departure of a closed tied spring from its wished oval, m; 0 for other hoops."""
    return max((abs(_off(hoop, point)) for point in hoop.real), default=0.0) if hoop.closed else 0.0


def _times(hoops: list[Hoop]) -> int:
    """How many times as large as they are departures are drawn."""
    return max([times for times in TIMES
                if all(times * _most(hoop) <= SEEN * hoop.plan.width for hoop in hoops)] or [1])


def _enlarged(hoop: Hoop, times: int) -> list[XY]:
    """The line the spring takes, its departures from the wished oval enlarged."""
    if not hoop.closed:
        return list(hoop.real)
    found = []
    for x, y in hoop.real:
        far = hypot(x - hoop.plan.sideways, y + hoop.plan.offset)
        more = 1 + (times - 1) * _off(hoop, (x, y)) / far
        found.append((hoop.plan.sideways + (x - hoop.plan.sideways) * more,
                      (y + hoop.plan.offset) * more - hoop.plan.offset))
    return found


def _hoop(sheet: Sheet, plan: Plan, hoop: Hoop, middle: XY, scale: float, times: int) -> None:
    """One hoop round the waist, its name and its ties."""
    def at(x: float, y: float) -> XY:
        return middle[0] + x * scale, middle[1] + y * scale

    ties = [tie for tie in plan.shape.ties if tie.hoop == hoop.id]
    hips = _hips(plan, hoop)
    if hips is not None:
        sheet.ellipse(at(0, 0), hips.a * scale, hips.b * scale, fill="#f6f6f6", stroke=GREY, width=0.7, dash="1 2")
    width, depth = oval(plan.spec.wearer.waist, plan.spec.wearer.waist_oval)
    sheet.ellipse(at(0, 0), width / 2 * scale, depth / 2 * scale, fill="#ededed", stroke=GREY, width=0.7)
    wished = [at(x, y) for x, y in _line(hoop)]
    if hoop.real:
        sheet.path(wished, closed=hoop.closed, stroke=GREY, width=0.9, dash="4 3")
        sheet.path([at(x, y) for x, y in _enlarged(hoop, times)], closed=hoop.closed, width=2.0)
    else:
        sheet.path(wished, closed=hoop.closed, width=2.0)
    for tie in ties:
        _tie(sheet, hoop, tie, middle, scale)
    low = max(*(y for _, y in wished), at(0, _front(plan, hoop))[1])
    sheet.text(middle[0], low + 19, hoop.id, size=TEXT, anchor="middle", bold=True)
    for row, words in enumerate(_caption(plan, hoop)):
        sheet.text(middle[0], low + 35 + 16 * row, words, size=SMALL, anchor="middle")


def _tie(sheet: Sheet, hoop: Hoop, tie: Tie, middle: XY, scale: float) -> None:
    """A tie as a line from end to end, round the body where it lies so."""
    ends = tie.way or [_end(hoop, fraction) for fraction in (tie.at, tie.to)]
    places = [(middle[0] + x * scale, middle[1] + y * scale) for x, y in ends]
    if tie.behind is not None:
        x, y, _ = tie.behind
        bend = [(middle[0] + s * x * scale, middle[1] + y * scale) for s in (1, -1)]
        places = [places[0], *bend, places[1]]
    dash = "6 3" if tie.kind in ("strap", "lacing") else ""
    sheet.path(places, width=1.4, stroke=INK, dash=dash)
    for place in (places[0], places[-1]):
        sheet.ellipse(place, 2.6, 2.6, fill="#fff", width=1.2)


def _caption(plan: Plan, hoop: Hoop) -> list[str]:
    """Every different length once, and how far a half hoop stands out."""
    words = {"cross": "tie", "chord": "chord", "lacing": "chord", "strap": "strap", "hip": "behind the hips"}
    ties = [tie for tie in plan.shape.ties if tie.hoop == hoop.id]
    said = [f"{words[tie.kind]} {length_text(tie.span, plan.spec.units)}" for tie in ties]
    said += [f"round her {length_text(tie.length, plan.spec.units)}" for tie in ties if tie.way]
    if hoop.plan.kind == "bow":
        said.append(f"out {length_text(hoop.plan.depth, plan.spec.units)}")
    if hoop.closed and hoop.real:
        xs, ys = [x for x, _ in hoop.real], [y for _, y in hoop.real]
        said.append(f"wished {_across(hoop.plan.width, hoop.plan.depth, plan)}")
        said.append(f"tied {_across(max(xs) - min(xs), max(ys) - min(ys), plan)}")
    counts = {one: said.count(one) for one in said}
    return [f"{count} x {one}" if count > 1 else one for one, count in counts.items()]


def _across(width: float, depth: float, plan: Plan) -> str:
    """Width by depth, the unit said once."""
    units = plan.spec.units
    return f"{length_text(width, units).rsplit(' ', 1)[0]} × {length_text(depth, units)}"


def _end(hoop: Hoop, fraction: float) -> XY:
    """Where on its hoop a tie ends."""
    if hoop.plan.path:
        return hoop.plan.path[0] if abs(fraction - hoop.start) < abs(fraction - hoop.end) else (
            hoop.plan.path[-1])
    return point_at(ellipse_of(hoop.plan), fraction)


def _said(plan: Plan, times: int) -> str:
    """What the lines mean."""
    kinds = {tie.kind for tie in plan.shape.ties}
    words = ["grey: the waist"]
    if "cross" in kinds:
        most = max((_most(hoop) for hoop in plan.shape.hoops), default=0.0)
        large = (f", its departures drawn {times} times as large, so that the bar does not measure them" if times > 1
                 else "")
        words.append(f"dashed and thin: the wished oval; firm: the line the spring takes between its ties{large}; it"
                     f" leaves the oval by {Printer.of(plan.spec).by(most, 'length')} at most")
    if kinds & {"chord", "lacing"}:
        words.append("a half hoop is drawn as the bow it takes when its ends are held so far apart")
    if "lacing" in kinds:
        words.append("broken, from end to end: what the lacing holds")
    if "strap" in kinds:
        words.append("broken: the strap across the opening")
    if any(tie.way for tie in plan.shape.ties):
        words.append("dotted: the body at that height, below the hips as thick as the hips, round which ties lie,"
                     " thinner than the hoop")
    return "; ".join(words) + "."
