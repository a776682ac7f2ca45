"""The wheel at the waist. Lengths in metres, angles in radians."""

from __future__ import annotations

from hoopwright.library.model import Goods
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class WheelBuild:
    """A wheel at the waist, ``width`` m across. ``set_back``: its centre behind the waist's; ``tilt``: its
    back raised about the waist's centre, radians; ``rim_drop``: the rim below the hole, square to the wheel;
    m. ``rings`` from the hole to the rim, both counted. ``roll`` m thick and ``roll_length`` m long lies
    under
    it, of ``roll_material``. ``slit``: of the cover from its hole to the front (None: to the first ring that
    passes over the hips)."""

    width: float
    set_back: float
    tilt: float
    rim_drop: float
    rings: int
    spokes: int
    roll: float
    roll_length: float
    roll_material: Goods
    cover: Goods
    slit: float | None
