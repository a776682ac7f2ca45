"""The machine-readable plan: ``plan.json``, one JSON object, the same bytes for the same plan.

Units, one to a kind of value and named in the key: lengths mm, forces N, masses g, angles degrees,
fractions 0 to 1, stress MPa, stiffness N m2, money a decimal string. Rounding, half to even on the
binary value: lengths 0.01 mm, forces and line loads 0.001, masses 0.1 g, angles 0.01 degree, fractions
0.000001, stress 0.1 MPa, stiffness four significant figures, other ratios 0.0001, minutes 0.1. Minus
zero is written as zero. Keys are sorted, lines end in ``\\n``. The compiler's version, the clock and
folders are left out, so that a plan only changes when what it says changes.

The schema is ``schemas/v1/plan.schema.json``.
"""

from __future__ import annotations

import json

from hoopwright.plan.model import Plan
from hoopwright.render.machine.cloth import cloth_json
from hoopwright.render.machine.corded import corded_json
from hoopwright.render.machine.diary import diary_json
from hoopwright.render.machine.findings import assumed_json, findings_json
from hoopwright.render.machine.frame import frame_json
from hoopwright.render.machine.results import checks_json, strength_json
from hoopwright.render.machine.shape import shape_json
from hoopwright.render.machine.supply import supply_json
from hoopwright.render.machine.values import Json
from hoopwright.render.machine.work import order_json, tasks_json

PLAN_FORMAT = 1
"""The version of the format, the key ``plan``."""


def plan_value(plan: Plan) -> dict[str, Json]:
    """The plan as plain dicts, lists, strings and numbers, ready for JSON."""
    return {
        "plan": PLAN_FORMAT,
        "title": plan.spec.title,
        "units": plan.spec.units,
        **shape_json(plan),
        **frame_json(plan),
        **cloth_json(plan),
        **corded_json(plan),
        "checks": checks_json(plan),
        "strength": strength_json(plan.assessment),
        **supply_json(plan),
        "tasks": tasks_json(plan.work),
        "order": order_json(plan.work),
        "assumed": assumed_json(plan.spec),
        "findings": findings_json(plan.findings),
        **diary_json(plan),
    }


def plan_json(plan: Plan) -> str:
    """The text of ``plan.json``. Lone surrogates in the maker's text become ``?``."""
    text = json.dumps(plan_value(plan), indent=2, sort_keys=True, ensure_ascii=False, allow_nan=False)
    return text.encode("utf-8", "replace").decode("utf-8") + "\n"
