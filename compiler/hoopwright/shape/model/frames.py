"""A wheel at the waist and a pair of side hoops, as the shape holds them."""

from __future__ import annotations

from hoopwright.shape.model.points import Point
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Spoke:
    """A spoke of a wheel from the ring round the hole to the rim: ``marks`` are where it crosses each ring,
    (ring, distance from the first), the last at the rim; ``cut`` with both ends turned over; m."""

    id: str
    marks: tuple[tuple[str, float], ...]
    hole: Point
    rim: Point
    cut: float


@record(frozen=True, slots=True)
class RimPoint:
    """The rim in one of eight directions from the waist's centre: ``angle`` radians, 0 front, positive to the
    left; ``reach`` from the waist's line to the rim along the wheel, ``height`` of the rim above the floor,
    ``skirt`` from the waistline over it down to the skirt's hem; m."""

    angle: float
    reach: float
    height: float
    skirt: float


@record(frozen=True, slots=True)
class Wheel:
    """A wheel at the waist. ``rim`` has eight points from centre front by the wearer's left. The cover is cut
    flat, ``cover`` m across its line at the rim, with a ``dart`` taken out of that along the slit where the
    wheel is not flat; ``hem`` is turned round the rim, ``seam`` is at the hole; ``slit`` from the hole forward.
    ``halves``: the cloth is too narrow for it whole. The roll is ``roll`` m thick, cut ``roll_cut`` (length, width),
    and takes ``stuffing`` m3. Lengths m, ``tilt`` radians."""

    width: float
    set_back: float
    tilt: float
    rim_drop: float
    spokes: tuple[Spoke, ...]
    rim: tuple[RimPoint, ...]
    cover: float
    dart: float
    hem: float
    seam: float
    slit: float
    halves: bool
    cover_material: str
    roll: float
    roll_length: float
    roll_cut: tuple[float, float]
    roll_material: str
    stuffing: float

    @property
    def fixings(self) -> int:
        """Crossings of ring and spoke, which are bound."""
        return sum(len(spoke.marks) for spoke in self.spokes)


@record(frozen=True, slots=True)
class SideChannel:
    """The channel of one hoop, of the left and of the right one: ``drop`` of the hoop below the waistline; down the
    outer panel its middle ``down`` from the waistband's edge, its ``width`` across the finished panel; ``inner``: where
    its ends lie down the inner panel; ``steel``: its length; ``wished`` reach beyond the hip; ``stands``: how far the
    steel stands out by itself with its ends held; m."""

    hoops: tuple[str, str]
    drop: float
    down: float
    inner: float
    width: float
    steel: float
    wished: float
    stands: float


@record(frozen=True, slots=True)
class SidePair:
    """A pair of side hoops. ``hip``: from the middle to where they lie on the hip; ``across``: both with the hips
    between them; ``on_band``: how much of the waistband each takes, its middle ``at`` a fraction of the waist from
    centre front; ``pocket``: length of the slit; ``ease``: what the outer panel's edge is longer than the inner one's
    and is gathered in, on each edge, ``gathers`` of it above each channel; ``channel``: flat width of a channel; m."""

    front_to_back: float
    hip: float
    across: float
    material: str
    on_band: float
    at: float
    pocket: float
    channel: float
    ease: float
    gathers: tuple[float, ...]
    channels: tuple[SideChannel, ...]
