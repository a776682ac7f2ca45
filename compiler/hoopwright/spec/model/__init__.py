"""The typed spec: every value resolved, in SI units, with what was assumed listed beside it.

Lengths are metres, masses kilograms, densities SI, angles radians, times minutes, money Decimal.
The JSON Schema in ``schemas/v1/spec.schema.json`` is the language; this is its meaning. One room for each
subject; the other stages take every name from here.
"""

from __future__ import annotations

from hoopwright.spec.model.allowances import Allowances
from hoopwright.spec.model.build import Build, Carrier, HoopBuild, WaistbandBuild
from hoopwright.spec.model.cloth import ChannelBuild, FlounceBuild, PanelBuild, SideBuild
from hoopwright.spec.model.cords import CordBuild, CordGroup, CordSample
from hoopwright.spec.model.diary import Fitting, Progress
from hoopwright.spec.model.limits import Chair, Limits
from hoopwright.spec.model.outline import (
    Graded,
    GroundPlan,
    HalfPlan,
    Line,
    LineKind,
    Opening,
    PairPlan,
    PlaceListed,
    PlanKind,
    ShapeSpec,
    SideHoop,
    Spacing,
    TableRow,
)
from hoopwright.spec.model.tapes import BandBuild, HipTieBuild, LacingBuild, TapeBuild, TieBuild
from hoopwright.spec.model.wearer import HipRow, Sitting, Wearer
from hoopwright.spec.model.wheel import WheelBuild
from hoopwright.spec.model.whole import Assumed, Spec, Units
from hoopwright.spec.model.workshop import Worker, Workshop
from hoopwright.spec.model.worn import Layer

__all__ = [
    "Allowances",
    "Assumed",
    "BandBuild",
    "Build",
    "Carrier",
    "Chair",
    "ChannelBuild",
    "CordBuild",
    "CordGroup",
    "CordSample",
    "Fitting",
    "FlounceBuild",
    "Graded",
    "GroundPlan",
    "HalfPlan",
    "HipRow",
    "HipTieBuild",
    "HoopBuild",
    "LacingBuild",
    "Layer",
    "Limits",
    "Line",
    "LineKind",
    "Opening",
    "PairPlan",
    "PanelBuild",
    "PlaceListed",
    "PlanKind",
    "Progress",
    "ShapeSpec",
    "SideBuild",
    "SideHoop",
    "Sitting",
    "Spacing",
    "Spec",
    "TableRow",
    "TapeBuild",
    "TieBuild",
    "Units",
    "WaistbandBuild",
    "Wearer",
    "WheelBuild",
    "Worker",
    "Workshop",
]
