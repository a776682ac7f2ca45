"""Cut lists, the shopping list and the cost, for ``plan.json``."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, fraction, mm, money


def supply_json(plan: Plan) -> dict[str, Json]:
    """The keys ``cutting``, ``shopping`` and ``cost``."""
    supply, cost = plan.supply, plan.supply.cost
    cutting = supply.cutting
    proven: Json = True if cutting.proven else fraction(cutting.gap)
    return {
        "cutting": [{
            "material": pack.material,
            "pack_mm": mm(pack.pack),
            "from": pack.origin,
            "pieces": [{"part": piece.part, "length_mm": mm(piece.length)} for piece in pack.pieces],
            "left_mm": mm(pack.left),
            "proven": proven,
        } for pack in cutting.packs],
        "shopping": [{
            "item": line.item,
            "packs": line.packs,
            "price": money(line.price),
            "cost": money(line.cost),
            "for": list(line.uses),
        } for line in supply.shopping],
        "cost": {
            "total": money(cost.total),
            "reserve": money(cost.reserve),
            "budget": money(cost.budget),
            "currency": cost.currency,
            "partial": cost.partial,
        },
    }
