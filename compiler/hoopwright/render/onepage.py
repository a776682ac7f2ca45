"""How large the type of a printed card may be so that the card stays on one page.

A browser cannot be asked, so the height is reckoned from the Markdown: lines of text at the width of the type,
rows of a table at the width of their columns, and a share of a line for every gap. The figures are the widest
of the typefaces in ``pass-on.css`` (a letter of DejaVu Sans is 0.55 of its size on the average at most) and the smaller
of the two papers; reckoned high rather than low.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import ceil

LARGE = 14.0
"""Points. The type of a card that has room for it."""

SIZES = (LARGE, 13.0, 12.0, 11.0, 10.0, 9.0)
"""Points, one class of ``pass-on.css`` each, named by ``size_class``."""

WIDTH, HEIGHT = 527.0, 706.0
"""Points: what the margins leave of the smaller paper either way (A4 across, letter down)."""

_LETTER, _LINE, _GAP = 0.55, 1.35, 0.3
_TABLE = 0.85
"""The type of a table beside the card's own."""

_FIGURE = 60.0
"""Points: what a figure at the right takes from the height of the text that flows round it."""

_QUIET = re.compile(r"\*\*|[`\\]|\]\([^)]*\)|!?\[")


def type_size(page: str) -> float:
    """The largest of ``SIZES``, in points, at which a card stays on one page; the smallest when none does."""
    return next((size for size in SIZES if height(page, size) <= HEIGHT), SIZES[-1])


def size_class(size: float) -> str:
    """The class of ``pass-on.css`` for a type size in points."""
    return "large" if size == LARGE else f"pt{size:.0f}"


def height(page: str, size: float) -> float:
    """Points that a card's Markdown takes in type of ``size`` points."""
    letters = WIDTH / (size * _LETTER)
    return sum(block(kind, lines, letters) * size * _LINE if kind != "figure" else _FIGURE
               for kind, lines in blocks(page))


def blocks(page: str) -> Iterator[tuple[str, list[str]]]:
    """Each block of a card's Markdown: its kind and its lines."""
    for text in re.split(r"\n\s*\n|(?<=\n)>\s*\n", page):
        lines = [line for line in text.split("\n") if line.strip()]
        if lines:
            first = lines[0].lstrip("> ")
            kinds = {"#": "heading", "!": "figure", "|": "table", "-": "list"}
            yield kinds.get(first[:1], "text"), [line.lstrip("> ") for line in lines]


def block(kind: str, lines: list[str], letters: float) -> float:
    """Lines of running text that a block is as high as, its gap with it."""
    if kind == "heading":
        return 1.5 * ceil(_long(lines[0]) * 1.75 / letters) + _GAP
    if kind == "table":
        return _table(lines, letters / _TABLE) * _TABLE + _GAP
    if kind == "list":
        return sum(ceil(_long(line) / (letters - 4)) for line in lines) + _GAP
    return ceil(sum(_long(line) + 1 for line in lines) / (letters - 1)) + _GAP


def _table(lines: list[str], letters: float) -> float:
    """Lines of the table's own type: each row as high as its highest cell, columns as wide as their text."""
    rows = [re.split(r"(?<!\\)\|", line)[1:-1] for line in lines if not re.match(r"\|[\s:|-]+\Z", line)]
    most = [max(_long(row[k]) if k < len(row) else 0 for row in rows) for k in range(len(rows[0]))]
    free = letters - 2 * len(most)
    share = [max(most[k] / sum(most) * free, 7.0) for k in range(len(most))]
    return sum(max(ceil(1.05 * _long(cell) / share[k]) for k, cell in enumerate(row)) + 0.3 for row in rows)


def _long(text: str) -> int:
    """Letters that are seen."""
    return len(_QUIET.sub("", text).strip())
