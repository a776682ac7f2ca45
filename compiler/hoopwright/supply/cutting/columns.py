"""Proof and improvement by columns: linear relaxation by column generation, then a whole-number choice of
columns.

Method (Gilmore and Gomory, 1961, with several stock lengths): the relaxation's duals price new columns
until none pays. The duals then bound the cost of every plan from below, also when rounding spoils them
(Lagrange's bound, with the best reduced cost of each kind), and any plan that costs at most a target T uses
only columns whose reduced cost is at most T minus that bound. When those can be listed, choosing among them
is exact.
"""

from __future__ import annotations

from math import ceil

from hoopwright.source.record import record
from hoopwright.supply.cutting.bounds import Row
from hoopwright.supply.cutting.completion import Budget
from hoopwright.supply.cutting.master import Column, Duals, Kinds, Master, choose, kinds_of
from hoopwright.supply.cutting.mixes import Mix, mixes_between
from hoopwright.supply.cutting.model import WorkLimits
from hoopwright.supply.cutting.outcome import NoFit, Optimum, bench_of
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.pricing import Prices
from hoopwright.supply.cutting.rounding import round_off
from hoopwright.supply.cutting.stock import Stock
from hoopwright.supply.cutting.trials import improve

_ROUNDS = 400
_SOLVER_WORK = 1_000_000
"""Nodes times columns that the solver may take: a node costs more with more of them."""
_PAYS = 1e-7
_PRICING_STEPS = 2_000
_MANY_SIZES = 60
_VERY_MANY_SIZES = 120


def by_columns(
    stock: Stock, rows: tuple[Row, ...], lower: int, best: Optimum | None, limits: WorkLimits, steps: int
) -> Optimum | NoFit:
    """The least cost from `lower` to the cost of `best`, by columns; unproven when the work limits end it."""
    kinds = kinds_of(stock)
    budget = Budget(limits.nodes * 12)
    most = sum(p * n for p, n in zip(kinds.prices, kinds.avail, strict=True))
    relaxed = _relax(stock, kinds, best, lower)
    raised = max(lower, _attainable(stock, rows, relaxed.bound, lower, best))
    if best is None or raised < best.cost:
        rounded = round_off(stock, kinds, relaxed.master.columns, relaxed.used)
        if rounded is not None and (best is None or _cost(stock, rounded[0]) < best.cost):
            best = Optimum(rounded[0], rounded[1], _cost(stock, rounded[0]), raised, "columns", 0)
    if best is None or raised < best.cost:
        best, still = improve(stock, rows, best, raised, Budget(0))
        raised = max(raised, still) if still is not None else (best.cost if best is not None else raised)
    lower = raised
    if relaxed.complete and (best is None or lower < _worth_choosing(stock, best)):
        target = most if best is None else best.cost - 1
        chosen, _ = choose(stock.counts, kinds, relaxed.master.columns, target, limits.solver_nodes // 100)
        best = best if chosen is None else _to_optimum(stock, kinds, chosen, lower)
    if relaxed.complete and (best is None or lower < best.cost):
        target = most if best is None else best.cost - 1
        columns = _all_columns(stock, kinds, relaxed, target, limits, budget)
        if columns is not None:
            nodes = min(limits.solver_nodes, _SOLVER_WORK // len(columns))
            chosen, final = choose(stock.counts, kinds, columns, target, nodes)
            best = best if chosen is None else _to_optimum(stock, kinds, chosen, lower)
            lower = best.cost if final and best is not None else lower
    if best is None:
        return NoFit(0)
    return Optimum(best.mix, best.fills, best.cost, min(lower, best.cost), "columns", steps + budget.spent)


def _worth_choosing(stock: Stock, best: Optimum) -> float:
    """The lower bound below which a choice among the columns of the relaxation is tried: with very many sizes
    it takes long, and is left when the gap is below half a per cent already."""
    return best.cost if len(stock.sizes) <= _VERY_MANY_SIZES else 0.995 * best.cost


@record(frozen=True, slots=True)
class _Relaxed:
    """The columns and how often the fractional optimum uses them, the duals that gave the greatest lower
    bound, that bound (price units), and whether generation ran to its end rather than being stopped as
    useless."""

    master: Master
    used: list[float]
    duals: Duals
    bound: float
    complete: bool


def _relax(stock: Stock, kinds: Kinds, best: Optimum | None, lower: int) -> _Relaxed:
    """Generate columns until none pays, or until the relaxation is seen to stay below the known `lower`
    bound."""
    master = Master(stock.counts, kinds)
    for column in _first_columns(stock, kinds, best):
        master.add(column)
    longest = max(kinds.caps)
    bound, kept = float("-inf"), Duals((), (), 0.0)
    used: list[float] = []
    for _ in range(_ROUNDS):
        duals, used = master.solve(), master.used()
        if duals.value * kinds.scale <= lower and len(stock.sizes) > _MANY_SIZES:
            return _Relaxed(master, used, kept, bound * kinds.scale, False)
        here = sum(w * c for w, c in zip(duals.worths, stock.counts, strict=True))
        here += sum(m * a for m, a in zip(duals.limits, kinds.avail, strict=True))
        prices = Prices(stock.sizes, stock.counts, duals.worths, longest)
        grew = False
        for k, cap in enumerate(kinds.caps):
            found = prices.most_valuable(cap, _PRICING_STEPS)
            rent = kinds.prices[k] / kinds.scale - duals.limits[k]
            here += min(0.0, rent - found.upper) * kinds.avail[k]
            if found.worth > rent + _PAYS:
                grew = master.add((k, found.fill)) or grew
        if here > bound:
            bound, kept = here, duals
        if not grew:
            break
    return _Relaxed(master, used, kept, bound * kinds.scale, True)


def _first_columns(stock: Stock, kinds: Kinds, best: Optimum | None) -> list[Column]:
    """The columns of a known plan."""
    if best is None:
        return []
    bench = bench_of(stock, best.mix)
    bins = zip(bench.caps, bench.on_hand, best.fills, strict=True)
    return [(kinds.caps.index(c, 0 if h else kinds.hand_kinds), fill) for c, h, fill in bins if any(fill)]


def _attainable(stock: Stock, rows: tuple[Row, ...], bound: float, lower: int, best: Optimum | None) -> int:
    """The least cost of a mix that meets the rows and is not below the bound."""
    start = max(lower, ceil(bound - 1e-6 * max(1.0, abs(bound))))
    if best is None or start >= best.cost:
        return start if best is None else best.cost
    step = max(1, min(stock.prices) // 4)
    while start < best.cost:
        high = min(best.cost - 1, start + step)
        found = mixes_between(stock, rows, start, high, 10_000)
        if found:
            return start if len(found) == 10_000 else _cost(stock, found[0])
        start = high + 1
    return best.cost


def _cost(stock: Stock, mix: Mix) -> int:
    return sum(n * p for n, p in zip(mix, stock.prices, strict=True))


def _all_columns(
    stock: Stock, kinds: Kinds, relaxed: _Relaxed, target: int, limits: WorkLimits, budget: Budget
) -> list[Column] | None:
    """All maximal columns that a plan of at most `target` can use; None when they are too many."""
    duals, gap = relaxed.duals, target - relaxed.bound
    columns: list[Column] = []
    prices = Prices(stock.sizes, stock.counts, duals.worths, max(kinds.caps))
    for k, cap in enumerate(kinds.caps):
        least = (kinds.prices[k] - gap) / kinds.scale - duals.limits[k] - 1e-6
        fills = prices.all_valuable(cap, least, limits.columns - len(columns), budget)
        if fills is None:
            return None
        columns += [(k, fill) for fill in fills]
    return columns


def _to_optimum(stock: Stock, kinds: Kinds, chosen: list[Column], lower: int) -> Optimum:
    """The chosen columns as a mix and its packing; pieces cut more often than wanted are left out again."""
    left = list(stock.counts)
    by_kind: dict[int, list[Fill]] = {}
    for kind, fill in sorted(chosen, key=lambda c: (-c[0], c[1]), reverse=True):
        kept = tuple(min(n, have) for n, have in zip(fill, left, strict=True))
        left = [have - n for n, have in zip(kept, left, strict=True)]
        if any(kept):
            by_kind.setdefault(kind, []).append(kept)
    empty: Fill = tuple(0 for _ in stock.sizes)
    fills: list[Fill] = []
    for cap in stock.hand:
        kind = kinds.caps.index(cap) if cap > 0 else -1
        waiting = by_kind.get(kind, []) if kind < kinds.hand_kinds else []
        fills.append(waiting.pop(0) if waiting else empty)
    mix = tuple(len(by_kind.get(kinds.hand_kinds + t, [])) for t in range(len(stock.caps)))
    for t in range(len(stock.caps)):
        fills += by_kind.get(kinds.hand_kinds + t, [])
    return Optimum(mix, fills, _cost(stock, mix), lower, "columns", 0)
