"""The ground plan: a hoop's outline from above for its girth."""

from __future__ import annotations

from math import pi

from hoopwright.shape.ellipse import Ellipse, from_girth
from hoopwright.shape.model import PlanOutline
from hoopwright.spec.model import Spec


def ground_ellipse(spec: Spec, girth: float) -> Ellipse:
    """The ellipse of a hoop of that girth. A round plan is centred on the waist."""
    return from_girth(girth)


def side_reach(spec: Spec, girth: float) -> float:
    """Half the width of a hoop of that girth at the side, m: the side profile."""
    return ground_ellipse(spec, girth).a


def outline_of(ellipse: Ellipse) -> PlanOutline:
    """The outline as the shape holds it."""
    return PlanOutline(
        "round" if ellipse.a == ellipse.b else "oval", 2 * ellipse.a, 2 * ellipse.b, ellipse.offset, 2 * pi
    )


def ellipse_of(outline: PlanOutline) -> Ellipse:
    """The ellipse of an outline."""
    return Ellipse(outline.width / 2, outline.depth / 2, outline.offset)
