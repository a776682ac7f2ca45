"""Marks of a technical drawing: arrow heads, dimension lines, leaders, the floor, a scale bar."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from hoopwright.render.drawing.letters import text_width
from hoopwright.render.drawing.sheet import GREY, INK, PALE, XY, Sheet

SMALL = 12.0
TEXT = 13.0
HEAD = 16.0
PAGE = 480.0
BAR = 150.0
"""Room that a scale bar may take."""


def arrow(sheet: Sheet, tip: XY, tail: XY) -> None:
    """A filled arrow head at ``tip``, pointing away from ``tail``."""
    size = 6.0
    length = hypot(tip[0] - tail[0], tip[1] - tail[1]) or 1.0
    ux, uy = (tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length
    back = (tip[0] - size * ux, tip[1] - size * uy)
    half = size * 0.3
    sheet.path([tip, (back[0] - half * uy, back[1] + half * ux), (back[0] + half * uy, back[1] - half * ux)],
               closed=True, fill=INK, stroke="none")


def arrow_line(sheet: Sheet, tail: XY, tip: XY, width: float = 0.9) -> None:
    """A line with an arrow head at its end."""
    sheet.line(tail, tip, width=width)
    arrow(sheet, tip, tail)


def across(sheet: Sheet, x1: float, x2: float, y: float, words: str) -> None:
    """A level dimension from x1 to x2 at y, its words above the line's middle, on white."""
    sheet.line((x1, y), (x2, y), width=0.8)
    for tip, tail in ((x1, x2), (x2, x1)):
        arrow(sheet, (tip, y), (tail, y))
        sheet.line((tip, y - 5), (tip, y + 5), width=0.8)
    sheet.text((x1 + x2) / 2, y - 5, words, size=SMALL, anchor="middle", halo=True)


def upright(sheet: Sheet, y1: float, y2: float, x: float, words: str | Sequence[str], *, side: str = "right") -> None:
    """An upright dimension from y1 to y2 at x; its words, a line or several, beside its middle."""
    sheet.line((x, y1), (x, y2), width=0.8)
    for tip, tail in ((y1, y2), (y2, y1)):
        if abs(y2 - y1) > 14:
            arrow(sheet, (x, tip), (x, tail))
        sheet.line((x - 5, tip), (x + 5, tip), width=0.8)
    lines = [words] if isinstance(words, str) else list(words)
    step = SMALL * 1.2
    first = (y1 + y2) / 2 + SMALL * 0.35 - step * (len(lines) - 1) / 2
    for at, line in enumerate(lines):
        sheet.text(x + (8 if side == "right" else -8), first + at * step, line, size=SMALL,
                   anchor="start" if side == "right" else "end", halo=True)


def leader(sheet: Sheet, points: Sequence[XY]) -> None:
    """A thin line from a thing to its label."""
    sheet.path(points, stroke=PALE, width=0.8)


def floor_line(sheet: Sheet, x1: float, x2: float, y: float) -> None:
    """The floor: a firm line with short strokes below it."""
    sheet.line((x1, y), (x2, y), width=1.4)
    x = x1 + 6
    while x < x2:
        sheet.line((x, y), (x - 5, y + 5), stroke=GREY, width=0.6)
        x += 9


def scale_bar(sheet: Sheet, x: float, y: float, per_metre: float, units: str) -> None:
    """A bar of two even halves, one filled, in the spec's units; ``per_metre`` user units are a metre."""
    unit, word = (0.0254, "in") if units == "inches" else (0.01, "cm")
    steps = (1, 2, 5, 10, 20, 25, 50, 100, 200)
    half = max([step for step in steps if 2 * step * unit * per_metre <= BAR] or [1])
    length = half * unit * per_metre
    sheet.rect(x, y, length, 5, fill=INK, kind="scale")
    sheet.rect(x + length, y, length, 5)
    for at, place in ((0, x), (half, x + length)):
        sheet.text(place, y + 18, str(at), size=SMALL, anchor="middle")
    start = x + 2 * length - text_width(str(2 * half), SMALL) / 2
    sheet.text(start, y + 18, f"{2 * half} {word}", size=SMALL)


def heading(sheet: Sheet, words: str, under: str = "") -> None:
    """The figure's own title at its top, with a line under it."""
    sheet.text(14, 24, words, size=HEAD, bold=True)
    if under:
        sheet.text(14, 42, under, size=SMALL, fill=GREY)
