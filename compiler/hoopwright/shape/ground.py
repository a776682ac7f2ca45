"""Ground plans: a hoop's outline from above for its girth and its height.

``GROUNDS`` names one maker for each kind of plan the language knows. A maker takes the spec, the waist
and the heights of the top and the lowest hoop, and gives a :class:`Ground`; every other room works
with that alone. A new kind of plan is a new class here (or in a file of its own) and one line in
``GROUNDS``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Protocol

from hoopwright.shape import problems
from hoopwright.shape.curves.ellipse import Ellipse, from_girth, perimeter
from hoopwright.shape.curves.root import bracketed_root
from hoopwright.shape.families.half import half_hoops
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.levels import Levels
from hoopwright.shape.model import PlanOutline
from hoopwright.shape.outline import Outline, Oval
from hoopwright.shape.waist import Waist
from hoopwright.source.record import record
from hoopwright.spec.model import Graded, GroundPlan, PlanKind, Spec

AGREE = 0.03
"""How far a stated width over depth may lie from the one that girth and reaches give."""


class Ground(Protocol):
    """A ground plan between two heights."""

    @property
    def top_girth(self) -> float | None:
        """Girth of the top hoop where the spec or the plan fixes it, m; the line then starts from it."""
        ...

    @property
    def hem_girth(self) -> float:
        """Girth in which the line ends, m."""
        ...

    def outline(self, girth: float, height: float, below: int) -> Outline:
        """The outline of a hoop of that girth at that height, with ``below`` hoops under it."""
        ...

    def reach(self, girth: float, height: float) -> float:
        """How far such a hoop stands out on the profile along which hoops are spaced, m: half its width at
        the side, or its reach behind where it is a half hoop."""
        ...


Maker = Callable[[Spec, Waist, Levels], Ground]


@record(frozen=True, slots=True)
class WholeHoops:
    """Closed hoops: circles, ovals, ovals thrown back; each a true ellipse of its girth."""

    plan: GroundPlan
    levels: Levels
    top_girth: float | None
    hem_girth: float

    def ellipse(self, girth: float, height: float) -> Ellipse:
        """The ellipse of a hoop: width over depth and set-back are even with height between top and hem."""
        share = self.levels.share(height)
        return from_girth(girth, self.plan.oval.at(share), self.plan.set_back.at(share))

    def outline(self, girth: float, height: float, below: int) -> Outline:
        """The whole ellipse."""
        return Oval(self.ellipse(girth, height))

    def reach(self, girth: float, height: float) -> float:
        """Half the width."""
        return self.ellipse(girth, height).a


def whole_hoops(spec: Spec, waist: Waist, levels: Levels) -> Ground:
    """The plan of a cage of closed hoops; one thrown back may say how far its hem reaches instead."""
    plan = spec.shape.ground_plan
    if plan.reach is not None:
        plan = _reaching(plan, plan.reach, spec.shape.hem_girth)
    return WholeHoops(plan, levels, spec.shape.top_girth, spec.shape.hem_girth)


def _reaching(plan: GroundPlan, reach: tuple[float, float], girth: float) -> GroundPlan:
    """The plan whose hem has that girth and reaches so far in front and behind. A width over depth that is
    stated as well must agree."""
    depth = reach[0] + reach[1]
    if depth >= girth / 2:
        raise Impossible(problems.reach_too_far())
    width = bracketed_root(lambda half: perimeter(half, depth / 2) - girth, 0.0, girth / 4) * 2
    oval = width / depth
    if plan.oval.low and abs(plan.oval.low - oval) > AGREE * oval:
        raise Impossible(problems.reach_disagrees(oval))
    return replace(plan, oval=Graded(plan.oval.top, oval))


GROUNDS: Mapping[PlanKind, Maker] = MappingProxyType({
    "round": whole_hoops,
    "oval": whole_hoops,
    "thrown back": whole_hoops,
    "half": half_hoops,
})
"""One maker for each kind of ground plan."""


def ground_of(spec: Spec, waist: Waist, top: float | None, low: float) -> Ground:
    """The ground plan of a spec between the heights of its top and lowest hoop."""
    return GROUNDS[spec.shape.ground_plan.kind](spec, waist, Levels(top, low))


def ellipse_of(outline: PlanOutline) -> Ellipse:
    """The ellipse of an outline."""
    return Ellipse(outline.width / 2, outline.depth / 2, outline.offset)
