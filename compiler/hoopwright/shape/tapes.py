"""Tapes: from their place on the waistband down to the hem, with a mark for every hoop.

A tape's fraction of the girth changes evenly with depth, from its place on the waistband's lower
edge to its place on the hem hoop. Between fixings it is straight in space, or lies on the body where
the body stands in the way: the shortest way over the hip rows that stick out beyond the straight
line. Marks add the lengths up from the waistband's lower edge.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from math import atan2, dist, hypot

from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse, polar_angle, reach
from hoopwright.shape.model import Contact, Mark, Point, Tape
from hoopwright.shape.outline import Outline, spans
from hoopwright.shape.waist import Waist
from hoopwright.source.record import record

_TOUCH = 1e-9
"""A body that stands out less than this, m, is not in the way."""


@record(frozen=True, slots=True)
class Level:
    """A hoop as a tape meets it: id, height of the centre line m, outline."""

    id: str
    height: float
    outline: Outline

    def point(self, fraction: float) -> Point:
        """The point in space at a fraction of its girth, m."""
        return (*self.outline.point(fraction), self.height)


def fraction_at_height(
    waist_fraction: float, hem_fraction: float, start: float, hem: float, height: float
) -> float:
    """A tape's fraction of the girth at a height; it takes the short way round from waist to hem."""
    turn = (hem_fraction - waist_fraction + 0.5) % 1.0 - 0.5
    return (waist_fraction + turn * (start - height) / (start - hem)) % 1.0


def run_tape(
    id: str,
    waist: Waist,
    fractions: tuple[float, float],
    levels: Sequence[Level],
    hem: float,
    body: Body,
    spare: float,
) -> tuple[Tape, tuple[tuple[float, Point], ...], tuple[Contact, ...]]:
    """One tape, its (fraction, point) at each level, and where it lies on the body.

    ``fractions``: on the waistband and on the hem hoop. ``levels`` are the hoops it is fixed to, from the
    top, less those whose line it passes by; ``hem`` the hem hoop's height. ``spare`` is added to the last
    mark to give the length to cut, m.
    """
    start = waist.start(fractions[0])
    last, run = start, 0.0
    marks: list[Mark] = []
    places: list[tuple[float, Point]] = []
    contacts: list[Contact] = []
    for level in levels:
        fraction = fraction_at_height(*fractions, start[2], hem, level.height)
        if not spans(level.outline, fraction):
            continue
        point = level.point(fraction)
        way = over_body(last, point, body)
        run += sum(dist(a, b) for a, b in itertools.pairwise(way))
        contacts += [
            Contact(id, p[2], hypot(p[0], p[1]) - _straight(last, point, p[2])[1]) for p in way[1:-1]
        ]
        inward = hypot(point[0], point[1]) < hypot(way[-2][0], way[-2][1])
        marks.append(Mark(level.id, run, lean(way[-2], point), len(way) > 2, inward))
        places.append((fraction, point))
        last = point
    tape = Tape(
        id,
        fractions[0],
        fractions[1],
        polar_angle(start[0], start[1]),
        start,
        tuple(marks),
        run + spare,
        marks[-1].hoop if marks else levels[-1].id,
    )
    return tape, tuple(places), tuple(contacts)


def lean(upper: Point, lower: Point) -> float:
    """Angle of a stretch from the vertical, radians, 0 to pi."""
    return atan2(hypot(lower[0] - upper[0], lower[1] - upper[1]), upper[2] - lower[2])


def over_body(upper: Point, lower: Point, body: Body) -> tuple[Point, ...]:
    """The shortest way from ``upper`` to ``lower`` that goes round the body's rows: its points, ends
    included.

    Each row between the two is met in the direction of the straight line there; the way is the upper hull
    of what sticks out beyond that line.
    """
    hull: list[tuple[float, float, Point]] = [(upper[2], 0.0, upper)]
    for row in body.rows:
        if not lower[2] < row.height < upper[2]:
            continue
        angle, straight = _straight(upper, lower, row.height)
        out = reach(Ellipse(row.width / 2, row.depth / 2), angle)
        if out - straight > _TOUCH:
            x, y = _along(upper, lower, row.height)
            scale = out / straight
            _push(hull, (row.height, out - straight, (x * scale, y * scale, row.height)))
    _push(hull, (lower[2], 0.0, lower))
    return tuple(point for _, _, point in hull)


def _push(hull: list[tuple[float, float, Point]], new: tuple[float, float, Point]) -> None:
    """Add a lower point to an upper hull of (height falling, excess), dropping what then lies inside it."""
    while len(hull) > 1:
        (z0, e0, _), (z1, e1, _) = hull[-2], hull[-1]
        if (e1 - e0) * (z0 - new[0]) > (new[1] - e0) * (z0 - z1):
            break
        hull.pop()
    hull.append(new)


def _along(upper: Point, lower: Point, height: float) -> tuple[float, float]:
    share = (upper[2] - height) / (upper[2] - lower[2])
    return (upper[0] + (lower[0] - upper[0]) * share, upper[1] + (lower[1] - upper[1]) * share)


def _straight(upper: Point, lower: Point, height: float) -> tuple[float, float]:
    """(direction, distance from the axis) of the straight line at a height."""
    x, y = _along(upper, lower, height)
    return polar_angle(x, y), hypot(x, y)
