"""Monotone cubic interpolation: no bump between two rows that the rows do not have.

Fritsch and Butland's harmonic mean slopes ("A method for constructing local monotone piecewise
cubic interpolants", SIAM J. Sci. Stat. Comput. 5, 1984), with the shape preserving three-point
slope at the ends (Moler, Numerical Computing with MATLAB, 2004, section 3.6).
"""

from __future__ import annotations

import itertools
from bisect import bisect_right
from collections.abc import Sequence

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class MonotoneCubic:
    """A curve through (``x``, ``y``), x rising, with slopes ``d`` at the knots. Level beyond the ends."""

    x: tuple[float, ...]
    y: tuple[float, ...]
    d: tuple[float, ...]

    def __call__(self, at: float) -> float:
        """The value at ``at``; beyond the first and last knots the value there."""
        if at <= self.x[0]:
            return self.y[0]
        if at >= self.x[-1]:
            return self.y[-1]
        k = bisect_right(self.x, at) - 1
        h = self.x[k + 1] - self.x[k]
        t = (at - self.x[k]) / h
        return (
            self.y[k] * (1 + 2 * t) * (1 - t) ** 2
            + self.d[k] * h * t * (1 - t) ** 2
            + self.y[k + 1] * t * t * (3 - 2 * t)
            - self.d[k + 1] * h * t * t * (1 - t)
        )


def monotone_cubic(x: Sequence[float], y: Sequence[float]) -> MonotoneCubic:
    """The monotone cubic through two or more knots; ``x`` must rise strictly, else ValueError."""
    if len(x) < 2 or len(x) != len(y) or any(b <= a for a, b in itertools.pairwise(x)):
        raise ValueError("a line wants two or more rows in strict order of height")
    h = [b - a for a, b in itertools.pairwise(x)]
    s = [(y[k + 1] - y[k]) / h[k] for k in range(len(h))]
    if len(s) == 1:
        return MonotoneCubic(tuple(x), tuple(y), (s[0], s[0]))
    inner = [_harmonic(h[k - 1], h[k], s[k - 1], s[k]) for k in range(1, len(h))]
    first, last = _end(h[0], h[1], s[0], s[1]), _end(h[-1], h[-2], s[-1], s[-2])
    return MonotoneCubic(tuple(x), tuple(y), (first, *inner, last))


def _harmonic(h0: float, h1: float, s0: float, s1: float) -> float:
    if s0 * s1 <= 0:
        return 0.0
    w0, w1 = 2 * h1 + h0, h1 + 2 * h0
    return (w0 + w1) / (w0 / s0 + w1 / s1)


def _end(h0: float, h1: float, s0: float, s1: float) -> float:
    d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1)
    if d * s0 <= 0:
        return 0.0
    if s0 * s1 <= 0 and abs(d) > 3 * abs(s0):
        return 3 * s0
    return d
