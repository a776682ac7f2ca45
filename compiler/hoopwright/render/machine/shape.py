"""Hoops, tapes, waistband, cloth, ties and the skirt over the cage, for ``plan.json``."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, degree, fraction, mm, newtons
from hoopwright.shape.model import Hoop, Tape, Tie
from hoopwright.supply.model import ClothLayout


def shape_json(plan: Plan) -> dict[str, Json]:
    """The keys ``hoops``, ``tapes``, ``waistband``, ``cloth``, ``ties`` and ``skirt``."""
    shape = plan.shape
    pulls = {tie.id: tie.tension for tie in plan.assessment.ties}
    return {
        "hoops": [_hoop(hoop) for hoop in shape.hoops],
        "tapes": [_tape(tape) for tape in shape.tapes],
        "waistband": {
            "girth_mm": mm(shape.waistband.girth),
            "width_mm": mm(shape.waistband.width),
            "overlap_mm": mm(shape.waistband.overlap),
            "cut_mm": mm(shape.waistband.cut),
            "material": shape.waistband.material,
        },
        "cloth": [piece for layout in plan.supply.layouts for piece in _pieces(layout)],
        "ties": [_tie(tie, pulls.get(tie.id)) for tie in shape.ties],
        "skirt": {
            "front_mm": mm(plan.skirt.front),
            "side_mm": mm(plan.skirt.side),
            "back_mm": mm(plan.skirt.back),
            "hem_girth_mm": mm(plan.skirt.hem_girth),
        },
    }


def _hoop(hoop: Hoop) -> Json:
    return {
        "id": hoop.id,
        "place": hoop.place,
        "height_mm": mm(hoop.height),
        "girth_mm": mm(hoop.girth),
        "plan": {
            "kind": hoop.plan.kind,
            "width_mm": mm(hoop.plan.width),
            "depth_mm": mm(hoop.plan.depth),
            "offset_mm": mm(hoop.plan.offset),
            "arc_deg": degree(hoop.plan.arc),
        },
        "cut_mm": mm(hoop.cut),
        "casing_mm": mm(hoop.casing),
        "fixings": [{"tape": fix.tape, "fraction": fraction(fix.fraction)} for fix in hoop.fixings],
    }


def _tape(tape: Tape) -> Json:
    return {
        "id": tape.id,
        "waist_fraction": fraction(tape.waist_fraction),
        "waist_angle_deg": degree(tape.waist_angle),
        "cut_mm": mm(tape.cut),
        "marks": [{"hoop": mark.hoop, "at_mm": mm(mark.at), "lean_deg": degree(mark.lean)}
                  for mark in tape.marks],
    }


def _tie(tie: Tie, tension: float | None) -> Json:
    return {
        "id": tie.id,
        "hoop": tie.hoop,
        "kind": tie.kind,
        "from_fraction": fraction(tie.at),
        "to_fraction": fraction(tie.to),
        "length_mm": mm(tie.length),
        "straight_mm": mm(tie.span),
        "cut_mm": mm(tie.cut),
        "tension_n": None if tension is None else newtons(tension),
        "material": tie.material,
    }


def _pieces(layout: ClothLayout) -> list[Json]:
    """Equal rectangles of one cloth counted together, in the order they are laid."""
    counts: dict[tuple[str, float, float], int] = {}
    for place in layout.placements:
        key = (place.part, mm(place.width), mm(place.height))
        counts[key] = counts.get(key, 0) + 1
    return [{"part": part, "count": count, "width_mm": width, "length_mm": length,
             "material": layout.material} for (part, width, length), count in counts.items()]
