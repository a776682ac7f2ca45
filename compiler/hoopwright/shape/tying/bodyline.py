"""Ties and lacings straight from end to end of an open hoop, held against the body: where it stands in their way they
must lie round it, which takes more length than the straight line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import cos, dist, pi, sin

from hoopwright.shape.body import Body
from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.curves.hull import upper_hull
from hoopwright.shape.judge import judged, worst
from hoopwright.shape.model import XY, Hoop, Tie, TieKind
from hoopwright.shape.tying.ties import Tied
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec

STRAIGHT: tuple[TieKind, ...] = ("chord", "lacing", "strap")
_POINTS = 720
_SHOWS = 0.0005
"""Less than this the body does not stand in the way, m."""


@record(frozen=True, slots=True)
class Laid:
    """A tie that lies round the body: how far that stands beyond the straight line, and the tie's length so laid, m."""

    tie: Tie
    by: float
    length: float


def straight_check(spec: Spec, hoops: Sequence[Hoop], tied: Sequence[Tied], body: Body) -> Check | None:
    """Whether the straight ties of open hoops pass clear of the body; None without any."""
    straight = [(hoop, tie) for hoop, one in zip(hoops, tied, strict=True) for tie in one.ties if tie.kind in STRAIGHT]
    if not straight:
        return None
    laid = [round_body(tie, ends_of(hoop), body.outline(hoop.height) or body.lowest) for hoop, tie in straight]
    in_way = [one for one in laid if one.by > _SHOWS]
    value, part = worst((one.by, one.tie.hoop) for one in in_way) if in_way else (0.0, "")
    return judged(
        "tie-clear", part, value, 0.0, "length", "at most", soft=True,
        says="no straight tie or lacing passes where the wearer stands",
        source="geometry: the body's hip rows as ovals, the lowest standing for the legs below it, and a taut line"
        " round them",
        remedy="; or ".join(_mends(spec, in_way)),
    )


def ends_of(hoop: Hoop) -> tuple[XY, XY]:
    """Both ends of an open hoop seen from above, the wearer's left first."""
    left, right = hoop.plan.path[0], hoop.plan.path[-1]
    return left, right


def round_body(tie: Tie, ends: tuple[XY, XY], oval: Ellipse) -> Laid:
    """A tie laid taut round the body, behind it or, as a strap, before it."""
    side = 1.0 if tie.kind == "strap" else -1.0
    (x0, y0), (x1, y1) = ends
    line = side * (y0 + y1) / 2
    low, high = sorted((x0, x1))
    turns = (2 * pi * k / _POINTS for k in range(_POINTS))
    body = ((oval.a * sin(turn), side * oval.b * cos(turn)) for turn in turns)
    beyond = sorted(((x, y) for x, y in body if low < x < high and y > line), reverse=True)
    way = upper_hull([(high, line), *beyond, (low, line)])
    return Laid(tie, max((y for _, y in beyond), default=line) - line, sum(dist(a, b) for a, b in pairwise(way)))


def _mends(spec: Spec, laid: Sequence[Laid]) -> Iterator[str]:
    """What to do with the ties, the lacing and the straps that the body is in the way of."""
    for kind, said in (("chord", "lay each tie round behind her, so long between its ends"),
                       ("lacing", "lay the lacing round behind her and cut each panel wider by"),
                       ("strap", "lay each strap round before her, so long between its ends")):
        found = [(one.tie.hoop, (one.length - one.tie.length) / 2 if kind == "lacing" else one.length)
                 for one in laid if one.tie.kind == kind]
        if found:
            each = ", ".join(f"{length_text(length, spec.units)} at {hoop}" for hoop, length in found)
            set_back = "" if kind == "strap" else "; or set the hoops' ends behind her (shape.ground_plan.set_back)"
            yield f"{said} {each}{set_back}"
