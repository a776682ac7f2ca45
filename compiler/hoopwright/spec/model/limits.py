"""What it is judged against. Lengths in metres, masses in kilograms, money Decimal."""

from __future__ import annotations

from decimal import Decimal

from hoopwright.source.record import record

USUAL_DOOR = 0.8128
"""Clear width of a public door, m: 32 in, 2010 ADA Standards for Accessible Design, 404.2.3."""


@record(frozen=True, slots=True)
class Chair:
    """A chair: ``height`` of its seat above the floor, ``depth`` of the seat, m."""

    height: float = 0.45
    depth: float = 0.43


@record(frozen=True, slots=True)
class Limits:
    """What the cage is judged against. None means no such check beyond the note."""

    budget: Decimal | None = None
    currency: str | None = None
    door: float | None = None
    weight: float | None = None
    sag: float = 0.0127
    out_of_round: float = 0.03  # share of the diameter
    factor: float = 2.5
    stress_worn: float = 0.6  # share of the elastic limit
    stress_door: float = 0.9
    swing: float = 0.0508
    chair: Chair = Chair()
    car: float = 0.508  # room across on the back seat
    bag: float = 0.6096  # hoops wider than this are folded into three

    @property
    def doorway(self) -> float:
        """The door as stated, else a usual one, m."""
        return USUAL_DOOR if self.door is None else self.door
