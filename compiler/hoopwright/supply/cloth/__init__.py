"""Cloth: strips, panels and gores laid on the usable width.

`lay_out(parts, cloth, remnants) -> ClothPlan | ClothFailure` lays parts on one cloth, a pure function of its
arguments. A layout is compared by what it buys in the shop's steps, then by its joins, then by its length.
"""

from hoopwright.supply.cloth.layout import lay_out
from hoopwright.supply.cloth.model import (
    BadCloth,
    Band,
    BandWay,
    Cloth,
    ClothFailure,
    ClothPart,
    ClothPlan,
    ClothProblem,
    ClothShort,
    Gore,
    Grain,
    Panel,
    Placement,
    Remnant,
    Sheet,
    TooWide,
    Way,
)

__all__ = [
    "BadCloth",
    "Band",
    "BandWay",
    "Cloth",
    "ClothFailure",
    "ClothPart",
    "ClothPlan",
    "ClothProblem",
    "ClothShort",
    "Gore",
    "Grain",
    "Panel",
    "Placement",
    "Remnant",
    "Sheet",
    "TooWide",
    "Way",
    "lay_out",
]
