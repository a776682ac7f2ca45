"""Bands, panels and breadths of several designs laid on the same cloth."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from itertools import product

from hoopwright.compare.trip.cupboard import counted_once
from hoopwright.compare.trip.model import Design
from hoopwright.compare.trip.pool import Pool, every_offer, lettered
from hoopwright.compare.trip.way import Bought, Way, better
from hoopwright.library.model import Goods, Remnant
from hoopwright.source.diagnostic import Finding
from hoopwright.supply.cloth.model import ClothPart, Gore, Panel
from hoopwright.supply.cloths import Laid, lay_need
from hoopwright.supply.model import ClothLayout
from hoopwright.supply.needs import ClothNeed, ways
from hoopwright.supply.trouble import cloth_trouble

_NOISE = 1e-6
_MIXED = 4


def buy_cloth(pool: Pool[ClothNeed]) -> Bought | tuple[Finding, ...]:
    """The least cloth for all designs together, or that of each alone when this costs less."""
    cupboard = counted_once([_pieces(need.goods) for _, need in pool.needs])
    shelf = [(float(str(w)), float(str(h))) for w, h in map(_pair, cupboard.everything)]
    alone: list[Way] = []
    for design, need in pool.needs:
        own = [_pair(one) for one in cupboard.own(_pieces(need.goods))]
        mine = ClothNeed(_stocked(need.goods, pool.item, own), need.parts)
        laid = lay_need(mine, design.plan.spec)
        if not isinstance(laid, Laid):
            return cloth_trouble(mine, laid, design.plan.spec)
        cupboard.take(_used(laid.layouts, own))
        alone.append(_way(_marked(laid, design)))
    way, together = better(_together(pool, shelf), alone)
    used = tuple(_area(need) for _, need in pool.needs)
    return Bought(pool.item, tuple(who.letter for who, _ in pool.needs), way, tuple(alone), used, together)


def _together(pool: Pool[ClothNeed], shelf: list[tuple[float, float]]) -> Way | None:
    """The cheapest of the ways to cut the bands, across the cloth or along it."""
    design, first = pool.needs[0]
    offers = every_offer(need.goods.sold for _, need in pool.needs)
    goods = replace(_stocked(first.goods, pool.item, shelf), sold=offers)
    found = [lay_need(ClothNeed(goods, parts), design.plan.spec) for parts in _choices(pool)]
    laid = [one for one in found if isinstance(one, Laid)]
    if not laid:
        return None
    return _way(min(laid, key=lambda one: (one.line.cost or Decimal(0)) if one.line else Decimal(0)))


def _choices(pool: Pool[ClothNeed]) -> Iterator[tuple[ClothPart, ...]]:
    """The parts of all designs, lettered: up to four designs with bands cut either way in every mixture, more
    with all across and all along."""
    options = [ways(need, design.plan.spec) for design, need in pool.needs]
    mixtures = (
        product(*options)
        if len(options) <= _MIXED
        else zip(*((option[0], option[-1]) for option in options), strict=True)
    )
    for chosen in dict.fromkeys(mixtures):
        yield tuple(
            replace(part, part=lettered(design, part.part))
            for (design, _), need in zip(pool.needs, chosen, strict=True)
            for part in need.parts
        )


def _marked(laid: Laid, design: Design) -> Laid:
    """The layouts of one design with its letter on every part."""
    line = laid.line and replace(laid.line, uses=tuple(lettered(design, use) for use in laid.line.uses))
    layouts = tuple(
        replace(
            layout,
            placements=tuple(replace(spot, part=lettered(design, spot.part)) for spot in layout.placements),
        )
        for layout in laid.layouts
    )
    return Laid(layouts, line)


def _stocked(goods: Goods, item: str, pieces: Iterable[tuple[float, float]]) -> Goods:
    """The goods with just these pieces (width, length) on hand."""
    return replace(goods, name=item, on_hand=(), remnants=tuple(Remnant(h, w) for w, h in pieces))


def _pieces(goods: Goods) -> tuple[tuple[float, float], ...]:
    """Everything on hand as (width, length), m."""
    whole = ((goods.washed_width, length) for length in goods.on_hand)
    return (*whole, *((piece.width, piece.length) for piece in goods.remnants))


def _pair(one: object) -> tuple[float, float]:
    width, length = one if isinstance(one, tuple) else (0.0, 0.0)
    return float(width), float(length)


def _used(layouts: Sequence[ClothLayout], own: Sequence[tuple[float, float]]) -> Iterator[object]:
    """The pieces on hand that layouts lie on: of one width the shortest that is long enough."""
    left = sorted(own)
    for layout in layouts:
        if layout.buy > 0:
            continue
        fits = (
            piece
            for piece in left
            if abs(piece[0] - layout.width) < _NOISE and piece[1] >= layout.need - _NOISE
        )
        piece = next(fits, None)
        if piece is not None:
            left.remove(piece)
            yield piece


def _area(need: ClothNeed) -> float:
    """Cloth in the parts themselves, m2."""
    total = 0.0
    for part in need.parts:
        if isinstance(part, Gore):
            across = (part.top + part.bottom) / 2
        else:
            across = part.width if isinstance(part, Panel) else part.length
        total += across * part.height * part.count
    return total


def _way(laid: Laid) -> Way:
    proven = all(layout.proven for layout in laid.layouts)
    return Way((laid.line,) if laid.line is not None else (), (), laid.layouts, proven)
