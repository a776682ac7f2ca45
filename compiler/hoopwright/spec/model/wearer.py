"""The body it is made for. Lengths in metres, heights above the floor."""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class HipRow:
    """The body's outline at a depth below the waistline: girth, and width over depth of its oval."""

    below_waist: float
    girth: float
    oval: float


@record(frozen=True, slots=True)
class Sitting:
    """The wearer on a chair, m: ``waist`` of the waistline and ``thigh`` of the thighs' top above the seat,
    ``knee`` from the back of the body to the front of the knees."""

    waist: float = 0.245
    thigh: float = 0.163
    knee: float = 0.587


@record(frozen=True, slots=True)
class Wearer:
    """The body the cage is made for, in shoes and over all that is worn beneath.

    Waist heights are above the floor. ``stature`` and ``step`` may be unknown (None).
    """

    name: str
    stature: float | None
    waist: float
    waist_oval: float
    hip: float
    waist_to_hip: float
    front: float
    left: float
    right: float
    back: float
    hip_rows: tuple[HipRow, ...]
    step: float | None
    sitting: Sitting = Sitting()

    @property
    def waist_heights(self) -> tuple[float, float, float, float]:
        """The waistline in front, at the left, at the back and at the right, m."""
        return (self.front, self.left, self.back, self.right)

    @property
    def side(self) -> float:
        """Mean waist height of the two sides, m."""
        return (self.left + self.right) / 2
