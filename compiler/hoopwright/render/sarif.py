"""Findings as SARIF 2.1.0 (OASIS Standard, 27 March 2020), for code hosts and editors that read it.

One run; a rule for each code that came up, with its page as help. Columns count code points from 1 and the
end is exclusive, as in section 3.30. Failed and marginal checks are results too, at the spec as a whole.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Sequence
from urllib.parse import quote

from hoopwright import __version__
from hoopwright.render.machine.values import Json
from hoopwright.render.outcome import Outcome, check_name, check_said
from hoopwright.source.diagnostic import Diagnostic, Severity, Span

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
_LEVELS = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.NOTE: "note"}
_CHECKED = {"fails": "error", "marginal": "warning"}
Describe = Callable[[str], tuple[str, str]]
"""A code's summary in one sentence, and its page as Markdown; both blank when there is none."""


def sarif(outcomes: Sequence[Outcome], describe: Describe) -> str:
    """The document. ``describe`` tells about a code."""
    results = [result for outcome in outcomes for result in _results(outcome)]
    ids = sorted({str(result["ruleId"]) for result in results})
    for result in results:
        result["ruleIndex"] = ids.index(str(result["ruleId"]))
    run: Json = {
        "tool": {"driver": {"name": "hoopwright", "version": __version__,
                            "rules": [_rule(code, describe) for code in ids]}},
        "columnKind": "unicodeCodePoints",
        "results": list(results),
    }
    document: Json = {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(document, indent=2, ensure_ascii=False).encode("utf-8", "replace").decode() + "\n"


def _rule(code: str, describe: Describe) -> Json:
    summary, page = describe(code)
    rule: dict[str, Json] = {"id": code}
    if summary:
        rule["shortDescription"] = {"text": summary}
    if page:
        rule["help"] = {"text": page, "markdown": page}
    return rule


def _results(outcome: Outcome) -> Iterator[dict[str, Json]]:
    for found in outcome.diagnostics:
        result: dict[str, Json] = {
            "ruleId": found.code,
            "level": _LEVELS[found.severity],
            "message": {"text": _plain(_message(found))},
            "locations": [_location(found.file, found.span)],
        }
        if found.labels:
            result["relatedLocations"] = [
                {"id": number, **_location(label.span.file, label.span), "message": {"text": _plain(label.text)}}
                for number, label in enumerate(found.labels, 1)]
        yield result
    for check in outcome.checks:
        if check.result in _CHECKED and outcome.plan is not None:
            yield {
                "ruleId": check.code,
                "level": _CHECKED[check.result],
                "message": {"text": _plain(f"{check_name(check, outcome.plan)}: {check_said(check, outcome.plan)}")},
                "locations": [_location(outcome.file, None)],
            }


def _message(found: Diagnostic) -> str:
    return "\n".join([found.message, *found.notes, *([f"help: {found.help}"] if found.help else [])])


def _plain(text: str) -> str:
    """A message in which nothing is a link: section 3.11.6 makes one of ``[words](place)``."""
    return re.sub(r"\[(?=[^\[\]]*\]\()", r"\\[", text)


def _location(file: str, span: Span | None) -> dict[str, Json]:
    place: dict[str, Json] = {"artifactLocation": {"uri": uri(file)}}
    if span is not None:
        place["region"] = {"startLine": span.line, "startColumn": span.column,
                           "endLine": span.end_line, "endColumn": max(span.end_column, 1)}
    return {"physicalLocation": place}


def uri(file: str) -> str:
    """A file's name as a URI reference: relative as it is, absolute as ``file:``."""
    path = quote(file.replace("\\", "/").encode("utf-8", "replace"))
    return f"file://{path}" if path.startswith("/") else path
