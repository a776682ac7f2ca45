"""The skirt to be worn over the cage: how long at front, side and back, and how wide at the hem.

It goes from the waistline over the convex outline of the hoops, bridging hollows, and hangs
straight down from the farthest hoop to its own height off the floor.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from math import dist, pi

from hoopwright.shape.ellipse import reach
from hoopwright.shape.model import Skirt
from hoopwright.shape.outline import Outline
from hoopwright.shape.waist import Waist


def skirt_over(waist: Waist, hoops: Sequence[tuple[float, Outline]], off_floor: float) -> Skirt:
    """The skirt over hoops given as (height, outline) from the top, m. The side is the mean of both sides."""
    front = _length(waist, 0.0, hoops, off_floor)
    back = _length(waist, 0.5, hoops, off_floor)
    side = (_length(waist, 0.25, hoops, off_floor) + _length(waist, 0.75, hoops, off_floor)) / 2
    return Skirt(front, side, back, max(outline.length for _, outline in hoops), off_floor)


def _length(waist: Waist, fraction: float, hoops: Sequence[tuple[float, Outline]], off_floor: float) -> float:
    angle = 2 * pi * fraction
    start = (waist.height(fraction), reach(waist.outline, angle))
    reaches = [(height, outline.reach(angle)) for height, outline in hoops if off_floor < height < start[0]]
    met = [(height, far) for height, far in reaches if far is not None]
    farthest = max(far for _, far in [start, *met])
    outline = upper_hull([start, *met, (off_floor, farthest)])
    return sum(dist(a, b) for a, b in itertools.pairwise(outline))


def upper_hull(points: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """The outer hull of (height falling, distance) points, from first to last."""
    hull: list[tuple[float, float]] = []
    for z, r in points:
        while len(hull) > 1:
            (z0, r0), (z1, r1) = hull[-2], hull[-1]
            if (r1 - r0) * (z0 - z) > (r - r0) * (z0 - z1):
                break
            hull.pop()
        hull.append((z, r))
    return tuple(hull)
