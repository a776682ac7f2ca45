"""The whole shape."""

from __future__ import annotations

from math import pi

from hoopwright.shape.model.body import BodyRow, Contact
from hoopwright.shape.model.cloth import HemBand, Panel, Waistband
from hoopwright.shape.model.corded import CordedPetticoat
from hoopwright.shape.model.frames import SidePair, Wheel
from hoopwright.shape.model.hoops import Hoop, PlanOutline, Tape
from hoopwright.shape.model.petticoat import Petticoat
from hoopwright.shape.model.refit import Refit
from hoopwright.shape.model.skirt import Skirt
from hoopwright.shape.model.ties import Tie
from hoopwright.source.record import record
from hoopwright.spec.check import Check


@record(frozen=True, slots=True)
class Shape:
    """The whole shape, top down; tapes by number.

    ``waist_heights`` are those in front, at the left, at the back and at the right, m. Of ``petticoat``, ``wheel``,
    ``sides`` and ``corded`` a design has one at most; a cage on tapes has none. ``refits`` tell what the fittings
    changed, in order; marks, girths and skirt are those after the last of them.
    """

    waist_heights: tuple[float, float, float, float]
    waistband: Waistband
    body: tuple[BodyRow, ...]
    skirt: Skirt
    checks: tuple[Check, ...]
    hoops: tuple[Hoop, ...] = ()
    tapes: tuple[Tape, ...] = ()
    band: HemBand | None = None
    contacts: tuple[Contact, ...] = ()
    ties: tuple[Tie, ...] = ()
    panels: tuple[Panel, ...] = ()
    refits: tuple[Refit, ...] = ()
    petticoat: Petticoat | None = None
    wheel: Wheel | None = None
    sides: SidePair | None = None
    corded: CordedPetticoat | None = None

    @property
    def lowest(self) -> PlanOutline:
        """Outline from above of the lowest hoop, or of a corded petticoat's edge."""
        if self.corded is None:
            return self.hoops[-1].plan
        across = self.corded.hem / pi
        return PlanOutline("round", across, across, 0.0, 2 * pi)

    @property
    def lowest_girth(self) -> float:
        """Girth of the lowest hoop, or of a corded petticoat's edge, m."""
        return self.hoops[-1].girth if self.corded is None else self.corded.hem

    def hoop(self, id: str) -> Hoop:
        """The hoop of that id; KeyError when there is none."""
        for hoop in self.hoops:
            if hoop.id == id:
                return hoop
        raise KeyError(id)

    @property
    def total_hoop_length(self) -> float:
        """Strip for all hoops, laps included, before rounding, m."""
        return sum(hoop.cut for hoop in self.hoops)
