"""The assessment: what the cage does under its load, and whether that is acceptable.

The same values whichever method found them. SI units; None means not assessed.
"""

from __future__ import annotations

from typing import Literal

from hoopwright.shape.model import Skirt
from hoopwright.source.record import record
from hoopwright.spec.check import Check


@record(frozen=True, slots=True)
class HoopStrength:
    """Loads and movement of one hoop. ``load`` N/m downward; ``thrust`` N (compression positive); sag,
    inward, outward m; stress Pa."""

    id: str
    load: float
    thrust: float
    sag: float | None
    inward: float | None
    outward: float | None
    stress: float | None


@record(frozen=True, slots=True)
class HoopLines:
    """A hoop's centre line as wished and under load, (x, y, z) m, point by point; a closed one does not
    repeat its first point."""

    id: str
    wished: tuple[tuple[float, float, float], ...]
    loaded: tuple[tuple[float, float, float], ...]


@record(frozen=True, slots=True)
class Segment:
    """A stretch of tape down to hoop ``to``: tension N, whether it hangs slack, and by how much it is longer than the
    way between its ends, ``loose`` m (0 where it pulls; None from closed forms, which move no hoop)."""

    to: str
    tension: float
    slack: bool
    loose: float | None = None


@record(frozen=True, slots=True)
class TapeStrength:
    """Tension down one tape."""

    id: str
    segments: tuple[Segment, ...]


@record(frozen=True, slots=True)
class TieStrength:
    """Tension in a tie, N, and whether it hangs slack."""

    id: str
    tension: float
    slack: bool


@record(frozen=True, slots=True)
class WheelStrength:
    """A wheel under its load. ``sinks``: how far the rim goes down at the eight places of ``Wheel.rim``, m;
    ``tilt`` of the rim's plane, radians; what the waistband bears in ``front`` and at the ``back``, N, as if it
    bore in those two places only (below zero where the wheel lifts it); what the ``roll`` bears, N."""

    sinks: tuple[float, ...]
    tilt: float
    front: float
    back: float
    roll: float


@record(frozen=True, slots=True)
class SideStrength:
    """A hoop of a pair under its load, on either side: its ``reach`` beyond the hip's line and how far its
    middle hangs below the waistline (``drop``), how far the middle goes ``down`` from where it is wished, and
    how much of that it hangs below its own ends (``droops``), m. ``bare``: reach and drop without the skirt, as it
    is tried on; None where no rest was found so."""

    hoops: tuple[str, ...]
    reach: float
    drop: float
    down: float
    droops: float
    bare: tuple[float, float] | None = None


@record(frozen=True, slots=True)
class MaterialStrength:
    """What was taken for a stock: bending stiffness in the hoop's plane (weak) and out of it (strong),
    torsion, N m2; elastic limit Pa. ``tests``: of samples, and the ``spread`` of their stiffness (None for
    fewer than two droops)."""

    name: str
    ei_weak: float
    ei_strong: float
    gj: float
    elastic_limit: float
    origin: Literal["bench", "grade"]
    tests: int = 0
    spread: float | None = None


@record(frozen=True, slots=True)
class CordedStrength:
    """What the sample of a corded petticoat says, and its rows of cord taken together as one ring.

    ``stiffness`` EI of the sample along its cords and of one ``cord`` with the cloth that goes with it, N m2;
    ``line`` weight of the sample, N/m, ``weighed`` or worked out; ``bending_length`` m; ``spread`` of its droop tests
    (None for fewer than two); these are None without a droop test. The ring: ``radius`` and ``height`` of its
    middle, m; ``carried`` kg hung from it; ``press`` of the cloth inward, N/m, and ``critical``: what the ring bears
    (None without a test). ``slope``: how far the cloth above goes out for each metre down."""

    stiffness: float | None
    cord: float | None
    line: float
    weighed: bool
    bending_length: float | None
    spread: float | None
    radius: float
    height: float
    slope: float
    carried: float
    press: float
    critical: float | None

    @property
    def factor(self) -> float | None:
        """Load factor at which the ring gives way; None without a test, or where nothing presses."""
        return None if self.critical is None or self.press <= 0.0 else self.critical / self.press


@record(frozen=True, slots=True)
class Buckling:
    """Load factor at which it would buckle. ``at_least`` tells that ``value`` is a lower bound."""

    value: float | None
    at_least: bool


@record(frozen=True, slots=True)
class Weights:
    """Mass by part group, kg: hoops, casings, tapes, waistband, band, joins, a petticoat's ``cloth`` and ``cords``;
    ``total`` is the cage alone."""

    hoops: float
    casings: float
    tapes: float
    waistband: float
    band: float
    joins: float
    cloth: float = 0.0
    cords: float = 0.0

    @property
    def total(self) -> float:
        """The cage alone, kg."""
        parts = self.hoops + self.casings + self.tapes + self.waistband + self.band + self.joins
        return parts + self.cloth + self.cords


Situation = Literal["closing", "door", "chair", "car", "bag", "coil"]


@record(frozen=True, slots=True)
class Handling:
    """What a situation does to the hoop that suffers most: tightest ``radius`` m, ``stress`` there and the
    elastic ``limit`` Pa, ``push`` of the hoop N. ``keeps``: diameter of the curve it keeps, m, or None when
    it springs back. ``part`` is empty for the stock as sold."""

    situation: Situation
    part: str
    radius: float
    stress: float
    limit: float
    push: float
    keeps: float | None


@record(frozen=True, slots=True)
class Seated:
    """Where a hoop lies when the wearer sits: in words, and its ``back``, ``front`` and ``sides`` above the
    floor, m; ``gap`` it is squeezed into behind her, or None; tightest ``radius`` m."""

    id: str
    lies: str
    back: float
    front: float
    sides: float
    gap: float | None
    radius: float


Verdict = Literal["stands", "stands, but", "will not stand"]


@record(frozen=True, slots=True)
class Assessment:
    """What the strength stage found. ``method`` names how (for the annex); ``swing`` of the hem, m, and ``waist_pull``
    outward on the waistband, N; ``carried`` kg hung from it in all, cage included; ``body_push`` is the sum of
    the body's pushes, whichever way each goes, N; ``skirt`` over a wheel or side hoops as they hang, None where hoops
    keep their heights. ``verdict`` opens the plan: ``stands``, ``stands, but`` or ``will not stand``, with ``reasons``
    in plain words."""

    method: str
    checks: tuple[Check, ...]
    hoops: tuple[HoopStrength, ...]
    tapes: tuple[TapeStrength, ...]
    buckling: Buckling
    swing: float | None
    waist_pull: float
    carried: float
    weights: Weights
    materials: tuple[MaterialStrength, ...]
    verdict: Verdict
    reasons: tuple[str, ...]
    lines: tuple[HoopLines, ...] = ()
    handling: tuple[Handling, ...] = ()
    seated: tuple[Seated, ...] = ()
    ties: tuple[TieStrength, ...] = ()
    corded: CordedStrength | None = None
    wheel: WheelStrength | None = None
    sides: tuple[SideStrength, ...] = ()
    body_push: float = 0.0
    skirt: Skirt | None = None
