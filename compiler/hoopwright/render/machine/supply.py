"""Cut lists, the shopping list and the cost, for ``plan.json``."""

from __future__ import annotations

from decimal import Decimal

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, fraction, grams, minutes, mm, money, stiffness
from hoopwright.render.views.splicing import splice_minutes
from hoopwright.supply.delivery import DELIVERY, shop_of
from hoopwright.supply.model import CutPiece, ShoppingLine


def supply_json(plan: Plan) -> dict[str, Json]:
    """The keys ``cutting``, ``shopping`` and ``cost``, and ``splices`` and ``substitutes`` where there are
    any."""
    supply, cost = plan.supply, plan.supply.cost
    cutting = supply.cutting
    proven: Json = True if cutting.proven else fraction(cutting.gap)
    return {
        "cutting": [{
            "material": pack.material,
            "pack_mm": mm(pack.pack),
            "from": pack.origin,
            "pieces": [_piece(piece) for piece in pack.pieces],
            **({"washed_mm": mm(pack.washed)} if pack.shrinks else {}),
            "left_mm": mm(pack.left),
            "proven": proven,
        } for pack in cutting.packs],
        "shopping": [{
            "item": line.item,
            "packs": line.packs,
            "price": money(line.price),
            "cost": money(line.cost),
            "for": list(line.uses),
            **_washed(line),
            **_shop(line, plan),
        } for line in supply.shopping],
        **_splices(plan),
        **_substitutes(plan),
        "cost": {
            "total": money(cost.total),
            "reserve": money(cost.reserve),
            "budget": money(cost.budget),
            "currency": cost.currency,
            "partial": cost.partial,
            **_delivery(plan),
        },
    }


def _piece(piece: CutPiece) -> dict[str, Json]:
    found: dict[str, Json] = {"part": piece.part, "length_mm": mm(piece.length)}
    return found if piece.shares == 1 else {**found, "share": piece.share, "shares": piece.shares}


def _washed(line: ShoppingLine) -> dict[str, Json]:
    """All that is bought by length and what is counted on of it, where the first wash takes some."""
    if line.washed is None:
        return {}
    return {"bought_mm": mm(line.packs * line.pack_length), "washed_mm": mm(line.washed)}


def _shop(line: ShoppingLine, plan: Plan) -> dict[str, Json]:
    """Where it is bought, when the spec says so."""
    shop = shop_of(line.item, plan.spec)
    return {"from": shop} if shop else {}


def _delivery(plan: Plan) -> dict[str, Json]:
    """What of the total is for deliveries, when the spec has shops."""
    paid = (line.cost for line in plan.supply.shopping if line.kind == DELIVERY and line.cost is not None)
    return {"delivery": money(sum(paid, Decimal(0)))} if plan.spec.shops else {}


def _splices(plan: Plan) -> dict[str, Json]:
    """The key ``splices``, when a hoop is spliced."""
    told = plan.supply.cutting.splicing
    if told is None:
        return {}
    return {"splices": {
        "saves": money(told.saves),
        "cost": money(told.cost),
        "minutes": minutes(splice_minutes(plan)),
        "places": [{
            "hoop": splice.hoop,
            "along_mm": mm(splice.along),
            "fraction": fraction(splice.fraction),
            "between": [tape for tape in splice.between if tape],
            "first": splice.first,
            "then": splice.then,
        } for splice in plan.splices],
    }}


def _substitutes(plan: Plan) -> dict[str, Json]:
    """The key ``substitutes``, when several materials are offered for one use."""
    if not plan.substitutes:
        return {}
    return {"substitutes": [{
        "offered": list(row.offered),
        "join": row.join,
        "chosen": row.chosen,
        "result": row.result,
        "reason": row.reason,
        "cost": money(row.cost),
        "partial": row.partial,
        "weight_g": None if row.weight is None else grams(row.weight),
        "ei_weak_n_m2": None if row.stiffness is None else stiffness(row.stiffness),
        "set_used": None if row.set_used is None else fraction(row.set_used),
        "door_used": None if row.door_used is None else fraction(row.door_used),
        "minutes": None if row.minutes is None else minutes(row.minutes),
    } for row in plan.substitutes]}
