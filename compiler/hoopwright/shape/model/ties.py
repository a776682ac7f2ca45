"""Ties inside hoops and behind the hips; metres."""

from __future__ import annotations

from math import dist
from typing import Literal

from hoopwright.shape.model.points import XY, Point
from hoopwright.source.record import record

TieKind = Literal["cross", "chord", "lacing", "strap", "hip"]


@record(frozen=True, slots=True)
class Tie:
    """A tie inside one hoop, from fraction ``at`` to fraction ``to`` of it: ``cross`` draws a spring into an
    oval, ``chord`` and ``lacing`` hold the ends of a half hoop, ``strap`` those of an open one. A lacing is
    cut as panels and cord, so its ``cut`` is 0. A ``hip`` tie goes from ``at`` behind the body to ``to``; it
    leaves the body at ``behind``, by the wearer's left, and the same on her right.

    ``length`` m between its ends as it lies, ``cut`` with what they take to be sewn. ``pull``: how hard it draws its
    ends together over the bending stiffness EI of the bare, straight-born spring, 1/m2. ``way``: seen from above, the
    line from end to end on which it lies round the body; empty where it goes straight.
    """

    id: str
    hoop: str
    kind: TieKind
    at: float
    to: float
    length: float
    cut: float
    pull: float
    material: str
    behind: Point | None = None
    way: tuple[XY, ...] = ()

    @property
    def span(self) -> float:
        """How far its ends are apart, straight, m: less than its length where it lies round the body."""
        return dist(self.way[0], self.way[-1]) if self.way else self.length

    @property
    def beyond(self) -> float:
        """How far the body stands beyond the straight line between its ends, m; 0 where it goes straight."""
        return max((abs(y - self.way[0][1]) for _, y in self.way), default=0.0)
