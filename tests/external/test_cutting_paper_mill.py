"""The paper-mill roll problem of the textbooks: 13 widths from rolls of 5,600 mm take 73 rolls and waste
0.401 %.

Widths, numbers and result from memory; as 72.7 rolls' width is asked for, 73 is least by the sum alone, so
the point is that a packing of so little slack is found.
"""

from __future__ import annotations

from decimal import Decimal

from hoopwright.supply.cutting import CuttingOrder, CuttingPlan, CuttingRules, Pack, Piece, cut_lengths

DEMAND = {
    1380: 22,
    1520: 25,
    1560: 12,
    1710: 14,
    1820: 18,
    1880: 18,
    1930: 20,
    2000: 10,
    2050: 12,
    2100: 14,
    2140: 16,
    2150: 18,
    2200: 20,
}


def test_paper_mill_takes_73_rolls() -> None:
    pieces = tuple(Piece(f"{w}-{i}", w / 1000) for w, n in DEMAND.items() for i in range(n))
    plan = cut_lengths(CuttingOrder(pieces, (Pack(5.6, Decimal(1)),), (), CuttingRules(useful=0.0)))
    assert isinstance(plan, CuttingPlan)
    assert (plan.cost, plan.proven) == (73, True)
    left = sum(p.left for p in plan.packs)
    assert round(100 * left / (73 * 5.6), 3) == 0.401
