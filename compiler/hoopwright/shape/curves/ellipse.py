"""The ellipse by its perimeter: girths, points at equal fractions of the girth, reach in a direction.

An outline lies on its hoop's level; x to the wearer's left, y to the front. The parameter t runs
from centre front by the left: x = a sin t, y = b cos t - offset. So a length along it from the
front is a E(t | m) with m = 1 - (b/a)^2, the incomplete elliptic integral of the second kind.
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, hypot, pi, sin, sqrt

from hoopwright.shape.curves.carlson import complete, incomplete_e
from hoopwright.shape.curves.root import LAST_STEP
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Ellipse:
    """``a`` half the width (left to right), ``b`` half the depth (front to back), centre ``offset`` behind
    the origin; m."""

    a: float
    b: float
    offset: float = 0.0

    @property
    def perimeter(self) -> float:
        """True perimeter, m."""
        return perimeter(self.a, self.b)


def perimeter(a: float, b: float) -> float:
    """Perimeter of the ellipse with half axes ``a`` and ``b``, m: 4 a E(m). A flat one (one of them 0) is 4 times
    the other."""
    if a < b:
        a, b = b, a
    return 4.0 * a if b == 0.0 else 4.0 * a * complete(b / a)[1]


def from_girth(girth: float, oval: float = 1.0, offset: float = 0.0) -> Ellipse:
    """The ellipse of a perimeter ``girth`` m and width over depth ``oval``."""
    if oval == 1.0:
        return Ellipse(girth / (2 * pi), girth / (2 * pi), offset)
    depth = girth / perimeter(oval, 1.0)
    return Ellipse(oval * depth, depth, offset)


def point_at(ellipse: Ellipse, fraction: float) -> tuple[float, float]:
    """(x, y) at a fraction of the girth from centre front by the wearer's left, m."""
    t = parameter_at(ellipse, fraction)
    return (ellipse.a * sin(t), ellipse.b * cos(t) - ellipse.offset)


def parameter_at(ellipse: Ellipse, fraction: float) -> float:
    """The parameter t, 0 to 2 pi, at a fraction of the girth from centre front."""
    quarter, rest = divmod((fraction % 1.0) * 4, 1.0)
    if ellipse.a == ellipse.b:
        return (quarter + rest) * pi / 2
    odd = int(quarter) % 2 == 1
    t = _quarter_parameter(ellipse.a, ellipse.b, 1.0 - rest if odd else rest)
    return (quarter + 1) * pi / 2 - t if odd else quarter * pi / 2 + t


def fraction_at(ellipse: Ellipse, t: float) -> float:
    """The fraction of the girth from centre front to parameter ``t``; the inverse of :func:`parameter_at`."""
    quarter, rest = divmod(t % (2 * pi), pi / 2)
    odd = int(quarter) % 2 == 1
    whole = ellipse.perimeter / 4
    share = _arc(ellipse.a, ellipse.b, pi / 2 - rest if odd else rest) / whole
    return (quarter + (1.0 - share if odd else share)) / 4


def reach(ellipse: Ellipse, angle: float) -> float:
    """Distance from the origin to the ellipse in a polar direction (0 front, pi/2 left), m.

    The origin must lie inside it.
    """
    x, y = sin(angle) / ellipse.a, cos(angle) / ellipse.b
    shift = ellipse.offset / ellipse.b
    # |r (x, y) + (0, shift)| = 1
    square, middle = x * x + y * y, y * shift
    return (-middle + sqrt(middle * middle - square * (shift * shift - 1.0))) / square


def polar_angle(x: float, y: float) -> float:
    """Angle from centre front, positive to the wearer's left, -pi to pi."""
    return atan2(x, y)


@lru_cache(maxsize=1024)
def _quarter_parameter(a: float, b: float, share: float) -> float:
    """Parameter, 0 to pi/2, at a share of the first quarter's length; Newton kept inside its bracket. The same
    points of the same hoops are asked for by shape, strength and figures."""
    wanted = share * perimeter(a, b) / 4
    low, high, even = 0.0, pi / 2, share * pi / 2
    t = min(max(low, even - 0.5 * (a - b) / (a + b) * sin(2 * even)), high)  # first term of a series in the flatness
    for _ in range(60):
        miss = _arc(a, b, t) - wanted
        if miss > 0:
            high = t
        else:
            low = t
        step = miss / hypot(a * cos(t), b * sin(t))
        new = t - step
        if not low <= new <= high:
            new = (low + high) / 2
        if abs(new - t) < LAST_STEP:
            return new
        t = new
    return t


def _arc(a: float, b: float, t: float) -> float:
    """Length from centre front to ``t`` in the first quarter, m."""
    return a * incomplete_e(t, 1.0 - (b / a) ** 2)
