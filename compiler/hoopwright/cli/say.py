"""Printing diagnostics and summaries: results on stdout, the rest on stderr."""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence

from hoopwright.cli.include import MOST
from hoopwright.cli.names import path_of, text_of, visible
from hoopwright.cli.specs import SpecFile
from hoopwright.cli.unheard import unheard
from hoopwright.source.amount import QuantityError
from hoopwright.source.diagnostic import Diagnostic, Severity


def diagnostics(items: Sequence[Diagnostic], specs: Sequence[SpecFile], how: str) -> None:
    """Print ``items`` on stdout in the format ``how``: ``text``, ``short`` or ``jsonl``."""
    from hoopwright.render import report

    if not items:
        return
    write = {"text": report.text, "short": report.short, "jsonl": report.json_lines}[how]
    if how == "text":  # an unlikely measure comes first, for most of the rest may follow from it; then what stopped it
        items = sorted(items, key=lambda one: (not one.code.endswith("-unlikely"), list(Severity).index(one.severity)))
    printed = write(items, texts_of(items, specs))
    findings(printed if printed.endswith("\n") else printed + "\n")


def findings(text: str, *, aside: bool = False, last: bool = False) -> None:
    """Print what a run found, on stdout or ``aside`` on stderr, wholly after the ``last``. When nobody reads on
    (``| head``), the run goes on unheard: its exit code and what it writes are not lost."""
    stream = sys.stderr if aside else sys.stdout
    try:
        stream.write(text)
        if last:
            stream.flush()
    except BrokenPipeError:
        unheard(stream)


def texts_of(items: Sequence[Diagnostic], specs: Sequence[SpecFile]) -> dict[str, str]:
    """The texts of the files that ``items`` speak of: those of the specs, and of files that specs name."""
    texts = {spec.shown: spec.data.decode("utf-8", errors="replace") for spec in specs}
    spans = [span for item in items for span in (item.span, *(label.span for label in item.labels)) if span]
    for file in sorted({span.file for span in spans} - set(texts)):
        try:
            with path_of(file).open("rb") as stream:
                texts[file] = stream.read(MOST).decode("utf-8", errors="replace")
        except (OSError, ValueError):
            continue  # told about without its lines
    return texts


def progress(line: str) -> None:
    """A line on stderr; names in it may hold anything, and a CI runner takes no line for a command."""
    said = visible(text_of(line))
    try:
        sys.stderr.write(f"{'./' if said.lstrip().startswith('::') else ''}{said}\n")
        sys.stderr.flush()
    except BrokenPipeError:
        unheard(sys.stderr)


def of_option(problem: QuantityError, options: Mapping[str, str | None]) -> str:
    """What is wrong with a quantity of the command line, with the option it was given to when one is known."""
    said = f"{problem.message}; {problem.help}" if problem.help else problem.message
    marked = problem.message.split("`")[1:2]
    given = next((name for name, value in options.items() if value and marked and marked[0] in value), "")
    return f"{given}: {said}" if given else said


def count(items: Sequence[Diagnostic]) -> str:
    """``2 errors, 1 warning`` in words; empty when there is nothing to say."""
    parts = []
    for severity in Severity:
        number = sum(item.severity is severity for item in items)
        if number:
            parts.append(f"{number} {severity.value}{'s' if number > 1 else ''}")
    return ", ".join(parts)
