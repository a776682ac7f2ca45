"""The skirt to be worn over the cage: how long at front, side and back, and how wide at the hem.

It goes from the waistline over the convex outline of the hoops, bridging hollows, and hangs
straight down from the farthest hoop to its own height off the floor.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace
from math import cos, dist, hypot, pi, sin

from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse, point_at, reach
from hoopwright.shape.curves.hull import hull_girth, upper_hull
from hoopwright.shape.model import XY, Hoop, Skirt
from hoopwright.shape.outline import Outline
from hoopwright.shape.waist import Waist
from hoopwright.spec.model import Layer, Spec

PETTICOAT = 0.009525
"""What one gathered petticoat asks of skirt length, m: 3/8 in, common practice, no source."""
_ROUND = 72
"""Points taken of an outline when the line round several is measured."""


def skirt_over(
    waist: Waist, hoops: Sequence[tuple[float, Outline]], body: Body, off_floor: float
) -> Skirt:
    """The skirt over hoops given as (height, outline) from the top, m. The side is the mean of both sides.

    Where a hoop is open the skirt lies on the body; its hem is at least as wide as the line round all of it.
    """
    front, back, left, right = (_length(waist, f, hoops, body, off_floor) for f in (0.0, 0.5, 0.25, 0.75))
    return Skirt(front, (left + right) / 2, back, _girth(hoops, body), off_floor)


def for_petticoats(layers: Sequence[Layer]) -> float:
    """What the gathered petticoats among the layers ask of skirt length, m."""
    return PETTICOAT * sum(layer.gathered for layer in layers)


def over_petticoats(skirt: Skirt, layers: Sequence[Layer]) -> Skirt:
    """The same skirt, longer for every gathered petticoat under it."""
    more = for_petticoats(layers)
    return replace(skirt, front=skirt.front + more, side=skirt.side + more, back=skirt.back + more)


def _girth(hoops: Sequence[tuple[float, Outline]], body: Body) -> float:
    """The widest hoop's girth; of open hoops and body together, seen from above, if that is more."""
    widest = max(outline.length for _, outline in hoops)
    if all(outline.end - outline.start >= 1.0 for _, outline in hoops):
        return widest
    points: list[XY] = []
    for _, outline in hoops:
        span = outline.end - outline.start
        points += [outline.point(outline.start + span * k / _ROUND) for k in range(_ROUND + 1)]
    for row in body.rows:
        oval = Ellipse(row.width / 2, row.depth / 2)
        points += [point_at(oval, k / _ROUND) for k in range(_ROUND)]
    return max(widest, hull_girth(points))


def _length(
    waist: Waist, fraction: float, hoops: Sequence[tuple[float, Outline]], body: Body, off_floor: float
) -> float:
    angle = 2 * pi * fraction
    start = (waist.height(fraction), reach(waist.outline, angle))
    reaches = [(height, outline.reach(angle)) for height, outline in hoops if off_floor < height < start[0]]
    met = [(height, far) for height, far in reaches if far is not None]
    if len(met) < len(reaches):
        met += [
            (row.height, reach(Ellipse(row.width / 2, row.depth / 2), angle))
            for row in body.rows if off_floor < row.height < start[0]
        ]
        met.sort(reverse=True)
    farthest = max(far for _, far in [start, *met])
    outline = upper_hull([start, *met, (off_floor, farthest)])
    return sum(dist(a, b) for a, b in itertools.pairwise(outline))


def skirt_over_sides(
    spec: Spec, waist: Waist, body: Body, hoops: Sequence[Hoop], outs: Sequence[XY]
) -> Skirt:
    """The skirt over side hoops: on the body in front and behind, over the hoops at the sides, where they stand
    ``outs`` as (height, distance from the middle) from the top, m; its hem is as wide as the line round both."""
    points = [point for hoop in hoops for point in hoop.plan.path]
    points += [
        (row.width / 2 * sin(t), row.depth / 2 * cos(t))
        for row in body.rows
        for t in (2 * pi * k / _ROUND for k in range(_ROUND))
    ]
    front, back = (_beside(spec, waist, body, fraction, []) for fraction in (0.0, 0.5))
    return Skirt(front, over_side(spec, waist, body, outs), back, hull_girth(points), spec.skirt_off_floor)


def over_side(spec: Spec, waist: Waist, body: Body, outs: Sequence[XY]) -> float:
    """How long a skirt is over side hoops that stand ``outs`` as (height, distance from the middle), m: the mean of
    both sides, without petticoats."""
    return sum(_beside(spec, waist, body, fraction, outs) for fraction in (0.25, 0.75)) / 2


def _beside(spec: Spec, waist: Waist, body: Body, fraction: float, beyond: Sequence[XY]) -> float:
    """From the waistline at a fraction of the waist over the body and what stands ``beyond`` it to the hem, m."""
    angle = 2 * pi * fraction
    start = (waist.height(fraction), reach(waist.outline, angle))
    rows = ((row.height, reach(Ellipse(row.width / 2, row.depth / 2), angle)) for row in body.rows)
    points = sorted([*(row for row in rows if row[0] < start[0]), *beyond], reverse=True)
    far = max(out for _, out in (start, *points))
    line = upper_hull([start, *points, (spec.skirt_off_floor, far)])
    return sum(hypot(a[0] - b[0], a[1] - b[1]) for a, b in itertools.pairwise(line))
