"""Plans side by side in words: plain text, Markdown, JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence

from hoopwright.compare.ranking import Ranked
from hoopwright.render.escape import markdown_text
from hoopwright.render.machine.values import Json, grams, minutes, money
from hoopwright.render.quantities import Printer

HEADS = ("", "Design", "Result", "Cost, with reserve", "Work", "Weight", "Why")
FORMAT = 1


def text(found: Sequence[Ranked]) -> str:
    """Columns, the reason on a line of its own below each."""
    rows = [HEADS[:-1], *(_row(one, place) for place, one in enumerate(found, 1))]
    rows = [row[:6] for row in rows]
    wide = [max(len(row[k]) for row in rows) for k in range(6)]
    lines = [_columns(rows[0], wide)]
    for row, one in zip(rows[1:], found, strict=True):
        lines += [_columns(row, wide), f"{'':{wide[0]}}    {one.reason}"]
    return "\n".join(lines) + "\n"


def _columns(row: Sequence[str], wide: Sequence[int]) -> str:
    return "  ".join(f"{cell:<{width}}" for cell, width in zip(row, wide, strict=True)).rstrip()


def _row(one: Ranked, place: int) -> tuple[str, ...]:
    p, plan = Printer.of(one.plan.spec), one.plan
    cost = "?" if one.cost is None else p.money(one.cost) + (" (partial)" if one.partial else "")
    return (f"{place}.", one.label, plan.assessment.verdict if one.passes else "does not pass", cost,
            p.minutes(plan.work.minutes), p.mass(plan.assessment.weights.total), one.reason)


def markdown(found: Sequence[Ranked]) -> str:
    """One table. Names of the maker's are escaped."""
    lines = [f"| {' | '.join(HEADS)} |", "| ---: | --- | --- | ---: | ---: | ---: | --- |"]
    for place, one in enumerate(found, 1):
        cells = [str(place), *(markdown_text(cell) for cell in _row(one, place)[1:])]
        if place == 1 and one.passes:
            lines.append(f"| {cells[0]} | **{cells[1]}** | {' | '.join(cells[2:])} |")
        else:
            lines.append(f"| {' | '.join(cells)} |")
    return "\n".join(lines) + "\n"


def ranking_json(found: Sequence[Ranked]) -> str:
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
        "reason": one.reason,
    } for one in found]
    value: dict[str, Json] = {"compare": FORMAT, "designs": designs}
    return json.dumps(value, indent=2, sort_keys=True, ensure_ascii=False) + "\n"
