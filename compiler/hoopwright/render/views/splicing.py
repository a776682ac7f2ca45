"""Splices on the page: where each lies, what they save, and what they cost in work and risk."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import counted, listed, where
from hoopwright.shape.model import Hoop
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class SplicedHoop:
    """One hoop of several lengths: the lengths in the order they follow round it, and where the splices
    lie."""

    id: str
    lengths: str
    places: str


@record(frozen=True, slots=True)
class SplicingView:
    """The hoops and, in whole sentences, what splicing does. ``by_hoop`` has them by id."""

    hoops: tuple[SplicedHoop, ...]
    says: str

    @property
    def by_hoop(self) -> dict[str, SplicedHoop]:
        """The hoops by id."""
        return {hoop.id: hoop for hoop in self.hoops}


def splicing_view(plan: Plan, p: Printer) -> SplicingView | None:
    """None when no hoop is spliced."""
    told = plan.supply.cutting.splicing
    if told is None:
        return None
    hoops = tuple(_hoop(hoop, plan, p) for hoop in plan.shape.hoops if hoop.id in told.parts)
    made = counted(told.count, "splice")
    if told.saves is None:
        does = f"{made} make it possible at all: without them these lengths do not do"
    else:
        does = f"{made} save {p.money(told.saves)} of stock"
    costs = [f"{p.minutes(splice_minutes(plan))} of work"]
    if told.cost > 0:
        costs.insert(0, f"{p.money(told.cost)} for what the joins use up")
    build = plan.spec.build.hoops
    heavier = told.count * (build.lap * build.material.linear_density + build.join.mass)
    weighs = f" They add {p.mass(heavier)}, which is not in the cage's weight."
    return SplicingView(hoops, f"{does[:1].upper()}{does[1:]}, and cost {listed(costs)}.{weighs}")


def splice_minutes(plan: Plan) -> float:
    """Minutes of all splices and of the cuts they ask for."""
    total = sum(task.minutes for task in plan.work.tasks if task.action == "splice-hoop")
    spliced = dict.fromkeys((splice.hoop for splice in plan.splices), 1)
    for splice in plan.splices:
        spliced[splice.hoop] += 1
    for task in plan.work.tasks:
        if task.action == "cut-hoop" and task.parts and task.parts[0] in spliced:
            lengths = spliced[task.parts[0]]
            total += task.minutes * (lengths - 1) / lengths
    return total


def _hoop(hoop: Hoop, plan: Plan, p: Printer) -> SplicedHoop:
    splices = [splice for splice in plan.splices if splice.hoop == hoop.id]
    pieces = {
        piece.share: piece.length
        for pack in plan.supply.cutting.packs
        for piece in pack.pieces
        if piece.part == hoop.id
    }
    order = [splices[0].first, *(splice.then for splice in splices)] if splices else list(pieces)
    joined = any(join.hoop == hoop.id for join in plan.joins)
    start = "from the join" if joined else "from the end at the wearer's left"
    places = []
    for splice in splices:
        between = f" between {splice.between[0]} and {splice.between[1]}" if splice.between[0] else ""
        places.append(f"{p.length(splice.along)} {start},{between} ({where(splice.fraction)})")
    lengths = ", ".join(f"length {share}: {p.length(pieces[share])}" for share in order)
    return SplicedHoop(hoop.id, lengths, "; ".join(places))
