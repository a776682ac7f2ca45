"""From a plan of least cost to the best one of that cost: waste, longest remainder, stated order."""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.supply.cutting.bounds import cover_rows
from hoopwright.supply.cutting.completion import Budget, decide
from hoopwright.supply.cutting.exchange import improve
from hoopwright.supply.cutting.mixes import Mix, mixes_between
from hoopwright.supply.cutting.outcome import Optimum, bench_of
from hoopwright.supply.cutting.packing import Fill, pack_quickly
from hoopwright.supply.cutting.stock import Stock
from hoopwright.supply.cutting.tidy import Score, best_packing, is_searchable, score

_MIXES = 8
_EXACT_STEPS = 12_000
_EXCHANGE_STEPS = 30_000


@record(frozen=True, slots=True)
class Finished:
    """The mix, its packing, and whether no packing of this cost has a better score."""

    mix: Mix
    fills: list[Fill]
    exact: bool


def finish(stock: Stock, best: Optimum) -> Finished:
    """The best plan of the same cost that a bounded search finds.

    All mixes of that cost are looked at (a stated number at most); small ones are searched through, larger
    ones improved by exchanges.
    """
    mixes = mixes_between(stock, cover_rows(stock), best.cost, best.cost, 2_000)
    exact = len(mixes) <= _MIXES
    ranked: list[tuple[Score, int, Mix, list[Fill]]] = []
    steps = Budget(_EXACT_STEPS)
    for mix in dict.fromkeys([*mixes[:_MIXES], best.mix]):
        fills, known = _pack(stock, mix, best, steps)
        exact = exact and known
        if fills is not None:
            ranked.append((score(bench_of(stock, mix), fills), len(ranked), mix, fills))
    top = min(ranked, key=lambda r: r[:2])
    return Finished(top[2], top[3], exact)


def _pack(stock: Stock, mix: Mix, best: Optimum, steps: Budget) -> tuple[list[Fill] | None, bool]:
    """The best packing found of one mix, and whether it is surely the best (or surely there is none)."""
    bench = bench_of(stock, mix)
    fills = best_packing(bench, stock.counts, steps)
    if fills is not None:
        return fills, True
    if steps.left >= 0 and is_searchable(stock.counts):
        return None, True
    fills = pack_quickly(stock.sizes, stock.counts, bench.caps)
    if fills is None and mix == best.mix:
        fills = best.fills
    if fills is None:
        decision = decide(stock.sizes, stock.counts, bench.caps, Budget(2_000))
        if decision.fills is None:
            return None, decision.known
        fills = decision.fills
    return improve(bench, fills, Budget(_EXCHANGE_STEPS)), False
