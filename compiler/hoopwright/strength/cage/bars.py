"""Bars that only pull: tapes, ties, and the strips of a hem band."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from hoopwright.strength.cage.arrays import Floats, Ints, outer


@dataclass(frozen=True)
class Bars:
    """End nodes, free length m, EA N, guessed tension N, and whose they are (index into `names`)."""

    first: Ints
    second: Ints
    length: Floats
    ea: Floats
    guess: Floats
    owner: Ints
    names: tuple[str, ...]


@dataclass(frozen=True)
class BarState:
    """Unit vectors, lengths, and the linear (two-way) force EA x strain of every bar."""

    unit: Floats
    size: Floats
    force: Floats


def bar_state(bars: Bars, x: Floats) -> BarState:
    """Return the bars' geometry at node positions x."""
    d = x[bars.second] - x[bars.first]
    size = np.maximum(np.sqrt(np.einsum("ni,ni->n", d, d)), 1e-9)
    return BarState(d / size[:, None], size, bars.ea * (size / bars.length - 1))


def bar_tangent(bars: Bars, state: BarState, pulling: Ints, tension: Floats) -> Floats:
    """Return the (n, 3, 3) stiffness of the second end against the first; `tension` acts in the geometric
    part.
    """
    along = outer(state.unit, state.unit)
    stiff = (pulling * bars.ea / bars.length)[:, None, None] * along
    return stiff + (tension / state.size)[:, None, None] * (np.eye(3) - along)
