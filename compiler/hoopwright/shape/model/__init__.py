"""The resolved shape: hoops, tapes, bands and the lengths to cut. Geometry only.

Axes: origin on the floor under the waist's centre, x to the wearer's left, y to the front, z up; metres.
A fraction f of a girth runs from centre front (0) by the wearer's left (1/4) to centre back (1/2). One room
for each subject; the other stages take every name from here.
"""

from __future__ import annotations

from hoopwright.shape.model.body import BodyRow, Contact
from hoopwright.shape.model.cloth import HemBand, Panel, Rule, Seam, Waistband
from hoopwright.shape.model.corded import CordedPetticoat, CordRow
from hoopwright.shape.model.frames import RimPoint, SideChannel, SidePair, Spoke, Wheel
from hoopwright.shape.model.hoops import Fixing, Hoop, HoopPlace, Mark, PlanOutline, Tape
from hoopwright.shape.model.petticoat import Channel, Flounce, Petticoat
from hoopwright.shape.model.points import XY, Point
from hoopwright.shape.model.refit import Moved, Refit
from hoopwright.shape.model.skirt import Skirt
from hoopwright.shape.model.ties import Tie, TieKind
from hoopwright.shape.model.whole import Shape

__all__ = [
    "XY",
    "BodyRow",
    "Channel",
    "Contact",
    "CordRow",
    "CordedPetticoat",
    "Fixing",
    "Flounce",
    "HemBand",
    "Hoop",
    "HoopPlace",
    "Mark",
    "Moved",
    "Panel",
    "Petticoat",
    "PlanOutline",
    "Point",
    "Refit",
    "RimPoint",
    "Rule",
    "Seam",
    "Shape",
    "SideChannel",
    "SidePair",
    "Skirt",
    "Spoke",
    "Tape",
    "Tie",
    "TieKind",
    "Waistband",
    "Wheel",
]
