"""A bracketed root of a function of one variable.

R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4: inverse quadratic or linear
steps while they pay, halving when they do not, so that it always ends.
"""

from __future__ import annotations

from collections.abc import Callable

LAST_STEP = 1e-9
"""A step of Newton's as short as this is the last: what is then left goes with its square."""
_MOST_STEPS = 200
_EPSILON = 2.220446049250313e-16


def bracketed_root(
    function: Callable[[float], float], low: float, high: float, tolerance: float = 1e-13,
    ends: tuple[float, float] | None = None,
) -> float:
    """The root of ``function`` between ``low`` and ``high``, where it changes sign.

    ``tolerance`` is relative to the bracket; ``ends``: the function's values at both, where they are known
    already. ValueError when both ends have the same sign.
    """
    a, b = low, high
    at_a, at_b = ends or (function(a), function(b))
    if at_a != 0.0 and at_b != 0.0 and (at_a > 0) == (at_b > 0):
        raise ValueError(f"no change of sign between {low} and {high}")
    width = abs(high - low) * tolerance
    c, at_c = a, at_a
    step = last = b - a
    for _ in range(_MOST_STEPS):
        if abs(at_c) < abs(at_b):
            a, b, c = b, c, b
            at_a, at_b, at_c = at_b, at_c, at_b
        least = 2 * _EPSILON * abs(b) + width / 2
        half = (c - b) / 2
        if abs(half) <= least or at_b == 0.0:
            return b
        if abs(last) >= least and abs(at_a) > abs(at_b):
            step, last = _step(a, b, c, (at_a, at_b, at_c), half, last, least, step)
        else:
            step = last = half
        a, at_a = b, at_b
        b += step if abs(step) > least else (least if half > 0 else -least)
        at_b = function(b)
        if (at_b > 0) == (at_c > 0):
            c, at_c = a, at_a
            step = last = b - a
    return b


def _step(
    a: float, b: float, c: float, values: tuple[float, float, float], half: float, last: float, least: float,
    step: float,
) -> tuple[float, float]:
    """An interpolated step and the one before it, or a halving of both when interpolation does not pay."""
    at_a, at_b, at_c = values
    s = at_b / at_a
    if a == c:
        p, q = 2 * half * s, 1 - s
    else:
        q, r = at_a / at_c, at_b / at_c
        p = s * (2 * half * q * (q - r) - (b - a) * (r - 1))
        q = (q - 1) * (r - 1) * (s - 1)
    q, p = (-q, p) if p > 0 else (q, -p)
    if 2 * p < min(3 * half * q - abs(least * q), abs(last * q)):
        return p / q, step
    return half, half
