"""Which stock will do for a cage: each put in the place of the spec's own, assessed, and priced.

Thin to thick by A/R^3, the stiffness of the hem hoop against the load it carries.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from math import pi

from hoopwright.library.joins import JOINS, suits
from hoopwright.library.model import Stock
from hoopwright.shape.draw import draw
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import failed
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.strength.assess import assess
from hoopwright.supply.provide import provide

COLD = "lap bound"
"""The join taken where the spec's own does not suit a stock."""


@record(frozen=True, slots=True)
class StandIn:
    """How a stock fares in a cage. ``ring``: A/R^3 of the hem hoop, N/m; ``set_share``: greatest stress of
    closing and wearing over the elastic limit; ``mass`` of all hoops, kg; ``cost`` of the whole cage (None
    when its price is not known). ``verdict`` is that of the strength stage, or ``cannot be drawn``."""

    stock: Stock
    ring: float | None
    set_share: float | None
    mass: float | None
    cost: Decimal | None
    verdict: str
    reasons: tuple[str, ...] = ()
    remedies: tuple[str, ...] = ()


def stand_ins(spec: Spec, stocks: Sequence[Stock]) -> tuple[StandIn, ...]:
    """Every stock in this cage, thin to thick; those that cannot be drawn last."""
    found = [stand_in(spec, stock) for stock in stocks]
    return tuple(sorted(found, key=lambda one: (one.ring is None, one.ring or 0.0, one.stock.name)))


def with_stock(spec: Spec, stock: Stock) -> Spec:
    """The same cage of another stock, joined cold where its own join does not suit it."""
    hoops = spec.build.hoops
    changed = replace(hoops, material=stock)
    if not suits(hoops.join, stock.section, stock.grade.metal):
        join = JOINS[COLD]
        changed = replace(changed, join=join, lap=join.lap)
    return replace(spec, build=replace(spec.build, hooped=changed))


def stand_in(spec: Spec, stock: Stock) -> StandIn:
    """One stock in a cage."""
    changed = with_stock(spec, stock)
    shape, said = draw(changed)
    if shape is None or failed(said):
        return StandIn(stock, None, None, None, None, "cannot be drawn",
                       tuple(one.message for one in said if one.severity.value == "error"))
    assessment, _ = assess(changed, shape)
    if assessment is None:
        return StandIn(stock, None, None, None, None, "cannot be assessed")
    material = assessment.materials[0]
    radius = shape.hoops[-1].girth / (2 * pi)
    stresses = [check.value for check in assessment.checks
                if check.code in ("set-closed", "set-worn") and check.value is not None]
    mends = tuple(f"{check.code}: {check.remedy}" for check in assessment.checks
                  if check.result == "fails" and check.remedy)
    return StandIn(stock, material.ei_weak / radius**3,
                   max(stresses) / material.elastic_limit if stresses else None,
                   assessment.weights.hoops, _cost(changed, shape), assessment.verdict, assessment.reasons,
                   mends)


def _cost(spec: Spec, shape: Shape) -> Decimal | None:
    """What the cage costs with this stock; None when the stock itself has no price."""
    if not spec.build.hoops.material.sold or spec.currency is None:
        return None
    supply, said = provide(spec, shape)
    return None if supply is None or failed(said) else supply.cost.total
