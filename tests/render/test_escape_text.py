"""Whatever a maker writes prints as it stands: read back by a CommonMark parser, nothing has happened."""

from __future__ import annotations

from html import unescape

import pytest
import ruamel.yaml
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from hoopwright.render.escape import (
    Md,
    code_text,
    markdown_text,
    mermaid_text,
    plain_or_quoted,
    printable,
    yaml_text,
)

HOSTILE = (
    "# Title #",
    "- item",
    "1. first",
    "12) twelfth",
    "+ more",
    "=== ruler",
    "*bold* _em_ **strong** ~~gone~~",
    "`code` ``two``",
    "[link](http://x.example) ![img](x.png) [ref][1]",
    "<script>alert(1)</script> <b>b</b> <!-- c -->",
    "&copy; &#35; &amp;",
    "{{ 7 * 7 }} {% raw %} {# gone #}",
    "a | b | c",
    "C:\\temp \\* \\",
    "```mermaid\ngraph TD\n```",
    '%%{init: {"theme": "x"}}%% A["x"] --> B',
    "http://example.org www.example.org",
    "> quoted",
    "---",
    "$x^2$ and 34.95 USD",
    "two\nlines\n\n# three",
    "trailing  \nbreak",
    "Ärmel und Œuvre, 木綿",
)


def _inline(text: str) -> list[tuple[str, str]]:
    """(type, content) of the inline tokens of one paragraph; fails when it is not one paragraph."""
    tokens = MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(text)
    assert [token.type for token in tokens] == ["paragraph_open", "inline", "paragraph_close"]
    return [(child.type, child.content) for child in tokens[1].children or []]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_paragraph_shows_exactly_the_text(text: str) -> None:
    tokens = _inline(markdown_text(text))
    assert {kind for kind, _ in tokens} <= {"text", "text_special"}
    assert "".join(content for _, content in tokens) == printable(text).strip()


@given(st.text(min_size=1))
def test_any_text_shows_as_itself(text: str) -> None:
    shown = printable(text).strip()
    if shown:
        assert "".join(content for _, content in _inline(markdown_text(text))) == shown


@given(st.text())
def test_a_table_cell_stays_one_cell(text: str) -> None:
    page = f"| a | b |\n| --- | --- |\n| {markdown_text(text)} | end |\n"
    html = MarkdownIt("commonmark").enable("table").render(page)
    assert html.count("<td") == 2
    cell = html.split("<td>")[1].split("</td>")[0]
    assert unescape(cell) == printable(text).strip()


@pytest.mark.parametrize("text", HOSTILE)
def test_a_heading_shows_exactly_the_text(text: str) -> None:
    tokens = MarkdownIt("commonmark").parse(f"# {markdown_text(text)}\n")
    assert [token.type for token in tokens] == ["heading_open", "inline", "heading_close"]
    assert "".join(child.content for child in tokens[1].children or []) == printable(text).strip()


def test_markdown_stays_markdown() -> None:
    assert markdown_text(Md("**b**")) == "**b**"


@pytest.mark.parametrize(
    "text", ["19.00 USD", "10 1/2 in", "3/8 in x 0.042 in", "lap soldered", "-", "T1 to T6, x"]
)
def test_ordinary_words_and_numbers_are_left_alone(text: str) -> None:
    assert markdown_text(text) == (text if text != "-" else "\\-")


@pytest.mark.parametrize("text", ["a`b", "``", "`x`", "a|b"])
def test_a_code_span_shows_its_text(text: str) -> None:
    children = _inline(f"x {code_text(text)}")
    assert children[-1] == ("code_inline", text.replace("|", "¦"))


@given(st.text())
def test_a_mermaid_label_cannot_end_itself(text: str) -> None:
    label = mermaid_text(text)
    assert not set(label) & set('"[](){}<>|`%\\\n&')
    for entity in label.split("#")[1:]:
        number, semicolon, _ = entity.partition(";")
        assert number.isdigit()
        assert semicolon == ";"


@given(st.text())
def test_a_yaml_scalar_reads_back(text: str) -> None:
    shown = printable(text).strip()
    assert ruamel.yaml.YAML(typ="safe", pure=True).load(f"a: {yaml_text(text)}\n") == {"a": shown}


@pytest.mark.parametrize(
    ("key", "written"), [("T1", "T1"), ("a: b", '"a: b"'), ("", '""'), ("3", '"3"'), ("null", '"null"')]
)
def test_a_yaml_key_is_quoted_only_when_it_must(key: str, written: str) -> None:
    assert plain_or_quoted(key) == written


def test_direction_marks_and_controls_are_dropped_and_lone_surrogates_replaced() -> None:
    assert printable("a\u202eb\x07c\ud800\u200b") == "abc\ufffd"
