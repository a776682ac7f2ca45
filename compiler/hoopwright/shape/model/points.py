"""Points, as all of shape counts them; metres."""

from __future__ import annotations

Point = tuple[float, float, float]
"""x to the wearer's left, y to the front, z up."""

XY = tuple[float, float]
"""On one level or on a flat piece of cloth."""
