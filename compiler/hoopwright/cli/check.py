"""``hoopwright check``: every stage, nothing written."""

from __future__ import annotations

import argparse

from hoopwright.cli import CLEAN, FOUND, say
from hoopwright.cli.reporting import Report
from hoopwright.cli.specs import code_of_problems, gather
from hoopwright.compile import Compiled
from hoopwright.source.diagnostic import failed


def run(options: argparse.Namespace) -> int:
    """Check the specs; the worst of them gives the exit code."""
    specs, problems = gather(options.specs, options.variant or "")
    report = Report(options.format)
    report.problems(problems, specs)
    worst = max(CLEAN, code_of_problems(problems))
    for number, spec in enumerate(specs, 1):
        if len(specs) > 1:
            say.progress(f"[{number}/{len(specs)}] {spec.label}")
        result = spec.compiled(syntax_only=options.syntax)
        report.result(spec, result)
        say.progress(f"{spec.label}: {outcome(result)}")
        worst = max(worst, code_of(result))
    report.close()
    return worst


def code_of(result: Compiled) -> int:
    """Exit code of one compiled spec: 1 for errors or failed checks."""
    broken = failed(result.diagnostics) or (result.plan is not None and bool(result.plan.failing))
    return FOUND if broken else CLEAN


def outcome(result: Compiled) -> str:
    """One line that says how it went: failed checks by name, then the count of findings."""
    counted = say.count(result.diagnostics)
    if result.plan is None:
        return counted or "the spec is in order"
    failing = ", ".join(f"{check.code} {check.part}".strip() for check in result.plan.failing)
    head = f"does not pass: {failing}" if failing else result.plan.assessment.verdict
    return f"{head} ({counted})" if counted else head
