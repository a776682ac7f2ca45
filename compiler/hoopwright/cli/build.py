"""``hoopwright build``: plans written beside their specs, or held against what is there."""

from __future__ import annotations

import argparse
from pathlib import Path

from hoopwright.cli import CLEAN, FOUND, MISUSED, say
from hoopwright.cli.made import Made, building, each
from hoopwright.cli.mover import Mover
from hoopwright.cli.output import Refused, differences, put
from hoopwright.cli.places import plan_folders
from hoopwright.cli.reporting import Report
from hoopwright.cli.specs import SpecFile, code_of_problems, gather
from hoopwright.source.diagnostic import Diagnostic, Severity


def run(options: argparse.Namespace) -> int:
    """Build every spec named; one that fails does not keep the others from being built. However many processes
    make the plans, this one writes them, in the order of the specs."""
    specs, problems = gather(options.specs, options.variant or "")
    report = Report(options.format)
    report.problems(problems, specs)
    worst = max(CLEAN, code_of_problems(problems))
    work = building(plans=report.gathers, units=options.units, cards=options.cards)
    with Mover() as mover:
        folders = plan_folders(specs, options.output)
        for spec, folder, result in zip(specs, folders, each(work, specs, options.jobs), strict=True):
            worst = max(worst, _one(spec, result, folder, options, report, mover))
    report.close()
    return worst


def _one(spec: SpecFile, result: Made, folder: Path, options: argparse.Namespace, report: Report,
         mover: Mover) -> int:
    report.result(spec, result)
    if result.files is None:
        say.progress(f"{spec.label}: {result.outcome}; nothing written")
        return result.code
    if options.check:
        return max(result.code, _compare(spec, folder, result.files, report))
    try:
        kept = put(folder, result.files, mover)
    except Refused as problem:
        say.progress(f"{folder.as_posix()}: {problem}")
        return MISUSED
    for copy in kept:
        say.progress(f"kept your changes: {copy.as_posix()}")
    say.progress(f"{spec.label}: {result.outcome}; wrote {(folder / 'plan.md').as_posix()}")
    return result.code


def _compare(spec: SpecFile, folder: Path, files: dict[str, str], report: Report) -> int:
    """Hold the plan on disk against the one built now; the changes go to stdout, or to stderr when stdout
    belongs to a document."""
    changes = differences(folder, files)
    if not changes:
        say.progress(f"{spec.label}: the plan is up to date")
        return CLEAN
    say.findings(changes, aside=report.gathers)
    report.more(spec, Diagnostic(
        "plan-stale", Severity.ERROR, f"the plan in {folder.as_posix()} is not what this spec builds",
        spec.shown, help="build it again, and commit the plan with the spec"))
    say.progress(f"{spec.label}: the plan in {folder.as_posix()} is stale; build it again")
    return FOUND
