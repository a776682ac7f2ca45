"""How many sessions a set of jobs fills, none of them cut in two: bounds for packing boxes into bins.

Bound L2: S. Martello and P. Toth, Knapsack Problems, 1990, chapter 8. Dual feasible functions u(k): S. P.
Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems, 2001; both from memory.
u(k) gives each share x of a session the weight x when (k + 1) x is whole, else floor((k + 1) x) / k; boxes
that fit into a room weigh no more than the room does.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable

KINDS = (0, 2, 3, 4, 5)
"""The functions in use; 0 stands for the share itself."""

SPARE = 1e-7
"""Part of a session by which rounding may overfill it without filling one more."""

_SMALL = 1e-9


def weight(share: float, kind: int) -> float:
    """The weight of a share of a session under function ``kind``.

    >>> weight(0.4, 2), weight(0.3, 2), weight(1.0, 2)
    (0.5, 0.0, 1.0)
    """
    if kind == 0:
        return share
    scaled = (kind + 1) * share
    near = round(scaled)
    return share if abs(scaled - near) < 1e-7 else math.floor(scaled) / kind


def weights(share: float) -> tuple[float, ...]:
    """The weights of a share under every function."""
    return tuple(weight(share, kind) for kind in KINDS)


def whole(minutes: float, limit: float = 1.0) -> int:
    """Sessions that so many minutes fill."""
    return math.ceil(minutes / limit - SPARE)


def packing_bound(boxes: Iterable[float], limit: float) -> int:
    """The least number of sessions that boxes of these minutes fill, none longer than a session."""
    sizes = sorted((size for size in boxes if size > _SMALL), reverse=True)
    known = {size: weights(size / limit) for size in set(sizes)}
    sums = map(sum, zip(*(known[size] for size in sizes), strict=True))
    return max((_martello_toth(sizes, limit), *map(whole, sums)))


def _martello_toth(sizes: list[float], limit: float) -> int:
    """The bound L2 of boxes sorted from the longest."""
    falling = [-size for size in sizes]
    half = bisect_left(falling, -limit / 2)  # those before it are longer than half a session
    best = 0
    for small in {0.0, *sizes[half:]}:
        large = bisect_left(falling, -(limit - small + _SMALL))
        middle = sizes[large:half]
        rest = sizes[half : bisect_right(falling, -(small - _SMALL))]
        spill = sum(rest) - (len(middle) * limit - sum(middle))
        best = max(best, large + len(middle) + max(0, whole(spill, limit)))
    return best
