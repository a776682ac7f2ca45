"""Plans side by side in words: plain text, Markdown, JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence

from hoopwright.compare.ranking import Ranked
from hoopwright.plan.model import Plan
from hoopwright.plan.substitutes import SET_CHECKS, used_share
from hoopwright.render.escape import markdown_text
from hoopwright.render.machine.values import Json, fraction, grams, minutes, money, stiffness
from hoopwright.render.quantities import Printer
from hoopwright.source.printed import share_text

HEADS = (
    "", "Design", "Result", "Cost, with reserve", "Work", "Weight", "Stiffness", "Set", "Door", "Why"
)
"""``Stiffness`` is that of the hoops in their plane; ``Set`` and ``Door`` say how much of what is allowed the
bending in wear and in the narrowest door uses."""
LeftOut = Sequence[tuple[str, str]]
FORMAT = 1


def text(found: Sequence[Ranked], left_out: LeftOut = ()) -> str:
    """Columns, the reason on a line of its own below each; what cannot be made comes last."""
    many = len(HEADS) - 1
    rows = [HEADS[:many], *(_row(one, place)[:many] for place, one in enumerate(found, 1))]
    wide = [max(len(row[k]) for row in rows) for k in range(many)]
    lines = [_columns(rows[0], wide)]
    for row, one in zip(rows[1:], found, strict=True):
        lines += [_columns(row, wide), f"{'':{wide[0]}}    {one.reason}"]
    lines += [f"{'–':{wide[0]}}  {label}: cannot be made: {why}" for label, why in left_out]
    return "\n".join(lines) + "\n"


def _columns(row: Sequence[str], wide: Sequence[int]) -> str:
    return "  ".join(f"{cell:<{width}}" for cell, width in zip(row, wide, strict=True)).rstrip()


def _row(one: Ranked, place: int) -> tuple[str, ...]:
    p, plan = Printer.of(one.plan.spec), one.plan
    cost = "?" if one.cost is None else p.money(one.cost) + (" (partial)" if one.partial else "")
    return (f"{place}.", one.label, plan.assessment.verdict if one.passes else "does not pass", cost,
            p.minutes(plan.work.minutes), p.mass(plan.assessment.weights.total), *_mechanics(plan),
            one.reason)


def _mechanics(plan: Plan) -> tuple[str, str, str]:
    """Stiffness, and the shares of what is allowed that a set and the door use."""
    material = next(iter(plan.assessment.materials), None)
    stiff = "–" if material is None else f"{material.ei_weak:.3g} N m2"
    return stiff, _share(used_share(plan, SET_CHECKS)), _share(used_share(plan, ("door",)))


def _share(used: float | None) -> str:
    return "–" if used is None else share_text(round(used, 2))


def _used(plan: Plan, codes: tuple[str, ...]) -> float | None:
    used = used_share(plan, codes)
    return None if used is None else fraction(used)


def markdown(found: Sequence[Ranked], left_out: LeftOut = ()) -> str:
    """One table. Names of the maker's are escaped."""
    marks = "| ---: | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | --- |"
    lines = [f"| {' | '.join(HEADS)} |", marks]
    for place, one in enumerate(found, 1):
        cells = [str(place), *(markdown_text(cell) for cell in _row(one, place)[1:])]
        if place == 1 and one.passes:
            lines.append(f"| {cells[0]} | **{cells[1]}** | {' | '.join(cells[2:])} |")
        else:
            lines.append(f"| {' | '.join(cells)} |")
    for label, why in left_out:
        cells = ["–", markdown_text(label), "cannot be made", *["–"] * (len(HEADS) - 4), markdown_text(why)]
        lines.append(f"| {' | '.join(cells)} |")
    return "\n".join(lines) + "\n"


def ranking_json(found: Sequence[Ranked], left_out: LeftOut = ()) -> str:
    """One object; the designs in order."""
    designs: list[Json] = [{
        "design": one.label,
        "passes": one.passes,
        "verdict": one.plan.assessment.verdict,
        "failing": [f"{check.code} {check.part}".strip() for check in one.plan.failing],
        "cost": money(one.cost),
        "currency": one.plan.supply.cost.currency,
        "partial": one.partial,
        "minutes": minutes(one.plan.work.minutes),
        "weight_g": grams(one.plan.assessment.weights.total),
        "ei_weak_n_m2": next((stiffness(m.ei_weak) for m in one.plan.assessment.materials), None),
        "set_used": _used(one.plan, SET_CHECKS),
        "door_used": _used(one.plan, ("door",)),
        "reason": one.reason,
    } for one in found]
    value: dict[str, Json] = {
        "compare": FORMAT,
        "designs": designs,
        "left_out": [{"design": label, "reason": why} for label, why in left_out],
    }
    return json.dumps(value, indent=2, sort_keys=True, ensure_ascii=False) + "\n"
