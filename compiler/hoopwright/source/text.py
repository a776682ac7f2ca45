"""Bytes to text: size, encoding and stray characters, each refused at its place."""

from __future__ import annotations

import re
from typing import Any

from hoopwright.source.diagnostic import Diagnostic, Label, Severity, Span

LARGEST = 1024 * 1024
"""The largest file read, bytes."""

_STRAY = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufdd0-\ufdef\ufffe\uffff\ud800-\udfff]")
_STRAY_VALUE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_NAMES = {0: "a NUL character", 0x85: "a next-line character", 0x2028: "a line separator",
          0x2029: "a paragraph separator"}


def error_at(code: str, span: Span, message: str, help: str, *, labels: tuple[Label, ...] = (),
             notes: tuple[str, ...] = ()) -> Diagnostic:
    """An error with its place."""
    return Diagnostic(code, Severity.ERROR, message, span.file, span, labels, notes, help)


def decode(data: bytes, file: str) -> str | Diagnostic:
    """The file's text with plain line ends and without a byte-order mark, or why it has none."""
    if len(data) > LARGEST:
        return Diagnostic(
            "file-too-large", Severity.ERROR, "the file is larger than 1 MiB", file,
            help="keep one design to a file; a spec is seldom longer than a few pages")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as failure:
        return _not_utf8(data, failure.start, file)
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


def _not_utf8(data: bytes, at: int, file: str) -> Diagnostic:
    """The first byte that is not UTF-8, with its line and column."""
    line_start = data.rfind(b"\n", 0, at) + 1
    line = data.count(b"\n", 0, at) + 1
    column = len(data[line_start:at].decode("utf-8").removeprefix("\ufeff" if line == 1 else "")) + 1
    help = "save the file again with the encoding UTF-8; most editors ask for it under `save as`"
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        help = "the whole file is in UTF-16; " + help
    return error_at("text-not-utf8", Span(file, line, column, line, column + 1),
                    "this sign is saved in an encoding other than UTF-8, so it cannot be read", help)


def stray_characters(text: str, file: str) -> list[Diagnostic]:
    """The first control character and the first tab, each with how many more lines have one."""
    found = []
    stray = _STRAY.search(text)
    if stray:
        found.append(error_at(
            "control-character", _span_at(text, stray.start(), file),
            f"{_called(stray[0])} stands in the text",
            "delete it; it often comes in with text copied from another program", notes=_more(text, _STRAY)))
    tab = text.find("\t")
    if tab >= 0:
        found.append(error_at(
            "tab", _span_at(text, tab, file), "a tab stands in the text",
            "write spaces instead; most editors can turn tabs into spaces",
            notes=_more(text, re.compile("\t"))))
    return found


def stray_in_value(value: str, span: Span) -> Diagnostic | None:
    """A control character that an escape such as ``\\0`` put into a value."""
    stray = _STRAY_VALUE.search(value)
    if stray is None:
        return None
    return error_at("control-character", span, f"{_called(stray[0])} is written into this value",
                    "leave the escape out; text needs none but quotes and line ends")


def directive(text: str, file: str) -> Diagnostic | None:
    """A ``%`` line before the document, such as ``%YAML 1.1``."""
    for number, line in enumerate(text.split("\n"), 1):
        if line.startswith("%"):
            return error_at("yaml-directive", Span(file, number, 1, number, len(line.rstrip()) + 1),
                            "a line that starts with `%` changes how the rest is read",
                            "delete the line; a spec is always read as YAML 1.2")
        if line.strip() and not line.lstrip().startswith("#"):
            return None
    return None


def span_of(start: Any, end: Any, file: str) -> Span:
    """The span between two marks of the YAML reader, whose lines and columns count from 0."""
    return Span(file, start.line + 1, start.column + 1, end.line + 1, end.column + 1)


def _called(character: str) -> str:
    """A character that cannot be shown, in words."""
    return _NAMES.get(ord(character), f"the control character U+{ord(character):04X}")


def _span_at(text: str, at: int, file: str) -> Span:
    """The span of the one character at an index."""
    line = text.count("\n", 0, at) + 1
    column = at - text.rfind("\n", 0, at)
    return Span(file, line, column, line, column + 1)


def _more(text: str, pattern: re.Pattern[str]) -> tuple[str, ...]:
    """How many other lines have the same trouble."""
    lines = sum(1 for line in text.split("\n") if pattern.search(line)) - 1
    return (f"{lines} more line{'s have' if lines > 1 else ' has'} one",) if lines > 0 else ()
