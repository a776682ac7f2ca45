"""Lengths to cut, each allowance named and the maker's own rule before any of ours."""

from __future__ import annotations

from math import hypot, pi

from hoopwright.library.model import Section
from hoopwright.shape.model import HemBand, Waistband
from hoopwright.spec.model import Spec

_CHANNEL_EASE = 0.00635
_ROUND_CHANNEL_EASE = 0.004
CORD_ENDS = 0.5
"""What a drawstring is cut longer than the edge it runs in, m, to be tied: common practice, no source."""


def hoop_cut(girth: float, spec: Spec) -> float:
    """Strip for a hoop, m: girth + lap of its join."""
    return girth + spec.build.hoops.lap


def casing_cut(girth: float, spec: Spec) -> float:
    """Casing for a hoop, m: girth with its take-up + two ends; 0 when hoops are bare."""
    if spec.build.hoops.casing is None:
        return 0.0
    return girth * (1.0 + spec.allowances.braid_take_up) + 2 * spec.allowances.casing_end


def tape_spare(spec: Spec) -> float:
    """What a tape is cut longer than its last mark, m: top turning + hem wrap + reserve."""
    return spec.allowances.tape_top + spec.allowances.tape_hem + spec.allowances.tape_reserve


def waistband(spec: Spec) -> Waistband:
    """The waistband: waist + ease + overlap + two turnings; a drawstring instead is as long as the edge it
    runs in, and what it takes to be tied."""
    build, panels = spec.build.waistband, spec.build.panels
    girth = spec.wearer.waist + build.ease
    if panels is not None and panels.cord is not None:
        return Waistband(girth, build.width, 0.0, panels.top + CORD_ENDS, panels.cord.name)
    return Waistband(
        girth,
        build.width,
        build.overlap,
        girth + build.overlap + 2 * spec.allowances.waistband_turning,
        build.material.name,
    )


def channel(section: Section) -> float:
    """Flat width of a channel for an insert, m: insert + 1/4 in for flat stock, pi d/2 + 4 mm for round."""
    if section.kind == "flat":
        return section.width + _CHANNEL_EASE
    return pi * section.diameter / 2 + _ROUND_CHANNEL_EASE


def hem_band(spec: Spec, upper: tuple[str, float, float], lower: tuple[str, float, float]) -> HemBand | None:
    """The hem band, folded double: 2 x (depth + hoop width + ease) + 2 seam allowances high, girth + join
    long.

    ``upper`` and ``lower`` are (id, girth, half width at the side) of the two hoops. The depth is between
    their centres; where the lower hoop is wider it is taken along the cloth. The girth is that of the wider
    hoop. A height that the maker states holds.
    """
    build = spec.build.band
    if build is None:
        return None
    section = spec.build.hoops.material.section
    allow = spec.allowances
    depth = hypot(build.depth, lower[2] - upper[2])
    height = build.cut_height
    if height is None:
        height = 2 * (depth + section.height + allow.band_ease) + 2 * allow.seam
    return HemBand(
        upper[0],
        lower[0],
        depth,
        height,
        max(upper[1], lower[1]) + allow.band_join,
        allow.seam,
        channel(section),
        build.cut_height is not None,
        build.material.name,
        build.grain,
    )
