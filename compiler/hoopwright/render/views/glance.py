"""The top of the page: does it stand, what is it, what does it cost in money and hours."""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.quantities import Printer
from hoopwright.render.views.corded import corded_rows
from hoopwright.render.views.facts import Facts, cage_weight
from hoopwright.render.views.pair import pair_rows
from hoopwright.render.views.wheel import wheel_rows
from hoopwright.render.words import counted, listed, plain_key
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import Spec
from hoopwright.strength.verdict import clause


@record(frozen=True, slots=True)
class Fault:
    """A check that fails or is marginal, in plain words. ``beyond`` tells that its limit is passed."""

    name: str
    says: str
    found: str
    wanted: str
    remedy: str
    beyond: bool


@record(frozen=True, slots=True)
class Glance:
    """The verdict and the rows (label, value) of the table under it.

    ``watched`` is what goes with a design that stands: the reasons of its verdict, each with its check's numbers where
    there is one, then the marginal checks of geometry and supply, which have no reason (empty).
    """

    verdict: str
    reasons: tuple[str, ...]
    failing: tuple[Fault, ...]
    watched: tuple[tuple[str, Fault | None], ...]
    rows: tuple[tuple[str, str], ...]


def glance_view(plan: Plan, facts: Facts) -> Glance:
    """The top of a plan."""
    printer = Printer.of(plan.spec)
    return Glance(
        verdict=plan.assessment.verdict,
        reasons=plan.assessment.reasons,
        failing=tuple(fault(check, plan.spec, printer) for check in plan.failing),
        watched=tuple(_watched(plan, printer)),
        rows=(*_size_rows(plan, facts, printer), *_cost_rows(plan, printer), ("Result", _result(plan))),
    )


def _watched(plan: Plan, printer: Printer) -> Iterator[tuple[str, Fault | None]]:
    """(reason, what was found) of everything that is no fault and yet to be watched."""
    spec, judged = plan.spec, plan.assessment.checks
    left = [check for check in judged if check.result in ("fails", "marginal")]
    for reason in plan.assessment.reasons:
        check = next((one for one in left if named(spec, clause(one)) == reason), None)
        if check is not None:
            left.remove(check)
        yield reason, None if check is None else fault(check, spec, printer)
    for check in plan.checks:
        if check.result == "marginal" and check not in judged:
            yield "", fault(check, spec, printer)


def _result(plan: Plan) -> str:
    """The verdict in a few words."""
    if plan.failing:
        return "does not pass yet: " + listed(dict.fromkeys(plain_key(check.code) for check in plan.failing))
    if plan.assessment.verdict == "stands, but" and plan.assessment.reasons:
        return "stands, with what is said at the top to be watched"
    return plan.assessment.verdict


def fault(check: Check, spec: Spec, printer: Printer) -> Fault:
    """One check as a maker reads it."""
    part = f" ({named(spec, check.part)})" if check.part else ""
    return Fault(
        name=plain_key(check.code) + part,
        says=check.says,
        found=printer.check_value(check),
        wanted=printer.check_limit(check),
        remedy=check.remedy,
        beyond=check.beyond,
    )


def _size_rows(plan: Plan, facts: Facts, p: Printer) -> list[tuple[str, str]]:
    spec, skirt = plan.spec, plan.skirt
    hangs = f", over the {facts.it} as it hangs under its load" if plan.assessment.skirt else ""
    stature = f"{p.long(spec.wearer.stature)} tall" if spec.wearer.stature else ""
    wearer = ", ".join(filter(None, (spec.wearer.name, stature, f"hips {p.length(spec.wearer.hip)}",
                                     f"waist {p.length(spec.wearer.waist)}")))
    gap = f", {facts.front_gap} apart at the front" if facts.front_gap else ""
    frame = wheel_rows(plan) or pair_rows(plan)
    return [
        ("Wearer", f"{wearer}, {_heights(plan, p)}"),
        *(corded_rows(plan) or (
            frame[0] if frame else _hem_row(plan, facts, p),
            _hoops_row(plan, facts),
            frame[1] if frame else _carried(plan, facts, gap))),
        ("Skirt", f"{p.length(skirt.front)} long in front, {p.length(skirt.side)} at the side,"
                  f" {p.length(skirt.back)} behind{hangs}; hem at least {p.length(skirt.hem_girth)} round"),
        ("Weight", f"{cage_weight(plan)} for the {facts.it} alone, "
                   + (f"{p.mass(plan.assessment.carried)} with what is worn over it" if spec.load
                      else "nothing is stated that is worn over it")),
    ]


def _hoops_row(plan: Plan, facts: Facts) -> tuple[str, str]:
    """How many hoops of what, half hoops and open ones apart, and how the others are joined."""
    hoops = plan.shape.hoops
    made = f"of {facts.hoop.stock} ({facts.hoop.made_of})"
    closed = sum(hoop.closed for hoop in hoops)
    bows = sum(hoop.plan.kind == "bow" for hoop in hoops)
    if plan.shape.wheel is not None:
        return "Rings", f"{counted(len(hoops), 'ring')} {made}, {facts.hoop.join}"
    if closed == len(hoops):
        return "Hoops", f"{counted(closed, 'hoop')} {made}, {facts.hoop.join}"
    if plan.shape.sides is not None:
        return "Hoops", f"{counted(len(hoops), 'hoop')} {made}"
    loose = counted(bows, "half hoop") if bows else f"{counted(len(hoops) - closed, 'hoop')} open in front"
    joined = f" and {counted(closed, 'full hoop')}, {facts.hoop.join}" if closed else ""
    return "Hoops", f"{loose}{joined}{',' if joined else ''} {made}"


def _hem_row(plan: Plan, facts: Facts, p: Printer) -> tuple[str, str]:
    """The lowest hoop, and how high the cage is."""
    hem, spec = plan.shape.hoops[-1], plan.spec
    return ("Hem" if hem.closed else "Lowest hoop",
            f"{p.length(hem.girth)} {'round' if hem.closed else 'from end to end'}, {facts.hem_across},"
            f" {facts.hem_off_floor} off the floor; the {facts.it} is"
            f" {p.length(spec.wearer.side - spec.shape.hem_off_floor)} high")


def _carried(plan: Plan, facts: Facts, gap: str) -> tuple[str, str]:
    """What carries the hoops."""
    cloth = plan.shape.petticoat
    if cloth is None:
        return "Tapes", f"{counted(facts.tapes, 'tape')} of {facts.tape_material}{gap}"
    channel = f"casings of {cloth.casing}" if cloth.casing else "tucks"
    closed = f"a drawstring of {cloth.cord}" if cloth.drawstring else "a waistband"
    flounces = f", {counted(len(cloth.flounces), 'flounce')}" if cloth.flounces else ""
    panels = counted(cloth.count, cloth.kind.removesuffix("s"))
    return "Petticoat", f"{panels} of {cloth.material}, the hoops in {channel}, {closed}{flounces}"


def _heights(plan: Plan, p: Printer) -> str:
    front, left, back, right = plan.shape.waist_heights
    said = [p.length(value) for value in (front, left, back, right)]
    if len(set(said)) == 1:
        return f"its height {said[0]}"
    sides = f"sides {said[1]}" if said[1] == said[3] else f"left {said[1]}, right {said[3]}"
    return f"its height front {said[0]}, {sides}, back {said[2]}"


def _cost_rows(plan: Plan, p: Printer) -> list[tuple[str, str]]:
    cost, work = plan.supply.cost, plan.work
    rows: list[tuple[str, str]] = []
    if cost.currency is None:
        rows.append(("Cost", "not known: nothing in the spec has a price"))
    else:
        money = f"{p.money(cost.total)}, {p.money(cost.total + cost.reserve)} with the reserve"
        if cost.budget is not None:
            money += f"; the budget is {p.money(cost.budget)}"
        if cost.missing:
            money += f"; no price is known for {listed(cost.missing)}, which is not in the sum"
        rows.append(("Cost", money))
    sittings = counted(len(work.sessions), "sitting")
    time = f"{p.minutes(work.minutes)} of work in {sittings}"
    if work.first_fitting:
        time += f"; first try-on after {p.minutes(work.minutes_to_first_fitting)}"
    return [*rows, ("Time", time)]
