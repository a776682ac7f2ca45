"""Remnants on hand: strips of bands first, whole parts on what is left of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from hoopwright.source.record import record
from hoopwright.supply.cloth.boxes import Box, strip
from hoopwright.supply.cloth.model import Band, Remnant, Way
from hoopwright.supply.cloth.skyline import Laid, fit_on
from hoopwright.supply.cutting.stock import UNIT, down, up


@dataclass
class Scrap:
    """A remnant while it is cut up: what lies on it, and the rectangle still free (from `x`, `y` to its far
    corner)."""

    remnant: Remnant
    x: int = 0
    y: int = 0
    laid: list[Laid] = field(default_factory=list)

    @property
    def free_width(self) -> int:
        """Free units across."""
        return down(self.remnant.width) - self.x

    @property
    def free_length(self) -> int:
        """Free units along."""
        return down(self.remnant.length) - self.y


def scraps(remnants: Sequence[Remnant]) -> list[Scrap]:
    """Remnants in the order they are used: smallest first."""
    return [Scrap(r) for r in sorted(remnants, key=lambda r: (r.width * r.length, r.width, r.name))]


@record(frozen=True, slots=True)
class Rest:
    """What remnants give to one copy of a band: the strips' lengths (units), and the `band` still to be cut
    from the cloth (None: nothing)."""

    strips: tuple[int, ...]
    band: Band | None


def strips_from(stock: list[Scrap], band: Band, copy: int, way: Way) -> Rest:
    """Cut strips of a band from remnants until it is long enough or no remnant gives a strip that is worth
    its join."""
    join, least = up(band.join), max(1, up(band.shortest))
    missing = up(band.length) + (join if band.ring else 0)
    given: list[int] = []
    for scrap in stock:
        while missing > 0:
            longest = _longest(scrap, band, way)
            extra = join if given else 0
            if longest < least or longest <= 2 * join:
                break
            length = _strip(longest, missing + extra, join, least)
            if length < min(least, missing + extra):
                break
            _take(scrap, band, copy, len(given), length, way)
            given.append(length)
            missing += extra - length
    if not given:
        return Rest((), band)
    if missing <= 0:
        return Rest(tuple(given), None)
    ring = join if band.ring else 0
    return Rest(tuple(given), replace(band, length=(missing + join - ring) * UNIT))


def boxes_on(stock: list[Scrap], boxes: list[Box]) -> list[Box]:
    """Lay whole boxes on what is left of the remnants; the boxes left over."""
    for scrap in stock:
        laid, boxes = fit_on(boxes, scrap.free_width, scrap.free_length)
        scrap.laid += [Laid(b.box, b.x + scrap.x, b.y + scrap.y) for b in laid]
    return boxes


def _strip(longest: int, wanted: int, join: int, least: int) -> int:
    """The length to take of a remnant so that what is still wanted is nothing, or a strip that is long
    enough."""
    length = min(longest, wanted)
    after = wanted - length
    return length - (least - join - after) if 0 < after < least - join else length


def _longest(scrap: Scrap, band: Band, way: Way) -> int:
    across, along = scrap.free_width, scrap.free_length
    if way == "crosswise":
        return across if along >= up(band.height) else 0
    return along if across >= up(band.height) else 0


def _take(scrap: Scrap, band: Band, copy: int, piece: int, length: int, way: Way) -> None:
    height = up(band.height)
    if way == "crosswise":
        scrap.laid.append(Laid(strip(band.part, copy, piece, length, height, False), scrap.x, scrap.y))
        scrap.y += height
    else:
        scrap.laid.append(Laid(strip(band.part, copy, piece, height, length, True), scrap.x, scrap.y))
        scrap.x += height
