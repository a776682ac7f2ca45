"""The plan stage: lay the results of all stages side by side, most important checks first."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import PurePosixPath

from hoopwright.plan.joins import place_behind, place_joins
from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named_assessment, named_checks, named_work
from hoopwright.plan.splices import place_splices
from hoopwright.shape.model import Shape
from hoopwright.spec.check import Check, Result
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.supply.model import Supply
from hoopwright.work.model import Work

_RANK: dict[Result, int] = {"fails": 0, "marginal": 1, "not assessed": 2, "holds": 3}


def assemble(source: str, spec: Spec, shape: Shape, assessment: Assessment, supply: Supply, work: Work) -> Plan:
    """One :class:`Plan` from the results of all stages.

    ``source`` is the spec's file name; folders in it are dropped, so that a plan does not depend on
    where it was built. Checks that fail come first, then marginal ones, then what was not assessed,
    then what holds; within each, strength before shape before supply, in the order the stage gave.
    What the stages say in words speaks of the design by its family's word. Findings are added by whoever knows their
    places in the text.
    """
    assessment = named_assessment(spec, assessment)
    checks = (*assessment.checks, *named_checks(spec, (*shape.checks, *supply.checks)))
    lap = spec.build.hooped.lap if spec.build.hooped is not None else 0.0
    joins, splices = place_splices(shape, supply.cutting, place_joins(shape), lap)
    return Plan(
        source=PurePosixPath(source.replace("\\", "/")).name,
        spec=spec,
        shape=shape,
        assessment=assessment,
        supply=supply,
        work=named_work(spec, work),
        checks=by_importance(checks),
        findings=(),
        joins=joins,
        behind=place_behind(shape, lap),
        splices=splices,
    )


def by_importance(checks: Iterable[Check]) -> tuple[Check, ...]:
    """Checks with the worst result first; the order within one result is kept."""
    return tuple(sorted(checks, key=lambda check: _RANK[check.result]))
