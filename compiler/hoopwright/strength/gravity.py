"""What hangs weighs: the one figure that makes newtons of kilograms in every form and in the solver."""

from __future__ import annotations

from hoopwright.source import units

GRAVITY = float(units.GRAVITY)
"""Standard acceleration of free fall, m/s2 (3rd CGPM, 1901)."""
