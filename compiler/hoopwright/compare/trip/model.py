"""What a shopping trip is: designs, lines with what each design pays of them, lengths and cloth to cut."""

from __future__ import annotations

from decimal import Decimal

from hoopwright.plan.model import Plan
from hoopwright.source.record import record
from hoopwright.spec.model import Units
from hoopwright.supply.model import ClothLayout, CutPack, ShoppingLine


@record(frozen=True, slots=True)
class Design:
    """One design of a trip. ``letter`` marks its pieces; ``alone`` is what it would cost bought alone,
    ``pays`` its share of the trip, both without reserve."""

    letter: str
    label: str
    plan: Plan
    alone: Decimal = Decimal(0)
    pays: Decimal = Decimal(0)

    @property
    def saves(self) -> Decimal:
        """What the trip saves this design."""
        return self.alone - self.pays


@record(frozen=True, slots=True)
class TripLine:
    """A line of the list, and the designs it is for with what each pays of it (None without a price)."""

    line: ShoppingLine
    pays: tuple[tuple[str, Decimal | None], ...]


@record(frozen=True, slots=True)
class Trip:
    """One shopping trip. Pieces and parts carry their design's letter: ``B H3``. ``proven`` is about what is
    cut in lengths: no other way is cheaper; ``gap`` is the greatest share of a material's cost that
    another way could save at most (0 when proven). ``apart`` names goods that are not the same in every
    design."""

    units: Units
    currency: str | None
    designs: tuple[Design, ...]
    lines: tuple[TripLine, ...]
    packs: tuple[CutPack, ...]
    layouts: tuple[ClothLayout, ...]
    proven: bool
    gap: float
    missing: tuple[str, ...]
    apart: tuple[str, ...] = ()

    @property
    def total(self) -> Decimal:
        """The sum of the list."""
        return sum((one.line.cost for one in self.lines if one.line.cost is not None), Decimal(0))

    @property
    def alone(self) -> Decimal:
        """What the designs would cost bought alone, together."""
        return sum((design.alone for design in self.designs), Decimal(0))

    @property
    def saving(self) -> Decimal:
        """What the trip saves."""
        return self.alone - self.total
