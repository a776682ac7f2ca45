"""Ties inside hoops and behind the hips; metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.shape.model.points import Point
from hoopwright.source.record import record

TieKind = Literal["cross", "chord", "lacing", "strap", "hip"]


@record(frozen=True, slots=True)
class Tie:
    """A tie inside one hoop, from fraction ``at`` to fraction ``to`` of it: ``cross`` draws a spring into an
    oval, ``chord`` and ``lacing`` hold the ends of a half hoop, ``strap`` those of an open one. A lacing is
    cut as panels and cord, so its ``cut`` is 0. A ``hip`` tie goes from ``at`` behind the body to ``to``; it
    leaves the body at ``behind``, by the wearer's left, and the same on her right.

    ``length`` m between its ends, ``cut`` with what they take to be sewn. ``pull``: its tension over the
    bending stiffness EI of the bare, straight-born spring, 1/m2.
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
