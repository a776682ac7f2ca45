"""Columns of labels beside a drawing: a name and a value, pushed apart, each with a leader to its thing."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.render.drawing.letters import clip, text_width
from hoopwright.render.drawing.marks import SMALL, leader
from hoopwright.render.drawing.sheet import GREY, XY, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.source.record import record

STEP = 15.5


@record(frozen=True, slots=True)
class Label:
    """A label for the thing at ``at``: its ``name`` in bold, then its ``value``."""

    at: XY
    name: str
    value: str


def draw_column(sheet: Sheet, labels: Sequence[Label], x: float, low: float, high: float, *, side: str,
                title: str = "", room: float = 92.0) -> None:
    """Labels in a column on the ``left`` of the drawing (from x on) or on its ``right`` (up to x).

    ``labels`` come top down; their centres stay between ``low`` and ``high`` when they fit there.
    """
    end = "start" if side == "left" else "end"
    places = spread([label.at[1] for label in labels], [STEP] * len(labels), low, high)
    if places and title:
        sheet.text(x, places[0] - STEP - 1, title, size=SMALL, anchor=end, fill=GREY)
    if not labels:
        return
    widths = [_write(sheet, label, x, y + SMALL * 0.36, side, room)
              for label, y in zip(labels, places, strict=True)]
    for label, y, own in zip(labels, places, widths, strict=True):
        width = max(own, min(max(widths), abs(label.at[0] - x) - 8))
        inner = x + width + 4 if side == "left" else x - width - 4
        reach = min(12.0, max(0.0, (label.at[0] - inner) * (1 if side == "left" else -1)))
        bend = inner + reach if side == "left" else inner - reach
        leader(sheet, [(inner, y), (bend, label.at[1]), label.at])


def _write(sheet: Sheet, label: Label, x: float, y: float, side: str, room: float) -> float:
    """The label's words on the baseline y; gives back how wide they are."""
    value = text_width(label.value, SMALL)
    name = clip(label.name, max(24.0, room - value - 6), SMALL, bold=True) if label.name else ""
    gap = text_width(name, SMALL, bold=True) + 6 if name else 0.0
    start = x if side == "left" else x - value - gap
    if name:
        sheet.text(start, y, name, size=SMALL, bold=True)
    sheet.text(start + gap, y, label.value, size=SMALL)
    return value + gap
