"""Steps down a line, measured straight from point to point."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from math import hypot

from hoopwright.shape.curves.root import bracketed_root

Profile = Callable[[float], float]
"""Half the width at the side by height, m."""
SidePoint = tuple[float, float]
"""(height, half width) on the side profile, m."""


def chord_steps(
    profile: Profile, start: SidePoint, end: SidePoint, shares: Sequence[float]
) -> tuple[float, ...]:
    """Heights between ``start`` and ``end`` such that the chords from hoop to hoop are as ``shares``.

    One share for each stretch; returns one height fewer. All stretches but the last are stepped down the
    line; the unit is found for which the last one fits.
    """
    if len(shares) == 1:
        return ()

    profile = cache(profile)  # every step asks for the lowest point again, and for the one that it starts from

    @cache
    def walk(unit: float) -> tuple[list[float], float]:
        point = start
        heights: list[float] = []
        for share in shares[:-1]:
            height = step_down(profile, point, unit * share, end[0])
            if height is None:
                return heights, -unit
            point = (height, profile(height))
            heights.append(height)
        return heights, hypot(point[0] - end[0], point[1] - end[1]) - unit * shares[-1]

    total = sum(shares)
    straight = hypot(start[0] - end[0], start[1] - end[1])
    least, most = straight / total * (1 - 1e-9), 1.5 * straight / total
    while (at_most := walk(most)[1]) > 0.0:
        most *= 2
    unit = bracketed_root(lambda u: walk(u)[1], least, most, ends=(walk(least)[1], at_most))
    heights, _ = walk(unit)
    return tuple(heights)


def step_down(profile: Profile, start: SidePoint, length: float, lowest: float) -> float | None:
    """Height of the point on the profile at a straight distance ``length`` below ``start``; None when that
    lies below ``lowest``."""

    def miss(height: float) -> float:
        return hypot(start[0] - height, start[1] - profile(height)) - length

    at_lowest = miss(lowest)
    if at_lowest < -1e-12 * length:
        return None
    if at_lowest <= 0.0:
        return lowest
    at_start = miss(start[0])
    if at_start >= 0.0:
        return start[0]
    straight_down = max(lowest, start[0] - length)
    at_down = miss(straight_down)
    if at_down <= 0.0:
        return straight_down
    return bracketed_root(miss, straight_down, start[0], ends=(at_down, at_start))
