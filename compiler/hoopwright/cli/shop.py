"""``hoopwright shop``: one shopping trip for several designs."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from hoopwright.cli import CLEAN, FOUND, MISUSED, say
from hoopwright.cli.made import checking, each
from hoopwright.cli.output import Refused, put
from hoopwright.cli.specs import SpecFile, code_of_problems, gather
from hoopwright.compare.trip.model import Trip
from hoopwright.plan.model import Plan
from hoopwright.source.diagnostic import Diagnostic, Finding, failed


def run(options: argparse.Namespace) -> int:
    """Buy for every design named; when one of them cannot be planned there is no trip."""
    from hoopwright.compare.trip import plan_trip

    specs, problems = gather(options.specs, options.variant or "")
    say.diagnostics(problems, specs, "text")
    worst = code_of_problems(problems)
    plans: list[tuple[str, Plan]] = []
    for spec, result in zip(specs, each(checking(plans=True), specs, options.jobs), strict=True):
        worst = max(worst, result.code)
        if result.plan is None:
            say.diagnostics(result.diagnostics, [spec], "text")
        else:
            plans.append((_label(spec, result.plan, specs), result.plan))
    if len(plans) < len(specs) or not plans:
        say.progress("no shopping list: mend the design it stops at first" if specs else
                     "no shopping list: no design was read")
        return max(worst, FOUND)
    trip, found = plan_trip(plans)
    say.diagnostics(_placed(found), specs, "text")
    if trip is None or failed(found):
        return max(worst, FOUND)
    return max(worst, _written(trip, options))


def _label(spec: SpecFile, plan: Plan, specs: list[SpecFile]) -> str:
    """The design's title, and what tells it from others of the same file."""
    same = [other for other in specs if other.path == spec.path]
    told = spec.choice.label
    return (
        f"{plan.spec.title} ({told})"
        if told and told != plan.spec.title and len(same) > 1
        else plan.spec.title
    )


def _placed(found: tuple[Finding, ...]) -> list[Diagnostic]:
    """Findings about the trip as a whole have no place in any one file."""
    return [
        Diagnostic(one.code, one.severity, one.message, "shopping trip", notes=one.notes, help=one.help)
        for one in found
    ]


def _written(trip: Trip, options: argparse.Namespace) -> int:
    """The trip on stdout, or as files in a folder of its own."""
    from hoopwright.compare.trip.machine import trip_json
    from hoopwright.compare.trip.page import TITLE, trip_markdown
    from hoopwright.render.drawing.coils import draw_packs

    if not options.output:
        sys.stdout.write(trip_json(trip) if options.format == "json" else trip_markdown(trip))
        return CLEAN
    folder = Path(options.output)
    figures = (draw_packs(trip.packs, trip.units, TITLE),) if trip.packs else ()
    files = {f"figures/{figure.name}.svg": figure.svg for figure in figures}
    files["shopping.md"], files["shopping.json"] = trip_markdown(trip, figures), trip_json(trip)
    try:
        kept = put(folder, files)
    except Refused as problem:
        say.progress(f"{folder.as_posix()}: {problem}")
        return MISUSED
    for copy in kept:
        say.progress(f"kept your changes: {copy.as_posix()}")
    say.progress(f"wrote {(folder / 'shopping.md').as_posix()}")
    return CLEAN
