"""Progress and fittings, for ``plan.json``: the key ``diary``, left out when nothing was noted."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import Json, minutes, mm, money
from hoopwright.shape.model import Refit


def diary_json(plan: Plan) -> dict[str, Json]:
    """The key ``diary``, or nothing."""
    spec, work, mending = plan.spec, plan.work, plan.supply.mending
    if not (spec.progress.done or spec.progress.cut or spec.fittings):
        return {}
    return {"diary": {
        "done": [task.id for task in work.tasks if task.done],
        "minutes_left": minutes(work.minutes_left),
        "pieces": [{"part": one.part, "length_mm": mm(one.length), "fate": one.fate, "serves": one.serves,
                    "need_mm": mm(one.need)} for one in mending.pieces] if mending else [],
        "anew": [{"part": one.part, "length_mm": mm(one.length)} for one in mending.anew] if mending else [],
        "mending_cost": money(mending.cost) if mending else None,
        "fittings": [_refit(refit) for refit in plan.shape.refits],
        "again": [{"task": item.task, "do": item.key, "parts": list(item.parts),
                   "minutes": minutes(item.minutes)} for item in work.again],
    }}


def _refit(refit: Refit) -> Json:
    return {
        "on": refit.on,
        "low_mm": {tape: mm(low) for tape, low in refit.low.items()},
        "all_round_mm": mm(refit.all_round),
        "drawn_up_mm": {tape: mm(up) for tape, up in refit.drawn_up.items()},
        "moved": [{"tape": mark.tape, "hoop": mark.hoop, "was_mm": mm(mark.was), "goes_mm": mm(mark.goes)}
                  for mark in refit.moved],
        "hoops_low_mm": {hoop: mm(low) for hoop, low in refit.hoops.items()},
        "girths_mm": {hoop: [mm(drawn), mm(made)] for hoop, (drawn, made) in refit.girths.items()},
        "waist_mm": None if refit.waist is None else [mm(length) for length in refit.waist],
    }
