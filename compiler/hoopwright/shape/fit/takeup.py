"""How far a mark moves when its hoop hangs too low.

A hoop keeps its radius, so a straight tape that leans by a from the vertical is taken up by e cos a for a
hoop that hung low by e (from L dL = h dh): 1/4 in low at 32 degrees is 0.21 in. Along a tape of several
stretches each stretch is shortened by what its own two ends rise against each other, times the cosine of its
own lean; a mark moves by the sum down to it. It is computed from the points themselves, not from that first
order, and round the body where the tape lies on it.

When the hem is off by the same all round, the waistline is taken to lie that much lower or higher than it
was measured: the tapes then start from there.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import dist

from hoopwright.shape.body import Body
from hoopwright.shape.model import Point
from hoopwright.shape.tapes import over_body


def taken_up(points: Sequence[Point], low: Sequence[float], body: Body) -> tuple[float, ...]:
    """How much shorter the tape gets down to each of its points but the first, m.

    ``points``: the tape's start and its fixings as they should be, the start as it is; ``low``: how much too
    low each of them was, m (0 for the start).
    """
    found = [(x, y, z - e) for (x, y, z), e in zip(points, low, strict=True)]
    gains = [_run(*hung, body) - _run(*meant, body)
             for meant, hung in zip(pairwise(points), pairwise(found), strict=True)]
    return tuple(sum(gains[: k + 1]) for k in range(len(gains)))


def sunk(points: Sequence[Point], by: float) -> tuple[Point, ...]:
    """The same points, the tape's start lower by ``by``, m."""
    (x, y, z), *rest = points
    return ((x, y, z - by), *rest)


def mark_alone(above: Point, then: Point, now: Point, body: Body) -> float:
    """How much one mark moves down its tape when its fixing goes from ``then`` to ``now``, m."""
    return _run(above, now, body) - _run(above, then, body)


def shares(points: Sequence[Point], whole_from: int) -> tuple[float, ...]:
    """How much of what the hem is off each point of a tape is off, when one tape alone is.

    Nothing at the waistband, evenly more with depth, all of it from the point ``whole_from`` down: a hem
    band's two hoops hang together.
    """
    top, bottom = points[0][2], points[whole_from][2]
    return tuple(min(1.0, (top - z) / (top - bottom)) if k < whole_from else 1.0
                 for k, (_, _, z) in enumerate(points))


def _run(upper: Point, lower: Point, body: Body) -> float:
    return sum(dist(a, b) for a, b in pairwise(over_body(upper, lower, body)))
