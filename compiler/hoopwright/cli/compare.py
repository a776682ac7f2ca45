"""``hoopwright compare``: designs, variants and materials offered side by side, the cheapest that passes
first."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from dataclasses import replace

from hoopwright.cli import CLEAN, FOUND, say
from hoopwright.cli.made import checking, each
from hoopwright.cli.names import visible_lines
from hoopwright.cli.specs import SpecFile, code_of_problems, gather
from hoopwright.plan.model import Plan
from hoopwright.spec.document.choice import Choice


def run(options: argparse.Namespace) -> int:
    """Print the table; exit 0 when every design named has a plan, pass or not. A spec that offers several
    materials has a row for each choice."""
    from hoopwright.compare import table
    from hoopwright.compare.ranking import ranked
    from hoopwright.compare.stocks import stock_plans

    specs, problems = gather(options.specs)
    say.diagnostics(problems, specs, "text")
    worst = code_of_problems(problems)
    plans: list[tuple[str, Plan]] = []
    left_out: list[tuple[str, str]] = []
    designs = [design for spec in specs for design in _designs(spec, options.variant)]
    for design, result in zip(designs, each(checking(plans=True), designs, options.jobs), strict=True):
        choices = stock_plans(design.label, result.plan, result.trials)
        if result.plan is None:
            say.diagnostics(result.diagnostics, [design], "text")
            worst = max(worst, FOUND, result.code)
        plans.extend(choices.plans)
        left_out.extend(choices.left_out)
    write = {"text": table.text, "markdown": table.markdown, "json": table.ranking_json}[options.format]
    if plans:
        printed = write(ranked(plans), left_out)
        sys.stdout.write(visible_lines(printed) if options.format == "text" else printed)
    return max(CLEAN, worst)


def _designs(spec: SpecFile, wanted: list[str] | None) -> Iterator[SpecFile]:
    """The spec as written and each of its variants, or those that are wanted; a cast's member as it is."""
    if spec.home is not None:
        yield spec
        return
    yield spec
    for name in wanted if wanted is not None else _variants(spec):
        yield replace(spec, choice=Choice(name))


def _variants(spec: SpecFile) -> tuple[str, ...]:
    """The names of a spec's variants; a text that cannot be read has none."""
    from hoopwright.source.read import read

    document, _ = read(spec.data, spec.shown)
    variants = document.value.get("variants") if document is not None else None
    return tuple(variants) if isinstance(variants, dict) else ()
