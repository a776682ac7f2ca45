"""Splices, where an order allows them: only when the packs and splices together cost less than packs
alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hoopwright.supply.cutting.bounds import Row
from hoopwright.supply.cutting.chains import LONGEST_CHAIN, Chained, Group, group_cap, partitions
from hoopwright.supply.cutting.check import check_order, splices_needed
from hoopwright.supply.cutting.completion import Budget, decide
from hoopwright.supply.cutting.mixes import Mix, cheapest_cover, cost_of, in_order
from hoopwright.supply.cutting.model import CuttingFailure, CuttingOrder, CuttingPlan, TooLong, WorkLimits
from hoopwright.supply.cutting.packing import Fill, pack_quickly
from hoopwright.supply.cutting.report import money
from hoopwright.supply.cutting.splice_report import spliced_plan
from hoopwright.supply.cutting.stock import Stock, to_stock
from hoopwright.supply.cutting.whole import cut_whole

_MIXES = 60
_PARTITIONS = 400
_TRIES = 600
_JOINTS = 6
_JOINTS_NEEDED = 16
"""Joints tried where there is no plan without splices at all."""


def cut_with_splices(order: CuttingOrder, limits: WorkLimits) -> CuttingPlan | CuttingFailure:
    """The best plan with splices when one costs less than the best without (or when there is none without).

    With a price missing, what a splice saves is unknown: then splices are used only when there is no plan
    without them.
    """
    bare = replace(order, rules=replace(order.rules, splice=None))
    problems = check_order(bare)
    hopeless = [p for p in problems if isinstance(p, TooLong) and not _can_mend(order, p)]
    if hopeless:
        return CuttingFailure(tuple(hopeless))
    plain = CuttingFailure(problems) if problems else cut_whole(bare, limits)
    stock = to_stock(order)
    if isinstance(plain, CuttingPlan) and (not stock.measure_cost or plain.cost == 0):
        return plain
    ceiling = None
    if isinstance(plain, CuttingPlan):
        ceiling = int(plain.objective * stock.money_scale)
    search = _Search(stock, ceiling, Budget(limits.nodes), _possible_splices(order))
    for tried in search.candidates():
        plan = spliced_plan(order, stock, tried, plain if isinstance(plain, CuttingPlan) else None)
        if plan is not None:
            return plan
        search.stuck = search.stuck or tried.cost
    if isinstance(plain, CuttingPlan) and search.floor() is not None:
        return _less_sure(stock, plain, search.floor() or 0)
    return plain


def _can_mend(order: CuttingOrder, problem: TooLong) -> bool:
    """Whether a piece too long may be spliced, and as few times as the order allows."""
    rule = order.rules.splice
    piece = next(p for p in order.pieces if p.part == problem.part)
    if rule is None or not piece.spliceable:
        return False
    splices = splices_needed(piece.length, problem.longest, rule.lap)
    return splices is not None and splices <= rule.most


def _possible_splices(order: CuttingOrder) -> int:
    """How many splices all pieces together can have, no part of them being too short."""
    rule = order.rules.splice
    if rule is None:
        return 0
    each = [
        max(
            s
            for s in range(rule.most + 1)
            if s == 0 or p.length + s * rule.lap >= (s + 1) * rule.shortest - 1e-9
        )
        for p in order.pieces
        if p.spliceable
    ]
    return sum(each)


def _less_sure(stock: Stock, plain: CuttingPlan, floor: int) -> CuttingPlan:
    """The plan without splices when a cheaper one with splices was neither found nor ruled out."""
    lower = min(plain.lower_bound, money(stock, floor))
    gap = float((plain.objective - lower) / plain.objective)
    return replace(
        plain, lower_bound=lower, proven=gap == 0, gap=gap, waste_proven=plain.waste_proven and gap == 0
    )


class _Search:
    """Mixes and groupings by cost with splices, cheapest first; remembers what it could not decide."""

    def __init__(self, stock: Stock, ceiling: int | None, budget: Budget, most_joints: int) -> None:
        self._stock = stock
        self._most_joints = most_joints
        self._ceiling = ceiling
        self._budget = budget
        self._open: int | None = None
        self.stuck: int | None = None

    def floor(self) -> int | None:
        """Cost of the cheapest undecided case; None when all was decided."""
        return min((x for x in (self._open, self.stuck) if x is not None), default=None)

    def candidates(self) -> Iterator[Chained]:
        """Groupings into which the pieces fit as if chains were single lengths, cheapest first, then fewest
        splices."""
        stock = self._stock
        tries = 0
        for cost, joints, mix in self._cases():
            ways = partitions(_bins(stock, mix), joints, _PARTITIONS) if tries < _TRIES else None
            if ways is None:
                self._open = cost if self._open is None else self._open
                continue
            for groups in ways:
                tries += 1
                if max(len(g) for g in groups) > LONGEST_CHAIN:
                    self._open = cost if self._open is None else self._open
                    continue
                fills = self._fit(groups, cost)
                if fills is not None:
                    lower = min(x for x in (cost, self.floor()) if x is not None)
                    yield Chained(mix, groups, fills, cost, lower, self._budget.spent)

    def _cases(self) -> list[tuple[int, int, Mix]]:
        """(cost, joints, mix) by cost, then joints, below the ceiling, as far as plain lengths allow."""
        stock = self._stock
        row = Row(stock.total - sum(max(0, c) for c in stock.hand), tuple(max(0, c) for c in stock.caps))
        rows = (row,) if row.need > 0 else ()
        low = cheapest_cover(stock, rows)
        if low is None:
            return []
        high = cost_of(stock, stock.avail) if self._ceiling is None else self._ceiling - 1
        cases: list[tuple[int, int, Mix]] = []
        for count, mix in enumerate(in_order(stock, rows, low, high)):
            if mix is None or count == _MIXES:
                self._open = low if mix is None else cost_of(stock, mix)
                break
            cases += self._joints(mix)
        return sorted(cases)

    def _joints(self, mix: Mix) -> Iterator[tuple[int, int, Mix]]:
        stock = self._stock
        caps = _bins(stock, mix)
        for joints in range(1, min(len(caps), self._most_joints + 1)):
            cost = cost_of(stock, mix) + joints * stock.splice_price
            too_dear = self._ceiling is not None and cost >= self._ceiling
            if too_dear or sum(caps) - joints * stock.splice_loss < stock.total:
                return
            if joints > (_JOINTS_NEEDED if self._ceiling is None else _JOINTS):
                self._open = cost if self._open is None else min(self._open, cost)
                return
            yield cost, joints, mix

    def _fit(self, groups: tuple[Group, ...], cost: int) -> list[Fill] | None:
        stock = self._stock
        caps = [group_cap(g, stock.splice_loss) for g in groups]
        fills = pack_quickly(stock.sizes, stock.counts, caps)
        if fills is not None:
            return fills
        share = Budget(max(0, min(self._budget.left, self._budget.left // 8 + 200)))
        decision = decide(stock.sizes, stock.counts, caps, share)
        self._budget.left -= share.spent
        self._budget.spent += share.spent
        if not decision.known:
            self._open = cost if self._open is None else self._open
        return decision.fills


def _bins(stock: Stock, mix: Mix) -> tuple[int, ...]:
    """Capacities at hand with a mix, those too short for any part left out."""
    least = min(stock.splice_shortest, min(stock.sizes) - stock.kerf) + stock.kerf
    bought = tuple(stock.caps[t] for t, n in enumerate(mix) for _ in range(n))
    return tuple(sorted(c for c in stock.hand + bought if c >= least))
