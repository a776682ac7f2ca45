"""Elliptic integrals: incomplete ones by Carlson's duplication, complete ones by the arithmetic-geometric mean.

B. C. Carlson, "Numerical computation of real or complex elliptic integrals", Numerical Algorithms
10, 1995; series as in the NIST Digital Library of Mathematical Functions, 19.36. M. Abramowitz and I. A. Stegun,
Handbook of Mathematical Functions, 1964, 17.6.
"""

from __future__ import annotations

from math import cos, pi, sin, sqrt

_NEAR = 2e-3


def incomplete_f(angle: float, m: float) -> float:
    """Incomplete elliptic integral of the first kind F(angle | m), angle 0 to pi/2, m sin^2 angle at most
    1."""
    s, c = sin(angle), cos(angle)
    return s * carlson_f(c * c, 1.0 - m * s * s)


def incomplete_e(angle: float, m: float) -> float:
    """Incomplete elliptic integral of the second kind E(angle | m), angle 0 to pi/2, m sin^2 angle at most
    1."""
    s, c = sin(angle), cos(angle)
    x, y = c * c, max(0.0, 1.0 - m * s * s)
    return s * carlson_f(x, y) - m / 3 * s**3 * carlson_d(x, y)


def complete(other: float) -> tuple[float, float]:
    """Complete elliptic integrals K and E of the first and second kind, of complementary modulus ``other``: above 0,
    at most 1; m = 1 - other^2.

    K = pi / 2M, E = K (1 - sum 2^(n-1) c_n^2), c_0^2 = m.
    """
    mean, taken, power = 1.0, (1.0 - other * other) / 2, 1.0
    while abs(mean - other) > 1e-15 * mean:
        half = (mean - other) / 2
        mean, other = (mean + other) / 2, sqrt(mean * other)
        taken += power * half * half
        power *= 2
    first = pi / (2 * mean)
    return first, first * (1 - taken)


def carlson_f(x: float, y: float) -> float:
    """Carlson's symmetric R_F(x, y, 1); x and y not negative, at most one of them 0."""
    z = 1.0
    mean = (x + y + z) / 3
    while abs(mean - x) > _NEAR * mean or abs(mean - y) > _NEAR * mean or abs(mean - z) > _NEAR * mean:
        step = sqrt(x * y) + sqrt(x * z) + sqrt(y * z)
        x, y, z = (x + step) / 4, (y + step) / 4, (z + step) / 4
        mean = (mean + step) / 4
    u, v = 1 - x / mean, 1 - y / mean
    w = -u - v
    e2, e3 = u * v - w * w, u * v * w
    series = 1 - e2 / 10 + e3 / 14 + e2**2 / 24 - 3 * e2 * e3 / 44 - 5 * e2**3 / 208 + 3 * e3**2 / 104
    return series / sqrt(mean)


def carlson_d(x: float, y: float) -> float:
    """Carlson's R_D(x, y, 1); x and y not negative, at most one of them 0."""
    z, total, factor = 1.0, 0.0, 1.0
    mean = (x + y + 3 * z) / 5
    while abs(mean - x) > _NEAR * mean or abs(mean - y) > _NEAR * mean or abs(mean - z) > _NEAR * mean:
        step = sqrt(x * y) + sqrt(x * z) + sqrt(y * z)
        total += factor / (sqrt(z) * (z + step))
        factor /= 4
        x, y, z, mean = (x + step) / 4, (y + step) / 4, (z + step) / 4, (mean + step) / 4
    u, v = 1 - x / mean, 1 - y / mean
    w = -(u + v) / 3
    e2, e3 = u * v - 6 * w * w, (3 * u * v - 8 * w * w) * w
    e4, e5 = 3 * (u * v - w * w) * w * w, u * v * w**3
    series = 1 - 3 * e2 / 14 + e3 / 6 + 9 * e2**2 / 88 - 3 * e4 / 22 - 9 * e2 * e3 / 52 + 3 * e5 / 26
    series += -(e2**3) / 16 + 3 * e3**2 / 40 + 3 * e2 * e4 / 20
    return 3 * total + factor * series / (mean * sqrt(mean))
