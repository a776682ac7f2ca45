"""Find a stable equilibrium by going downhill in energy: damped Newton steps that are only taken when they
gain.

Slower than the mixed iteration, but it cannot run away: it is the last resort, and settles a shape that
stands only by symmetry. The dampers fade as the steps succeed (Levenberg, Quart. Appl. Math. 2 (1944)
164-168).
"""

from __future__ import annotations

import numpy as np

from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.newton import TOLERANCE, Found, relative_error, shortening, true_residual
from hoopwright.strength.cage.sparse import all_positive
from hoopwright.strength.cage.system import Evaluated, Guess, State, System

MOST_DOWNHILL = 200


def relax(system: System, state: State, factor: float, most: int = MOST_DOWNHILL) -> Found:
    """Go downhill from a state under `factor` times the load until it is in balance, or the steps run out."""
    unit = system.damping_unit(factor)
    damper, now = 0.0, system.evaluate(state)
    energy = system.energy(state, factor, now)
    error = np.inf
    for k in range(most):
        residual = true_residual(system, state, now, factor)
        error = relative_error(system, residual, factor)
        if error <= TOLERANCE:
            return Found(state, Guess(now.stress, now.bars.force), k, error, True)
        step, damper = _downhill(system, state, now, residual, factor, damper, unit)
        if step is None:
            break
        trial = system.moved(state, step * shortening(system, step))
        ahead = system.evaluate(trial)
        gained = energy - system.energy(trial, factor, ahead)
        better = relative_error(system, true_residual(system, trial, ahead, factor), factor) < error
        if gained > 0 or (better and gained > -1e-9 * abs(energy)):
            state, now, energy = trial, ahead, energy - gained
            damper = damper / 4 if damper > 1e-4 else 0.0
        else:
            damper = max(4 * damper, 1e-3)
            if damper > 1e12:
                break
    return Found(state, Guess(now.stress, now.bars.force), most, float(error), False)


def _downhill(
    system: System, state: State, now: Evaluated, residual: Floats, factor: float, damper: float, unit: Floats
) -> tuple[Floats | None, float]:
    tangent = system.tangent(state, now, Guess(now.stress, now.bars.force), factor)
    for _ in range(40):
        factored = system.pattern.factor(tangent, system.hold + damper * unit)
        if factored is not None and all_positive(factored):
            return factored.solve(-residual), damper
        damper = max(4 * damper, 1e-3)
    return None, damper
