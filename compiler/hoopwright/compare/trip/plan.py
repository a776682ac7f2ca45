"""The trip as a whole: needs pooled, bought, delivered, and the cost shared out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from hoopwright.compare.trip.cloths import buy_cloth
from hoopwright.compare.trip.counts import buy_counts
from hoopwright.compare.trip.lengths import buy_lengths
from hoopwright.compare.trip.model import Design, Trip, TripLine
from hoopwright.compare.trip.money import share_out
from hoopwright.compare.trip.pool import goods_key, pools
from hoopwright.compare.trip.way import Bought, Way
from hoopwright.plan.model import Plan
from hoopwright.source.diagnostic import Finding, error, failed
from hoopwright.supply.counts import CountNeed, count_needs
from hoopwright.supply.delivery import delivery_lines, shop_of
from hoopwright.supply.needs import ClothNeed, LengthNeed, cloth_needs, length_needs


def plan_trip(plans: Sequence[tuple[str, Plan]]) -> tuple[Trip | None, tuple[Finding, ...]]:
    """One trip for designs given as (label, plan), in the order in which they would be bought alone.

    Errors instead of a trip: prices in two currencies, or packs that do not suffice for all.
    """
    designs = tuple(Design(_letter(k), label, plan) for k, (label, plan) in enumerate(plans))
    currencies = {d.plan.supply.cost.currency for d in designs if d.plan.supply.cost.currency is not None}
    if len(currencies) > 1:
        said = " and ".join(sorted(currencies))
        return None, (
            error(
                "trip-currencies",
                (),
                f"the designs have prices in {said}",
                "keep one trip to one currency, or shop for them apart",
            ),
        )
    bought, apart, said_ = _bought(designs)
    if failed(said_):
        return None, said_
    deliveries = _deliveries(designs, bought)
    return _shared(designs, (*bought, *deliveries), apart, next(iter(currencies), None)), said_


def _letter(place: int) -> str:
    """A to Z, then AA, AB ..."""
    letters = chr(ord("A") + place % 26)
    return letters if place < 26 else _letter(place // 26 - 1) + letters


def _bought(designs: tuple[Design, ...]) -> tuple[tuple[Bought, ...], tuple[str, ...], tuple[Finding, ...]]:
    """Every material bought for all designs; the names bought apart; what stands in the way."""
    long = [(d, need) for d in designs for need in length_needs(d.plan.spec, d.plan.shape)]
    wide = [(d, need) for d in designs for need in cloth_needs(d.plan.spec, d.plan.shape)]
    length_pools, one = pools(long, lambda need: need.item, _length_key)
    cloth_pools, two = pools(wide, lambda need: need.goods.name, _cloth_key)
    found: list[Bought] = []
    said: list[Finding] = []
    for result in (*map(buy_lengths, length_pools), *map(buy_cloth, cloth_pools)):
        if isinstance(result, Bought):
            found.append(result)
        else:
            said.extend(result)
    splices = {d.letter: 0 for d in designs}
    for material in found:
        for letter, way in zip(material.letters, material.alone, strict=True):
            splices[letter] += 0 if material.together else way.splices
    small = [(d, need) for d in designs for need in count_needs(d.plan.spec, d.plan.shape, splices[d.letter])]
    count_pools, three = pools(small, lambda need: need.goods.name, _count_key)
    found.extend(map(buy_counts, count_pools))
    return tuple(found), (*one, *two, *three), tuple(said)


def _length_key(design: Design, need: LengthNeed) -> object:
    return goods_key(design.plan.spec, need.item)


def _cloth_key(design: Design, need: ClothNeed) -> object:
    return goods_key(design.plan.spec, need.goods.name)


def _count_key(design: Design, need: CountNeed) -> object:
    return (goods_key(design.plan.spec, need.goods.name), need.per_piece)


def _deliveries(designs: tuple[Design, ...], bought: tuple[Bought, ...]) -> tuple[Bought, ...]:
    """Each shop once; alone, every design that buys there would pay for its own delivery."""
    found: dict[tuple[str, Decimal], list[tuple[str, Way]]] = {}
    together: set[tuple[str, Decimal]] = set()
    for design in designs:
        spec = design.plan.spec
        mine = [
            line
            for material in bought
            for letter, way in zip(material.letters, material.alone, strict=True)
            if letter == design.letter
            for line in way.lines
        ]
        for line in delivery_lines([replace(line, item=_plain(line.item)) for line in mine], spec):
            found.setdefault((line.item, line.cost or Decimal(0)), []).append((design.letter, Way((line,))))
        items = {
            _plain(line.item)
            for material in bought
            if design.letter in material.letters
            for line in material.way.lines
        }
        shops = {shop_of(item, spec) for item in items}
        together |= {
            (f"delivery from {shop}", price)
            for shop, price in spec.shops.items()
            if price > 0 and shop in shops
        }
    return tuple(
        Bought(
            item,
            tuple(letter for letter, _ in each),
            each[0][1] if (item, price) in together else Way(),
            tuple(way for _, way in each),
            (1.0,) * len(each),
            True,
        )
        for (item, price), each in found.items()
    )


def _plain(item: str) -> str:
    """A material's own name, without the letters of those it is bought apart for."""
    return item.rsplit(" (", 1)[0] if item.endswith(")") else item


def _shared(
    designs: tuple[Design, ...], bought: tuple[Bought, ...], apart: tuple[str, ...], currency: str | None
) -> Trip:
    """The trip with every cost shared out."""
    alone = dict.fromkeys((d.letter for d in designs), Decimal(0))
    pays = dict(alone)
    lines: list[TripLine] = []
    for material in bought:
        single = [way.cost or Decimal(0) for way in material.alone]
        for letter, cost in zip(material.letters, single, strict=True):
            alone[letter] += cost
        whole = material.way.cost
        parts = None if whole is None else share_out(whole, single, material.used)
        for letter, part in zip(material.letters, parts or (), strict=False):
            pays[letter] += part
        lines.extend(_lines(material, parts))
    ways = [material.way for material in bought]
    cut = [way for way in ways if way.packs]
    missing = tuple(dict.fromkeys(one.line.item for one in lines if one.line.cost is None))
    return Trip(
        designs[0].plan.spec.units,
        currency,
        tuple(replace(d, alone=alone[d.letter], pays=pays[d.letter]) for d in designs),
        tuple(lines),
        tuple(pack for way in ways for pack in way.packs),
        tuple(layout for way in ways for layout in way.layouts),
        all(way.proven for way in cut),
        max((way.gap for way in cut), default=0.0),
        missing,
        apart,
    )


def _lines(material: Bought, parts: tuple[Decimal, ...] | None) -> list[TripLine]:
    """The lines of one material; what each design pays of it stands at the first."""
    found = []
    for number, line in enumerate(material.way.lines):
        if parts is None:
            found.append(TripLine(line, tuple((letter, None) for letter in material.letters)))
        else:
            paid = tuple(zip(material.letters, parts, strict=True)) if number == 0 else ()
            found.append(TripLine(line, paid))
    return found
