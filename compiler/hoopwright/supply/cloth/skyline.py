"""Laying boxes on a cloth of given width: lowest place first on the skyline of what lies there already."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from hoopwright.source.record import record
from hoopwright.supply.cloth.boxes import Box


@record(frozen=True, slots=True)
class Laid:
    """A box and where its corner lies."""

    box: Box
    x: int
    y: int


@record(frozen=True, slots=True)
class Layout:
    """Boxes laid, and the length they take."""

    laid: tuple[Laid, ...]
    length: int


def lay(boxes: Sequence[Box], usable: int, tries: int) -> Layout:
    """The shortest layout found: rows that nothing fits beside first, the rest by skyline in several stated
    orders.

    Every box (or its quarter turn) must be at most `usable` wide.
    """
    alone, others = _alone(boxes, usable)
    laid: list[Laid] = []
    y = 0
    for box in alone:
        laid.append(Laid(box, 0, y))
        y += box.height
    best: Layout | None = None
    floor = _floor(others, usable)
    for order in _orders(others, tries):
        best = _by_skyline(order, usable, best) or best
        if best is not None and best.length <= floor:
            break
    if best is not None:
        laid += [Laid(b.box, b.x, b.y + y) for b in best.laid]
        y += best.length
    return Layout(tuple(laid), y)


def fit_on(boxes: Sequence[Box], usable: int, length: int) -> tuple[tuple[Laid, ...], list[Box]]:
    """Those boxes, largest first, that a remnant holds, where they lie, and the boxes left over."""
    line = [(0, 0, usable)]
    laid, left = [], []
    for box in sorted(boxes, key=lambda b: (-b.area, -b.height, -b.width)):
        spot = _best_spot(line, box, usable, length)
        if spot is None:
            left.append(box)
            continue
        line = _raise(line, spot)
        laid.append(spot)
    return tuple(laid), left


def _alone(boxes: Sequence[Box], usable: int) -> tuple[list[Box], list[Box]]:
    """Boxes beside which no other can lie, and the others. Laying the former in rows of their own loses
    nothing."""
    narrowest = min((min(b.width, b.height) if b.turnable else b.width for b in boxes), default=0)
    alone = [b for b in boxes if not b.turnable and b.width + narrowest > usable]
    others = [b for b in boxes if b.turnable or b.width + narrowest <= usable]
    if len(others) == 1 and not others[0].turnable:
        return [*alone, *others], []
    return alone, others


def _floor(boxes: Sequence[Box], usable: int) -> int:
    area = sum(b.area for b in boxes)
    tallest = max((min(b.height, b.width) if b.turnable else b.height for b in boxes), default=0)
    return max(-(-area // usable), tallest)


def _orders(boxes: Sequence[Box], tries: int) -> list[list[Box]]:
    """Orders to try: by height, width, area, longer side; then shuffles with a fixed seed."""
    if not boxes:
        return []
    keys: list[Callable[[Box], tuple[int, ...]]] = [
        lambda b: (-b.height, -b.width),
        lambda b: (-b.width, -b.height),
        lambda b: (-b.area, -b.height),
        lambda b: (-max(b.width, b.height), -b.area),
    ]
    orders = [sorted(boxes, key=key) for key in keys]
    if len(boxes) > 2:
        dice = Random(1)
        for _ in range(tries):
            numbered = [(dice.random(), i) for i in range(len(boxes))]
            orders.append([boxes[i] for _, i in sorted(numbered)])
    return orders


def _by_skyline(boxes: Sequence[Box], usable: int, best: Layout | None) -> Layout | None:
    """The boxes laid in this order; None as soon as that is no shorter than the ``best`` so far."""
    line = [(0, 0, usable)]
    laid = []
    length = 0
    for box in boxes:
        spot = _best_spot(line, box, usable, None)
        if spot is not None:
            length = max(length, spot.y + spot.box.height)
            if best is not None and length >= best.length:
                return None
            line = _raise(line, spot)
            laid.append(spot)
    return Layout(tuple(laid), length)


def _best_spot(line: list[tuple[int, int, int]], box: Box, usable: int, length: int | None) -> Laid | None:
    """The place where the box (turned if it may be) ends lowest, then wastes least, then lies farthest
    left."""
    best: tuple[tuple[int, int, int], Laid] | None = None
    for form in (box, box.quarter_turned()) if box.turnable else (box,):
        for i, (x, _, _) in enumerate(line):
            if x + form.width > usable:
                break
            y, wasted = _rest_on(line, i, form.width)
            if length is not None and y + form.height > length:
                continue
            key = (y + form.height, wasted, x)
            if best is None or key < best[0]:
                best = (key, Laid(form, x, y))
    return None if best is None else best[1]


def _rest_on(line: list[tuple[int, int, int]], first: int, width: int) -> tuple[int, int]:
    """Height at which a box of `width` rests from segment `first` on, and the area lost below it."""
    spans, left = [], width
    for _, y, span in line[first:]:
        spans.append((y, min(span, left)))
        left -= spans[-1][1]
        if left <= 0:
            break
    top = max(y for y, _ in spans)
    return top, sum((top - y) * span for y, span in spans)


def _raise(line: list[tuple[int, int, int]], spot: Laid) -> list[tuple[int, int, int]]:
    """The skyline after a box was laid; neighbours of one height are joined."""
    left, right, top = spot.x, spot.x + spot.box.width, spot.y + spot.box.height
    parts = []
    for x, y, span in line:
        if x < left:
            parts.append((x, y, min(span, left - x)))
        if x + span > right:
            parts.append((max(x, right), y, x + span - max(x, right)))
    parts.append((left, top, right - left))
    parts.sort()
    joined = [parts[0]]
    for x, y, span in parts[1:]:
        last = joined[-1]
        if last[1] == y:
            joined[-1] = (last[0], y, last[2] + span)
        else:
            joined.append((x, y, span))
    return joined
