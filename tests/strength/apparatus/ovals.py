"""Ready centre lines and tape rows for models: ovals and arcs of ovals, level or tilted. Needs no arrays."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, pi, sin

from hoopwright.strength.cage.model import TapeModel, Xyz

_FINE = 2880


def oval_points(
    width: float,
    depth: float,
    z: float,
    y: float = 0.0,
    *,
    start: float = 0.0,
    end: float = 1.0,
    count: int = 96,
    tilt: float = 0.0,
) -> tuple[Xyz, ...]:
    """Return `count` points even by arc length on an oval `width` (x) by `depth` (y) about (0, y), by the
    left.

    From fraction `start` to `end` of its girth (both ends included unless it is whole); `tilt` rad lowers
    the front about the oval's centre.
    """
    fine = [_on(width, depth, 2 * pi * k / _FINE) for k in range(_FINE + 1)]
    marks = [0.0]
    for a, b in pairwise(fine):
        marks.append(marks[-1] + dist(a, b))
    whole = end - start >= 1.0
    parts = count if whole else count - 1
    out = []
    for k in range(count):
        flat = _at(width, depth, marks, ((start + (end - start) * k / parts) % 1.0) * marks[-1])
        out.append((flat[0], y + flat[1] * cos(tilt), z - flat[1] * sin(tilt)))
    return tuple(out)


def _on(width: float, depth: float, angle: float) -> tuple[float, float]:
    return 0.5 * width * sin(angle), 0.5 * depth * cos(angle)


def _at(width: float, depth: float, marks: list[float], s: float) -> tuple[float, float]:
    low, high = 0, len(marks) - 1
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if marks[middle] <= s else (low, middle)
    share = (s - marks[low]) / (marks[high] - marks[low])
    return _on(width, depth, 2 * pi * (low + share) / _FINE)


def even_tapes(
    hoops: tuple[str, ...],
    count: int,
    waist: tuple[float, float],
    ea: float = 3000.0,
    *,
    gap: float = 0.0,
    z: float = 0.0,
) -> tuple[TapeModel, ...]:
    """Return `count` tapes from a level waist oval (width, depth), each at one fraction on all hoops.

    Without a gap they stand half a space from centre front; with one (a fraction of the girth that
    straddles centre front) the first and last stand at its edges and the others divide the rest.
    """
    if gap > 0:
        places = [gap / 2 + (1 - gap) * k / (count - 1) for k in range(count)]
    else:
        places = [(k + 0.5) / count for k in range(count)]
    rim = oval_points(waist[0], waist[1], z, count=2000)
    return tuple(
        TapeModel(f"T{k + 1}", rim[round(f * 2000) % 2000], tuple((h, f) for h in hoops), ea)
        for k, f in enumerate(places)
    )
