"""How wide a line of text is, near enough to place it: advance widths of a plain sans-serif, and escaping.

The widths (thousandths of the size) are those of the metric-compatible family Helvetica, Arial and Liberation
Sans share; a reader's own font may be a little wider, so every estimate is taken ``SLACK`` times as wide.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from hoopwright.source.record import record

SLACK = 1.04
FAMILY = "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans', sans-serif"

_WIDTHS = {
    278: " !',./:;\\[]fIt|ijl",
    333: "()-`r",
    355: '"',
    389: "*",
    500: "ckJsvxyz",
    556: "#$0123456789?abdeghnopquL_",
    584: "+<=>~^",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1015: "@",
}
_NARROW = {"·": 278, "×": 584, "±": 584, "°": 400, "–": 556, "—": 1000, "…": 1000, "→": 1000, "½": 834}


class _Widths(dict[str, int]):
    """Widths by letter; one that is not listed is as wide as most, East Asian ones a whole square."""

    def __missing__(self, letter: str) -> int:
        return 1000 if ord(letter) > 0x2E80 else 600


_WIDTH = _Widths(_NARROW | {letter: width for width, letters in _WIDTHS.items() for letter in letters})
_FORBIDDEN = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Characters that XML 1.0 (section 2.2) does not allow."""
_ENTITIES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"})


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """Estimated width of ``text`` at font size ``size``, in the same unit as ``size``."""
    return sum(map(_WIDTH.__getitem__, text)) / 1000 * size * SLACK * (1.07 if bold else 1.0)


def clip(text: str, room: float, size: float, *, bold: bool = False) -> str:
    """``text``, cut with an ellipsis where it would be wider than ``room``."""
    if text_width(text, size, bold=bold) <= room:
        return text
    while text and text_width(text + "…", size, bold=bold) > room:
        text = text[:-1]
    return text.rstrip() + "…"


def wrap(text: str, room: float, size: float) -> tuple[str, ...]:
    """``text`` in lines no wider than ``room``; a single word that is wider is clipped."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size) <= room:
            lines[-1] = longer
        else:
            lines.append(clip(word, room, size))
    return tuple(lines)


def escape(text: str) -> str:
    """``text`` as XML character data: markup escaped, characters that XML 1.0 forbids replaced."""
    return _FORBIDDEN.sub("\ufffd", text).translate(_ENTITIES)


@record(frozen=True, slots=True)
class Box:
    """An upright rectangle on the page, y downward."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        return (self.left < other.right and other.left < self.right
                and self.top < other.bottom and other.top < self.bottom)


def text_box(x: float, y: float, text: str, size: float, anchor: str = "start", *, bold: bool = False) -> Box:
    """The box of a line of text whose baseline starts, centres or ends (``anchor``) at (x, y)."""
    width = text_width(text, size, bold=bold)
    left = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    return Box(left, y - 0.76 * size, left + width, y + 0.22 * size)


def free(box: Box, taken: Iterable[Box]) -> bool:
    """Whether ``box`` meets none of ``taken``."""
    return not any(box.meets(other) for other in taken)
