"""One value that holds everything a plan says; nothing is computed after it."""

from __future__ import annotations

from dataclasses import dataclass

from hoopwright.plan.joins import JoinPlace
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Diagnostic
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.supply.model import Supply
from hoopwright.work.model import Work


@dataclass(frozen=True, slots=True)
class Plan:
    """A finished plan. ``source`` is the spec's file name without folders. ``checks`` are all stages'
    checks in order of importance; ``joins`` tells where the join of each closed hoop sits."""

    source: str
    spec: Spec
    shape: Shape
    assessment: Assessment
    supply: Supply
    work: Work
    checks: tuple[Check, ...]
    findings: tuple[Diagnostic, ...]
    joins: tuple[JoinPlace, ...] = ()

    @property
    def failing(self) -> tuple[Check, ...]:
        """Checks that fail."""
        return tuple(check for check in self.checks if check.result == "fails")
