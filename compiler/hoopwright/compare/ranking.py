"""Plans side by side: the cheapest that passes first, each with the reason for its place.

The order: plans that pass before plans that do not, those with fewer failed checks first; then a whole cost
before a partial one and that before none; then the lower cost, fewer hours, less weight, and the order
in which they were given. A plan passes when no check fails and the cage stands.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.source.record import record
from hoopwright.spec.check import Check

Labelled = tuple[str, Plan]


@record(frozen=True, slots=True)
class Ranked:
    """A plan in its place. ``cost`` is with reserve; None without any price. ``reason`` says why it stands
    here."""

    label: str
    plan: Plan
    passes: bool
    cost: Decimal | None
    partial: bool
    reason: str


def ranked(plans: Sequence[Labelled]) -> tuple[Ranked, ...]:
    """The plans in order. Costs in different currencies are not compared: fewer hours then come first."""
    currencies = {plan.supply.cost.currency for _, plan in plans if plan.supply.cost.currency}
    by_cost = len(currencies) < 2
    order = sorted(range(len(plans)), key=lambda index: _key(plans[index][1], by_cost, index))
    found: list[Ranked] = []
    for index in order:
        label, plan = plans[index]
        best = found[0] if found and found[0].passes else None
        found.append(Ranked(label, plan, passes(plan), _cost(plan), plan.supply.cost.partial,
                            _reason(plan, best, by_cost)))
    return tuple(found)


def passes(plan: Plan) -> bool:
    """Whether nothing is to be changed before it is built."""
    return not plan.failing and plan.assessment.verdict != "will not stand"


def _cost(plan: Plan) -> Decimal | None:
    cost = plan.supply.cost
    return cost.total + cost.reserve if cost.currency is not None else None


def _key(plan: Plan, by_cost: bool, index: int) -> tuple[int, int, Decimal, float, float, int]:
    cost = _cost(plan) if by_cost else None
    failing = 0 if passes(plan) else max(1, len(plan.failing))
    known = 2 if cost is None else 1 if plan.supply.cost.partial else 0
    return (failing, known, cost or Decimal(0), plan.work.minutes, plan.assessment.weights.total, index)


def _reason(plan: Plan, best: Ranked | None, by_cost: bool) -> str:
    """Why it stands where it does: what fails, or what it costs more than the first."""
    p = Printer.of(plan.spec)
    if plan.failing:
        faults = "; ".join(_failing(check, p) for check in plan.failing[:3])
        more = len(plan.failing) - 3
        return faults + (f"; and {more} more" if more > 0 else "")
    if not passes(plan):
        return "will not stand: " + "; ".join(plan.assessment.reasons)
    missing = plan.supply.cost.missing
    said = []
    if best is None:
        said.append("the cheapest that passes" if by_cost and _cost(plan) is not None else
                    "the least work of those that pass: without one currency for all, costs are not compared"
                    if not by_cost else "passes")
        best_missing: tuple[str, ...] = ()
    else:
        best_missing = best.plan.supply.cost.missing
        cost = _cost(plan)
        if by_cost and cost is not None and best.cost is not None:
            dearer = cost - best.cost
            said.append("costs the same" if not dearer else
                        f"{p.money(abs(dearer))} {'more' if dearer > 0 else 'less'}")
        said.extend(_against(plan, best.plan, p))
    if missing != best_missing and missing:
        said.append(f"no price is known for {', '.join(missing)}")
    return ", ".join(said) or "as good as the first"


def _against(plan: Plan, best: Plan, p: Printer) -> list[str]:
    """Hours and weight against the first one's, when they differ."""
    said = []
    minutes = plan.work.minutes - best.work.minutes
    if abs(minutes) >= 1:
        said.append(f"{p.minutes(abs(minutes))} {'more' if minutes > 0 else 'less'} work")
    weight = plan.assessment.weights.total - best.assessment.weights.total
    if abs(weight) >= 0.01:
        said.append(f"{p.mass(abs(weight))} {'heavier' if weight > 0 else 'lighter'}")
    return said


def _failing(check: Check, p: Printer) -> str:
    name = f"{check.code} {check.part}".strip()
    return f"{name}: {p.check_value(check)}, wanted {p.check_limit(check)}"
