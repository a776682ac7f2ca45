"""One value that holds everything a plan says; nothing is computed after it."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from hoopwright.plan.joins import BehindPlace, JoinPlace
from hoopwright.plan.splices import SplicePlace
from hoopwright.shape.model import Shape, Skirt
from hoopwright.source.diagnostic import Diagnostic
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.supply.model import Supply
from hoopwright.work.model import Work


@record(frozen=True, slots=True)
class Substitute:
    """One choice among materials offered: the names taken, how its hoops are joined, how it fared and why it
    was taken or not. ``cost`` is the sum of its shopping list, ``partial`` when a price is missing;
    ``weight`` kg of the cage alone; ``stiffness`` of its hoops in their plane, N m2; ``set_used`` and
    ``door_used`` the share of the limit that the checks against a set and in the door use (1 is the limit).
    None: not planned, or not assessed."""

    offered: tuple[str, ...]
    join: str
    result: Literal["passes", "fails", "cannot be made"]
    reason: str
    chosen: bool = False
    cost: Decimal | None = None
    partial: bool = False
    weight: float | None = None
    stiffness: float | None = None
    set_used: float | None = None
    door_used: float | None = None
    minutes: float | None = None


@record(frozen=True, slots=True)
class Plan:
    """A finished plan. ``source`` is the spec's file name without folders. ``checks`` are all stages'
    checks in order of importance; ``joins`` tells beside which tape each closed hoop is joined, ``behind``
    where it is when no tape crosses it; ``splices`` where a hoop of several lengths is spliced;
    ``substitutes`` has a row for each choice offered, in the maker's order.
    """

    source: str
    spec: Spec
    shape: Shape
    assessment: Assessment
    supply: Supply
    work: Work
    checks: tuple[Check, ...]
    findings: tuple[Diagnostic, ...]
    joins: tuple[JoinPlace, ...] = ()
    behind: tuple[BehindPlace, ...] = ()
    splices: tuple[SplicePlace, ...] = ()
    substitutes: tuple[Substitute, ...] = ()

    @property
    def skirt(self) -> Skirt:
        """The skirt to cut: over a wheel or side hoops as they hang under their load, where that is known."""
        return self.assessment.skirt or self.shape.skirt

    @property
    def failing(self) -> tuple[Check, ...]:
        """Checks that fail."""
        return tuple(check for check in self.checks if check.result == "fails")
