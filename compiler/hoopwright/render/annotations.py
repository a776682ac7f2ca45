"""Findings as workflow annotations: lines a CI runner turns into marks at the spec's own lines.

The form is ``::error file=F,line=L,col=C::message``. In a message ``%``, carriage return and line feed are
escaped as ``%25``, ``%0D`` and ``%0A``; in a property also ``:`` and ``,``, as ``%3A`` and ``%2C``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from hoopwright.render.outcome import Outcome, check_name, check_said
from hoopwright.source.diagnostic import Diagnostic, Severity

_LEVELS = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "notice"}
_CONTROL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]")
_CHECKED = {"fails": "error", "marginal": "warning"}


def workflow_lines(outcomes: Sequence[Outcome]) -> str:
    """One line for each finding and for each check that fails or is marginal."""
    return "".join(f"{line}\n" for outcome in outcomes for line in _lines(outcome))


def _lines(outcome: Outcome) -> Iterator[str]:
    for found in outcome.diagnostics:
        help = [f"help: {found.help}"] if found.help else []
        message = "\n".join([found.message, *found.notes, *help])
        yield _line(_LEVELS[found.severity], _place(found), found.code, message)
    for check in outcome.checks:
        if check.result in _CHECKED and outcome.plan is not None:
            yield _line(_CHECKED[check.result], {"file": outcome.file}, f"check {check_name(check, outcome.plan)}",
                        check_said(check, outcome.plan))


def _place(found: Diagnostic) -> dict[str, str]:
    if found.span is None:
        return {"file": found.file}
    span = found.span
    place = {"file": span.file, "line": str(span.line), "endLine": str(span.end_line),
             "col": str(span.column)}
    if span.line == span.end_line:
        place["endColumn"] = str(max(span.end_column - 1, span.column))
    return place


def _line(level: str, place: dict[str, str], title: str, message: str) -> str:
    named = (*place.items(), ("title", title))
    properties = ",".join(f"{key}={property_text(value)}" for key, value in named)
    return f"::{level} {properties}::{message_text(message)}"


def message_text(text: str) -> str:
    """Text after the second ``::``; what a terminal would obey is not sent to it."""
    return _CONTROL.sub("\N{REPLACEMENT CHARACTER}", text).replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def property_text(text: str) -> str:
    """The value of a property."""
    return message_text(text).replace(":", "%3A").replace(",", "%2C")
