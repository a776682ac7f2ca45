"""What the cloth of petticoats, wheels and side hoops weighs."""

from __future__ import annotations

from itertools import pairwise

from hoopwright.shape.model import XY, Shape
from hoopwright.spec.model import Spec

WADDING = 40.0
"""Stuffing as it lies in a firm roll, kg/m3: our judgement."""


def panels_mass(spec: Spec, shape: Shape, part: str = "") -> float:
    """Mass of all panels, or of those whose name holds ``part``, kg."""
    return sum(piece.count * area(piece.outline) * spec.goods[piece.material].areal_density
               for piece in shape.panels if part in piece.part)


def area(outline: tuple[XY, ...]) -> float:
    """Area inside an outline, m2."""
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*outline, outline[0])))) / 2


def petticoat_mass(spec: Spec, shape: Shape) -> float:
    """Mass of a petticoat's panels and casings, flounces left out, kg; 0 without a petticoat."""
    cloth = shape.petticoat
    if cloth is None:
        return 0.0
    panels = panels_mass(spec, shape)
    strips = 0.0
    if cloth.casing:
        goods = spec.goods[cloth.casing]
        strips = sum(one.strip * (one.height * goods.areal_density if goods.kind == "cloth"
                                  else goods.linear_density) for one in cloth.channels)
    return panels + strips


def flounce_mass(spec: Spec, shape: Shape, id: str | None = None) -> float:
    """Mass of one flounce, or of all, kg."""
    every = () if shape.petticoat is None else shape.petticoat.flounces
    return sum(one.length * one.height * spec.goods[one.material].areal_density for one in every
               if id is None or one.id == id)


def frame_mass(spec: Spec, shape: Shape) -> float:
    """Mass of a wheel's cover and stuffed roll, or of the panels and ties of side hoops, kg; 0 without either."""
    if shape.wheel is None and shape.sides is None:
        return 0.0
    cloth = panels_mass(spec, shape)
    ties = sum(tie.cut * spec.goods[tie.material].linear_density for tie in shape.ties)
    stuffing = 0.0 if shape.wheel is None else shape.wheel.stuffing * WADDING
    return cloth + ties + stuffing
