"""``hoopwright check``: every stage, nothing written."""

from __future__ import annotations

import argparse

from hoopwright.cli import CLEAN, say
from hoopwright.cli.made import checking, each
from hoopwright.cli.reporting import Report
from hoopwright.cli.specs import code_of_problems, gather


def run(options: argparse.Namespace) -> int:
    """Check the specs; the worst of them gives the exit code."""
    specs, problems = gather(options.specs, options.variant or "")
    report = Report(options.format)
    report.problems(problems, specs)
    worst = max(CLEAN, code_of_problems(problems))
    work = checking(plans=report.gathers, syntax_only=options.syntax)
    for spec, result in zip(specs, each(work, specs, options.jobs), strict=True):
        report.result(spec, result)
        say.progress(f"{spec.label}: {result.outcome}")
        worst = max(worst, result.code)
    report.close()
    return worst
