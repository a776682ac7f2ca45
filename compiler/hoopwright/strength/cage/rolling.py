"""A round rod that was born straight may roll in its own curve: nothing holds it and nothing changes.

In truth that movement is neutral; a mesh of straight-born rods makes it slightly unstable, by an amount that
falls with the square of their length. The stability of everything else is judged by
inertia: with K negative on the rolls alone (they do not meet one another), as many negative pivots as there
are such rolls means that K is positive on all that is K-orthogonal to them (Sylvester).
"""

from __future__ import annotations

import numpy as np

from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.model import HoopPoint
from hoopwright.strength.cage.sparse import Factored
from hoopwright.strength.cage.system import State, System

SLIGHT = 0.05
"""A roll resists by less than this share of one rod's own twist, or it is more than the mesh's doing."""


def rolls(system: System, state: State) -> list[Floats]:
    """Return the rolling movement (n,) of every round hoop, closed or open, that was born straight and of which
    no join holds the turn."""
    model, found = system.layout.model, []
    stiff = {place.hoop for join in model.joins if join.stiff for place in (join.a, join.b)
             if isinstance(place, HoopPoint)}
    for hoop, mesh in zip(model.hoops, system.layout.hoops, strict=True):
        sprung = hoop.born == "straight" and not hoop.born_curvature
        if hoop.section.is_round and sprung and hoop.id not in stiff:
            full = np.zeros(system.n + 1)
            full[system.spin[mesh.nodes]] = state.triads[mesh.nodes, :, 0]
            found.append(full[: system.n])
    return found


def only_rolls(system: System, state: State, tangent: Floats, factored: Factored) -> bool:
    """Return whether every negative pivot belongs to a hoop that rolls."""
    pivots = factored.pivots
    if pivots is None:
        return False
    negative = int((pivots <= 0).sum())
    rods = system.layout.rods
    twist = float((rods.section[:, 1:].max(axis=1) / rods.length).max())
    rolling = 0
    for roll in rolls(system, state):
        resists = float(roll @ system.pattern.times(tangent, roll)) / float(roll @ roll)
        if abs(resists) > SLIGHT * twist:
            return False
        rolling += resists <= 0
    return 0 < negative == rolling
