"""A hoop squeezed between two parallel walls, exactly.

A quarter from the wall (theta = 0) to the side (theta = pi/2) is an elastica: A kappa' = P cos theta, so
kappa^2 = kappa_0^2 + (2P/A) sin theta, P half the squeezing force. With k = kappa_0^2 A/2P all lengths
follow from I0 = int dtheta/sqrt(k + sin theta) and its kin, which are elliptic integrals. The quarter's
length pi R/2 fixes k. At k = 0 the hoop lies flat on the wall: from there on (gap/2R below 0.7178) the
curved part only shrinks, F R^2/A = (1.19814/g)^2, and the rest lies along the wall.
"""

from __future__ import annotations

from functools import lru_cache
from math import pi, sqrt

from hoopwright.shape.curves.carlson import incomplete_e, incomplete_f
from hoopwright.shape.curves.root import bracketed_root
from hoopwright.source.record import record

SQUARE_ROOT_OF_SINE = 1.1981402347355922
"""Integral of sqrt(sin) from 0 to pi/2: half the lemniscate's second constant."""
ONE_OVER_ROOT = 2.6220575542921198
"""Integral of 1/sqrt(sin) from 0 to pi/2: the lemniscate constant."""
FLAT_BELOW = SQUARE_ROOT_OF_SINE * pi / 2 / ONE_OVER_ROOT
"""gap/2R below which the hoop lies flat on the walls, 0.7178."""


@record(frozen=True, slots=True)
class Squeeze:
    """``force`` = F R^2/A, ``least_radius`` = r_min/R, ``length`` over 2R along the walls, ``flat`` whether
    it lies flat."""

    force: float
    least_radius: float
    length: float
    flat: bool


@lru_cache(maxsize=64)
def squeezed(gap: float) -> Squeeze:
    """A hoop in a gap given as gap/2R, 0 to 1; at 1 and above it is free."""
    if gap >= 1.0:
        return Squeeze(0.0, 1.0, 1.0, False)
    if gap <= 0.0:
        raise ValueError("a gap is wider than nothing")
    if gap <= FLAT_BELOW:
        root = SQUARE_ROOT_OF_SINE / gap  # R sqrt(2P/A)
        length = pi / 2 - ONE_OVER_ROOT / root + 2 / root
        return Squeeze(root**2, 1 / root, length, True)
    # k = 1/c - 1 puts the free hoop (k infinite) at c = 0
    c = bracketed_root(lambda value: _gap(value) - gap, 1e-9, 1.0) if gap < _gap(1e-9) else 1e-9
    k = 1 / c - 1
    root = 2 * _i0(k) / pi
    return Squeeze(root**2, 1 / (root * sqrt(k + 1)), 2 * (sqrt(k + 1) - sqrt(k)) / root, False)


def _gap(c: float) -> float:
    k = 1 / c - 1
    first = _i0(k)
    return (2 * sqrt(k + 1) * incomplete_e(pi / 4, 2 / (k + 1)) - k * first) / first * pi / 2


def _i0(k: float) -> float:
    return 2 / sqrt(k + 1) * incomplete_f(pi / 4, 2 / (k + 1))
