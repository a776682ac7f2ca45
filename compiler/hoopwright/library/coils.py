"""How wide the coils are that strip and wire are sold on, when nobody has measured one."""

from __future__ import annotations

COILS = ((16.0, 0.30), (32.0, 0.40))
"""Packs up to so long, m, come on coils so wide inside, m; longer ones on :data:`WIDEST`."""
WIDEST = 0.60
SOURCE = "coils of 12, 16 and 24 in are usual for packs up to 52 ft, up to 105 ft and beyond; our estimate"


def usual_coil(length: float) -> float:
    """Inside diameter of the coil of a pack of ``length`` m, m.

    >>> usual_coil(15.24)
    0.3
    """
    return next((width for longest, width in COILS if length <= longest), WIDEST)
