"""Which way to cut every band, and the shortest layout found for it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from math import prod

from hoopwright.source.record import record
from hoopwright.supply.cloth.bands import Cut, crosswise, joins_of, lengthwise, ways_to_cut
from hoopwright.supply.cloth.bounds import least_length
from hoopwright.supply.cloth.boxes import Box, gore_boxes, panel_boxes
from hoopwright.supply.cloth.model import Band, ClothPart, Gore, Panel, Remnant, Way
from hoopwright.supply.cloth.remnants import Rest, Scrap, boxes_on, scraps, strips_from
from hoopwright.supply.cloth.skyline import Layout, lay

_COMBINATIONS = 400
_DEEPER = 4
_SHUFFLES = 80


@record(frozen=True, slots=True)
class Task:
    """The parts for one cloth: its usable width (units), nap, the remnants, and the step (units, washed) in
    which length is bought."""

    parts: tuple[ClothPart, ...]
    usable: int
    nap: bool
    remnants: tuple[Remnant, ...]
    step: float


@record(frozen=True, slots=True)
class BandCut:
    """One copy of a band: strips on remnants, then those on the cloth, units; joins in all."""

    band: Band
    copy: int
    way: Way
    strips: tuple[int, ...]
    joins: int


@record(frozen=True, slots=True)
class Found:
    """A layout: how the bands are cut, what lies on the bought cloth, and the remnants cut up."""

    bands: tuple[BandCut, ...]
    layout: Layout
    scraps: tuple[Scrap, ...]
    steps: int

    @property
    def joins(self) -> int:
        """Joins of all bands."""
        return sum(b.joins for b in self.bands)

    @property
    def rank(self) -> tuple[int, int, int, int]:
        """Less to buy, then fewer joins, then less length, then fewer strips."""
        return (self.steps, self.joins, self.layout.length, sum(len(b.strips) for b in self.bands))


Choice = tuple[tuple[Band, Cut], ...]
"""For every band one way to cut it from the cloth."""


def search(task: Task, way: Way | None = None) -> Found | None:
    """The best layout found; with `way`, every band cut that way (None when one cannot be), looked at less
    deeply."""
    uses = ["bands", "boxes", "none"] if task.remnants else ["none"]
    found: list[Found] = []
    deeper = _DEEPER if way is None else 1
    for use in uses:
        quick = [(_lay(task, choice, use, 0), i, choice) for i, choice in enumerate(_choices(task, way))]
        quick.sort(key=lambda q: (q[0].rank, q[1]))
        found += [q[0] for q in quick[:1]]
        found += [_lay(task, choice, use, _SHUFFLES) for _, _, choice in quick[:deeper]]
    return min(found, key=lambda f: f.rank, default=None)


def bound(task: Task) -> int:
    """A length (units) that no layout without remnants can go below, whichever way the bands are cut."""
    boxes = _fixed_boxes(task)
    bands = [p for p in task.parts if isinstance(p, Band)]
    ways: list[list[Way]] = [list(dict.fromkeys(c.way for c in ways_to_cut(b, task.usable))) for b in bands]
    if prod(len(w) for w in ways) > _COMBINATIONS:
        return least_length([], boxes, task.usable)
    choices = (list(zip(bands, chosen, strict=True)) for chosen in product(*ways))
    return min(least_length(choice, boxes, task.usable) for choice in choices)


def _choices(task: Task, way: Way | None) -> Iterator[Choice]:
    """Ways to cut all bands together; when these are too many, only the one with fewest joins in each
    direction, or the first way of each."""
    bands = [p for p in task.parts if isinstance(p, Band)]
    ways = [[c for c in ways_to_cut(b, task.usable) if way is None or c.way == way] for b in bands]
    if prod(len(w) for w in ways) > _COMBINATIONS:
        ways = [list({c.way: c for c in reversed(w)}.values()) for w in ways]
    if prod(len(w) for w in ways) > _COMBINATIONS:
        ways = [w[:1] for w in ways]
    for chosen in product(*ways):
        yield tuple(zip(bands, chosen, strict=True))


def _fixed_boxes(task: Task) -> list[Box]:
    boxes: list[Box] = []
    for part in task.parts:
        if isinstance(part, Panel):
            boxes += panel_boxes(part, task.nap, task.usable)
        elif isinstance(part, Gore):
            boxes += gore_boxes(part, task.nap, task.usable)
    return boxes


def _lay(task: Task, choice: Choice, use: str, tries: int) -> Found:
    """Lay one choice; remnants are used for nothing, for whole boxes, or for bands first and then boxes."""
    stock = scraps(task.remnants) if use != "none" else []
    boxes = _fixed_boxes(task)
    bands: list[BandCut] = []
    for band, cut in choice:
        for copy in range(band.count):
            rest = strips_from(stock, band, copy, cut.way) if use == "bands" else Rest((), band)
            on_cloth = _cut_rest(rest, band, cut, task.usable)
            boxes += on_cloth.boxes(band, copy, len(rest.strips))
            strips = rest.strips + on_cloth.strips
            bands.append(BandCut(band, copy, cut.way, strips, joins_of(band, len(strips))))
    left = boxes_on(stock, boxes)
    layout = lay(left, task.usable, tries)
    steps = -int(-(layout.length - 0.5) // task.step) if layout.length else 0
    return Found(tuple(bands), layout, tuple(s for s in stock if s.laid), steps)


def _cut_rest(rest: Rest, band: Band, cut: Cut, usable: int) -> Cut:
    """How what the remnants leave of a band is cut from the cloth, in the direction chosen for it."""
    if rest.band is None:
        return Cut(cut.way, (), 0)
    if rest.band is band:
        return cut
    if cut.way == "crosswise":
        return crosswise(rest.band, usable) or cut
    options = lengthwise(rest.band, usable)
    return options[min(len(cut.strips), len(options)) - 1]
