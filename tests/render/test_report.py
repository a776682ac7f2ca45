"""Diagnostic formats: layout to the letter, and marks that stand under what they mean."""

from __future__ import annotations

import json
import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from hoopwright.render import report
from hoopwright.render.excerpt import excerpt
from hoopwright.source.diagnostic import Diagnostic, Label, Severity, Span
from hoopwright.source.read import read

TEXT = "spec: 1\nwearer: {waist: 28}\nspec: 1\n"
MISSING = Diagnostic("unit-missing", Severity.ERROR, "`28` has no unit", "a.yaml", Span("a.yaml", 2, 17, 2,
19),
                     help="write `28 in` or `28 cm`", notes=("a waist is a length",))
UNREADABLE = Diagnostic("file-unreadable", Severity.ERROR, "the file cannot be read", "b.yaml")


def test_text_shows_the_line_with_a_caret() -> None:
    assert report.text([MISSING, UNREADABLE], {"a.yaml": TEXT}) == (
        "error unit-missing at a.yaml:2:17\n"
        "  `28` has no unit\n"
        "    2: wearer: {waist: 28}\n"
        "                       ^^\n"
        "  note: a waist is a length\n"
        "  help: write `28 in` or `28 cm`\n"
        "\n"
        "error file-unreadable at b.yaml\n"
        "  the file cannot be read\n")


def test_text_shows_the_other_place_too_in_order_of_lines() -> None:
    _, said = read(TEXT.encode(), "a.yaml")
    assert report.text(said, {"a.yaml": TEXT}) == (
        "error duplicate-key at a.yaml:3:1\n"
        "  the key `spec` stands here a second time\n"
        "    1: spec: 1\n"
        "       ~~~~ the first one is here\n"
        "    3: spec: 1\n"
        "       ^^^^\n"
        "  help: keep one of the two\n")


def test_two_marks_in_one_line_show_it_once() -> None:
    source = "{a: 1, a: 2}\n"
    _, said = read(source.encode(), "a.yaml")
    assert report.text(said, {"a.yaml": source}).count("{a: 1, a: 2}") == 1


def test_a_file_without_its_text_is_told_about_without_lines() -> None:
    assert report.text([MISSING], {}).splitlines()[:3] == [
        "error unit-missing at a.yaml:2:17", "  `28` has no unit", "  note: a waist is a length"]


def test_short_is_one_line_each() -> None:
    assert report.short([MISSING, UNREADABLE], {}) == (
        "a.yaml:2:17: unit-missing `28` has no unit\nb.yaml: file-unreadable the file cannot be read\n")


def test_json_lines_hold_everything() -> None:
    labelled = Diagnostic("x", Severity.NOTE, "é\n", "a.yaml", Span("a.yaml", 1, 2, 3, 4),
                          (Label(Span("b.yaml", 5, 6, 7, 8), "there"),))
    first, second, third = map(json.loads, report.json_lines([MISSING, UNREADABLE, labelled],
    {}).splitlines())
    assert first == {
        "code": "unit-missing", "severity": "error", "message": "`28` has no unit", "file": "a.yaml",
        "line": 2,
        "column": 17, "end_line": 2, "end_column": 19, "labels": [], "notes": ["a waist is a length"],
        "help": "write `28 in` or `28 cm`"}
    assert second["line"] is None
    assert third["message"] == "é\n"
    assert third["labels"] == [
        {"text": "there", "file": "b.yaml", "line": 5, "column": 6, "end_line": 7, "end_column": 8}]


def test_nothing_to_say_is_nothing_printed() -> None:
    assert report.text([], {}) == report.short([], {}) == report.json_lines([], {}) == ""


def test_control_characters_never_reach_the_terminal() -> None:
    nasty = Diagnostic("x", Severity.ERROR, "a\x1b[31m\nb", "a\x1b.yaml", Span("a\x1b.yaml", 1, 1, 1, 3),
    help="\x07")
    out = report.text([nasty], {"a\x1b.yaml": "\x1b]0;x\u202e: 1"}) + report.short([nasty], {})
    assert all(sign.isprintable() or sign == "\n" for sign in out)
    assert len(report.short([nasty], {}).splitlines()) == 1


def test_tabs_and_wide_characters_keep_the_caret_in_its_column() -> None:
    assert excerpt(["\tä: 1"], Span("a", 1, 2, 1, 3), "^") == ("    ä: 1", "    ^")
    assert excerpt(["題: 28"], Span("a", 1, 4, 1, 6), "^") == ("題: 28", "    ^^")
    assert excerpt(["e\u0301: 28"], Span("a", 1, 5, 1, 7), "^") == ("e\u0301: 28", "   ^^")


def test_a_long_line_is_cut_around_the_place() -> None:
    line = "x" * 300 + "HERE" + "y" * 300
    shown, marks = excerpt([line], Span("a", 1, 301, 1, 305), "^")
    assert len(shown) < 120
    assert shown.startswith("... ")
    assert shown.endswith(" ...")
    assert shown[marks.index("^") : marks.rindex("^") + 1] == "HERE"


def test_a_span_over_lines_is_marked_to_the_end_of_the_first() -> None:
    assert excerpt(["a: {b: 1,  ", "c: 2}"], Span("a", 1, 4, 2, 5), "^") == ("a: {b: 1,", "   ^^^^^^")


def test_a_place_behind_the_text_still_gets_one_caret() -> None:
    assert excerpt(["a:"], Span("a", 1, 3, 1, 3), "^") == ("a:", "  ^")
    assert excerpt(["a:"], Span("a", 9, 3, 9, 3), "^") == ("", "^")


@given(st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), min_size=1, max_size=150),
st.data())
def test_marks_stand_under_what_they_mean(line: str, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(line) - 1))
    shown, marks = excerpt([line], Span("a", 1, at + 1, 1, at + 2), "^")
    column, left = 0, marks.index("^")
    seen = {}
    for sign in shown:
        seen.setdefault(column, sign)
        if not unicodedata.combining(sign):
            column += 2 if unicodedata.east_asian_width(sign) in "WF" else 1
    meant = line[at] if line[at].isprintable() else "?"
    if not unicodedata.combining(line[at]) and line[at].strip():
        assert seen[left] == meant
