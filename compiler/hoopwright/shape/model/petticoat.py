"""The petticoat whose cloth carries the hoops; metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Channel:
    """A hoop's channel in a petticoat; m. ``up``: its middle line above the finished lower edge, measured up
    the cloth; ``width``: flat; ``takes``: length of cloth folded away in a tuck; ``girth``: of the cloth
    there, that of the hoop or more. ``strip`` by ``height``: cut size of an applied casing, 0 for a tuck."""

    hoop: str
    up: float
    width: float
    takes: float
    girth: float
    strip: float
    height: float


@record(frozen=True, slots=True)
class Flounce:
    """A gathered strip: its head ``up`` m above the finished lower edge; ``girth`` of the petticoat at its
    own lower edge; ``length`` by ``height`` as cut, the ring closed."""

    id: str
    up: float
    girth: float
    depth: float
    length: float
    height: float
    material: str


@record(frozen=True, slots=True)
class Petticoat:
    """Cloth that carries the hoops, ``count`` gores or breadths. ``slant``: from the waistband's lower edge
    down the cloth to the hem hoop's line; ``half_angle`` of the cone through both, radians; ``edge``: from
    that line to the finished lower edge; ``head``: what the top needs above the waist's line to be turned
    or sewn in, and to be levelled; ``takes``: all tucks together; ``round_off``: how much higher the lower
    edge is at a seam than in the middle of a panel; ``drawstring``: cut length of the cord, 0 for a
    waistband; m."""

    kind: Literal["gores", "breadths"]
    count: int
    material: str
    slant: float
    half_angle: float
    top: float
    hem: float
    edge: float
    head: float
    takes: float
    round_off: float
    placket: float
    feed_gap: float
    drawstring: float
    cord: str
    channels: tuple[Channel, ...]
    casing: str
    flounces: tuple[Flounce, ...] = ()
