"""Waistband, hem band and panels as cut; metres."""

from __future__ import annotations

from typing import Literal

from hoopwright.shape.model.points import XY
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Waistband:
    """The waistband: ``cut`` = waist + ease + overlap + two turnings; width m."""

    girth: float
    width: float
    overlap: float
    cut: float
    material: str


@record(frozen=True, slots=True)
class HemBand:
    """The cloth band between the two lowest hoops, folded double: one strip ``height`` by ``length``, m.

    ``seam`` is the allowance included twice in ``height``; ``stated`` tells that the height is the
    maker's own rule.
    ``channel`` is how much of the folded height each hoop's channel takes.
    """

    upper: str
    lower: str
    depth: float
    height: float
    length: float
    seam: float
    channel: float
    stated: bool
    material: str
    grain: Literal["along", "across", "either"]


@record(frozen=True, slots=True)
class Seam:
    """A seam of a panel, from corner to corner of its outline (numbers from 0), to the part ``to``."""

    corners: tuple[int, int]
    to: str
    allowance: float


@record(frozen=True, slots=True)
class Rule:
    """A line ruled on a panel: a channel, a row of eyelets, a fold; ``offset`` m up from its lowest edge."""

    name: str
    points: tuple[XY, ...]
    offset: float


@record(frozen=True, slots=True)
class Panel:
    """A piece of cloth that is no plain strip: ``count`` alike, cut to ``outline`` (m, corners in order from
    the lower left, x across, y up, seam allowances included), ``width`` by ``height`` over all. ``grain``
    is the way of the warp, ``mirrored`` tells that half of them are cut face down."""

    part: str
    count: int
    material: str
    outline: tuple[XY, ...]
    width: float
    height: float
    grain: Literal["up", "across"]
    seams: tuple[Seam, ...] = ()
    rules: tuple[Rule, ...] = ()
    mirrored: bool = False
