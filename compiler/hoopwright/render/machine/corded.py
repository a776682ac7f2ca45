"""A corded petticoat for ``plan.json``: its breadths, its rows from the hem up, and what its sample says."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import (
    Json,
    degree,
    fraction,
    mm,
    mm_or_none,
    newtons,
    ratio,
    rounded,
    stiffness,
)


def corded_json(plan: Plan) -> dict[str, Json]:
    """The key ``corded_petticoat``, only in plans that have one."""
    cloth, found = plan.shape.corded, plan.assessment.corded
    if cloth is None or found is None:
        return {}
    return {
        "corded_petticoat": {
            "breadths": cloth.count,
            "material": cloth.material,
            "length_mm": mm(cloth.length),
            "hem_girth_mm": mm(cloth.hem),
            "hem_off_floor_mm": mm(cloth.hem_height),
            "half_angle_deg": degree(cloth.half_angle),
            "cut_width_mm": mm(cloth.wide),
            "cut_length_mm": mm(cloth.high),
            "held": cloth.held,
            "facing": cloth.facing or None,
            "facing_cut_length_mm": mm(cloth.facing_high) if cloth.facing else None,
            "cord": cloth.cord,
            "cord_diameter_mm": mm(cloth.diameter),
            "cord_run_mm": mm(cloth.run),
            "cord_cut_mm": mm(cloth.cut),
            "take_up_mm": mm(cloth.take_up),
            "take_up_from": "sample" if cloth.measured else "geometry",
            "shrinkage": fraction(cloth.shrinkage),
            "shrinkage_round": fraction(cloth.shrinkage_round),
            "rows": [{
                "id": row.id,
                "group": row.group,
                "up_mm": mm(row.up),
                "flat_mm": mm(row.flat),
                "height_mm": mm(row.height),
                "girth_mm": mm(row.girth),
                "cut_mm": mm(row.cut),
            } for row in cloth.rows],
            "sample": {
                "ei_n_m2": None if found.stiffness is None else stiffness(found.stiffness),
                "ei_cord_n_m2": None if found.cord is None else stiffness(found.cord),
                "n_per_m": rounded(found.line, 4),
                "weighed": found.weighed,
                "bending_length_mm": mm_or_none(found.bending_length),
                "spread": None if found.spread is None else fraction(found.spread),
            },
            "ring": {
                "radius_mm": mm(found.radius),
                "height_mm": mm(found.height),
                "press_n_per_m": newtons(found.press),
                "bears_n_per_m": None if found.critical is None else newtons(found.critical),
                "factor": None if found.factor is None else ratio(found.factor),
            },
        }
    }
