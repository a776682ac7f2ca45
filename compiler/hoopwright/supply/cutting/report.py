"""From whole-number packings back to labelled pieces, metres and money."""

from __future__ import annotations

import re
from decimal import Decimal

from hoopwright.supply.cutting.mixes import Mix
from hoopwright.supply.cutting.model import (
    Bought,
    CutPack,
    CutPiece,
    CuttingOrder,
    CuttingPlan,
    Pack,
    Piece,
    Source,
)
from hoopwright.supply.cutting.packing import Fill
from hoopwright.supply.cutting.stock import Stock


def natural(label: str) -> tuple[tuple[int, int, str], ...]:
    """Sort key that puts H2 before H10."""
    parts = re.findall(r"\d+|\D+", label)
    return tuple((0, int(p), "") if p.isdigit() else (1, 0, p) for p in parts)


def cut_packs(order: CuttingOrder, stock: Stock, mix: Mix, fills: list[Fill]) -> tuple[CutPack, ...]:
    """Labelled lengths: on hand first, shortest first; then bought, shortest first, the fullest with long
    pieces first.

    Equal pieces take their labels in natural order, so that lower numbers come on earlier lengths.
    """
    kinds = [t for t, n in enumerate(mix) for _ in range(n)]
    hand = len(stock.hand)
    sources: list[tuple[int, Pack | None, float, Fill]] = [
        (0, None, order.on_hand[stock.hand_index[b]], fills[b]) for b in range(hand)
    ]
    bought = [(t, stock.packs[t], stock.packs[t].length, fills[hand + j]) for j, t in enumerate(kinds)]
    bought.sort(key=lambda s: (s[0], tuple(-n for n in s[3])))
    waiting = _labels(order, stock)
    packs = []
    for _, offer, length, fill in [*sources, *bought]:
        if any(fill):
            packs.append(_cut_pack(order, offer, length, fill, waiting))
    return tuple(packs)


def bought_packs(stock: Stock, mix: Mix) -> tuple[Bought, ...]:
    """What to buy, shortest offers first; equal offers are one line."""
    counts: dict[Pack, int] = {}
    for pack, n in zip(stock.packs, mix, strict=True):
        if n:
            counts[pack] = counts.get(pack, 0) + n
    return tuple(Bought(p, n, None if p.price is None else p.price * n) for p, n in counts.items())


def plan_of(order: CuttingOrder, stock: Stock, packs: tuple[CutPack, ...], bought: tuple[Bought, ...],
            bounds: tuple[int, int]) -> CuttingPlan:
    """The plan of labelled lengths; ``bounds`` are the least cost proven and the cost reached, in price
    units. How it was found, and whether its waste is proven, is for the caller to say."""
    lower, reached = bounds
    proven = lower >= reached
    untouched = list(order.on_hand)
    for pack in packs:
        if pack.source == "on hand":
            untouched.remove(pack.length)
    lefts = [p.left for p in packs] + untouched
    return CuttingPlan(
        packs=packs,
        bought=bought,
        cost=known_cost(bought),
        partial=any(b.cost is None for b in bought),
        measure="cost" if stock.measure_cost else "length",
        objective=money(stock, reached),
        lower_bound=money(stock, lower),
        proven=proven,
        gap=0.0 if proven or not reached else (reached - lower) / reached,
        waste=round(sum((x for x in lefts if x < order.rules.useful), 0.0), 7),
        longest_left=max(lefts, default=0.0),
        waste_proven=False,
        method="bound",
        steps=0,
    )


def money(stock: Stock, units: int) -> Decimal:
    """Price units as money, or - when length is measured - as metres bought, rounded to 0.1 mm."""
    if stock.measure_cost:
        return Decimal(units) / stock.money_scale
    return round(Decimal(units // stock.money_scale) * Decimal(repr(stock.unit)), 4)


def known_cost(bought: tuple[Bought, ...]) -> Decimal | None:
    """Sum of the known costs; None when something is bought and none is known."""
    known = [b.cost for b in bought if b.cost is not None]
    return sum(known, Decimal(0)) if known or not bought else None


def left_of(order: CuttingOrder, length: float, pieces: tuple[CutPiece, ...]) -> float:
    """What is left (m) of a length after trim, pieces and kerfs; a remainder thinner than a kerf is
    nothing."""
    rest = length - order.rules.trim - sum(p.length for p in pieces) - order.rules.kerf * len(pieces)
    return max(0.0, round(rest, 7))


def _cut_pack(
    order: CuttingOrder, offer: Pack | None, length: float, fill: Fill, waiting: list[list[Piece]]
) -> CutPack:
    taken = [waiting[i].pop(0) for i, n in enumerate(fill) for _ in range(n)]
    pieces = tuple(CutPiece(p.part, p.length) for p in taken)
    source: Source = "on hand" if offer is None else "bought"
    return CutPack(length, source, pieces, left_of(order, length, pieces), offer)


def _labels(order: CuttingOrder, stock: Stock) -> list[list[Piece]]:
    """Pieces by size index, in natural order of their labels."""
    index = {s: i for i, s in enumerate(stock.sizes)}
    waiting: list[list[Piece]] = [[] for _ in stock.sizes]
    for piece in sorted(order.pieces, key=lambda p: natural(p.part)):
        waiting[index[stock.size_of(piece.length)]].append(piece)
    return waiting
