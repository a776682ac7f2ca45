"""The rows of cord of a corded petticoat, and the sample that is tested for it. Lengths in metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.library.model import BenchTest, Goods
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class CordGroup:
    """A group of cords beside each other. ``spacing`` from middle to middle; ``gap``: from what lies below, the
    finished edge or the highest cord of the group below, up to the middle of its lowest cord; m."""

    cords: int
    spacing: float
    gap: float


@record(frozen=True, slots=True)
class CordSample:
    """A sample of so many ``cords``, ``length`` m along them, with the tests made of it."""

    cords: int
    length: float
    bench: tuple[BenchTest, ...] = ()

    @property
    def overhang(self) -> float:
        """What of it is to hang over the table's edge, m: three quarters; our choice."""
        return 0.75 * self.length


@record(frozen=True, slots=True)
class CordBuild:
    """The rows of cord of a corded petticoat: ``groups`` from the hem up. ``take_up``: what a row takes of the
    cloth's length, m, as measured (None: by geometry). ``facing``: the inner layer of a sandwich, None for
    tucks. ``shrinkage`` down the petticoat and ``shrinkage_round`` it: what the corded cloth still shrinks, as
    shares; ``reserve``: what a row is cut longer, a share. ``starch`` is None where there is none."""

    material: Goods
    held: Literal["sandwich", "tuck"]
    groups: tuple[CordGroup, ...]
    take_up: float | None
    facing: Goods | None
    starch: Goods | None
    shrinkage: float
    shrinkage_round: float
    reserve: float
    sample: CordSample

    @property
    def diameter(self) -> float:
        """Thickness of the cord, m."""
        return self.material.width

    @property
    def rows(self) -> int:
        """How many cords in all."""
        return sum(group.cords for group in self.groups)
