"""Find a stable equilibrium by going downhill in energy: damped Newton steps that are only taken when they
gain.

Slower than the mixed iteration, but it cannot run away: it is the last resort, and settles a shape that
stands only by symmetry. The dampers fade as the steps succeed (Levenberg, Quart. Appl. Math. 2 (1944)
164-168).
"""

from __future__ import annotations

from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.newton import (
    HIDDEN,
    TOLERANCE,
    Found,
    relative_error,
    shortening,
    true_residual,
    true_tangent,
)
from hoopwright.strength.cage.sparse import all_positive
from hoopwright.strength.cage.system import State, System

MOST_DOWNHILL = 200
LEAST, FIRST = 1e-4, 4.0
"""A damper that is counted as none; by how much it grows when a step gains nothing, each time in a row by so much
more."""


def relax(system: System, state: State, factor: float, most: int = MOST_DOWNHILL) -> Found:
    """Go downhill from a state under `factor` times the load until it is in balance, or the steps run out."""
    unit = system.damping_unit(factor)
    damper, growth, now = 0.0, FIRST, system.evaluate(state)
    energy = system.energy(state, factor, now)
    residual = true_residual(system, state, now, factor)
    error = relative_error(system, residual, factor)
    tangent = true_tangent(system, state, factor, now)
    for k in range(most):
        if error <= TOLERANCE:
            return Found(state, now, k, error, True)
        step, damper = _downhill(system, tangent, residual, damper, unit)
        if step is None:
            break
        trial = system.moved(state, step * shortening(system, step))
        ahead = system.evaluate(trial)
        gained = energy - system.energy(trial, factor, ahead)
        left = true_residual(system, trial, ahead, factor)
        after = relative_error(system, left, factor)
        if gained > 0 or (after < error and gained > -1e-9 * abs(energy)):
            state, now, energy, residual, error = trial, ahead, energy - gained, left, after
            tangent = true_tangent(system, state, factor, now)
            damper, growth = damper / 4 if damper > LEAST else 0.0, FIRST
        elif error <= HIDDEN * TOLERANCE:
            return Found(state, now, k, error, True)
        else:
            damper, growth = max(growth * damper, 10 * LEAST), growth * FIRST
            if damper > 1e12:
                break
    return Found(state, now, most, error, False)


def _downhill(
    system: System, tangent: Floats, residual: Floats, damper: float, unit: Floats
) -> tuple[Floats | None, float]:
    """The step down from where the tangent was taken, and the damper, raised until there is one."""
    growth = FIRST
    for _ in range(40):
        factored = system.pattern.factor(tangent, system.hold + damper * unit)
        if factored is not None and all_positive(factored):
            return factored.solve(-residual), damper
        damper, growth = max(growth * damper, 10 * LEAST), growth * FIRST
    return None, damper
