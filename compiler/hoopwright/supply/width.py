"""How much of a cloth the same parts need at the widths the shops sell."""

from __future__ import annotations

from hoopwright.source.printed import length_text, long_length_text
from hoopwright.spec.model import Spec
from hoopwright.supply.cloth import lay_out
from hoopwright.supply.cloth.model import Cloth, ClothPlan
from hoopwright.supply.needs import ClothNeed, ways

SHOP_WIDTHS = {"inches": (45 * 0.0254, 60 * 0.0254), "centimetres": (1.15, 1.5)}
"""Usual widths of cloth, m, by system of units: common practice, no source."""


def need_at(need: ClothNeed, width: float, spec: Spec) -> float | None:
    """The least length in one piece of a cloth that is ``width`` wide, m; None when a part is wider."""
    goods = need.goods
    cloth = Cloth(goods.name, width, 0.001, None, 0.001, goods.nap, goods.shrinkage, goods.shrinkage)
    plans = [lay_out(way.parts, cloth, ()) for way in ways(need, spec)]
    return min((plan.needed for plan in plans if isinstance(plan, ClothPlan)), default=None)


def widths_text(need: ClothNeed, spec: Spec) -> str:
    """``5 ft 3 in at 45 in wide, 5 ft 3 in at 60 in wide``."""
    found = []
    for width in SHOP_WIDTHS[spec.units]:
        length = need_at(need, width, spec)
        if length is not None:
            found.append(f"{long_length_text(length, spec.units)} at {length_text(width, spec.units)} wide")
    return ", ".join(found) or "more than any usual width gives"
