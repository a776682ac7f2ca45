"""The maker's own line with marks under the part that is meant, in columns a terminal shows."""

from __future__ import annotations

import unicodedata

from hoopwright.source.diagnostic import Span

_WIDEST = 100
_BEFORE = 60
_TAB = 4


def lines_of(text: str) -> list[str]:
    """The lines that spans count: a byte-order mark left out, line ends of any machine."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


def excerpt(lines: list[str], span: Span, mark: str, words: str = "") -> tuple[str, str]:
    """The line of a span and the line of marks below it, both without indent.

    A long line is cut to a window around the marks; tabs are shown as spaces, characters that cannot be
    shown as ``?``. A span over several lines is marked to the end of its first. ``words`` follow the marks.
    """
    line = lines[span.line - 1] if span.line <= len(lines) else ""
    first = min(span.column - 1, len(line))
    last = span.end_column - 1 if span.end_line == span.line else len(line.rstrip())
    last = max(min(last, len(line)), first)
    start, end = _window(line, first)
    head = "... " if start else ""
    tail = " ..." if end < len(line) else ""
    shown = head + "".join(map(_shown, line[start:end])).rstrip() + tail
    before = len(head) + sum(map(_width, line[start:first]))
    under = max(sum(map(_width, line[first : min(last, end)])), 1)
    return shown, (" " * before + mark * under + (f" {words}" if words else ""))


def _window(line: str, first: int) -> tuple[int, int]:
    """Where to cut a line so that the place ``first`` can be seen, with what comes before it."""
    if len(line) <= _WIDEST:
        return 0, len(line)
    start = max(first - _BEFORE, 0)
    return start, min(start + _WIDEST, len(line))


def _shown(character: str) -> str:
    """A character as a terminal can show it."""
    if character == "\t":
        return " " * _TAB
    return character if character.isprintable() else "?"


def _width(character: str) -> int:
    """Columns a character takes: none for combining marks, two for wide ones."""
    if not character.isprintable():
        return len(_shown(character))
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1
