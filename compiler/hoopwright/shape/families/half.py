"""Half hoops behind the body: springs held at a chord, with full hoops below them if there are any."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from functools import lru_cache
from math import atan2, cos, pi, sin, sqrt

from hoopwright.shape.body import Body, body_of
from hoopwright.shape.curves import bow
from hoopwright.shape.curves.bow import Bow
from hoopwright.shape.curves.ellipse import Ellipse, from_girth
from hoopwright.shape.families import problems
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.levels import Levels
from hoopwright.shape.model import XY, PlanOutline
from hoopwright.shape.outline import Outline, Oval
from hoopwright.shape.waist import Waist
from hoopwright.source.quantity import Units
from hoopwright.source.record import record
from hoopwright.spec.model import HalfPlan, Spec

START, END = 0.25, 0.75
POINTS = 72


@record(frozen=True, slots=True)
class BowLine:
    """A half hoop: a bow whose chord lies ``set_back`` m behind the waist's centre."""

    bow: Bow
    set_back: float

    @property
    def length(self) -> float:
        """Length of the spring, m."""
        return self.bow.length

    @property
    def start(self) -> float:
        """It begins at the wearer's left."""
        return START

    @property
    def end(self) -> float:
        """It ends at her right."""
        return END

    def point(self, fraction: float) -> XY:
        """The point at a fraction, 1/4 to 3/4, m; beyond them the nearer end."""
        share = min(max((fraction % 1.0 - START) / (END - START), 0.0), 1.0)
        along, off = self.bow.point(share)
        return (along, -self.set_back - off)

    def reach(self, angle: float) -> float | None:
        """Distance from the waist's centre in a polar direction, m; None where it does not go."""
        return ray(self.path(), angle)

    def path(self) -> tuple[XY, ...]:
        """Its line from end to end."""
        return _bow_path(self.bow, self.set_back)

    def plan(self) -> PlanOutline:
        """The outline as the shape holds it."""
        path = self.path()
        wide, deep = max(x for x, _ in path), self.bow.reach
        (x, y), middle = path[0], self.set_back + deep / 2
        # the angle the spring turns through as it is seen from the middle of its chord
        arc = 2 * pi - 2 * atan2(x, y + self.set_back) if y + self.set_back > 0 else pi
        return PlanOutline("bow", 2 * wide, deep, middle, arc, path=path)


@lru_cache(maxsize=32)
def _bow_path(line: Bow, set_back: float) -> tuple[XY, ...]:
    points = [line.point(k / POINTS) for k in range(POINTS + 1)]
    return tuple((along, -set_back - off) for along, off in points)


def ray(path: Sequence[XY], angle: float) -> float | None:
    """Distance from the origin at which a ray in a polar direction (0 front, pi/2 left) meets a line last,
    m."""
    dx, dy = sin(angle), cos(angle)
    best: float | None = None
    for (x0, y0), (x1, y1) in itertools.pairwise(path):
        ex, ey = x1 - x0, y1 - y0
        cross = dx * ey - dy * ex
        if abs(cross) < 1e-15:
            continue
        far, share = (x0 * ey - y0 * ex) / cross, (x0 * dy - y0 * dx) / cross
        if -1e-9 <= share <= 1 + 1e-9 and far > 0 and (best is None or far > best):
            best = far
    return best


@record(frozen=True, slots=True)
class HalfHoops:
    """The ground plan of half hoops. ``girth`` of a half hoop is the length of its spring."""

    plan: HalfPlan
    levels: Levels
    body: Body
    top_girth: float | None
    hem_girth: float
    full_girth: float
    units: Units

    def bow(self, length: float, height: float) -> Bow:
        """The bow of a spring of that length at that height."""
        chord = self.plan.chord.at(self.levels.share(height))
        if not 0 < chord < length:
            raise Impossible(problems.chord_too_long(chord, length, self.units, off_floor=height))
        return _bow(length, chord)

    def set_back(self, height: float) -> float:
        """How far the chord lies behind the waist's centre: as stated, or even from where the ends of the top
        hoop rest on the body to where those of the lowest do, m."""
        share = self.levels.share(height)
        if self.plan.set_back is not None:
            return self.plan.set_back.at(share)
        top = self._on_body(self.plan.chord.top, self.levels.top)
        return top + (self._on_body(self.plan.chord.low, self.levels.low) - top) * share

    def _on_body(self, chord: float, height: float | None) -> float:
        """How far behind the waist's centre the body is as wide as a chord, m; 0 where it is nowhere."""
        oval = None if height is None else self.body.outline(height)
        oval = oval or self.body.lowest
        half = chord / 2
        return oval.b * sqrt(1 - (half / oval.a) ** 2) if half < oval.a else 0.0

    def outline(self, girth: float, height: float, below: int) -> Outline:
        """A half hoop, or one of the full hoops at the bottom, which reach as far back as the half hoops."""
        if below >= self.plan.full:
            return BowLine(self.bow(girth, height), self.set_back(height))
        oval: Ellipse = from_girth(self.full_girth, self.plan.full_oval)
        return Oval(Ellipse(oval.a, oval.b, self.reach(girth, height) - oval.b))

    def reach(self, girth: float, height: float) -> float:
        """How far a half hoop stands out behind the waist's centre, m."""
        return self.set_back(height) + self.bow(girth, height).reach


@lru_cache(maxsize=512)
def _bow(length: float, chord: float) -> Bow:
    return bow.of_length(length, chord)


def half_hoops(spec: Spec, waist: Waist, levels: Levels) -> HalfHoops:
    """The plan of half hoops, their springs' lengths at top and bottom stated or found from the reaches."""
    plan = spec.shape.ground_plan.half
    if plan is None:
        raise ValueError("a half plan says what its half hoops are")
    top, low = spec.shape.top_girth, spec.shape.hem_girth
    if plan.reach is not None:
        if min(plan.reach.top, plan.reach.low, plan.chord.top, plan.chord.low) <= 0:
            raise Impossible(problems.half_without_reach())
        top = bow.of_reach(plan.chord.top, plan.reach.top).length
        low = bow.of_reach(plan.chord.low, plan.reach.low).length
    for end, chord, steel in (("top", plan.chord.top, top), ("hem", plan.chord.low, low)):
        if steel is not None and chord >= steel:
            raise Impossible(problems.chord_too_long(chord, steel, spec.units, end))
    return HalfHoops(plan, levels, body_of(spec), top, low, spec.shape.hem_girth, spec.units)
