"""How it is built, carrier by carrier. Lengths in metres, angles in radians."""

from __future__ import annotations

from typing import Literal

from hoopwright.library.model import Goods, Join, Stock
from hoopwright.source.record import record
from hoopwright.spec.model.cloth import ChannelBuild, FlounceBuild, PanelBuild, SideBuild
from hoopwright.spec.model.cords import CordBuild
from hoopwright.spec.model.tapes import BandBuild, HipTieBuild, LacingBuild, TapeBuild, TieBuild
from hoopwright.spec.model.wheel import WheelBuild

Carrier = Literal["tapes", "channels", "cords", "wheel"]


@record(frozen=True, slots=True)
class HoopBuild:
    """What hoops are made of and how they are closed. ``casing`` is None for a bare hoop; ``splices`` is how
    many splices, each a join of the same kind, one hoop may have; ``formed`` is None where nothing is said of
    it: then hoops are sprung, and cane that closing would set is bent wet."""

    material: Stock
    join: Join
    lap: float
    casing: Goods | None
    splices: int = 0
    formed: Literal["sprung", "pre-formed"] | None = None

    @property
    def bent_wet(self) -> bool:
        """Whether hoops are soaked and bent to their curve: cane, unless the spec says that it is sprung."""
        return self.material.form == "cane" and self.formed != "sprung"

    @property
    def sprung(self) -> bool:
        """Whether hoops are bent round as springs, so that they fly open when an end is let go."""
        return self.formed != "pre-formed" and not self.bent_wet


@record(frozen=True, slots=True)
class WaistbandBuild:
    """The waistband: a tape or cloth band closed by a fastening."""

    material: Goods
    width: float
    overlap: float
    ease: float
    fastening: Goods


@record(frozen=True, slots=True)
class Build:
    """How the cage is built. What carries the hoops says which of the optional parts there are: ``tapes``
    for tapes. Parts of other carriers stand beside it, each with None as its default. ``hooped`` is None for a
    corded petticoat, which has no hoops."""

    carried_by: Carrier
    hooped: HoopBuild | None
    tapes: TapeBuild | None
    waistband: WaistbandBuild
    band: BandBuild | None
    ties: TieBuild | None = None
    lacing: LacingBuild | None = None
    hip_ties: HipTieBuild | None = None
    channels: ChannelBuild | None = None
    panels: PanelBuild | None = None
    flounces: tuple[FlounceBuild, ...] = ()
    wheel: WheelBuild | None = None
    sides: SideBuild | None = None
    cords: CordBuild | None = None

    @property
    def hoops(self) -> HoopBuild:
        """What hoops are made of. ValueError for a build without hoops."""
        if self.hooped is None:
            raise ValueError("a corded petticoat has no hoops")
        return self.hooped
