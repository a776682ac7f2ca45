"""One shopping trip for several designs: pooled packs, one cutting plan, the cost shared out.

``plan_trip(plans) -> Trip | tuple[Finding, ...]`` is the entry. What is on hand counts once, though several
specs list it: of each length as many as the spec that lists most of it. To buy alone means here that the
designs are bought one after the other, in the order given, out of that same cupboard; so the trip is never
dearer than buying alone, material by material.
"""

from hoopwright.compare.trip.model import Design, Trip, TripLine
from hoopwright.compare.trip.plan import plan_trip

__all__ = ["Design", "Trip", "TripLine", "plan_trip"]
