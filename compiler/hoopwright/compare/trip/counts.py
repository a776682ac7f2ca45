"""Small stuff of several designs, rounded up to packs once."""

from __future__ import annotations

import math
from dataclasses import replace

from hoopwright.compare.trip.pool import Pool, every_offer, lettered
from hoopwright.compare.trip.way import Bought, Way, better
from hoopwright.supply.counts import CountNeed, count_line

_NOISE = 1e-9


def buy_counts(pool: Pool[CountNeed]) -> Bought:
    """The cheapest packs for all designs together, or those of each alone when these cost less."""
    left = max(sum(need.goods.on_hand) for _, need in pool.needs)
    shelf = left
    alone: list[Way] = []
    for design, need in pool.needs:
        have = min(left, sum(need.goods.on_hand))
        goods = replace(need.goods, name=pool.item, on_hand=(have,))
        uses = tuple(lettered(design, use) for use in need.uses)
        line = count_line(replace(need, goods=goods, uses=uses))
        left -= min(have, float(math.ceil(need.amount / need.per_piece - _NOISE)))
        alone.append(Way((line,) if line is not None else ()))
    first = pool.needs[0][1]
    whole = replace(
        first,
        goods=replace(
            first.goods,
            name=pool.item,
            on_hand=(shelf,),
            sold=every_offer(need.goods.sold for _, need in pool.needs),
        ),
        amount=sum(need.amount for _, need in pool.needs),
        uses=tuple(lettered(design, use) for design, need in pool.needs for use in need.uses),
    )
    line = count_line(whole)
    way, together = better(Way((line,) if line is not None else ()), alone)
    used = tuple(need.amount for _, need in pool.needs)
    return Bought(pool.item, tuple(who.letter for who, _ in pool.needs), way, tuple(alone), used, together)
