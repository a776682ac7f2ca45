"""Labels along a line: pushed apart until none covers another, and as near to their places as that allows."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def spread(wanted: Sequence[float], room: Sequence[float], low: float, high: float) -> tuple[float, ...]:
    """Centres for labels that want to sit at ``wanted`` (ascending) and are ``room`` wide each.

    The sum of squared shifts is least (pool adjacent violators); within [low, high] when they fit there at
    all, else from ``low`` on. Same unit throughout.
    """
    if not wanted:
        return ()
    starts = [0.0]
    for before, after in pairwise(room):
        starts.append(starts[-1] + (before + after) / 2)
    pooled = _pool([want - start for want, start in zip(wanted, starts, strict=True)])
    least = low + room[0] / 2
    most = max(least, high - room[-1] / 2 - starts[-1])
    return tuple(min(max(value, least), most) + start for value, start in zip(pooled, starts, strict=True))


def _pool(values: Sequence[float]) -> list[float]:
    """The nearest non-decreasing sequence in least squares."""
    blocks: list[tuple[float, int]] = []
    for value in values:
        mean, count = value, 1
        while blocks and blocks[-1][0] > mean:
            other, more = blocks.pop()
            mean, count = (mean * count + other * more) / (count + more), count + more
        blocks.append((mean, count))
    return [mean for mean, count in blocks for _ in range(count)]
