"""Outcomes as JUnit XML: a suite for each spec, a case for the spec itself and one for each of its checks.

A case of the spec fails with its errors; warnings and notes stand in its output. A check that was not
assessed is skipped, a marginal one passes and says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from xml.sax.saxutils import escape, quoteattr

from hoopwright.render.outcome import Outcome, check_name, check_said
from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.spec.check import Check


def junit(outcomes: Sequence[Outcome]) -> str:
    """The document."""
    suites = [_suite(outcome) for outcome in outcomes]
    counts = [sum(suite[0][k] for suite in suites) for k in range(3)]
    body = "".join(text for _, text in suites)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n<testsuites{_counted(*counts)}>\n{body}</testsuites>\n'


def _counted(tests: int, failures: int, skipped: int) -> str:
    return f' tests="{tests}" failures="{failures}" errors="0" skipped="{skipped}"'


def _suite(outcome: Outcome) -> tuple[tuple[int, int, int], str]:
    cases = [_spec_case(outcome), *(_check_case(outcome, check) for check in outcome.checks)]
    failures = sum("<failure" in case for case in cases)
    skipped = sum("<skipped" in case for case in cases)
    counts = (len(cases), failures, skipped)
    head = f"  <testsuite name={_attribute(outcome.label)}{_counted(*counts)}>\n"
    return counts, f"{head}{''.join(cases)}  </testsuite>\n"


def _spec_case(outcome: Outcome) -> str:
    inner = ""
    for found in outcome.errors:
        inner += f"      <failure type={_attribute(found.code)} message={_attribute(found.message)}>"
        inner += f"{_text(_told(found))}</failure>\n"
    others = [_told(found) for found in outcome.diagnostics if found.severity is not Severity.ERROR]
    if others:
        inner += f"      <system-out>{_text(chr(10).join(others))}</system-out>\n"
    return _case(outcome, "spec", inner)


def _check_case(outcome: Outcome, check: Check) -> str:
    assert outcome.plan is not None
    said = check_said(check, outcome.plan)
    inner = ""
    if check.result == "fails":
        inner = f"      <failure type={_attribute(check.code)} message={_attribute(said)}/>\n"
    elif check.result == "not assessed":
        inner = f"      <skipped message={_attribute(said)}/>\n"
    elif check.result == "marginal":
        inner = f"      <system-out>{_text(f'marginal: {said}')}</system-out>\n"
    return _case(outcome, f"check {check_name(check, outcome.plan)}", inner)


def _case(outcome: Outcome, name: str, inner: str) -> str:
    head = f"    <testcase classname={_attribute(outcome.file)} name={_attribute(name)}"
    return f"{head}>\n{inner}    </testcase>\n" if inner else f"{head}/>\n"


def _told(found: Diagnostic) -> str:
    return "\n".join(" ".join(line.splitlines()) for line in _lines(found))


def _lines(found: Diagnostic) -> Iterator[str]:
    place = f"{found.file}:{found.span.line}:{found.span.column}" if found.span else found.file
    yield f"{place}: {found.severity.value} {found.code}: {found.message}"
    yield from found.notes
    if found.help:
        yield f"help: {found.help}"


def _allowed(text: str) -> str:
    """Only characters that XML 1.0 (section 2.2) can hold."""
    return "".join(sign for sign in text if sign in "\t\n\r" or "\x20" <= sign <= "\ud7ff"
                   or "\ue000" <= sign <= "\ufffd" or sign >= "\U00010000")


def _text(text: str) -> str:
    return escape(_allowed(text))


def _attribute(text: str) -> str:
    return quoteattr(_allowed(text), {"\n": "&#10;", "\r": "&#13;", "\t": "&#9;"})
