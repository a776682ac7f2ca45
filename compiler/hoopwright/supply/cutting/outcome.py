"""Values that pass between the searches for the least cost."""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.supply.cutting.mixes import Mix
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.stock import Stock
from hoopwright.supply.cutting.tidy import Bench


@record(frozen=True, slots=True)
class Optimum:
    """A mix and a packing on its bench, with the proven lower bound on cost (price units) and the
    argument."""

    mix: Mix
    fills: list[Fill]
    cost: int
    lower: int
    method: str
    steps: int


@record(frozen=True, slots=True)
class NoFit:
    """All packs that can be had do not hold the pieces; `missing` units by the strongest row (0: shown by
    search)."""

    missing: int


def bench_of(stock: Stock, mix: Mix) -> Bench:
    """The lengths of a mix laid out in their fixed order: on hand shortest first, then bought shortest
    first."""
    kinds = [t for t, n in enumerate(mix) for _ in range(n)]
    return Bench(
        sizes=stock.sizes,
        caps=stock.hand + tuple(stock.caps[t] for t in kinds),
        whole=stock.whole_hand + tuple(stock.caps[t] - stock.kerf for t in kinds),
        on_hand=(True,) * len(stock.hand) + (False,) * len(kinds),
        kerf=stock.kerf,
        useful=stock.useful,
    )
