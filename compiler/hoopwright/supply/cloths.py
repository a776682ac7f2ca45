"""Cloth: strips and panels laid on the width, whole shop steps or packs bought, remnants first."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from hoopwright.library.model import ByMeasure, Pack
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.cloth import lay_out
from hoopwright.supply.cloth.model import Cloth, ClothFailure, ClothPlan, Gore, Panel, Remnant, Sheet
from hoopwright.supply.model import ClothLayout, Placement, ShoppingLine
from hoopwright.supply.money import measured_cost, step_price
from hoopwright.supply.needs import ClothNeed, ways

_NOISE = 1e-9
_MOST_PACKS = 40
_FINE = 0.001


@record(frozen=True, slots=True)
class Laid:
    """One cloth laid out: a layout for each length, and what to buy of it."""

    layouts: tuple[ClothLayout, ...]
    line: ShoppingLine | None


@record(frozen=True, slots=True)
class PacksShort:
    """Packs to be had do not hold the parts: metres needed in one length, metres to be had, both as washed, and
    whether no number of such packs would do."""

    needed: float
    to_be_had: float
    never: bool


ClothProblem = ClothFailure | PacksShort


def lay_need(need: ClothNeed, spec: Spec) -> Laid | ClothProblem:
    """The cheapest way to cut all parts from one cloth, or why there is none.

    Equal ways: the shorter buy, then a band across the cloth, whose strips meet selvage to selvage. A cloth
    nothing is said about is taken by the quarter yard or the ten centimetres, without a price.
    """
    step = 0.2286 if spec.units == "inches" else 0.1
    offers = [offer for offer in need.goods.sold if isinstance(offer, ByMeasure | Pack)]
    offers = offers or [ByMeasure(step, step, None)]
    found = [_offered(way, offer) for way in ways(need, spec) for offer in offers]
    laid = [way for way in found if isinstance(way, Laid)]
    if not laid:
        return min(found, key=_shortfall)
    best = min(laid, key=_cost_key)
    if len(ways(need, spec)) == 1:
        return best
    turned = [way for way in laid if way.layouts[0].direction != best.layouts[0].direction]
    other = min((sum(layout.need for layout in way.layouts) for way in turned), default=None)
    return replace(best, layouts=tuple(replace(layout, other_way=other) for layout in best.layouts))


def _offered(need: ClothNeed, offer: ByMeasure | Pack) -> Laid | ClothProblem:
    return _by_measure(need, offer) if isinstance(offer, ByMeasure) else _by_pack(need, offer)


def _shortfall(problem: Laid | ClothProblem) -> float:
    """Failures in order of how little is missing; a part too wide stands last."""
    return problem.needed if isinstance(problem, PacksShort) else math.inf


def _cost_key(laid: Laid) -> tuple[bool, Decimal, float]:
    line = laid.line
    if line is None:
        return (False, Decimal(0), 0.0)
    return (line.cost is None, line.cost or Decimal(0), round(line.packs * line.pack_length, 9))


def _cloth(need: ClothNeed, step: float, most: float | None = None) -> Cloth:
    goods = need.goods
    return Cloth(goods.name, goods.width, step, None, step, goods.nap, goods.shrinkage, goods.shrinkage, most)


def _remnants(need: ClothNeed) -> tuple[Remnant, ...]:
    whole = (Remnant(need.goods.washed_width, length) for length in need.goods.on_hand)
    return (*whole, *(Remnant(piece.width, piece.length) for piece in need.goods.remnants))


def _by_measure(need: ClothNeed, offer: ByMeasure) -> Laid | ClothProblem:
    plan = lay_out(need.parts, _cloth(need, offer.step), _remnants(need))
    if isinstance(plan, ClothFailure):
        return plan
    layouts = _layouts(need, plan)
    if plan.buy <= _NOISE:
        return Laid(layouts, None)
    steps = math.ceil(plan.buy / offer.step - _NOISE)
    line = _line(need, plan, steps, offer.step, step_price(offer), measured_cost(offer, steps))
    return Laid(layouts, line)


def _by_pack(need: ClothNeed, offer: Pack) -> Laid | ClothProblem:
    """Packs as so many pieces of cloth: the fewest that hold every part."""
    goods = need.goods
    whole = lay_out(need.parts, _cloth(need, _FINE), _remnants(need))
    if isinstance(whole, ClothFailure):
        return whole
    if whole.buy <= _NOISE:
        return Laid(_layouts(need, whole), None)
    washed = Remnant(goods.washed_width, offer.length * (1 - goods.shrinkage), "pack")
    most = _MOST_PACKS if offer.at_most is None else min(offer.at_most, _MOST_PACKS)
    first = max(1, math.ceil(whole.lower_bound / (1 - goods.shrinkage) / offer.length - _NOISE))
    for packs in range(first, most + 1):
        plan = lay_out(need.parts, _cloth(need, offer.length), (*_remnants(need), *(washed,) * packs))
        if isinstance(plan, ClothPlan) and plan.buy <= _NOISE:
            price = offer.price.amount if offer.price else None
            line = _line(need, whole, packs, offer.length, price, None if price is None else price * packs)
            return Laid(_layouts(need, plan, whole), line)
    alone = lay_out(need.parts, _cloth(need, _FINE), ())
    there = (*goods.on_hand, *(piece.length for piece in goods.remnants))
    return PacksShort(alone.used if isinstance(alone, ClothPlan) else whole.used,
                      sum(there) + (offer.at_most or 0) * washed.length, offer.at_most is None)


def _line(
    need: ClothNeed, plan: ClothPlan, packs: int, length: float, price: Decimal | None, cost: Decimal | None
) -> ShoppingLine:
    spare = sum((s.length for s in plan.sheets if s.source == "on hand" and s.placements), 0.0)
    uses = tuple(dict.fromkeys(part.part for part in need.parts))
    return ShoppingLine(need.goods.name, "cloth", packs, length, 0, price, cost, plan.used, spare, uses,
                        need.goods.shrinkage)


def _layouts(need: ClothNeed, plan: ClothPlan, whole: ClothPlan | None = None) -> tuple[ClothLayout, ...]:
    """One layout for each length of cloth that is cut. Joins are counted on the first, for all."""
    judged = whole or plan
    shrink = 1 - need.goods.shrinkage
    used = [sheet for sheet in plan.sheets if sheet.placements]
    bands = {way.part: way.way for way in plan.bands}
    crosswise = bands.get("band", next(iter(bands.values()), "lengthwise")) == "crosswise"
    other = judged.used_lengthwise if crosswise else judged.used_crosswise
    found = []
    for index, sheet in enumerate(used):
        pack = sheet.name == "pack"
        washing = shrink if pack or sheet.source == "bought" else 1.0
        buy = round(sheet.length / shrink, 9) if pack else (plan.buy if sheet.source == "bought" else 0.0)
        found.append(
            ClothLayout(
                need.goods.name,
                sheet.width,
                "across" if crosswise else "along",
                sum(1 for placed in sheet.placements if placed.part in bands),
                plan.joins if index == 0 else 0,
                _reach(sheet) / washing,
                buy,
                None if other is None else other / shrink,
                tuple(_placement(need, sheet, index) for index in range(len(sheet.placements))),
                plan.proven,
                buy * shrink if buy else _reach(sheet),
            )
        )
    return tuple(found)


def _reach(sheet: Sheet) -> float:
    return max(placed.y + placed.height for placed in sheet.placements)


def _placement(need: ClothNeed, sheet: Sheet, index: int) -> Placement:
    """A rectangle on the cloth; ``turned`` when the grain runs across the strip (it is cut crosswise), or
    when a panel lies on its side."""
    placed = sheet.placements[index]
    panels = {part.part for part in need.parts if isinstance(part, Panel)}
    across = placed.turned if placed.part in panels else not placed.turned
    gores = {part.part for part in need.parts if isinstance(part, Gore)}
    outline = placed.outline if placed.part in gores else ()
    return Placement(placed.part, placed.x, placed.y, placed.width, placed.height, across, outline)


def strips_of(layouts: Iterable[ClothLayout], part: str) -> int:
    """How many strips make up a part."""
    return sum(1 for layout in layouts for placed in layout.placements if placed.part == part)
