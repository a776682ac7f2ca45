"""The waistline round the body, and where the waistband's lower edge lies.

Heights round the waist follow h(f) = c0 + c1 cos 2 pi f + c2 cos 4 pi f + s1 sin 2 pi f through the
heights at front (f = 0), left (1/4), back (1/2) and right (3/4). The band is centred on the
waistline, so that tapes start half a band lower.
"""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.shape.curves.ellipse import Ellipse, from_girth, point_at
from hoopwright.shape.model import Point
from hoopwright.source.record import record
from hoopwright.spec.model import Spec, Wearer


@record(frozen=True, slots=True)
class Waist:
    """The waist's oval, its heights and half the waistband's width, m."""

    outline: Ellipse
    c0: float
    c1: float
    c2: float
    s1: float
    half_band: float

    def height(self, fraction: float) -> float:
        """Height of the waistline above the floor at a fraction of the waist girth, m."""
        turn = 2 * pi * fraction
        return self.c0 + self.c1 * cos(turn) + self.c2 * cos(2 * turn) + self.s1 * sin(turn)

    def start(self, fraction: float) -> Point:
        """The point on the waistband's lower edge where a tape at that fraction starts, m."""
        x, y = point_at(self.outline, fraction)
        return (x, y, self.height(fraction) - self.half_band)

    @property
    def side(self) -> float:
        """Mean waist height of the two sides, m."""
        return self.c0 - self.c2

    @property
    def side_start(self) -> tuple[float, float]:
        """(height, half width) of the waistband's lower edge at the side, m."""
        return (self.side - self.half_band, self.outline.a)


def harmonics(wearer: Wearer) -> tuple[float, float, float, float]:
    """c0, c1, c2, s1 of the waistline, m."""
    ends, sides = (wearer.front + wearer.back) / 2, (wearer.left + wearer.right) / 2
    return (
        (ends + sides) / 2,
        (wearer.front - wearer.back) / 2,
        (ends - sides) / 2,
        (wearer.left - wearer.right) / 2,
    )


def waist_of(spec: Spec) -> Waist:
    """The waist of a spec's wearer under its waistband."""
    c0, c1, c2, s1 = harmonics(spec.wearer)
    return Waist(
        from_girth(spec.wearer.waist, spec.wearer.waist_oval), c0, c1, c2, s1, spec.build.waistband.width / 2
    )
