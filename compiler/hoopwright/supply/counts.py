"""Small stuff: fastenings and what joins, ends, seams and fixings use up.

A reserve (10 % unless the maker says otherwise) is added, and pieces are rounded up.
"""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal

from hoopwright.library.goods import (
    EYELET,
    FASTENINGS_PER_BAND,
    GOODS,
    HOOP_END,
    SEAM_METRE,
    STARCHING,
    TAPE_FIXING,
    WADDING,
)
from hoopwright.library.model import ByMeasure, Consumption, Goods, Pack, Pieces
from hoopwright.shape.model import CordedPetticoat, Shape
from hoopwright.shape.tying.lacing import eyelet_count
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.model import ShoppingLine
from hoopwright.supply.money import measured_cost, step_price
from hoopwright.supply.needs import cased, closed

_NOISE = 1e-9


@record(frozen=True, slots=True)
class CountNeed:
    """``amount`` of goods in the unit it is used in, of which one piece serves ``per_piece``; reserve
    included."""

    goods: Goods
    amount: float
    per_piece: float
    uses: tuple[str, ...]


def count_needs(spec: Spec, shape: Shape, splices: int = 0) -> tuple[CountNeed, ...]:
    """Fastening first, then consumables by name. ``splices`` are joins beside those that close hoops."""
    fastening = spec.build.waistband.fastening
    more = 1 + spec.allowances.small_stuff_reserve
    closing = CountNeed(fastening, FASTENINGS_PER_BAND.get(fastening.name, 1) * more, 1, ("waistband",))
    pooled: dict[str, CountNeed] = {}
    for use, times, word in _uses(spec, shape, splices):
        if times <= 0:
            continue
        before = pooled.get(use.goods)
        goods = spec.goods.get(use.goods) or GOODS.get(use.goods) or Goods(use.goods, "consumable")
        words = (*before.uses, word) if before else (word,)
        amount = (before.amount if before else 0.0) + use.amount * times * more
        pooled[use.goods] = CountNeed(goods, amount, use.per_piece, tuple(dict.fromkeys(words)))
    tied = spec.build.panels is not None and spec.build.panels.cord is not None
    return (*(() if tied else (closing,)), *(pooled[name] for name in sorted(pooled)))


def _uses(spec: Spec, shape: Shape, splices: int) -> list[tuple[Consumption, float, str]]:
    """Every use: what, how many times, and a word for the list."""
    uses = _hoop_uses(spec, shape, splices) if spec.build.hooped is not None else _corded_uses(spec, shape)
    if shape.wheel is not None:
        uses.append((HOOP_END, 2 * len(shape.wheel.spokes), "spoke ends"))
        uses.append((TAPE_FIXING, shape.wheel.fixings, "rings bound to spokes"))
        uses.append((WADDING, shape.wheel.stuffing * 1000, "stuffing of the roll"))
    uses.append((TAPE_FIXING, fixings(shape), "fixings"))
    uses.append((TAPE_FIXING, 2 * sum(tie.cut > 0 for tie in shape.ties), "ties"))
    uses.append((EYELET, eyelet_count(spec, shape.panels), "lacing"))
    uses.append((SEAM_METRE, seam_metres(spec, shape), "seams"))
    return uses


def _hoop_uses(spec: Spec, shape: Shape, splices: int) -> list[tuple[Consumption, float, str]]:
    """What joining hoops and tipping their ends uses up."""
    join = spec.build.hoops.join
    joined = len(closed(shape))
    made = joined + splices
    said = "joins, splices and one proof" if splices else "joins and one proof"
    uses: list[tuple[Consumption, float, str]] = [
        (use, made + 1 if made else 0, said) for use in join.consumes
    ]
    tipped = len(shape.hoops) if ends_stay_open(spec) else len(shape.hoops) - joined
    uses.append((HOOP_END, 2 * tipped, "hoop ends"))
    return uses


def _corded_uses(spec: Spec, shape: Shape) -> list[tuple[Consumption, float, str]]:
    """What starching a corded petticoat and its sample once uses up."""
    cloth, cords = shape.corded, spec.build.cords
    if cloth is None or cords is None or cords.starch is None:
        return []
    dry = sum(piece.count * piece.width * piece.height * spec.goods[piece.material].areal_density
              for piece in shape.panels) + cloth.run * cords.material.linear_density
    return [(replace(STARCHING, goods=cords.starch.name), dry, "sample, and first starching")]


def ends_stay_open(spec: Spec) -> bool:
    """Whether the cut ends of a joined hoop keep a tip: not when they are soldered flat or meet inside a
    sleeve (they are taped until then)."""
    join = spec.build.hoops.join
    return not join.heat and join.sleeve == 0.0


def fixings(shape: Shape) -> int:
    """Crossings of tape and hoop that are sewn."""
    return sum(len(tape.marks) for tape in shape.tapes)


def seam_metres(spec: Spec, shape: Shape) -> float:
    """Metres of seam: tapes to the waistband (a box of four sides), its two ends, the band's long seam
    and two channels, and casings that are sewn into tubes."""
    metres = tape_boxes(spec, shape) + 4 * shape.waistband.width
    if shape.band is not None:
        metres += 3 * shape.band.length + 2 * shape.band.height
    metres += petticoat_seams(shape) + corded_seams(shape) + frame_seams(shape)
    casing = spec.build.hooped.casing if spec.build.hooped is not None else None
    if casing is not None and casing.kind != "braid":
        metres += sum(hoop.casing for hoop in cased(shape))
    return metres


def petticoat_seams(shape: Shape) -> float:
    """Metres of seam in a petticoat: its panels, hem and channels, and its flounces hemmed and set on."""
    cloth = shape.petticoat
    if cloth is None:
        return 0.0
    panels = sum(piece.count * piece.height for piece in shape.panels) + cloth.hem + cloth.top
    channels = sum((2 * one.strip) if one.strip else one.girth for one in cloth.channels)
    return panels + channels + sum(one.length + one.girth for one in cloth.flounces)


def corded_seams(shape: Shape) -> float:
    """Metres of seam in a corded petticoat: breadths of both layers, hem and waist, and along its cords."""
    cloth = shape.corded
    if cloth is None:
        return 0.0
    edges = 2 * cloth.hem + (cloth.hem if cloth.facing else 0.0)
    return cloth.count * (cloth.high + cloth.facing_high) + edges + cord_stitches(cloth)


def cord_stitches(cloth: CordedPetticoat) -> float:
    """Metres of stitching along cords: in a sandwich a line on both sides, which neighbours share, in a tuck
    one."""
    lines = len(cloth.rows) + (cloth.groups if cloth.facing else 0)
    return lines * cloth.rows[0].run


def frame_seams(shape: Shape) -> float:
    """Metres of seam of a wheel's cover and roll, or of side hoops: panels joined, edges turned, channels."""
    wheel, sides = shape.wheel, shape.sides
    if wheel is not None:
        closing = wheel.width if wheel.halves else 0.0
        return math.pi * wheel.cover + 2 * wheel.slit + closing + sum(wheel.roll_cut)
    if sides is None:
        return 0.0
    outer, inner = shape.panels[0], shape.panels[1]
    channels = 2 * sum(one.width for one in sides.channels)
    return 2 * (2 * outer.height + outer.width + inner.width + channels + 2 * sides.pocket)


def tape_boxes(spec: Spec, shape: Shape) -> float:
    """Metres of seam that hold the tapes to the waistband: a box of four sides each."""
    carriers = spec.build.tapes
    return 0.0 if carriers is None else 4 * carriers.material.width * len(shape.tapes)


def count_line(need: CountNeed) -> ShoppingLine | None:
    """The line to buy, or None when the cupboard holds enough. The cheapest offer that does is taken."""
    goods = need.goods
    pieces = math.ceil(need.amount / need.per_piece - _NOISE)
    from_cupboard = min(float(pieces), float(sum(goods.on_hand)))
    short = math.ceil(pieces - from_cupboard - _NOISE)
    if short <= 0:
        return None
    line = ShoppingLine(
        goods.name, goods.kind, short, 0.0, 1, None, None, float(pieces), from_cupboard, need.uses
    )
    offered = [_offered(line, offer, short, need) for offer in goods.sold]
    return min(offered, key=lambda found: (found.cost is None, found.cost or Decimal(0))) if offered else line


def _offered(
    line: ShoppingLine, offer: Pack | ByMeasure | Pieces, short: int, need: CountNeed
) -> ShoppingLine:
    """The line filled from one offer. Goods sold by length serve by what is used of them, in metres."""
    if isinstance(offer, Pieces):
        packs = math.ceil(short / offer.count)
        price = offer.price.amount if offer.price else None
        return replace(
            line,
            packs=packs,
            pack_count=offer.count,
            price=price,
            cost=None if price is None else price * packs,
        )
    metres = max(0.0, need.amount - line.on_hand * need.per_piece)
    if isinstance(offer, Pack):
        packs = math.ceil(metres / offer.length - _NOISE)
        price = offer.price.amount if offer.price else None
        cost = None if price is None else price * packs
        return replace(
            line, packs=packs, pack_length=offer.length, pack_count=0, price=price, cost=cost, need=metres
        )
    steps = math.ceil(metres / offer.step - _NOISE)
    return replace(
        line,
        packs=steps,
        pack_length=offer.step,
        pack_count=0,
        price=step_price(offer),
        cost=measured_cost(offer, steps),
        need=metres,
    )
