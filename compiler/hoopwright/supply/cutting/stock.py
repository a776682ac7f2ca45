"""The cutting order in whole numbers, so that every sum, comparison and bound below is exact.

The unit is 1/80 mm: both 0.1 mm (8 units) and 1/16 in (127 units) are whole. Pieces, kerf and trim that are
not whole are rounded up and stock is rounded down, by less than one unit each, so a plan never asks for
more than there is; units are then divided by their greatest common divisor. Prices are scaled to the
smallest decimal place in use.

A cut takes a kerf after each piece unless the piece takes exactly what remains. So a piece is counted as
length + kerf and a pack as length - trim + kerf, and pieces fit when the sum of the former is at most the
latter.
"""

from __future__ import annotations

from collections import Counter
from decimal import Decimal
from math import ceil, floor, gcd

from hoopwright.source.record import record
from hoopwright.supply.cutting.model import CuttingOrder, Pack, SpliceRule

UNIT = 12.5e-6
_NEARLY = 1e-3


@record(frozen=True, slots=True)
class Stock:
    """Whole-number form of an order for one material.

    `sizes` (kerf included, distinct, longest first) with `counts`; offers with capacity `caps`, `prices`,
    `avail` and the `packs` they stand for, by length; `hand` capacities of what is on hand, shortest first,
    with the `hand_index` into the order. `spare` is how much of a pack's capacity is no remainder (the
    kerf), `useful` the shortest useful remainder; `whole_hand` the lengths untouched, before trim. `unit`
    is the unit (m), `grain` how many units of 1/80 mm it is.
    A splice costs `splice_price` and takes `splice_loss` (lap and kerf); no part of a spliced piece is
    shorter than `splice_shortest`.
    """

    sizes: tuple[int, ...]
    counts: tuple[int, ...]
    packs: tuple[Pack, ...]
    caps: tuple[int, ...]
    prices: tuple[int, ...]
    avail: tuple[int, ...]
    hand: tuple[int, ...]
    hand_index: tuple[int, ...]
    whole_hand: tuple[int, ...]
    kerf: int
    useful: int
    grain: int
    unit: float
    money_scale: int
    measure_cost: bool
    splice_price: int = 0
    splice_loss: int = 0
    splice_shortest: int = 0

    @property
    def total(self) -> int:
        """Sum of all sizes."""
        return sum(s * c for s, c in zip(self.sizes, self.counts, strict=True))

    def size_of(self, length: float) -> int:
        """Size of a piece of this length (m), kerf included."""
        return up(length) // self.grain + self.kerf

    def left(self, cap: int, fill: int) -> int:
        """Length left of a pack of capacity `cap` from which sizes summing to `fill` are cut."""
        return max(0, cap - self.kerf - fill)


def up(length: float) -> int:
    """Units that surely cover a length (m)."""
    return ceil(length / UNIT - _NEARLY)


def down(length: float) -> int:
    """Units that a length (m) surely covers."""
    return floor(length / UNIT + _NEARLY)


def integer_prices(prices: tuple[Decimal, ...]) -> tuple[tuple[int, ...], int]:
    """Whole numbers proportional to prices, and their common scale (a power of ten)."""
    places = max((max(0, -int(p.as_tuple().exponent)) for p in prices), default=0)
    scale = 10**places
    return tuple(int(p * scale) for p in prices), scale


def to_stock(order: CuttingOrder) -> Stock:
    """Whole-number form of a sound order, splices' money and laps included. Offers are sorted by length,
    price, name; the order given does not matter."""
    rules = order.rules
    kerf, trim = up(rules.kerf), up(rules.trim)
    sizes = Counter(up(p.length) + kerf for p in order.pieces)
    packs = tuple(sorted(order.packs, key=_pack_key))
    whole = [down(p.length) for p in packs]
    hand = sorted((down(x), i) for i, x in enumerate(order.on_hand))
    useful = up(rules.useful)
    splice = rules.splice or SpliceRule(0.0, shortest=0.0)
    lap, shortest = up(splice.lap), up(splice.shortest)
    g = gcd(lap, shortest, kerf, trim, useful, *sizes, *whole, *(x for x, _ in hand)) or 1
    priced = bool(packs) and all(p.price is not None for p in packs)
    prices, scale = integer_prices((*(p.price or Decimal(0) for p in packs), splice.cost))
    if not priced:
        many = len(order.pieces) + 1
        prices, scale = (*(w // g * many + 1 for w in whole), 0), many
    ordered = sorted(sizes, reverse=True)
    lengths = len(order.pieces) * (rules.splice.most + 1 if rules.splice else 1)
    return Stock(
        sizes=tuple(s // g for s in ordered),
        counts=tuple(sizes[s] for s in ordered),
        packs=packs,
        caps=tuple((w - trim + kerf) // g for w in whole),
        prices=prices[:-1],
        avail=tuple(lengths if p.available is None else min(lengths, p.available) for p in packs),
        hand=tuple((x - trim + kerf) // g for x, _ in hand),
        hand_index=tuple(i for _, i in hand),
        whole_hand=tuple(x // g for x, _ in hand),
        kerf=kerf // g,
        useful=useful // g,
        grain=g,
        unit=UNIT * g,
        money_scale=scale,
        measure_cost=priced,
        splice_price=prices[-1],
        splice_loss=(lap + kerf) // g,
        splice_shortest=shortest // g,
    )


def _pack_key(pack: Pack) -> tuple[float, Decimal, str, int]:
    """Shortest first, then cheapest, then by name, then the scarcer."""
    price = pack.price if pack.price is not None else Decimal(-1)
    return (pack.length, price, pack.name, -1 if pack.available is None else pack.available)
