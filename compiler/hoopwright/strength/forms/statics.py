"""Statics of a cage: what each tape carries, and how it pulls on each hoop.

V_i: load that a tape carries from hoop i down; s_i: slope of its stretch above hoop i, how far it leans out
per length of drop. Tension T_i = V_i sqrt(1 + s_i^2); pull on hoop i, inward positive, F_i = V_i s_i -
V_(i+1) s_(i+1); so the pulls add up to V_1 s_1, the outward pull on the waistband.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from math import pi

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class TapeForces:
    """From the top hoop down: ``carried`` V N, ``tension`` T N, ``pull`` F N, inward positive."""

    carried: tuple[float, ...]
    tension: tuple[float, ...]
    pull: tuple[float, ...]

    @property
    def waist_pull(self) -> float:
        """Outward pull on the waistband, N."""
        return sum(self.pull)


def tape_forces(loads: Sequence[float], slopes: Sequence[float], stretches: Sequence[float]) -> TapeForces:
    """Forces in one tape.

    ``loads`` N it takes at each hoop from the top; ``slopes`` outward run over drop of the stretch above
    each hoop; ``stretches`` length over drop of that stretch (sqrt(1 + s^2) when the tape runs straight
    outward).
    """
    carried = tuple(reversed(list(accumulate(reversed(loads)))))
    outward = [v * s for v, s in zip(carried, slopes, strict=True)]
    below = [*outward[1:], 0.0]
    tension = tuple(v * long for v, long in zip(carried, stretches, strict=True))
    return TapeForces(carried, tension, tuple(a - b for a, b in zip(outward, below, strict=True)))


def thrust(pulls: Sequence[float]) -> float:
    """Compression in a hoop from the pulls of all its tapes, N: their sum over 2 pi."""
    return sum(pulls) / (2 * pi)
