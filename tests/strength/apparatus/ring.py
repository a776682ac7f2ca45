"""A closed hoop in its own plane, pulled inward by n equal loads W at equal spacing.

With alpha = pi/n, R the radius, A = EI weak, phi from midway: by symmetry a bay carries no shear midway,
and the thrust there is W/(2 sin alpha), so M = M_mid + (W R/2 sin alpha)(1 - cos phi). The ends of the bay
do not turn, so the integral of M is 0, which gives M_mid; Castigliano gives the movements. The same form
is in Roark's ring table (quoted from memory). n need not be whole: a bay as wide as the widest gap then
stands for the worst case. :mod:`hoopwright.strength.forms.uneven`, which holds for tapes at any places, and frames
solved elsewhere are held against these.
"""

from __future__ import annotations

from math import cos, pi, sin


def moment_at_load(n: float, load: float, radius: float) -> float:
    """Bending moment under a load, N m: (W R/2)(1/alpha - cot alpha)."""
    a = pi / n
    return load * radius / 2 * (1 / a - cos(a) / sin(a))


def moment_midway(n: float, load: float, radius: float) -> float:
    """Bending moment midway between loads, N m: (W R/2)(1/alpha - 1/sin alpha), of the other sign."""
    a = pi / n
    return load * radius / 2 * (1 / a - 1 / sin(a))


def inward_at_load(n: float, load: float, radius: float, weak: float) -> float:
    """Movement inward under a load, m: (W R^3/2A)[(alpha + sin alpha cos alpha)/(2 sin^2 alpha) -
    1/alpha]."""
    a = pi / n
    return load * radius**3 / (2 * weak) * ((a + sin(a) * cos(a)) / (2 * sin(a) ** 2) - 1 / a)


def outward_midway(n: float, load: float, radius: float, weak: float) -> float:
    """Movement outward midway, m: (W R^3/4A)[2/alpha - 1/sin alpha - alpha cos alpha/sin^2 alpha]."""
    a = pi / n
    return load * radius**3 / (4 * weak) * (2 / a - 1 / sin(a) - a * cos(a) / sin(a) ** 2)


def uneven_amplitude(load: float, waves: int, radius: float, weak: float) -> float:
    """Amplitude under a radial line load p cos k theta, m: p R^4/[A (k^2 - 1)^2], k at least 2."""
    return load * radius**4 / (weak * (waves**2 - 1) ** 2)


def amplified(movement: float, pressure: float, critical: float) -> float:
    """A movement with a standing inward line load: times 1/(1 - q/q_cr). Infinite from the critical load
    on."""
    return movement / (1 - pressure / critical) if pressure < critical else float("inf")
