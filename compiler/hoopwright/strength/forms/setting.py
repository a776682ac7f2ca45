"""Spring-back and set: what bending a straight strip to a curve does to it.

A straight-born strip bent to radius R carries E t/(2R) at its outer fibre; closed into a hoop of
girth G that is pi E t/G. It takes a set when that passes the elastic limit.
"""

from __future__ import annotations

from math import pi

from hoopwright.shape.curves.root import bracketed_root


def closing_stress(e: float, depth: float, girth: float) -> float:
    """Stress in a strip closed into a hoop of ``girth`` m, Pa: pi E t/G."""
    return pi * e * depth / girth


def least_radius(e: float, depth: float, limit: float) -> float:
    """Smallest radius without set, m: E t/(2 sigma_y)."""
    return e * depth / (2 * limit)


def curved_stress(e: float, depth: float, curvature: float) -> float:
    """Stress from the whole curvature, Pa: E t/2 times it; never from its change alone."""
    return e * depth / 2 * abs(curvature)


def kept_ratio(x: float) -> float:
    """R over the radius kept after release, for x = R sigma_y/(E t) up to 1/2: 4 x^3 - 3 x + 1.

    Elastic, then perfectly plastic: the moment at radius R is (sigma_y t^2/4)(1 - (4/3) x^2) per unit
    width, and springing back takes M/EI off 1/R, so R/R_kept = 1 - 3x + 4x^3. It is 0 at x = 1/2, the first
    yield.
    """
    return 4 * x**3 - 3 * x + 1


def wrap_bound(depth: float, around: float) -> float:
    """sigma_y/E that a strip of ``depth`` at least has when it springs back straight from a cylinder
    ``around``: t/(D + t)."""
    return depth / (around + depth)


def wrap_estimate(depth: float, around: float, keeps: float) -> float:
    """sigma_y/E of a strip that keeps a curve of diameter ``keeps`` after a cylinder ``around``, both over
    the inside."""
    ratio = (around + depth) / (keeps + depth)
    x = bracketed_root(lambda value: kept_ratio(value) - min(ratio, 1.0), 0.0, 0.5)
    return x * depth / ((around + depth) / 2)
