"""Hip ties: a tape from the front of a hoop on one side, round behind the hips, to the front on the other.

A cage that hangs more behind than in front of the waist swings forward until its weight hangs under the
waistband, and its back comes on to the legs. The tape lies behind the body, which cannot give way, and so
holds the hoop.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import dist

from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse, point_at
from hoopwright.shape.model import Tie
from hoopwright.shape.outline import spans
from hoopwright.shape.tapes import Level
from hoopwright.spec.model import Spec

AT = 0.15
"""Fraction of the hoop where the tape is sewn, between front and side: our choice."""
BEHIND = 0.35
"""Fraction of the body's girth where the tape leaves it, between side and back: our choice."""


def hip_ties(spec: Spec, levels: Sequence[Level], body: Body) -> tuple[Tie, ...]:
    """One tape on each of so many hoops, from the one nearest the hips downward; open hoops have none."""
    build = spec.build.hip_ties
    if build is None:
        return ()
    hips = spec.wearer.side - spec.wearer.waist_to_hip
    fit = [level for level in levels if spans(level.outline, AT) and spans(level.outline, 1 - AT)]
    if not fit:
        return ()
    first = min(range(len(fit)), key=lambda k: abs(fit[k].height - hips))
    return tuple(_tie(spec, level, body) for level in fit[first:first + build.count])


def _tie(spec: Spec, level: Level, body: Body) -> Tie:
    build = spec.build.hip_ties
    assert build is not None
    oval: Ellipse = body.outline(level.height) or body.lowest
    x, y = point_at(oval, BEHIND)
    behind = (x, y, level.height)
    length = 2 * dist(level.point(AT), behind) + oval.perimeter * (1 - 2 * BEHIND)
    cut = length + 2 * spec.allowances.tape_hem + spec.allowances.tape_reserve
    return Tie(f"{level.id}-hip", level.id, "hip", AT, 1 - AT, length, cut, 0.0, build.material.name, behind)
