"""Bars that only pull: tapes, ties, and the strips of a hem band."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats, Ints, outer


@record(frozen=True, slots=True)
class Bars:
    """n bars, all (n,): end nodes, free `length` m, `ea` N, tension `guess` N by statics, and whose they are: `owner`
    counts into `names`, of tapes, bands and ties."""

    first: Ints
    second: Ints
    length: Floats
    ea: Floats
    guess: Floats
    owner: Ints
    names: tuple[str, ...]


@record(frozen=True, slots=True)
class BarState:
    """Of n bars the `unit` vectors (n, 3) from first end to second, present lengths `size` (n,) m, and the linear
    (two-way) `force` EA x strain (n,) N."""

    unit: Floats
    size: Floats
    force: Floats


def bar_state(bars: Bars, x: Floats) -> BarState:
    """Return the bars' geometry at node positions x."""
    d = x[bars.second] - x[bars.first]
    size = np.maximum(np.sqrt(np.einsum("ni,ni->n", d, d)), 1e-9)
    return BarState(d / size[:, None], size, bars.ea * (size / bars.length - 1))


def pull(force: Floats, soft: float) -> tuple[Floats, Floats]:
    """Return the tension of bars that only pull from their two-way force, and its derivative.

    With `soft` N above zero the corner where a bar goes slack is rounded off over about that force:
    (f + sqrt(f^2 + soft^2))/2. Bars that hang between slack and taut then no longer flicker.
    """
    if soft <= 0:
        return np.maximum(force, 0.0), (force > 0).astype(np.float64)
    root = np.sqrt(force**2 + soft**2)
    return 0.5 * (force + root), 0.5 * (1 + force / root)


def pull_energy(force: Floats, soft: float) -> Floats:
    """Return the integral of the tension over the two-way force, N^2: half the square of a taut bar's."""
    if soft <= 0:
        return 0.5 * np.maximum(force, 0.0) ** 2
    root = np.sqrt(force**2 + soft**2)
    return 0.25 * (force**2 + force * root + soft**2 * np.arcsinh(force / soft))


def bar_tangent(bars: Bars, state: BarState, pulling: Floats, tension: Floats) -> Floats:
    """Return the (n, 3, 3) stiffness of the second end against the first.

    `pulling` is the derivative of tension by two-way force; `tension` acts in the geometric part.
    """
    along = outer(state.unit, state.unit)
    stiff = (pulling * bars.ea / bars.length)[:, None, None] * along
    return stiff + (tension / state.size)[:, None, None] * (np.eye(3) - along)
