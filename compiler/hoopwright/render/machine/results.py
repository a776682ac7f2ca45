"""Checks and the strength of the parts, for ``plan.json``."""

from __future__ import annotations

from decimal import Decimal

from hoopwright.plan.model import Plan
from hoopwright.render.machine.values import (
    Json,
    degree,
    fraction,
    grams,
    megapascals,
    megapascals_or_none,
    mm,
    mm_or_none,
    money,
    newtons,
    ratio,
    rounded,
    stiffness,
)
from hoopwright.spec.check import Check
from hoopwright.strength.model import Assessment

_UNITS = {
    "length": "mm",
    "mass": "g",
    "force": "N",
    "stress": "MPa",
    "angle": "deg",
    "share": "fraction",
    "count": "count",
    "ratio": "ratio",
    "temperature": "C",
}
_NUMBERS = {
    "length": mm,
    "mass": grams,
    "force": newtons,
    "stress": megapascals,
    "angle": degree,
    "share": fraction,
}


def checks_json(plan: Plan) -> list[Json]:
    """The key ``checks``, in order of importance."""
    return [_check(check, plan.spec.currency) for check in plan.checks]


def _check(check: Check, currency: str | None) -> Json:
    unit = (currency or "money") if check.dimension == "money" else _UNITS.get(check.dimension, "ratio")
    return {
        "code": check.code,
        "part": check.part,
        "value": _number(check.value, check.dimension),
        "limit": _number(check.limit, check.dimension),
        "unit": unit,
        "result": check.result,
        "remedy": check.remedy,
        "source": check.source,
    }


def _number(value: float | None, dimension: str) -> Json:
    if value is None:
        return None
    if dimension == "money":
        return money(Decimal(str(rounded(value, 2))))
    if dimension == "count":
        return round(value)
    return _NUMBERS.get(dimension, ratio)(value)


def strength_json(found: Assessment) -> dict[str, Json]:
    """The key ``strength``. What was not assessed is null."""
    value = found.buckling.value
    return {
        "hoops": [{
            "id": hoop.id,
            "load_n_per_m": newtons(hoop.load),
            "thrust_n": newtons(hoop.thrust),
            "sag_mm": mm_or_none(hoop.sag),
            "inward_mm": mm_or_none(hoop.inward),
            "outward_mm": mm_or_none(hoop.outward),
            "stress_mpa": megapascals_or_none(hoop.stress),
        } for hoop in found.hoops],
        "tapes": [{
            "id": tape.id,
            "segments": [{"to": part.to, "tension_n": newtons(part.tension), "slack": part.slack,
                          "loose_mm": mm_or_none(part.loose)}
                         for part in tape.segments],
        } for tape in found.tapes],
        "buckling_factor": {
            "value": None if value is None else ratio(value),
            "at_least": found.buckling.at_least,
        },
        "swing_mm": mm_or_none(found.swing),
        "waist_pull_n": newtons(found.waist_pull),
        "weight_g": grams(found.weights.total),
        "materials": [{
            "name": stock.name,
            "ei_weak_n_m2": stiffness(stock.ei_weak),
            "ei_strong_n_m2": stiffness(stock.ei_strong),
            "gj_n_m2": stiffness(stock.gj),
            "elastic_limit_mpa": megapascals(stock.elastic_limit),
            "from": stock.origin,
            "tests": stock.tests,
            "spread": None if stock.spread is None else fraction(stock.spread),
        } for stock in found.materials],
        "spring_back": [{
            "where": one.situation,
            "hoop": one.part,
            "radius_mm": mm(one.radius),
            "stress_mpa": megapascals(one.stress),
            "elastic_limit_mpa": megapascals(one.limit),
            "push_n": newtons(one.push),
            "keeps_mm": mm_or_none(one.keeps),
        } for one in found.handling],
        "seated": [{
            "hoop": one.id,
            "lies": one.lies,
            "back_mm": mm(one.back),
            "front_mm": mm(one.front),
            "sides_mm": mm(one.sides),
            "squeezed_mm": mm_or_none(one.gap),
            "radius_mm": mm(one.radius),
        } for one in found.seated],
        **_frame(found),
    }


def _frame(found: Assessment) -> dict[str, Json]:
    """How a wheel or side hoops lie under their load, only where there are some."""
    wheel = found.wheel
    if wheel is not None:
        return {"wheel": {
            "rim_sinks_mm": [mm(sink) for sink in wheel.sinks],
            "tilt_deg": degree(wheel.tilt),
            "waist_front_n": newtons(wheel.front),
            "waist_back_n": newtons(wheel.back),
            "roll_n": newtons(wheel.roll),
        }}
    if found.sides:
        return {"side_hoops": {
            "hips_push_n": newtons(found.body_push),
            "hoops": [{
                "hoops": list(one.hoops),
                "reach_mm": mm(one.reach),
                "drop_mm": mm(one.drop),
                "down_mm": mm(one.down),
                "droops_mm": mm(one.droops),
                "bare_reach_mm": mm_or_none(one.bare and one.bare[0]),
                "bare_drop_mm": mm_or_none(one.bare and one.bare[1]),
            } for one in found.sides],
        }}
    return {}
