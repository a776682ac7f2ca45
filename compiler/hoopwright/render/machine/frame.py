"""A wheel or side hoops for ``plan.json``; null where there is none."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, degree, fraction, mm


def frame_json(plan: Plan) -> dict[str, Json]:
    """The keys ``wheel`` and ``side_hoops``, only in plans that have one of them."""
    wheel, pair = plan.shape.wheel, plan.shape.sides
    if wheel is not None:
        return {
            "wheel": {
                "width_mm": mm(wheel.width),
                "set_back_mm": mm(wheel.set_back),
                "tilt_deg": degree(wheel.tilt),
                "rim_drop_mm": mm(wheel.rim_drop),
                "slit_mm": mm(wheel.slit),
                "cover_mm": mm(wheel.cover),
                "roll_mm": mm(wheel.roll),
                "roll_length_mm": mm(wheel.roll_length),
                "spokes": [
                    {
                        "id": spoke.id,
                        "cut_mm": mm(spoke.cut),
                        "marks": [{"hoop": hoop, "at_mm": mm(at)} for hoop, at in spoke.marks],
                    }
                    for spoke in wheel.spokes
                ],
                "rim": [
                    {
                        "angle_deg": degree(point.angle),
                        "reach_mm": mm(point.reach),
                        "height_mm": mm(point.height),
                        "skirt_mm": mm(point.skirt),
                    }
                    for point in wheel.rim
                ],
            }
        }
    if pair is not None:
        return {
            "side_hoops": {
                "across_mm": mm(pair.across),
                "hip_mm": mm(2 * pair.hip),
                "front_to_back_mm": mm(pair.front_to_back),
                "on_band_mm": mm(pair.on_band),
                "at_fraction": fraction(pair.at),
                "pocket_slit_mm": mm(pair.pocket),
                "ease_mm": mm(pair.ease),
                "channels": [
                    {
                        "hoops": list(one.hoops),
                        "drop_mm": mm(one.drop),
                        "down_mm": mm(one.down),
                        "length_mm": mm(one.width),
                        "steel_mm": mm(one.steel),
                        "reach_mm": mm(one.wished),
                        "by_itself_mm": mm(one.stands),
                    }
                    for one in pair.channels
                ],
            }
        }
    return {}
