"""Convex outlines: what cloth bridges when it is drawn over things."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from hoopwright.shape.model import XY


def hull_girth(points: Sequence[XY]) -> float:
    """Girth of the convex outline round points, m."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return 0.0

    def chain(run: Sequence[XY]) -> list[XY]:
        found: list[XY] = []
        for x, y in run:
            while len(found) > 1:
                (x0, y0), (x1, y1) = found[-2], found[-1]
                if (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) > 0:
                    break
                found.pop()
            found.append((x, y))
        return found

    ring = chain(ordered)[:-1] + chain(ordered[::-1])[:-1]
    return sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(ring, ring[1:] + ring[:1], strict=True))


def upper_hull(points: Sequence[XY]) -> tuple[XY, ...]:
    """The outer hull of (height falling, distance) points, from first to last."""
    hull: list[XY] = []
    for z, r in points:
        while len(hull) > 1:
            (z0, r0), (z1, r1) = hull[-2], hull[-1]
            if (r1 - r0) * (z0 - z) > (r - r0) * (z0 - z1):
                break
            hull.pop()
        hull.append((z, r))
    return tuple(hull)
