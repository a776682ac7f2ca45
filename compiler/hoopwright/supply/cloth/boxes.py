"""Parts of cloth as boxes to be laid: whole numbers of 1/80 mm, parts rounded up and cloth rounded down."""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.supply.cloth.model import Gore, Panel
from hoopwright.supply.cutting.stock import UNIT, up


@record(frozen=True, slots=True)
class Shape:
    """One piece inside a box: offset (`dx`, `dy`), true widths at its lower and upper edge, `height`;
    units, the widths centred on `dx` + half of the wider one."""

    part: str
    copy: int
    piece: int
    dx: float
    width: int
    lower: int
    upper: int
    height: int
    turned: bool = False
    flipped: bool = False


@record(frozen=True, slots=True)
class Box:
    """A rectangle, `width` across the cloth and `height` along it, with the shapes in it; `turnable` by a
    quarter turn."""

    width: int
    height: int
    shapes: tuple[Shape, ...]
    turnable: bool = False

    @property
    def area(self) -> int:
        """Area in square units."""
        return self.width * self.height

    def quarter_turned(self) -> Box:
        """The box on its side (a box that may be turned holds one rectangle)."""
        (s,) = self.shapes
        shape = Shape(
            s.part, s.copy, s.piece, 0, self.height, self.height, self.height, self.width, not s.turned
        )
        return Box(self.height, self.width, (shape,), True)


def strip(part: str, copy: int, piece: int, width: int, height: int, turned: bool) -> Box:
    """A plain rectangle."""
    return Box(width, height, (Shape(part, copy, piece, 0, width, width, width, height, turned),))


def panel_boxes(panel: Panel, nap: bool, usable: int) -> list[Box]:
    """The copies of a panel; "either" may be turned unless the cloth has a nap or only one way fits."""
    width, height = up(panel.width), up(panel.height)
    across = panel.grain == "across" or (panel.grain == "either" and width > usable)
    if across:
        width, height = height, width
    boxes = [strip(panel.part, c, 0, width, height, across) for c in range(panel.count)]
    if panel.grain == "either" and not nap and max(width, height) <= usable:
        boxes = [Box(b.width, b.height, b.shapes, True) for b in boxes]
    return boxes


def gore_run(gore: Gore, count: int, nap: bool) -> int:
    """Width of `count` gores side by side: head to tail they move on by the mean width, else by the wider
    one."""
    top, bottom = up(gore.top), up(gore.bottom)
    wide = max(top, bottom)
    if nap:
        return count * wide
    return wide + -(-(count - 1) * (top + bottom) // 2)


def gore_boxes(gore: Gore, nap: bool, usable: int) -> list[Box]:
    """The copies of a gore in rows as full as the cloth allows, each row a box."""
    most = 1
    while most < gore.count and gore_run(gore, most + 1, nap) <= usable:
        most += 1
    boxes, first = [], 0
    while first < gore.count:
        count = min(most, gore.count - first)
        shapes = tuple(_gore(gore, first + i, i, nap) for i in range(count))
        boxes.append(Box(gore_run(gore, count, nap), up(gore.height), shapes))
        first += count
    return boxes


def _gore(gore: Gore, copy: int, place: int, nap: bool) -> Shape:
    top, bottom, height = up(gore.top), up(gore.bottom), up(gore.height)
    wide = max(top, bottom)
    flipped = not nap and place % 2 == 1
    pitch = wide if nap else (top + bottom) / 2
    lower, upper = (bottom, top) if flipped else (top, bottom)
    return Shape(gore.part, copy, 0, place * pitch, wide, lower, upper, height, False, flipped)


def metres(units: float) -> float:
    """Units as metres, to 0.1 micrometre."""
    return round(units * UNIT, 7)
