"""Proportions of the body, from ANSUR II: what a missing measure is filled in from, what is unlikely.

Source: NATICK/TR-15/007, 2012 Anthropometric Survey of U.S. Army Personnel, 1,986 women, barefoot and
uncorseted; the ratios are worked out person by person from the survey's public data. Names follow
ISO 8559-1. Heights are fractions of stature.
"""

from __future__ import annotations

from hoopwright.source.record import record

SOURCE = "ANSUR II, NATICK/TR-15/007, 1,986 women, barefoot and uncorseted"


@record(frozen=True, slots=True)
class Proportion:
    """A ratio of two body measures: 5th percentile, median and 95th percentile; outside ``low`` .. ``high``
    a measure is unlikely enough to ask again."""

    p5: float
    median: float
    p95: float
    low: float
    high: float
    name: str


WAIST_HEIGHT = Proportion(0.612, 0.630, 0.649, 0.606, 0.657, "waist height over stature")
HIP_HEIGHT = Proportion(0.488, 0.511, 0.538, 0.478, 0.552, "hip height over stature")
WAIST_OVER_HIP = Proportion(0.749, 0.837, 0.946, 0.60, 1.05, "waist girth over hip girth")
WAIST_OVAL = Proportion(1.24, 1.42, 1.60, 1.0, 2.0, "waist breadth over depth")
WAIST_TO_HIP = Proportion(0.162, 0.192, 0.224, 0.10, 0.32, "waist to hips, m")

KNEE_HEIGHT = 0.275
ANKLE_HEIGHT = 0.039

STEP = 0.41
"""Step length over stature: our rule, stated as such."""

DEFAULT_WAIST_OVAL = 1.4
DEFAULT_HIP_OVAL = 1.5

WAIST_OVER_SEAT = 0.15
"""Waistline above the chair's seat when sitting, over stature: our estimate, a hand less than the crotch lies
below the waist."""
THIGH = 0.10
"""Top of the thigh above the seat when sitting, over stature: our estimate."""
SEAT_TO_KNEE = 0.36
"""Back of the body to the front of the knees when sitting, over stature: our estimate."""

HEEL = 0.10
"""The highest heel allowed for when heights measured in shoes are held against stature barefoot, m."""

CORSET = "a corset may bring the waist down to about 0.60 of the hip girth: our judgement"

STATURE_RANGE = (1.20, 2.15)
WAIST_RANGE = (0.40, 1.70)
HIP_RANGE = (0.55, 1.90)
"""Outside these a measure of a person is more likely a slip of the unit, m: our judgement."""
