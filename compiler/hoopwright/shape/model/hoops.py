"""Hoops and the tapes that carry them; metres and radians."""

from __future__ import annotations

from typing import Literal

from hoopwright.shape.model.points import XY, Point
from hoopwright.source.record import record

HoopPlace = Literal["top", "body", "band top", "hem"]


@record(frozen=True, slots=True)
class PlanOutline:
    """A hoop's outline from above: an ellipse ``width`` (left to right) by ``depth`` (front to back), m.

    ``offset`` is how far its centre lies behind the waist's centre, m, and ``sideways`` how far to the
    wearer's left. ``arc`` is the angle it spans, 2 pi for a closed hoop. A ``bow`` is a half hoop, a spring
    whose ends are held: ``width``, ``depth`` and ``offset`` are those of the box round it. ``path`` is the
    true line of an open hoop, from its end at the wearer's left to the other.
    ``tilt`` is the angle by which the hoop rises towards the back, radians.
    """

    kind: Literal["round", "oval", "bow"]
    width: float
    depth: float
    offset: float
    arc: float
    sideways: float = 0.0
    tilt: float = 0.0
    path: tuple[XY, ...] = ()


@record(frozen=True, slots=True)
class Fixing:
    """Where a tape is fixed to a hoop: tape id, fraction of the hoop's girth, and the point in space."""

    tape: str
    fraction: float
    at: Point


@record(frozen=True, slots=True)
class Hoop:
    """One hoop, from its centre line. ``cut`` and ``casing`` are lengths to cut, m (0 for no casing).

    ``place``: ``top``, ``body``, ``band top`` or ``hem``. ``cased`` is false for hoops in the hem band.
    An open hoop goes from fraction ``start`` to ``end``: of its whole ellipse's girth where a piece of that
    is left out in front, from 1/4 to 3/4 for a half hoop. ``girth`` then is the length from end to end.
    ``real`` is the line the spring takes between its ties, seen from above, when that differs from ``plan``.
    """

    id: str
    place: HoopPlace
    height: float
    below_waist: float
    girth: float
    plan: PlanOutline
    cut: float
    casing: float
    cased: bool
    fixings: tuple[Fixing, ...]
    start: float = 0.0
    end: float = 1.0
    real: tuple[XY, ...] = ()

    @property
    def closed(self) -> bool:
        """Whether the hoop goes all round."""
        return self.end - self.start >= 1.0


@record(frozen=True, slots=True)
class Mark:
    """A mark on a tape: which hoop, distance from the waistband's lower edge, lean from the vertical
    (radians).

    ``on_body`` is true when the stretch ending here lies on the body, ``inward`` when it ends nearer to the upright
    through the waist's centre than its last straight piece begins.
    """

    hoop: str
    at: float
    lean: float
    on_body: bool = False
    inward: bool = False


@record(frozen=True, slots=True)
class Tape:
    """One tape. ``waist_angle`` is polar from the waist's centre, radians, 0 at centre front, positive
    to the left.

    ``start`` is its point on the waistband's lower edge. ``cut`` includes turnings, wrap and reserve.
    """

    id: str
    waist_fraction: float
    hem_fraction: float
    waist_angle: float
    start: Point
    marks: tuple[Mark, ...]
    cut: float
    ends_at: str
