"""What pieces of cloth weigh."""

from __future__ import annotations

from itertools import pairwise

from hoopwright.shape.model import XY, Shape
from hoopwright.spec.model import Spec


def panels_mass(spec: Spec, shape: Shape, part: str = "") -> float:
    """Mass of all panels, or of those whose name holds ``part``, kg."""
    return sum(piece.count * area(piece.outline) * spec.goods[piece.material].areal_density
               for piece in shape.panels if part in piece.part)


def area(outline: tuple[XY, ...]) -> float:
    """Area inside an outline, m2."""
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*outline, outline[0])))) / 2
