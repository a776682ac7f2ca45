"""The skirt over it; metres."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Skirt:
    """The skirt to be worn over it, from the waistline over the cage to ``off_floor``: lengths and hem
    girth, m."""

    front: float
    side: float
    back: float
    hem_girth: float
    off_floor: float
