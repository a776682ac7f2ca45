"""Lower bounds on the length of cloth, valid for every layout, whatever the strips of a band are cut to."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.supply.cloth.bands import fewest_strips, joins_of, needed
from hoopwright.supply.cloth.boxes import Box
from hoopwright.supply.cloth.model import Band, Way
from hoopwright.supply.cutting.stock import up

BandWays = Sequence[tuple[Band, Way]]


def least_length(bands: BandWays, boxes: Sequence[Box], usable: int) -> int:
    """A length (units) that no layout of these bands, cut in these directions, and boxes can go below.

    The greatest of: all areas over the width; the tallest part; what cannot lie side by side end to end;
    and, for bands alone that go one way, the exact count of strips.
    """
    return max(
        _by_area(bands, boxes, usable),
        _tallest(bands, boxes),
        _by_halves(bands, boxes, usable),
        0 if boxes else max(_crosswise_rows(bands, usable), _lengthwise_alone(bands, usable)),
    )


def _by_area(bands: BandWays, boxes: Sequence[Box], usable: int) -> int:
    area = sum(sum(s.height * (s.lower + s.upper) / 2 for s in b.shapes) for b in boxes)
    area += sum(band.count * needed(band, 1) * up(band.height) for band, _ in bands)
    return int(-(-area // usable))


def _tallest(bands: BandWays, boxes: Sequence[Box]) -> int:
    tallest = [min(b.height, b.width) if b.turnable else b.height for b in boxes]
    tallest += [up(band.height) for band, way in bands if way == "crosswise"]
    return max(tallest, default=0)


def _by_halves(bands: BandWays, boxes: Sequence[Box], usable: int) -> int:
    """Sum of the heights of what is wider than half the cloth: no two of them lie side by side."""
    total = sum(b.height for b in boxes if not b.turnable and _is_rectangle(b) and 2 * b.width > usable)
    for band, way in bands:
        if way == "lengthwise" and 2 * up(band.height) > usable:
            total += band.count * needed(band, 1)
    return total


def _is_rectangle(box: Box) -> bool:
    return len(box.shapes) == 1 and box.shapes[0].lower == box.shapes[0].upper


def _crosswise_rows(bands: BandWays, usable: int) -> int:
    """All bands crosswise: a line across the cloth crosses at most the usable width of strip.

    Strips of height h or more on less than R h of cloth are all crossed by the R - 1 lines at h, 2 h, ...;
    so they take at least as many rows as the usable width goes into their total length. Taken for every h
    among the bands, and for one band with the joins that its fewest strips need.
    """
    if not bands or any(way != "crosswise" for _, way in bands):
        return 0
    best = 0
    for height in sorted({up(band.height) for band, _ in bands}):
        tall = [band for band, _ in bands if up(band.height) >= height]
        total = sum(band.count * _strip_length(band, usable) for band in tall)
        best = max(best, -(-total // usable) * height)
    return best


def _strip_length(band: Band, usable: int) -> int:
    """Units of crosswise strip a band takes at least."""
    count = fewest_strips(band, usable)
    return needed(band, count if count is not None else 1)


def _lengthwise_alone(bands: BandWays, usable: int) -> int:
    """One lengthwise band: m strips side by side at any place, so its length over m for the best m."""
    if len(bands) != 1 or bands[0][1] != "lengthwise":
        return 0
    band = bands[0][0]
    most = usable // up(band.height)
    if most == 0:
        return 0
    if band.count > 1:
        return -(-band.count * needed(band, 1) // most)
    each = [-(-(up(band.length) + joins_of(band, m) * up(band.join)) // m) for m in range(1, most + 1)]
    return min(each)
