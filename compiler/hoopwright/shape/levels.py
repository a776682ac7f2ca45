"""The heights between which a ground plan changes."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Levels:
    """Heights of the top and the lowest hoop, m. While the top hoop is still looked for, ``top`` is None and
    the whole plan is as at the top."""

    top: float | None
    low: float

    def share(self, height: float) -> float:
        """How far down a height lies: 0 at the top hoop and above, 1 at the lowest and below."""
        if self.top is None or self.top <= self.low:
            return 0.0
        return min(max((self.top - height) / (self.top - self.low), 0.0), 1.0)
