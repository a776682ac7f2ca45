"""A page to draw on: collects SVG elements in order and writes them as one document.

Coordinates are user units, y downward, all absolute (no transforms but a turned line of text). Output depends
on the calls alone: numbers have at most three decimals, ids count up and start with the figure's name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from hoopwright.render.drawing.letters import FAMILY, Box, escape, text_box

XY = tuple[float, float]

INK = "#111"
GREY = "#555"
PALE = "#999"
PAPER = "#fff"

_PATTERNS = {
    "hatch": ("6", '<path d="M-1,7 L7,-1 M-1,1 L1,-1 M5,7 L7,5" stroke="#777" stroke-width="0.8"/>'),
    "back-hatch": ("6", '<path d="M-1,-1 L7,7 M-1,5 L1,7 M5,-1 L7,1" stroke="#777" stroke-width="0.8"/>'),
    "dots": ("5", '<circle cx="1.5" cy="1.5" r="0.8" fill="#666"/>'
                  '<circle cx="4" cy="4" r="0.8" fill="#666"/>'),
    "weave": ("8", '<path d="M0,2 H5 M4,6 H8 M2,4 V8 M6,0 V5" stroke="#aaa" stroke-width="0.7"/>'),
}


_ZEROS = re.compile(r"\.?0+(?![\d.])")
"""Zeros at the end of a number of three decimals."""
_MINUS = re.compile(r"-0(?![\d.])")


def num(value: float) -> str:
    """A number as SVG text: three decimals at most, no trailing zeros, never ``-0``."""
    text = f"{value:.3f}"
    if text[-1] != "0":
        return text
    text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


class Sheet:
    """A page of ``width`` by ``height`` user units called ``name``; ``unit`` is ``px`` or ``mm``."""

    def __init__(self, name: str, width: float, height: float, unit: str = "px") -> None:
        self.name, self.width, self.height, self.unit = name, width, height, unit
        self.boxes: list[Box] = []
        self._parts: list[str] = []
        self._patterns: dict[str, str] = {}

    def line(self, a: XY, b: XY, *, stroke: str = INK, width: float = 1.0, dash: str = "") -> None:
        """A straight line."""
        self._add(f'<line x1="{num(a[0])}" y1="{num(a[1])}" x2="{num(b[0])}" y2="{num(b[1])}"',
                  "none", stroke, width, dash)

    def path(self, points: Sequence[XY], *, closed: bool = False, fill: str = "none", stroke: str = INK,
             width: float = 1.0, dash: str = "") -> None:
        """A chain of straight lines."""
        form = "M" + " L".join(["%.3f,%.3f"] * len(points)) if points else ""
        steps = _nums(form, [value for place in points for value in place])
        self._add(f'<path d="{steps}{" Z" if closed else ""}"', fill, stroke, width, dash)

    def curve(self, points: Sequence[XY], *, closed: bool = False, fill: str = "none", stroke: str = INK,
              width: float = 1.0, dash: str = "") -> None:
        """A smooth curve through the points (Catmull-Rom spline written as cubic Beziers)."""
        self._add(f'<path d="{_spline(points, closed)}"', fill, stroke, width, dash)

    def ellipse(self, centre: XY, rx: float, ry: float, *, fill: str = "none", stroke: str = INK,
                width: float = 1.0, dash: str = "") -> None:
        """An upright ellipse with the two half axes."""
        self._add(f'<ellipse cx="{num(centre[0])}" cy="{num(centre[1])}" rx="{num(rx)}" ry="{num(ry)}"',
                  fill, stroke, width, dash)

    def rect(self, x: float, y: float, width: float, height: float, *, fill: str = "none", stroke: str = INK,
             line: float = 1.0, dash: str = "", kind: str = "") -> None:
        """An upright rectangle from its upper left corner. ``kind`` becomes its class, to be found again."""
        tagged = f'<rect class="{kind}"' if kind else "<rect"
        self._add(f'{tagged} x="{num(x)}" y="{num(y)}" width="{num(width)}" height="{num(height)}"',
                  fill, stroke, line, dash)

    def text(self, x: float, y: float, words: str, *, size: float = 13.0, anchor: str = "start",
             bold: bool = False, halo: bool = False, fill: str = INK, turned: bool = False) -> Box:
        """A line of text with its baseline at y; ``turned`` reads upward. Gives back the box it fills."""
        box = text_box(x, y, words, size, anchor, bold=bold)
        if turned:
            box = Box(x + box.top - y, y - (box.right - x), x + box.bottom - y, y - (box.left - x))
        if halo:
            self.rect(box.left - 1, box.top, box.right - box.left + 2, box.bottom - box.top, fill=PAPER,
                      stroke="none")
        weight = ' font-weight="bold"' if bold else ""
        turn = f' transform="rotate(-90 {num(x)} {num(y)})"' if turned else ""
        self._parts.append(f'<text x="{num(x)}" y="{num(y)}" font-size="{num(size)}" text-anchor="{anchor}"'
                           f' fill="{fill}"{weight}{turn}>{escape(words)}</text>')
        self.boxes.append(box)
        return box

    def pattern(self, kind: str) -> str:
        """A fill told by its pattern: ``hatch``, ``back-hatch``, ``dots`` or ``weave``."""
        if kind not in self._patterns:
            self._patterns[kind] = f"{self.name}-p{len(self._patterns) + 1}"
        return f"url(#{self._patterns[kind]})"

    def svg(self, title: str, describes: str, style: str = "") -> str:
        """The whole document, with ``title`` and ``describes`` for readers who do not see it."""
        w, h, unit = num(self.width), num(self.height), self.unit if self.unit != "px" else ""
        head = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}{unit}" height="{h}{unit}"'
                f' viewBox="0 0 {w} {h}" role="img" aria-labelledby="{self.name}-t {self.name}-d"'
                f' font-family="{FAMILY}">',
                f'<title id="{self.name}-t">{escape(title)}</title>',
                f'<desc id="{self.name}-d">{escape(describes)}</desc>']
        if style:
            head.append(f"<style>{style}</style>")
        if self._patterns:
            head.append("<defs>" + "".join(self._define(kind) for kind in self._patterns) + "</defs>")
        head.append(f'<rect x="0" y="0" width="{w}" height="{h}" fill="{PAPER}"/>')
        return "\n".join([*head, *self._parts, "</svg>", ""])

    def _define(self, kind: str) -> str:
        side, body = _PATTERNS[kind]
        scale = ' patternTransform="scale(0.35)"' if self.unit == "mm" else ""
        return (f'<pattern id="{self._patterns[kind]}" width="{side}" height="{side}"'
                f' patternUnits="userSpaceOnUse"{scale}>{body}</pattern>')

    def _add(self, start: str, fill: str, stroke: str, width: float, dash: str) -> None:
        look = f' fill="{fill}"'
        if stroke != "none":
            look += f' stroke="{stroke}" stroke-width="{num(width)}"'
            look += f' stroke-dasharray="{dash}"' if dash else ""
        self._parts.append(f"{start}{look}/>")


def _spline(points: Sequence[XY], closed: bool) -> str:
    """Path data of the Catmull-Rom spline: handles a sixth of the chord between a point's neighbours."""
    count = len(points)
    ends = count if closed else count - 1
    places = [*points[0]]
    for at in range(ends):
        before = points[(at - 1) % count] if closed or at else points[0]
        a, b = points[at], points[(at + 1) % count]
        after = points[(at + 2) % count] if closed or at + 2 < count else points[-1]
        places += (a[0] + (b[0] - before[0]) / 6, a[1] + (b[1] - before[1]) / 6,
                   b[0] - (after[0] - a[0]) / 6, b[1] - (after[1] - a[1]) / 6, *b)
    return _nums("M%.3f,%.3f" + " C%.3f,%.3f %.3f,%.3f %.3f,%.3f" * ends, places) + (" Z" if closed else "")


def _nums(form: str, values: Sequence[float]) -> str:
    """``form`` filled with numbers as :func:`num` writes them; all at once, which takes a quarter of the time."""
    return _MINUS.sub("0", _ZEROS.sub("", form % tuple(values)))
