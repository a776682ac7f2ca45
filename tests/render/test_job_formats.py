"""JUnit XML, workflow annotations and the job summary: whole, escaped, and counting right."""

from __future__ import annotations

import re
from urllib.parse import unquote
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.compile import compile_spec
from hoopwright.render.annotations import message_text, property_text, workflow_lines
from hoopwright.render.junit import junit
from hoopwright.render.outcome import Outcome
from hoopwright.render.summary import summary
from hoopwright.source.diagnostic import Diagnostic, Severity, Span

GOOD = "spec: 1\nunits: centimetres\nwearer: {stature: 168 cm, waist: 72 cm}\nshape: {hem: {girth: 2.8 m}}\n"


def outcome(text: str, label: str = "cage.yaml") -> Outcome:
    run = compile_spec(text.encode(), "cage.yaml")
    return Outcome("cage.yaml", label, run.diagnostics, run.plan)


@pytest.fixture(scope="module")
def three() -> tuple[Outcome, Outcome, Outcome]:
    return (outcome(GOOD), outcome(GOOD + "limits: {weight: 100 g}\n", "heavy | one"),
            outcome(GOOD.replace("72 cm", "72")))


ANY = st.text(max_size=60)


def one(message: str, help: str = "", file: str = "c.yaml") -> Outcome:
    span = Span(file, 1, 2, 1, 4)
    found = Diagnostic("unit-missing", Severity.ERROR, message, file, span, (), (), help)
    return Outcome(file, message, (found,))


def tame(text: str) -> str:
    """Without the controls that a terminal would obey."""
    return re.sub(r"(?![\t\r\n])[\x00-\x1f\x7f-\x9f]", "\ufffd", text)


def test_junit_counts_what_it_holds(three: tuple[Outcome, Outcome, Outcome]) -> None:
    root = ElementTree.fromstring(junit(three))
    suites = root.findall("testsuite")
    assert [suite.get("name") for suite in suites] == ["cage.yaml", "heavy | one", "cage.yaml"]
    for node in (root, *suites):
        assert int(node.get("tests", "")) == len(list(node.iter("testcase")))
        assert int(node.get("failures", "")) == sum(case.find("failure") is not None
                                                    for case in node.iter("testcase"))
        assert int(node.get("skipped", "")) == sum(case.find("skipped") is not None
                                                   for case in node.iter("testcase"))
    assert [suite.get("failures") for suite in suites] == ["0", "1", "1"]
    failed = next(case for case in suites[1] if case.find("failure") is not None)
    assert failed.get("name") == "check weight cage"


@given(ANY, ANY)
def test_junit_holds_any_text(message: str, help: str) -> None:
    root = ElementTree.fromstring(junit([one(message, help)]))
    failure = next(root.iter("failure"))
    kept = re.sub("[^\t\n\r -\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]", "", message)
    assert failure.get("message") == kept


@given(ANY, ANY, ANY)
def test_an_annotation_is_one_line_whatever_it_says(message: str, help: str, file: str) -> None:
    lines = workflow_lines([one(message, help, file)]).split("\n")
    assert len(lines) == 2
    whole = re.fullmatch(r"::error file=([^,]*),.*?title=unit-missing::(.*)", lines[0], re.DOTALL)
    assert whole is not None
    named, rest = whole.groups()
    assert unquote(named, errors="strict") == tame(file)
    said = tame("\n".join([message, f"help: {help}"] if help else [message]))
    assert rest.replace("%0D", "\r").replace("%0A", "\n").replace("%25", "%") == said


def test_the_escapes_are_the_runners_own() -> None:
    assert message_text("50%, a:b\r\n") == "50%25, a:b%0D%0A"
    assert property_text("50%, a:b\r\n") == "50%25%2C a%3Ab%0D%0A"


def test_failed_checks_are_annotated_too(three: tuple[Outcome, Outcome, Outcome]) -> None:
    lines = workflow_lines(three[1:2]).splitlines()
    assert any(line.startswith("::error file=cage.yaml,title=check weight cage::") for line in lines)


def test_the_summary_has_a_row_for_each_design_and_says_what_to_change(
    three: tuple[Outcome, Outcome, Outcome],
) -> None:
    page = summary(three)
    assert page.startswith("### 1 of 3 designs pass\n")
    rows = [line for line in page.splitlines() if line.startswith("| ")]
    assert len(rows) == 5
    assert all(line.replace("\\|", "").count("|") == 7 for line in rows)
    assert "heavy \\| one" in page
    assert "`cage.yaml:3` `unit-missing`" in page
    assert "**weight cage**" in page
