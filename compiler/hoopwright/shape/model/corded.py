"""What a corded petticoat measures: its breadths, and its rows of cord up from the hem. Metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class CordRow:
    """A row of cord. ``up``: its middle above the finished edge, measured up the cloth; ``flat``: its line
    above the cut edge of a breadth before anything is sewn; ``run``: its way round, seams counted, and ``cut``
    the cord cut for it; ``girth`` of the finished petticoat there, as it stands out; ``height`` above the floor.
    ``group`` counts from 1 at the hem."""

    id: str
    group: int
    up: float
    flat: float
    run: float
    cut: float
    girth: float
    height: float


@record(frozen=True, slots=True)
class CordedPetticoat:
    """Straight breadths that rows of cord stiffen. ``length``: down the cloth from the waistband's lower edge
    to the finished edge; ``hem``: girth there; ``half_angle`` of the cone, radians. A breadth is cut ``wide`` by
    ``high``: ``head`` of that is turned or sewn in above and levelled, ``turning`` turned in below. ``take_up``
    of one row, ``measured`` on a sample or by geometry; ``takes``: all rows together. ``facing_high``: cut height
    of a breadth of the inner layer, 0 for tucks; ``band``: from the edge to above the highest cord.
    ``drawstring``: its cut length, 0 for a waistband."""

    count: int
    material: str
    length: float
    hem: float
    hem_height: float
    half_angle: float
    wide: float
    high: float
    head: float
    turning: float
    held: Literal["sandwich", "tuck"]
    cord: str
    diameter: float
    take_up: float
    measured: bool
    takes: float
    shrinkage: float
    shrinkage_round: float
    facing: str
    facing_high: float
    band: float
    placket: float
    drawstring: float
    string: str
    rows: tuple[CordRow, ...]

    @property
    def run(self) -> float:
        """Cord that lies in the petticoat, before any reserve, m."""
        return sum(row.run for row in self.rows)

    @property
    def cut(self) -> float:
        """Cord cut for all rows, m."""
        return sum(row.cut for row in self.rows)

    def group(self, number: int) -> tuple[CordRow, ...]:
        """The rows of a group, from the hem up."""
        return tuple(row for row in self.rows if row.group == number)

    @property
    def groups(self) -> int:
        """How many groups."""
        return max(row.group for row in self.rows)
