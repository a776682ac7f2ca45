"""Outlines from above: what every stage asks of a hoop's line, whatever its ground plan.

Coordinates lie on the hoop's level: x to the wearer's left, y to the front, from the waist's centre, m.
A fraction goes round by the wearer's left from centre front; an open hoop has none beyond ``start`` and
``end``.
"""

from __future__ import annotations

from math import atan2, cos, pi, sin
from typing import Literal, Protocol

from hoopwright.shape.curves.ellipse import Ellipse, fraction_at, parameter_at, point_at, reach
from hoopwright.shape.model import XY, PlanOutline
from hoopwright.source.record import record

_EDGE = 1e-9
POINTS = 72


class Outline(Protocol):
    """A hoop's line seen from above."""

    @property
    def length(self) -> float:
        """Length along the line from its start to its end, m: the girth of a closed hoop."""
        ...

    @property
    def start(self) -> float:
        """Fraction at which it begins; 0 for a closed hoop."""
        ...

    @property
    def end(self) -> float:
        """Fraction at which it ends; 1 for a closed hoop."""
        ...

    def point(self, fraction: float) -> XY:
        """The point at a fraction, m. Beyond an open end the line's own continuation, or that end."""
        ...

    def reach(self, angle: float) -> float | None:
        """Distance from the waist's centre in a polar direction (0 front, pi/2 left), m; None where the hoop
        is open."""
        ...

    def plan(self) -> PlanOutline:
        """The outline as the shape holds it."""
        ...


@record(frozen=True, slots=True)
class Oval:
    """An ellipse or a circle, whole or with a piece left out in front."""

    ellipse: Ellipse
    start: float = 0.0
    end: float = 1.0

    @property
    def length(self) -> float:
        """Length along the line from its start to its end, m."""
        whole = self.ellipse.perimeter
        return whole if self.end - self.start >= 1.0 else whole * (self.end - self.start)

    def point(self, fraction: float) -> XY:
        """The point at a fraction of the whole ellipse's girth, m."""
        return point_at(self.ellipse, fraction)

    def reach(self, angle: float) -> float | None:
        """Distance from the waist's centre in a polar direction, m; None in the opening."""
        far = reach(self.ellipse, angle)
        if self.end - self.start >= 1.0:
            return far
        at = fraction_at(self.ellipse, _parameter(self.ellipse, angle, far))
        return far if spans(self, at) else None

    def plan(self) -> PlanOutline:
        """The outline as the shape holds it; ``arc`` is by the ellipse's parameter."""
        e = self.ellipse
        kind: Literal["round", "oval"] = "round" if e.a == e.b else "oval"
        if self.end - self.start >= 1.0:
            return PlanOutline(kind, 2 * e.a, 2 * e.b, e.offset, 2 * pi)
        first, last = parameter_at(e, self.start), parameter_at(e, self.end)
        turns = [first + (last - first) * k / POINTS for k in range(POINTS + 1)]
        path = tuple((e.a * sin(t), e.b * cos(t) - e.offset) for t in turns)
        return PlanOutline(kind, 2 * e.a, 2 * e.b, e.offset, last - first, path=path)


def spans(outline: Outline, fraction: float) -> bool:
    """Whether a fraction of the girth lies on the hoop."""
    if outline.end - outline.start >= 1.0:
        return True
    return outline.start - _EDGE <= fraction % 1.0 <= outline.end + _EDGE


def _parameter(ellipse: Ellipse, angle: float, far: float) -> float:
    """The ellipse's parameter at the point a distance ``far`` away in a polar direction."""
    return atan2(far * sin(angle) / ellipse.a, (far * cos(angle) + ellipse.offset) / ellipse.b)
