"""How the tie between both ends of an open hoop lies: straight where the body leaves room, else the shortest way round
it. Its length is that of this line, wherever one is given."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, pi, sin

from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.curves.hull import upper_hull
from hoopwright.shape.model import XY, TieKind

_POINTS = 240
_SHOWS = 0.0005
"""Less than this the body does not stand in the way, m."""


def round_body(kind: TieKind, ends: tuple[XY, XY], oval: Ellipse) -> tuple[XY, ...]:
    """The line of a tie between two level ends, the wearer's left first, drawn taut round the body: behind it or, as a
    strap, before it. Empty where the body does not stand in the way of the straight line.

    The body's outline is taken as ``_POINTS`` points, which shortens what lies along it by less than 1/30,000.
    """
    side = 1.0 if kind == "strap" else -1.0
    (x0, y0), (x1, y1) = ends
    line = side * (y0 + y1) / 2
    low, high = sorted((x0, x1))
    turns = (2 * pi * k / _POINTS for k in range(_POINTS))
    body = ((oval.a * sin(turn), side * (oval.b * cos(turn) - oval.offset)) for turn in turns)
    beyond = sorted(((x, y) for x, y in body if low < x < high and y > line), reverse=True)
    if max((y for _, y in beyond), default=line) - line <= _SHOWS:
        return ()
    way = upper_hull([(high, line), *beyond, (low, line)])
    return tuple((x, side * y) for x, y in (way if x0 > x1 else way[::-1]))


def long(way: tuple[XY, ...]) -> float:
    """Length of a line, m."""
    return sum(dist(a, b) for a, b in pairwise(way))
