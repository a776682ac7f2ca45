"""Diagnostics in the formats a maker, an editor or a script reads."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping

from hoopwright.render.excerpt import excerpt, lines_of
from hoopwright.source.diagnostic import Diagnostic, Label, Span


def text(diagnostics: Iterable[Diagnostic], sources: Mapping[str, str]) -> str:
    """For people: what is wrong, where, the lines it is about, and how to mend it.

    ``sources`` maps a file's name to its text; a file that is not there is told about without its lines.
    Diagnostics keep the order they come in. Returns text that ends in a line end, or nothing at all.
    """
    lines = {name: lines_of(source) for name, source in sources.items()}
    return "\n".join(_paragraph(diagnostic, lines) for diagnostic in diagnostics)


def short(diagnostics: Iterable[Diagnostic], sources: Mapping[str, str]) -> str:
    """One line each for editors: ``file:line:column: code message``."""
    return "".join(f"{_place(found)}: {found.code} {_one_line(found.message)}\n" for found in diagnostics)


def json_lines(diagnostics: Iterable[Diagnostic], sources: Mapping[str, str]) -> str:
    """One JSON object a line for scripts; places count from 1, ends are exclusive, no place is null."""
    return "".join(json.dumps(_record(found)) + "\n" for found in diagnostics)


def paragraph(head: str, found: Diagnostic, source: str) -> str:
    """One thing to tell people that is no finding, under a head of its own; ``source`` is its file's text."""
    return _paragraph(found, {found.file: lines_of(source)}, head)


def _paragraph(found: Diagnostic, lines: Mapping[str, list[str]], head: str = "") -> str:
    """One diagnostic for people."""
    head = head or f"{found.severity.value} {found.code}"
    out = [f"{head} at {_place(found)}", f"  {_one_line(found.message)}"]
    out += _excerpts(found, lines)
    out += [f"  note: {_one_line(note)}" for note in found.notes]
    if found.help:
        out.append(f"  help: {_one_line(found.help)}")
    return "\n".join(out) + "\n"


def _excerpts(found: Diagnostic, lines: Mapping[str, list[str]]) -> list[str]:
    """The lines a diagnostic is about, in the order they stand in the file; ``^`` marks its own place."""
    if found.span is None:
        return []
    marked = [(found.span, "^", ""), *((label.span, "~", label.text) for label in found.labels)]
    marked = [entry for entry in marked if entry[0].file in lines]
    width = max((len(str(span.line)) for span, _, _ in marked), default=1)
    out = []
    shown_before: tuple[str, int] | None = None
    for span, mark, words in sorted(marked):
        line, marks = excerpt(lines[span.file], span, mark, _one_line(words))
        if shown_before != (span.file, span.line):
            other = f"  ({span.file})" if span.file != found.file else ""
            out.append(f"    {span.line:>{width}}: {line}{other}")
        out.append(f"    {'':>{width}}  {marks}")
        shown_before = (span.file, span.line)
    return out


def _place(found: Diagnostic) -> str:
    """``file:line:column``, or the file alone."""
    file = _one_line(found.file)
    return f"{file}:{found.span.line}:{found.span.column}" if found.span else file


def _one_line(words: str) -> str:
    """Words without line ends or characters that a terminal would obey."""
    return "".join(sign if sign.isprintable() else " " for sign in words)


def _record(found: Diagnostic) -> dict[str, object]:
    """A diagnostic as JSON values."""
    return {
        "code": found.code,
        "severity": found.severity.value,
        "message": found.message,
        "file": found.file,
        **_corners(found.span),
        "labels": [_labelled(label) for label in found.labels],
        "notes": list(found.notes),
        "help": found.help,
    }


def _labelled(label: Label) -> dict[str, object]:
    """A label as JSON values."""
    return {"text": label.text, "file": label.span.file, **_corners(label.span)}


def _corners(span: Span | None) -> dict[str, object]:
    """A span's corners by name."""
    names = ("line", "column", "end_line", "end_column")
    return {name: getattr(span, name) if span else None for name in names}
