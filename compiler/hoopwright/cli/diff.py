"""``hoopwright diff``: what differs between two specs, two variants, or a revision and what is on disk."""

from __future__ import annotations

import argparse
import sys
from dataclasses import replace
from pathlib import Path

from hoopwright.cli import CLEAN, FOUND, MISUSED, say
from hoopwright.cli.include import MOST
from hoopwright.cli.names import visible_lines
from hoopwright.cli.specs import SpecFile, code_of_problems, gather
from hoopwright.plan.model import Plan
from hoopwright.spec.document.choice import AS_WRITTEN, Choice

STDIN = "-"


def run(options: argparse.Namespace) -> int:
    """Print the difference; exit 0 whenever the two could be compared."""
    from hoopwright.compare.difference import difference

    sides = _sides(options)
    if isinstance(sides, int):
        return sides
    plans = [_planned(side) for side in sides]
    if plans[0] is None or plans[1] is None:
        return FOUND
    labels = (_label(sides[0]), _label(sides[1]))
    sys.stdout.write(_written(options.format, difference(plans[0], plans[1]), labels, plans[1]))
    return CLEAN


def _written(how: str, found: object, labels: tuple[str, str], after: Plan) -> str:
    from hoopwright.compare.machine import difference_json
    from hoopwright.compare.markdown import markdown
    from hoopwright.compare.model import Difference
    from hoopwright.compare.words import text
    from hoopwright.render.quantities import Printer

    assert isinstance(found, Difference)
    if how == "json":
        return difference_json(found, labels)
    printer = Printer.of(after.spec)
    return markdown(found, labels, printer) if how == "markdown" else visible_lines(text(found, labels, printer))


def _sides(options: argparse.Namespace) -> tuple[SpecFile, SpecFile] | int:
    """The two designs meant, or an exit code when that is not clear or cannot be read."""
    names, variants = list(options.specs), list(options.variant or ())
    wrong = _misused(names, variants)
    if wrong:
        say.progress(wrong)
        return MISUSED
    found = {name: gather([name]) for name in dict.fromkeys(names) if name != STDIN}  # one file may have two names
    problems = [problem for _, said in found.values() for problem in said]
    say.diagnostics(problems, [file for files, _ in found.values() for file in files], "text")
    if problems:
        return code_of_problems(problems)
    by_name = {name: files[0] for name, (files, _) in found.items() if len(files) == 1 and files[0].home is None}
    if len(by_name) < len(found):
        say.progress("diff takes specs, not casts or folders of several")
        return MISUSED
    if STDIN in names:
        by_name[STDIN] = _from_stdin(next(iter(by_name.values())))
    first, last = by_name[names[0]], by_name[names[-1]]
    choices = ["", *variants][-2:] if len(names) == 1 else (variants * 2)[:2] or ["", ""]
    return _chosen(first, choices[0]), _chosen(last, choices[1])


def _misused(names: list[str], variants: list[str]) -> str:
    if len(names) > 2:
        return "diff compares two; name one spec with --variant, or two specs"
    if len(names) == 1 and not variants:
        return "nothing to compare with: name a second spec, or a --variant of this one"
    if names.count(STDIN) == len(names):
        return "one of the two may come from stdin; name the other"
    if len(variants) > 2:
        return "at most two variants are compared"
    return ""


def _from_stdin(beside: SpecFile) -> SpecFile:
    """A spec read from stdin; files it names are looked for as if it lay beside the other spec."""
    data = sys.stdin.buffer.read(MOST + 1)
    shown = (Path(beside.shown).parent / "(stdin)").as_posix()
    return replace(beside, shown=shown, data=data)


def _chosen(file: SpecFile, variant: str) -> SpecFile:
    choice = Choice(variant) if variant else AS_WRITTEN
    return replace(file, choice=choice)


def _label(side: SpecFile) -> str:
    name = "stdin" if side.shown.endswith("(stdin)") else side.shown
    return f"{name} ({side.choice.variant})" if side.choice.variant else name


def _planned(side: SpecFile) -> Plan | None:
    """The plan, or None after its errors were told."""
    result = side.compiled()
    if result.plan is None:
        say.diagnostics(result.diagnostics, [side], "text")
        say.progress(f"{_label(side)}: no plan, so nothing to compare")
    return result.plan
