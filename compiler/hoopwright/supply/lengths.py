"""Goods that come in lengths: which packs to buy, and which piece comes off which.

Offcuts on hand are used before anything is bought. Packs are chosen by the cutting engine; goods cut to
measure in the shop come as one length, the shortest in whole shop steps that does with what is on hand.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from hoopwright.library.model import ByMeasure, Pack
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.cutting import cut_lengths
from hoopwright.supply.cutting.model import (
    CuttingFailure,
    CuttingOrder,
    CuttingPlan,
    CuttingRules,
    Piece,
    WorkLimits,
)
from hoopwright.supply.cutting.model import Pack as Offer
from hoopwright.supply.model import CutPack, CutPiece, ShoppingLine, Splicing
from hoopwright.supply.money import measured_cost, step_price
from hoopwright.supply.needs import LengthNeed

_NOISE = 1e-9


@record(frozen=True, slots=True)
class Cut:
    """One material cut: packs in order, what to buy, and how sure it is that no cheaper way exists."""

    packs: tuple[CutPack, ...]
    lines: tuple[ShoppingLine, ...]
    proven: bool
    gap: float
    splicing: Splicing | None = None

    @property
    def outlay(self) -> Decimal | None:
        """Money for all lines and for what splices use up; None when a price is missing."""
        extra = self.splicing.cost if self.splicing else Decimal(0)
        return None if self.cost is None else self.cost + extra

    @property
    def cost(self) -> Decimal | None:
        """Money for all lines; None when a price is missing."""
        costs = [line.cost for line in self.lines if line.cost is not None]
        return sum(costs, Decimal(0)) if len(costs) == len(self.lines) else None

    @property
    def length(self) -> float:
        """Bought length, m."""
        return sum(line.packs * line.pack_length for line in self.lines)


def cut_need(need: LengthNeed, spec: Spec) -> Cut | CuttingFailure:
    """The cheapest way to get all pieces of ``need``, or the reasons why there is none.

    Goods nothing is said about are taken as one length, as long as needed and without a price.
    """
    packs = tuple(
        _offer(offer, index, need) for index, offer in enumerate(need.sold) if isinstance(offer, Pack)
    )
    measures = tuple(offer for offer in need.sold if isinstance(offer, ByMeasure))
    found: list[Cut | CuttingFailure] = []
    if packs:
        plan = _solve(need, packs, spec)
        found.append(plan if isinstance(plan, CuttingFailure) else _from_plan(need, plan))
    for offer in measures:
        found.append(_by_measure(replace(need, splice=None), offer, spec))
        if need.splice is not None and need.on_hand:
            found.append(_by_measure(need, offer, spec))
    if not found:
        step = 0.3048 if spec.units == "inches" else 0.1
        found.append(_unpriced(_by_measure(replace(need, splice=None), ByMeasure(step, step, None), spec)))
    return _cheapest(found)


def _cheapest(found: Iterable[Cut | CuttingFailure]) -> Cut | CuttingFailure:
    """The cheapest of several ways of buying; with several, none of their mixtures was looked at."""
    ways = list(found)
    cuts = [way for way in ways if isinstance(way, Cut)]
    if not cuts:
        return next(way for way in ways if isinstance(way, CuttingFailure))
    best = min(
        cuts,
        key=lambda cut: (cut.outlay is None, cut.outlay or Decimal(0), cut.splicing is not None, cut.length),
    )
    return best if len(ways) == 1 or not best.lines else replace(best, proven=False)


def _offer(pack: Pack, index: int, need: LengthNeed) -> Offer:
    """A pack as it is when washed; named by its place, so that equal offers stay apart."""
    price = pack.price.amount if pack.price else None
    return Offer(pack.length * (1 - need.shrinkage), price, pack.at_most, str(index))


def _solve(need: LengthNeed, packs: tuple[Offer, ...], spec: Spec) -> CuttingPlan | CuttingFailure:
    pieces = tuple(Piece(piece.part, piece.length) for piece in need.pieces)
    rules = CuttingRules(need.kerf, need.trim, spec.allowances.smallest_offcut, need.splice)
    return cut_lengths(CuttingOrder(pieces, packs, need.on_hand, rules), WorkLimits())


def _from_plan(need: LengthNeed, plan: CuttingPlan) -> Cut:
    """The engine's plan in the words of the supply stage."""
    packs = tuple(
        CutPack(
            need.item,
            _as_sold(pack.length, need) if pack.source == "bought" else pack.length,
            pack.source,
            tuple(CutPiece(piece.part, piece.length, piece.share, piece.shares) for piece in pack.pieces),
            pack.left,
            pack.length,
        )
        for pack in plan.packs
    )
    spare = _taken(packs)
    lines: list[ShoppingLine] = []
    for bought in plan.bought:
        cut = [pack for pack in plan.packs if pack.offer == bought.pack]
        parts = tuple(piece.part for pack in cut for piece in pack.pieces)
        wanted = sum(piece.length for pack in cut for piece in pack.pieces)
        lines.append(
            ShoppingLine(
                need.item,
                need.kind,
                bought.count,
                _as_sold(bought.pack.length, need),
                0,
                bought.pack.price,
                bought.cost,
                wanted,
                spare,
                _in_order(need, parts),
                need.shrinkage,
            )
        )
        spare = 0.0
    return Cut(packs, tuple(lines), plan.proven, plan.gap, _splicing(plan))


def _splicing(plan: CuttingPlan) -> Splicing | None:
    told = plan.splices
    return None if told is None else Splicing(told.parts, told.count, told.saves, told.cost)


def _as_sold(washed: float, need: LengthNeed) -> float:
    return round(washed / (1 - need.shrinkage), 9) if need.shrinkage else washed


def _taken(packs: Iterable[CutPack]) -> float:
    """Metres of pieces cut from what is on hand."""
    taken = [piece.length for pack in packs if pack.origin == "on hand" for piece in pack.pieces]
    return sum(taken, 0.0)


def _in_order(need: LengthNeed, parts: Iterable[str]) -> tuple[str, ...]:
    wanted = set(parts)
    return tuple(piece.part for piece in need.pieces if piece.part in wanted)


def _by_measure(need: LengthNeed, offer: ByMeasure, spec: Spec) -> Cut | CuttingFailure:
    """One length bought in whole steps. Whether k steps do grows with k, so the least k is bracketed."""
    whole = need.total + need.kerf * max(0, len(need.pieces) - 1) + need.trim
    most = max(1, math.ceil(whole / (1 - need.shrinkage) / offer.step - _NOISE))
    if not need.on_hand:
        return _one_length(need, offer, most, whole)
    none = _solve(need, (), spec)
    if isinstance(none, CuttingPlan):
        return _from_plan(need, none)
    washed = offer.step * (1 - need.shrinkage)
    low = max(0, math.ceil((need.total - sum(need.on_hand)) / washed - _NOISE) - 1)
    high, best = most, _steps(need, offer, most, spec)
    while high - low > 1:
        middle = (low + high) // 2
        tried = _steps(need, offer, middle, spec)
        if isinstance(tried, CuttingPlan):
            high, best = middle, tried
        else:
            low = middle
    if isinstance(best, CuttingFailure):
        return best
    return _measured(_from_plan(need, best), offer, high)


def _steps(need: LengthNeed, offer: ByMeasure, steps: int, spec: Spec) -> CuttingPlan | CuttingFailure:
    return _solve(need, (Offer(steps * offer.step * (1 - need.shrinkage), available=1),), spec)


def _one_length(need: LengthNeed, offer: ByMeasure, steps: int, whole: float) -> Cut:
    length = steps * offer.step
    washed = length * (1 - need.shrinkage)
    left = max(0.0, washed - whole - need.kerf)
    pack = CutPack(need.item, length, "bought", need.pieces, left, washed)
    line = ShoppingLine(
        need.item,
        need.kind,
        1,
        length,
        0,
        None,
        None,
        need.total,
        0.0,
        tuple(piece.part for piece in need.pieces),
        need.shrinkage,
    )
    return _measured(Cut((pack,), (line,), True, 0.0), offer, steps)


def _measured(cut: Cut, offer: ByMeasure, steps: int) -> Cut:
    """The line of a length cut to measure: so many steps, each at its price."""
    if not cut.lines:
        return cut
    line = replace(
        cut.lines[0],
        packs=steps,
        pack_length=offer.step,
        price=step_price(offer),
        cost=measured_cost(offer, steps),
    )
    return replace(cut, lines=(line,), proven=True, gap=0.0)


def _unpriced(cut: Cut | CuttingFailure) -> Cut | CuttingFailure:
    """Goods without an offer: one length without a price."""
    if isinstance(cut, CuttingFailure) or not cut.lines:
        return cut
    line = cut.lines[0]
    return replace(cut, lines=(replace(line, packs=1, pack_length=line.packs * line.pack_length),))
