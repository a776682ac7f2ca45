"""The trip for machines: ``shopping.json``. Units and rounding are those of ``plan.json``; the schema is
``schemas/v1/trip.schema.json``."""

from __future__ import annotations

import json

from hoopwright.compare.trip.model import Design, Trip, TripLine
from hoopwright.compare.trip.page import RULE
from hoopwright.render.machine.values import Json, fraction, mm, money
from hoopwright.supply.model import ClothLayout, CutPack

TRIP_FORMAT = 1
"""The version of the format, the key ``trip``."""


def trip_value(trip: Trip) -> dict[str, Json]:
    """The trip as plain dicts, lists, strings and numbers, ready for JSON."""
    proven: Json = True if trip.proven else fraction(trip.gap)
    return {
        "trip": TRIP_FORMAT,
        "units": trip.units,
        "rule": RULE,
        "designs": [_design(design) for design in trip.designs],
        "shopping": [_line(one) for one in trip.lines],
        "cutting": [_pack(pack, proven) for pack in trip.packs if pack.pieces],
        "cloth": [_layout(layout) for layout in trip.layouts],
        "apart": list(trip.apart),
        "cost": {
            "total": money(trip.total),
            "alone": money(trip.alone),
            "saving": money(trip.saving),
            "currency": trip.currency,
            "partial": bool(trip.missing),
            "missing": list(trip.missing),
        },
    }


def trip_json(trip: Trip) -> str:
    """The text of ``shopping.json``. Lone surrogates in the makers' text become ``?``."""
    text = json.dumps(trip_value(trip), indent=2, sort_keys=True, ensure_ascii=False, allow_nan=False)
    return text.encode("utf-8", "replace").decode("utf-8") + "\n"


def _design(design: Design) -> Json:
    return {
        "letter": design.letter,
        "design": design.label,
        "source": design.plan.source,
        "alone": money(design.alone),
        "pays": money(design.pays),
        "saves": money(design.saves),
    }


def _line(one: TripLine) -> Json:
    return {
        "item": one.line.item,
        "packs": one.line.packs,
        "price": money(one.line.price),
        "cost": money(one.line.cost),
        "for": list(one.line.uses),
        "pays": [{"letter": letter, "amount": money(part)} for letter, part in one.pays],
    }


def _pack(pack: CutPack, proven: Json) -> Json:
    pieces: list[Json] = []
    for piece in pack.pieces:
        told: dict[str, Json] = {"part": piece.part, "length_mm": mm(piece.length)}
        pieces.append(told if piece.shares == 1 else {**told, "share": piece.share, "shares": piece.shares})
    return {
        "material": pack.material,
        "pack_mm": mm(pack.pack),
        "from": pack.origin,
        "pieces": pieces,
        **({"washed_mm": mm(pack.washed)} if pack.shrinks else {}),
        "left_mm": mm(pack.left),
        "proven": proven,
    }


def _layout(layout: ClothLayout) -> Json:
    return {
        "material": layout.material,
        "width_mm": mm(layout.width),
        "need_mm": mm(layout.need),
        "buy_mm": mm(layout.buy),
        **({"washed_mm": mm(layout.washed)} if layout.shrinks else {}),
        "pieces": [
            {
                "part": spot.part,
                "x_mm": mm(spot.x),
                "y_mm": mm(spot.y),
                "width_mm": mm(spot.width),
                "height_mm": mm(spot.height),
            }
            for spot in layout.placements
        ],
    }
