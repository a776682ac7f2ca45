"""Droop of a clamped overhang with a hung weight, however far it bends.

With the angle theta below the level and s from the clamp: EI theta'' = -(P + q (L - s)) cos theta,
theta(0) = 0, theta'(L) = 0; the drop is the integral of sin theta. In u = s/L only p = P L^2/EI and
w = q L^3/EI matter.
"""

from __future__ import annotations

from functools import lru_cache
from math import cos, cosh, pi, sin, sqrt

from hoopwright.shape.curves.root import bracketed_root

_STEPS = 24
_FARTHEST = 0.97
STEEPEST = pi / 3
"""A clamp that points more than this off the level is no droop test any more, radians: our judgement."""


def droop(tip: float, own: float, slope: float = 0.0) -> tuple[float, float]:
    """(drop/L, reach/L) of an overhang under ``tip`` = P L^2/EI and ``own`` = q L^3/EI.

    ``slope`` is how far the clamp points below the level, radians (above it: negative).

    From the free end, where nothing bends it, back to the clamp, where it must come out level: the free end
    lacks some angle to hanging upright, which is found. Upright is unstable along the way, so an angle off it
    grows by cosh sqrt(p + w) at most: a tenth of what that asks is a safe start, doubled until it is too
    much.
    """
    if tip + own <= 0.0:
        return sin(slope), cos(slope)

    def level(lack: float) -> float:
        return _back(pi / 2 - lack, tip, own)[0] - slope

    most = pi / 2 - slope
    low = 0.1 * most / cosh(sqrt(tip + own))
    high = 2 * low
    while high < most and level(high) > 0.0:
        low, high = high, 2 * high
    lack = bracketed_root(level, low, min(high, most), 1e-9)
    _, drop, reach = _back(pi / 2 - lack, tip, own)
    return drop, reach


@lru_cache(maxsize=256)
def stiffness_from_droop(
    overhang: float, weight: float, line_weight: float, drop: float, slope: float = 0.0
) -> float:
    """EI in N m2 for which an overhang (m) with a hung ``weight`` N and ``line_weight`` N/m drops by
    ``drop`` m from a clamp that points ``slope`` radians below the level.

    A drop of nearly the whole overhang says little; from 0.97 of it on it is taken as that. ValueError when
    the drop does not lie between that of a stiff sample and the overhang, or nothing pulls it down.
    """
    stiff = sin(slope) * overhang
    if not stiff < drop <= overhang or weight + line_weight * overhang <= 0.0 or abs(slope) >= STEEPEST:
        raise ValueError("the drop of a droop test lies between that of a stiff sample and the overhang")
    drop = min(drop, _FARTHEST * overhang) if _FARTHEST * overhang > stiff else drop
    small = (weight * overhang**3 / 3 + line_weight * overhang**4 / 8) / (drop - stiff)

    def miss(stiffness: float) -> float:
        tip, own = weight * overhang**2 / stiffness, line_weight * overhang**3 / stiffness
        return droop(tip, own, slope)[0] * overhang - drop

    low = small
    while miss(low) < 0.0:
        low /= 2
    high = 2 * low
    while miss(high) > 0.0:
        high *= 2
    return bracketed_root(miss, low, high, 1e-8)


def _back(end: float, tip: float, own: float) -> tuple[float, float, float]:
    """(angle at the clamp, drop, reach) for an angle ``end`` at the free end, all over L; Runge-Kutta of
    fourth order."""
    steps = _STEPS + int(4 * sqrt(tip + own))
    h = 1.0 / steps
    angle, curve, drop, reach = end, 0.0, 0.0, 0.0

    def pull(v: float, at: float) -> float:
        return -(tip + own * v) * cos(at)

    for step in range(steps):
        v = step * h
        k1, c1 = curve, pull(v, angle)
        a2 = angle + h / 2 * k1
        k2, c2 = curve + h / 2 * c1, pull(v + h / 2, a2)
        a3 = angle + h / 2 * k2
        k3, c3 = curve + h / 2 * c2, pull(v + h / 2, a3)
        a4 = angle + h * k3
        k4, c4 = curve + h * c3, pull(v + h, a4)
        drop += h / 6 * (sin(angle) + 2 * sin(a2) + 2 * sin(a3) + sin(a4))
        reach += h / 6 * (cos(angle) + 2 * cos(a2) + 2 * cos(a3) + cos(a4))
        angle += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        curve += h / 6 * (c1 + 2 * c2 + 2 * c3 + c4)
    return angle, drop, reach
