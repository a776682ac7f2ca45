"""Hoops, tapes and casings of several designs cut from the same coils and rolls."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.compare.trip.cupboard import counted_once
from hoopwright.compare.trip.model import Design
from hoopwright.compare.trip.pool import Pool, every_offer, lettered
from hoopwright.compare.trip.way import Bought, Way, better
from hoopwright.source.diagnostic import Finding
from hoopwright.supply.cutting.model import CuttingFailure
from hoopwright.supply.lengths import Cut, cut_need
from hoopwright.supply.needs import LengthNeed
from hoopwright.supply.trouble import cutting_trouble


def buy_lengths(pool: Pool[LengthNeed]) -> Bought | tuple[Finding, ...]:
    """The cheapest packs for all designs together, without splices, or those of each alone when these cost
    less; findings when what is to be had does not suffice."""
    cupboard = counted_once([need.on_hand for _, need in pool.needs])
    shelf = tuple(float(str(one)) for one in cupboard.everything)
    alone: list[Way] = []
    for design, need in pool.needs:
        own = tuple(float(str(one)) for one in cupboard.own(need.on_hand))
        splice = need.splice if design.plan.supply.cutting.splicing is not None else None
        mine = replace(_lettered(pool.item, design, need), on_hand=own, splice=splice)
        cut = cut_need(mine, design.plan.spec)
        if isinstance(cut, CuttingFailure):
            return cutting_trouble(mine, cut, design.plan.spec)
        cupboard.take(pack.pack for pack in cut.packs if pack.origin == "on hand")
        alone.append(_way(cut))
    way, together = better(_together(pool, shelf), alone)
    return Bought(
        pool.item,
        tuple(design.letter for design, _ in pool.needs),
        way,
        tuple(alone),
        tuple(need.total for _, need in pool.needs),
        together,
    )


def _together(pool: Pool[LengthNeed], shelf: tuple[float, ...]) -> Way | None:
    design, first = pool.needs[0]
    pieces = tuple(piece for who, need in pool.needs for piece in _lettered(pool.item, who, need).pieces)
    whole = replace(
        first,
        item=pool.item,
        pieces=pieces,
        kerf=max(need.kerf for _, need in pool.needs),
        trim=max(need.trim for _, need in pool.needs),
        on_hand=shelf,
        sold=every_offer(need.sold for _, need in pool.needs),
        splice=None,
    )
    cut = cut_need(whole, design.plan.spec)
    return None if isinstance(cut, CuttingFailure) else _way(cut)


def _lettered(item: str, design: Design, need: LengthNeed) -> LengthNeed:
    pieces = tuple(replace(piece, part=lettered(design, piece.part)) for piece in need.pieces)
    return replace(need, item=item, pieces=pieces)


def _way(cut: Cut) -> Way:
    splices = cut.splicing.count if cut.splicing is not None else 0
    return Way(cut.lines, cut.packs, (), cut.proven, cut.gap, splices)
