"""Printing diagnostics and summaries: results on stdout, the rest on stderr."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from hoopwright.cli.specs import SpecFile
from hoopwright.source.diagnostic import Diagnostic, Severity


def diagnostics(items: Sequence[Diagnostic], specs: Sequence[SpecFile], how: str) -> None:
    """Print ``items`` on stdout in the format ``how``: ``text``, ``short`` or ``jsonl``."""
    from hoopwright.render import report

    if not items:
        return
    texts = {spec.shown: spec.data.decode("utf-8", errors="replace") for spec in specs}
    write = {"text": report.text, "short": report.short, "jsonl": report.json_lines}[how]
    printed = write(items, texts)
    sys.stdout.write(printed if printed.endswith("\n") else printed + "\n")


def progress(line: str) -> None:
    """A line on stderr."""
    sys.stderr.write(line + "\n")
    sys.stderr.flush()


def count(items: Sequence[Diagnostic]) -> str:
    """``2 errors, 1 warning`` in words; empty when there is nothing to say."""
    parts = []
    for severity in Severity:
        number = sum(item.severity is severity for item in items)
        if number:
            parts.append(f"{number} {severity.value}{'s' if number > 1 else ''}")
    return ", ".join(parts)
