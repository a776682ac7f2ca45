"""Droop of a clamped overhang with a hung weight, however far it bends.

With the angle theta below the level and s from the clamp: EI theta'' = -(P + q (L - s)) cos theta,
theta(0) = 0, theta'(L) = 0; the drop is the integral of sin theta. In u = s/L only p = P L^2/EI and
w = q L^3/EI matter.
"""

from __future__ import annotations

from math import cos, sin, sqrt

from hoopwright.shape.root import bracketed_root

_STEPS = 24
GRAVITY = 9.80665
"""Standard acceleration of free fall, m/s2 (3rd CGPM, 1901)."""


def droop(tip: float, own: float) -> tuple[float, float]:
    """(drop/L, reach/L) of an overhang under ``tip`` = P L^2/EI and ``own`` = q L^3/EI.

    The curvature at the clamp is found for which the free end has none; Runge-Kutta of fourth order
    between. It is at most p + w/2, and by energy at most sqrt(2 (p + w)).
    """
    if tip + own <= 0.0:
        return 0.0, 1.0
    most = min(tip + own / 2, sqrt(2 * (tip + own)))
    clamp = bracketed_root(lambda k: _shoot(k, tip, own)[0], 0.0, most, 1e-9)
    _, drop, reach = _shoot(clamp, tip, own)
    return drop, reach


def stiffness_from_droop(overhang: float, weight: float, line_weight: float, drop: float) -> float:
    """EI in N m2 for which an overhang (m) with a hung ``weight`` N and ``line_weight`` N/m drops by
    ``drop`` m.

    ValueError when the drop is not between 0 and 0.95 of the overhang, or nothing pulls it down.
    """
    if not 0.0 < drop < 0.95 * overhang or weight + line_weight * overhang <= 0.0:
        raise ValueError("the drop of a droop test lies between nothing and nearly the overhang")
    small = (weight * overhang**3 / 3 + line_weight * overhang**4 / 8) / drop

    def miss(stiffness: float) -> float:
        tip, own = weight * overhang**2 / stiffness, line_weight * overhang**3 / stiffness
        return droop(tip, own)[0] * overhang - drop

    low = small
    while miss(low) < 0.0:
        low /= 2
    return small if low == small else bracketed_root(miss, low, 2 * low, 1e-8)


def _shoot(clamp: float, tip: float, own: float) -> tuple[float, float, float]:
    """(curvature at the free end, drop, reach) for a curvature at the clamp, all over L."""
    h = 1.0 / _STEPS
    angle, curve, drop, reach = 0.0, clamp, 0.0, 0.0

    def pull(u: float, at: float) -> float:
        return -(tip + own * (1.0 - u)) * cos(at)

    for step in range(_STEPS):
        u = step * h
        k1, c1 = curve, pull(u, angle)
        k2, c2 = curve + h / 2 * c1, pull(u + h / 2, angle + h / 2 * k1)
        a2 = angle + h / 2 * k1
        a3 = angle + h / 2 * k2
        k3, c3 = curve + h / 2 * c2, pull(u + h / 2, a3)
        a4 = angle + h * k3
        k4, c4 = curve + h * c3, pull(u + h, a4)
        drop += h / 6 * (sin(angle) + 2 * sin(a2) + 2 * sin(a3) + sin(a4))
        reach += h / 6 * (cos(angle) + 2 * cos(a2) + 2 * cos(a3) + cos(a4))
        angle += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        curve += h / 6 * (c1 + 2 * c2 + 2 * c3 + c4)
    return curve, drop, reach
