"""What is done and what a fitting showed. Lengths in metres."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from hoopwright.source.diagnostic import Path
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Progress:
    """Work done: ids of tasks, and lengths cut by part, m. Parts may have gone from the design since."""

    done: tuple[str, ...] = ()
    cut: Mapping[str, float] = field(default_factory=dict)


@record(frozen=True, slots=True)
class Fitting:
    """What was measured when it was tried on, on a day written year-month-day; m.

    ``hem``: lower edge of the hem hoop above the floor, by tape; ``same`` tells that one height was written
    for all tapes. ``hoop_heights``: of a hoop's middle above the floor; ``hoop_girths``: as made; ``waist``:
    the waistband as closed. ``path`` is where it stands in the spec.
    """

    on: str
    hem: Mapping[str, float]
    same: bool
    hoop_heights: Mapping[str, float]
    hoop_girths: Mapping[str, float]
    waist: float | None
    notes: str
    path: Path
