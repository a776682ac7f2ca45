"""What the YAML reader could not read, in a maker's words.

The reader's own phrases are matched here and nowhere else; what is not matched is passed on as it is.
"""

from __future__ import annotations

import re
from typing import Any

from hoopwright.source.diagnostic import Diagnostic, Label, Span
from hoopwright.source.slips import slip_in
from hoopwright.source.text import error_at

_QUOTE = "put the whole text in quotes, as in `title: \"Harbour play: act two\"`"
_LINE_UP = "give all keys of one group the same number of spaces before them, and so all `-` of one list"
_ONE_SPEC = "keep one design to a file, its keys lined up from the first column"

_WORDS: tuple[tuple[str, str, str], ...] = (
    ("mapping values are not allowed", "a `:` is not expected here",
     f"line the key up with the keys beside it, or, when the `:` belongs to a text, {_QUOTE}"),
    ("could not find expected ':'", "this line is no `key: value`",
     "write a `:` and a space after the key, or line the text up with the value it belongs to"),
    ("expected <block end>, but found '<block mapping start>'",
     "this line does not line up with the lines above", _LINE_UP),
    ("expected <block end>, but found '<block sequence start>'",
     "this list does not line up with the lines above", _LINE_UP),
    ("expected <block end>, but found '-'", "a list item stands where a key is expected",
     "write the list below a key of its own, and line its `-` up"),
    ("expected <block end>", "the line goes on after its value has ended",
     f"when quotes or signs belong to the text, {_QUOTE}; write `5 ft 4 in` for inch marks"),
    ("sequence entries are not allowed", "a `-` of a list is not expected here",
     f"start the list on the next line, or, when the `-` belongs to a text, {_QUOTE}"),
    ("expected ',' or '}'", "a `,` or the closing `}` is missing",
     "put a `,` between the entries inside `{` and `}`, and close it with `}`"),
    ("expected ',' or ']'", "a `,` or the closing `]` is missing",
     "put a `,` between the entries inside `[` and `]`, and close it with `]`"),
    ("found unexpected end of stream", _OPEN := "a quote is opened here and never closed",
     "write the closing quote; inside single quotes an apostrophe is written twice"),
    ("found unexpected document separator", _OPEN, "write the closing quote"),
    ("found unknown escape character", "a backslash starts no escape known here",
     "write `\\\\` for a backslash, or use single quotes"),
    ("that cannot start any token", "a text cannot begin with this sign", _QUOTE),
    ("found undefined tag handle", "a `!` starts a tag, which a spec does not use",
     f"leave the tag out, or, when the `!` belongs to a text, {_QUOTE}"),
    ("expected alphabetic or numeric character",
     "an `&` or `*` gives or repeats a name, and no name follows", _QUOTE),
    ("expected the node content", "a value is expected here", "write the value, or take the sign out"),
    ("<document start>", "something follows after the end of the spec", _ONE_SPEC),
    ("expected chomping or indentation indicators",
     "a text after `|` or `>` starts on the next line", _QUOTE),
    ("inconsistent indentation", "this line does not line up with the lines above", _LINE_UP),
)
_ESCAPE = re.compile(r"\\U[0-9a-fA-F]{8}")


def syntax_error(failure: Any, file: str, text: str) -> Diagnostic:
    """One diagnostic for an error of the YAML reader.

    ``failure`` is ruamel.yaml's ``MarkedYAMLError``: a problem with its mark, and often the mark where
    the unfinished thing began.
    """
    problem = " ".join(str(part) for part in (failure.problem, failure.context) if part)
    slip = slip_in(problem, failure.problem_mark, failure.context_mark, text)
    if slip is not None:
        span = Span(file, slip.line + 1, slip.column + 1, slip.line + 1, slip.column + 1 + slip.length)
        return error_at("yaml-syntax", span, slip.message, slip.help)
    said, help = next(((words, mend) for phrase, words, mend in _WORDS if phrase in problem),
                      (f"this cannot be read as YAML: {failure.problem}", _QUOTE))
    at, began = failure.problem_mark, failure.context_mark
    if said == _OPEN and began is not None:
        return error_at("yaml-syntax", _point(began, file, text), said, help)
    span = _point(at or began, file, text)
    labels: tuple[Label, ...] = ()
    if began is not None and _point(began, file, text).line != span.line:
        labels = (Label(_point(began, file, text), "what it belongs to begins here"),)
    return error_at("yaml-syntax", span, said, help, labels=labels)


def reader_error(failure: Exception, file: str, text: str) -> Diagnostic:
    """One diagnostic for a failure that has no mark: an escape for a character that does not exist."""
    escape = next((found for found in _ESCAPE.finditer(text) if int(found[0][2:], 16) > 0x10FFFF), None)
    if escape is None:
        said = (str(failure) or type(failure).__name__).split("\n")[0]
        return error_at("yaml-syntax", Span(file, 1, 1, 1, 2), f"this cannot be read as YAML: {said}",
                        "look for unusual signs and escapes")
    line = text.count("\n", 0, escape.start()) + 1
    column = escape.start() - text.rfind("\n", 0, escape.start())
    return error_at("yaml-syntax", Span(file, line, column, line, column + len(escape[0])),
                    "the escape names no character", "write the character itself")


def _point(mark: Any, file: str, text: str) -> Span:
    """One character at a mark; the last character of the text when the mark lies behind it,
    and the mere place at the end of a line, where there is no character."""
    if mark is None:
        return Span(file, 1, 1, 1, 2)
    lines = text.split("\n")
    line, column = mark.line, mark.column
    if line >= len(lines) or (line == len(lines) - 1 and not lines[line].strip()):
        filled = [number for number, content in enumerate(lines) if content.strip()]
        line = filled[-1] if filled else 0
        column = max(len(lines[line].rstrip()) - 1, 0)
    width = len(lines[line])
    return Span(file, line + 1, min(column, width) + 1, line + 1, min(column + 1, width) + 1)
