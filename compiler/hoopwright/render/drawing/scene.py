"""Looking at the cage: points in space onto the page, and the things both elevations share."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.body import oval
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
from hoopwright.shape.model import Hoop, Point, Tape
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class View:
    """A look at the cage from ``front`` or from the wearer's left (``side``).

    ``scale`` user units are a metre; the floor under the waist's centre is at (``x``, ``y``) of the page.
    From the front the wearer's left is on the right of the page; from her left her front is on its left.
    """

    kind: str
    scale: float
    x: float
    y: float

    def place(self, sideways: float, height: float) -> XY:
        """Page place of a point ``sideways`` on the page and ``height`` above the floor, m."""
        return self.x + sideways * self.scale, self.y - height * self.scale

    def at(self, point: Point) -> XY:
        """Page place of a point in space."""
        return self.place(point[0] if self.kind == "front" else -point[1], point[2])

    def near(self, point: Point) -> float:
        """How near to the eye: positive on the eye's side of the waist's centre, m."""
        return point[1] if self.kind == "front" else point[0]

    def reach(self, hoop: Hoop) -> tuple[float, float]:
        """The hoop's left and right ends on the page."""
        if hoop.plan.path:
            along = [x if self.kind == "front" else -y for x, y in hoop.plan.path]
            return self.x + min(along) * self.scale, self.x + max(along) * self.scale
        half = (hoop.plan.width if self.kind == "front" else hoop.plan.depth) / 2
        middle = 0.0 if self.kind == "front" else hoop.plan.offset
        return self.x + (middle - half) * self.scale, self.x + (middle + half) * self.scale


def draw_hoops(sheet: Sheet, plan: Plan, view: View) -> None:
    """Every hoop as a level line as thick as its stock is high, to scale."""
    thick = max(1.6, plan.spec.build.hoops.material.section.height * view.scale)
    for hoop in plan.shape.hoops:
        left, right = view.reach(hoop)
        y = view.y - hoop.height * view.scale
        if view.kind == "front" and hoop.plan.path and not plan.spec.shape.ground_plan.half:
            for x in _front_pieces(hoop, view):
                sheet.rect(x[0], y - thick / 2, x[1] - x[0], thick, fill=INK, stroke="none", kind="hoop")
            sheet.line((left, y), (right, y), stroke=GREY, width=0.9, dash="4 3")
            continue
        sheet.rect(left, y - thick / 2, right - left, thick, fill=INK, stroke="none", kind="hoop")


def _front_pieces(hoop: Hoop, view: View) -> tuple[XY, XY]:
    """Left and right piece of an open hoop's front half on the page, from its ends to its sides."""
    left, right = view.reach(hoop)
    first, last = view.x + hoop.plan.path[0][0] * view.scale, view.x + hoop.plan.path[-1][0] * view.scale
    return (left, last), (first, right)


def draw_tapes(sheet: Sheet, plan: Plan, view: View, *, near: bool) -> None:
    """The tapes on the eye's side as strips of their true width, or those behind as broken lines."""
    carriers = plan.spec.build.tapes
    if carriers is None:
        return
    half = carriers.material.width / 2 * view.scale
    for tape in plan.shape.tapes:
        points = [tape.start, *_fixings(plan, tape)]
        if len(points) < 2:
            continue
        if (view.near(points[-1]) >= -1e-9) is not near:
            continue
        places = [view.at(point) for point in points]
        if not near:
            sheet.path(places, stroke=GREY, width=0.9, dash="4 3")
            continue
        halves = [max(1.2, half * _facing(point, view)) for point in points]
        left = [(x - h, y) for (x, y), h in zip(places, halves, strict=True)]
        right = [(x + h, y) for (x, y), h in zip(places, halves, strict=True)]
        sheet.path(left + right[::-1], closed=True, fill=PAPER, width=0.8)


def _fixings(plan: Plan, tape: Tape) -> list[Point]:
    """The points where a tape is fixed to hoops, top down."""
    hoops = {mark.hoop for mark in tape.marks}
    return [fixing.at for hoop in plan.shape.hoops if hoop.id in hoops for fixing in hoop.fixings
            if fixing.tape == tape.id]


def _facing(point: Point, view: View) -> float:
    """Share of its width a tape at that point shows to the eye."""
    angle = atan2(point[0], point[1])
    return abs(cos(angle) if view.kind == "front" else sin(angle))


def waistline(plan: Plan, view: View, *, near: bool) -> list[XY]:
    """The waistline's half on the eye's side (or behind it), from the left of the page to the right.

    Height round the waist is the trigonometric line through front, left, back and right.
    """
    front, left, back, right = plan.shape.waist_heights
    mean, tip = (front + left + back + right) / 4, (front - back) / 2
    dip, lean = (front + back - left - right) / 4, (left - right) / 2
    width, depth = oval(plan.spec.wearer.waist, plan.spec.wearer.waist_oval)
    points = []
    for step in range(25):
        turn = -pi / 2 + pi * step / 24
        angle = turn if view.kind == "front" else pi / 2 + turn
        angle = angle if near else (pi - angle if view.kind == "front" else -angle)
        height = mean + tip * cos(angle) + dip * cos(2 * angle) + lean * sin(angle)
        points.append(view.at((width / 2 * sin(angle), depth / 2 * cos(angle), height)))
    return points


def draw_waistband(sheet: Sheet, plan: Plan, view: View) -> None:
    """The waistband, centred on the waistline, as a white strip of its true width."""
    half = plan.shape.waistband.width / 2 * view.scale
    line = waistline(plan, view, near=True)
    sheet.path([(x, y - half) for x, y in line] + [(x, y + half) for x, y in reversed(line)], closed=True,
               fill=PAPER, width=1.2)
    sheet.path(line, stroke=GREY, width=0.6, dash="2 2")


def draw_band(sheet: Sheet, plan: Plan, view: View) -> None:
    """The cloth band between the two lowest hoops, as a weave."""
    band = plan.shape.band
    if band is None:
        return
    upper, lower = plan.shape.hoop(band.upper), plan.shape.hoop(band.lower)
    (a, b), (c, d) = view.reach(upper), view.reach(lower)
    top, bottom = view.y - upper.height * view.scale, view.y - lower.height * view.scale
    edge = [(a, top), (b, top), (d, bottom), (c, bottom)]
    sheet.path(edge, closed=True, fill=sheet.pattern("weave"), width=0.8)


def draw_petticoat(sheet: Sheet, plan: Plan, view: View) -> None:
    """The cloth that carries the hoops, stretched from the waistband over them, with its flounces' heads."""
    cloth = plan.shape.petticoat
    if cloth is None:
        return
    line, hoops = waistline(plan, view, near=True), plan.shape.hoops
    left = [line[0], *((view.reach(hoop)[0], view.y - hoop.height * view.scale) for hoop in hoops)]
    right = [line[-1], *((view.reach(hoop)[1], view.y - hoop.height * view.scale) for hoop in hoops)]
    low = left[-1][1] + cloth.edge * view.scale
    edge = [*left, (left[-1][0], low), (right[-1][0], low), *reversed(right)]
    sheet.path(edge, closed=True, fill=sheet.pattern("weave"), width=1.0)
    for flounce in cloth.flounces:
        y = low - flounce.up * view.scale
        sheet.line((_side(left, y), y), (_side(right, y), y), stroke=GREY, width=1.0, dash="2 3")


def _side(points: list[XY], y: float) -> float:
    """Where a side of the cloth, given top down, is at the page height ``y``."""
    for (x1, y1), (x2, y2) in pairwise(points):
        if y1 <= y <= y2:
            return x1 + (x2 - x1) * (y - y1) / (y2 - y1) if y2 > y1 else x2
    return points[-1][0]
