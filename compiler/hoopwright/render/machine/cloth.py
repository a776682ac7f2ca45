"""The cloth of petticoats and every panel cut to an outline, for ``plan.json``."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, degree, mm
from hoopwright.shape.model import Panel, Petticoat


def cloth_json(plan: Plan) -> dict[str, Json]:
    """The keys ``panels``, in plans that have any, and ``petticoat``, in plans of one."""
    found: dict[str, Json] = {}
    if plan.shape.panels:
        found["panels"] = [_panel(panel) for panel in plan.shape.panels]
    if plan.shape.petticoat is not None:
        found["petticoat"] = _petticoat(plan, plan.shape.petticoat)
    return found


def _panel(panel: Panel) -> Json:
    return {
        "part": panel.part,
        "count": panel.count,
        "mirrored": panel.mirrored,
        "material": panel.material,
        "width_mm": mm(panel.width),
        "height_mm": mm(panel.height),
        "grain": panel.grain,
        "outline": [[mm(x), mm(y)] for x, y in panel.outline],
        "lines": [
            {"name": rule.name, "up_mm": mm(rule.offset), "points": [[mm(x), mm(y)] for x, y in rule.points]}
            for rule in panel.rules
        ],
    }


def _petticoat(plan: Plan, cloth: Petticoat) -> Json:
    """The petticoat. A channel's ``on_panel_mm`` is its line in the middle of a flat panel, up from the cut
    lower edge."""
    lines = {rule.name: rule for rule in plan.shape.panels[0].rules}
    return {
        "kind": cloth.kind,
        "count": cloth.count,
        "material": cloth.material,
        "top_mm": mm(cloth.top),
        "hem_mm": mm(cloth.hem),
        "slant_mm": mm(cloth.slant),
        "lean_deg": degree(cloth.half_angle),
        "edge_mm": mm(cloth.edge),
        "head_mm": mm(cloth.head),
        "tucks_take_mm": mm(cloth.takes),
        "rounded_off_mm": mm(cloth.round_off),
        "placket_mm": mm(cloth.placket),
        "feed_gap_mm": mm(cloth.feed_gap),
        "drawstring_mm": mm(cloth.drawstring),
        "channels": [
            {
                "hoop": one.hoop,
                "up_mm": mm(one.up),
                "on_panel_mm": mm(lines[one.hoop].offset),
                "panel_width_mm": mm(
                    lines[one.hoop].points[-1][0] - lines[one.hoop].points[0][0]
                    + 2 * plan.spec.allowances.seam
                ),
                "width_mm": mm(one.width),
                "takes_mm": mm(one.takes),
                "girth_mm": mm(one.girth),
                "strip_mm": mm(one.strip),
                "strip_height_mm": mm(one.height),
            }
            for one in cloth.channels
        ],
        "flounces": [
            {
                "id": one.id,
                "up_mm": mm(one.up),
                "girth_mm": mm(one.girth),
                "depth_mm": mm(one.depth),
                "length_mm": mm(one.length),
                "height_mm": mm(one.height),
                "material": one.material,
            }
            for one in cloth.flounces
        ],
    }
