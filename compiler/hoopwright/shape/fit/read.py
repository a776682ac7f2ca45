"""What a fitting's readings mean: how much was off, and whether at the waistband, at a tape or at a hoop.

The hem off by the same all round is taken up at the waistband; one tape off means that tape's marks; one hoop
off means that hoop's marks alone. What was right within its tolerance is left alone: marks move only when
the hem is somewhere off by more than its tolerance, and then every tape is brought within half the tolerance
of a mark.
"""

from __future__ import annotations

from collections.abc import Mapping
from statistics import median

from hoopwright.shape.model import Hoop, Shape
from hoopwright.source.record import record
from hoopwright.spec.model import Fitting, Spec

_NOISE = 1e-9


@record(frozen=True, slots=True)
class Reading:
    """What is off, m, low positive: ``all_round`` at every tape, ``tapes`` beyond that, ``hoops`` by
    themselves; ``girths`` (drawn, made) of hoops made to another girth, ``waist`` (drawn, closed)."""

    low: Mapping[str, float]
    all_round: float
    tapes: Mapping[str, float]
    hoops: Mapping[str, float]
    girths: Mapping[str, tuple[float, float]]
    waist: tuple[float, float] | None


def reading(fitting: Fitting, spec: Spec, shape: Shape) -> Reading:
    """The fitting's readings against the shape as it was meant then."""
    wanted = spec.shape.hem_off_floor
    low = {tape: wanted - found for tape, found in fitting.hem.items()}
    all_round, tapes = _split(low, spec, len(shape.tapes))
    tolerance = spec.allowances.hoop_tolerance + _NOISE
    hoops = {hoop.id: hoop for hoop in shape.hoops}
    girths = {name: (hoops[name].girth, made) for name, made in fitting.hoop_girths.items()
              if name in hoops and abs(made - hoops[name].girth) > tolerance}
    band = shape.waistband.girth
    waist = fitting.waist
    return Reading(
        low, all_round, tapes, _hoops_off(fitting, hoops, spec), girths,
        (band, waist) if waist is not None and abs(waist - band) > tolerance else None)


def _hoops_off(fitting: Fitting, hoops: Mapping[str, Hoop], spec: Spec) -> dict[str, float]:
    """Hoops whose middle was measured beyond the hem's tolerance; at a tilted hoop its mean height counts."""
    off = {name: hoops[name].height - found for name, found in fitting.hoop_heights.items() if name in hoops}
    return {name: low for name, low in off.items() if abs(low) > spec.allowances.hem_tolerance + _NOISE}


def least_move(spec: Spec) -> float:
    """A mark that would move by less is left where it is, m: half a mark's tolerance."""
    return spec.allowances.tape_tolerance / 2 + _NOISE


def _split(low: Mapping[str, float], spec: Spec, count: int) -> tuple[float, dict[str, float]]:
    """What is the same at all tapes, and what single tapes are off beyond it."""
    rules = spec.allowances
    if not low or max(map(abs, low.values())) <= rules.hem_tolerance + _NOISE:
        return 0.0, {}
    same = median(low.values()) if len(low) == count else 0.0
    if abs(same) <= rules.hem_tolerance + _NOISE:
        same = 0.0
    rest = {tape: off - same for tape, off in low.items()}
    return same, {tape: off for tape, off in rest.items() if abs(off) > least_move(spec)}
