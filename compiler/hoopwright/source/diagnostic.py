"""What the compiler says about a spec: findings by key path, diagnostics by place in the text.

A stage knows keys, not lines: it returns :class:`Finding` values. One function, ``locate`` in
``source/locate.py``, turns them into :class:`Diagnostic` values with positions.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from hoopwright.source.record import record

Path = tuple[str | int, ...]
"""A key path into a spec: ``("shape", "hoops", "count")`` or ``("load", 0, "weight")``."""


class Severity(StrEnum):
    """How much a diagnostic matters: an error stops the build, a warning or a note does not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Span(NamedTuple):
    """A stretch of a source file. Lines and columns count from 1; the end is exclusive."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int


@record(frozen=True, slots=True)
class Label:
    """A second place in the text that takes part in a diagnostic, with a few words on its part."""

    span: Span
    text: str


@record(frozen=True, slots=True)
class Diagnostic:
    """One thing to tell the maker, at one place.

    ``message`` says what is wrong (lower case, no full stop); ``help`` says how to mend it.
    ``span`` is None only when there is no text to point at (an unreadable file).
    """

    code: str
    severity: Severity
    message: str
    file: str
    span: Span | None = None
    labels: tuple[Label, ...] = ()
    notes: tuple[str, ...] = ()
    help: str = ""

    def sort_key(self) -> tuple[str, int, int, str, str]:
        """Order of printing: file, line, column, code, message."""
        at = self.span
        return (self.file, at.line if at else 0, at.column if at else 0, self.code, self.message)


@record(frozen=True, slots=True)
class Finding:
    """A diagnostic whose place is still a key path.

    ``at_key`` points at the key itself instead of its value; ``related`` names other paths that
    take part, each with a few words.
    """

    code: str
    severity: Severity
    path: Path
    message: str
    help: str = ""
    notes: tuple[str, ...] = ()
    related: tuple[tuple[Path, str], ...] = ()
    at_key: bool = False


def error(code: str, path: Path, message: str, help: str = "", *, notes: tuple[str, ...] = (),
          related: tuple[tuple[Path, str], ...] = (), at_key: bool = False) -> Finding:
    """A finding that stops the build."""
    return Finding(code, Severity.ERROR, path, message, help, notes, related, at_key)


def warning(code: str, path: Path, message: str, help: str = "", *, notes: tuple[str, ...] = (),
            related: tuple[tuple[Path, str], ...] = (), at_key: bool = False) -> Finding:
    """A finding the maker should look at; the build goes on."""
    return Finding(code, Severity.WARNING, path, message, help, notes, related, at_key)


def note(code: str, path: Path, message: str, help: str = "", *, notes: tuple[str, ...] = (),
         related: tuple[tuple[Path, str], ...] = (), at_key: bool = False) -> Finding:
    """A finding that only informs."""
    return Finding(code, Severity.NOTE, path, message, help, notes, related, at_key)


def failed(findings: tuple[Finding, ...] | list[Finding] | tuple[Diagnostic, ...]) -> bool:
    """Whether any of them is an error."""
    return any(found.severity is Severity.ERROR for found in findings)
