"""A bow: a straight spring whose ends are held at a chord and free to turn, as a half hoop's are.

Such a spring is an elastica, not a piece of a circle. With EI theta'' = -P sin theta, no moment at the ends
and theta measured from the chord's direction, sin(theta/2) = k sn u, u = lambda s, lambda^2 = P/EI,
s from the middle; the ends lie at u = K. From that (derived; the figures as in Love, Mathematical Theory of
Elasticity, chapter XIX, from memory)

    chord/length = 2 E/K - 1,    reach/length = k/K,
    x = (2 E(am u) - u)/lambda,  y = (2 k/lambda) cn u,

with K and E the complete elliptic integrals of modulus k. The curvature 2 k lambda cn u is greatest in
the middle and none at the ends, so a bow stands out less at its ends than a circle of its chord and reach.
"""

from __future__ import annotations

from functools import lru_cache
from math import cos, pi, sin, sqrt

from hoopwright.shape.curves.carlson import complete, incomplete_e, incomplete_f
from hoopwright.shape.curves.root import LAST_STEP, bracketed_root
from hoopwright.source.record import record

CLOSED = 0.908908557549
"""Modulus at which the ends meet: 2 E = K."""
_STRAIGHT = 1e-6


@record(frozen=True, slots=True)
class Bow:
    """A spring of ``length`` m, of modulus ``k``; see the module."""

    length: float
    k: float

    @property
    def scale(self) -> float:
        """lambda, 1/m."""
        return 2 * _whole(self.k)[0] / self.length

    @property
    def chord(self) -> float:
        """Distance between the ends, m."""
        first, second = _whole(self.k)
        return self.length * (2 * second / first - 1)

    @property
    def reach(self) -> float:
        """How far the middle stands off the chord, m."""
        return self.length * self.k / _whole(self.k)[0]

    @property
    def pull(self) -> float:
        """Pull along the chord that holds it, over the spring's bending stiffness EI, 1/m2."""
        return self.scale**2

    @property
    def least_radius(self) -> float:
        """Radius of curvature in the middle, m."""
        return 1 / (2 * self.k * self.scale)

    def point(self, share: float) -> tuple[float, float]:
        """(along the chord from its middle, off the chord) at a share of the length from one end, m.

        The first end lies at positive x.
        """
        whole = _whole(self.k)[0]
        u = (1 - 2 * share) * whole
        angle = amplitude(abs(u), self.k)
        along = (2 * incomplete_e(angle, self.k**2) - abs(u)) / self.scale
        return (along if u >= 0 else -along, 2 * self.k / self.scale * cos(angle))


def of_length(length: float, chord: float) -> Bow:
    """The bow of a spring ``length`` m long held at ``chord`` m. ValueError unless 0 <= chord < length."""
    if not 0 <= chord < length:
        raise ValueError("the chord of a bow is shorter than its spring")
    return Bow(length, bracketed_root(lambda k: Bow(length, k).chord - chord, _STRAIGHT, CLOSED + 1e-9))


def of_reach(chord: float, reach: float) -> Bow:
    """The bow that stands ``reach`` m off a chord of ``chord`` m; both above zero, else ValueError."""
    if chord <= 0 or reach <= 0:
        raise ValueError("a bow has a chord and a reach")
    k = bracketed_root(lambda k: Bow(1.0, k).reach * chord - Bow(1.0, k).chord * reach, _STRAIGHT, CLOSED)
    return Bow(chord / Bow(1.0, k).chord, k)


@lru_cache(maxsize=1024)
def _whole(k: float) -> tuple[float, float]:
    """The complete integrals K and E of modulus ``k``."""
    return complete(sqrt(1 - k * k))


@lru_cache(maxsize=1024)
def amplitude(u: float, k: float) -> float:
    """am(u | k), 0 to pi/2, for 0 <= u <= K: Newton's steps kept inside their bracket."""
    low, high = 0.0, pi / 2
    angle = high * min(1.0, u / _whole(k)[0])
    for _ in range(60):
        miss = incomplete_f(angle, k * k) - u
        if miss > 0:
            high = angle
        else:
            low = angle
        new = angle - miss * sqrt(1 - (k * sin(angle)) ** 2)
        if not low <= new <= high:
            new = (low + high) / 2
        if abs(new - angle) < LAST_STEP:
            return new
        angle = new
    return angle
