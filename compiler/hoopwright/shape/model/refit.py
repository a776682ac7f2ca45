"""What a fitting changes; metres."""

from __future__ import annotations

from collections.abc import Mapping

from hoopwright.shape.model.skirt import Skirt
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Moved:
    """A mark that moves: where it was and where it goes, m from the waistband's lower edge."""

    tape: str
    hoop: str
    was: float
    goes: float


@record(frozen=True, slots=True)
class Refit:
    """What one fitting changes; m.

    ``low``: how much too low the hem hung, by tape (negative: too high). ``all_round`` of it is the same
    everywhere and is taken up at the waistband, each tape by ``drawn_up``; the rest, and hoops that were off
    by themselves, are in ``moved``. ``hoops``: how much too low a hoop's middle was. ``girths`` and
    ``waist``: drawn and as made. ``skirt``: the skirt over it before and after.
    """

    on: str
    low: Mapping[str, float]
    all_round: float
    drawn_up: Mapping[str, float]
    moved: tuple[Moved, ...]
    hoops: Mapping[str, float]
    girths: Mapping[str, tuple[float, float]]
    waist: tuple[float, float] | None
    skirt: tuple[Skirt, Skirt]

    @property
    def right(self) -> bool:
        """Whether all was right, so that nothing changes."""
        return not (self.all_round or self.moved or self.girths or self.waist)
