"""Full Newton iteration in mixed form, and what it found.

Rods' and bars' forces are unknowns beside the movements and are eliminated element by element; what remains
is Newton's method whose geometric stiffness uses the forces foreseen by the last step instead of those that
the half-finished shape would give. Stiff tapes and steels then cost no extra steps, and the first step can
start from tensions found by statics. At the solution both are the same and the tangent is the exact one.

Source: D. Magisano, L. Leonetti, G. Garcea, Comput. Methods Appl. Mech. Engrg 313 (2017) 467-496 (from
memory).
"""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.bars import pull
from hoopwright.strength.cage.rolling import only_rolls
from hoopwright.strength.cage.sparse import all_positive
from hoopwright.strength.cage.system import Evaluated, Guess, State, System

TOLERANCE = 1e-9
"""Largest residual force as a part of the total weight (moments: times the cage's size)."""
HIDDEN = 30.0
"""Times the tolerance within which rounding may hide the balance: an iteration that is so near and no longer
gains tenfold in a step has arrived. Very short rods, between two fixings side by side, make it so."""

LOST = ((3, 30.0), (6, 1.0))
"""Steps after which an iteration is given up that is still so far out, in weights of the whole cage: of all
cages tried, those that arrive are that near after half as many, or one step fewer. `track` then goes other ways."""
LOST_BEHIND_DAMPERS = ((6, 50.0),)
"""The same behind dampers, which let an iteration that arrives go out farther on its way."""
CLOSE = 1e-3
"""Error, in weights, at which a tangent tells as much of a rest's stability as its own would: a thousandth of the load,
where factors are found to a hundredth."""
NEAR, WEAK = 0.02, 10.0
"""An iteration this near, in weights, and behind dampers this weak, that halves its error in a step hardly needs them
any more."""
_ROUNDINGS = (1.0, 0.3, 0.1, 0.03, 0.01, 1e-3, 1e-4, 1e-5)


@record(frozen=True, slots=True)
class Found:
    """A state and what it gives, the largest relative residual, and whether that is small enough. ``firm``: the tangent
    of the last step, taken within `CLOSE` of it and without dampers, had positive pivots alone, and in it the same bars
    pulled and the same nodes were pushed."""

    state: State
    now: Evaluated
    iterations: int
    error: float
    converged: bool
    firm: bool = False

    @property
    def guess(self) -> Guess:
        """Its own forces, to start from."""
        return Guess(self.now.stress, self.now.bars.force)


def start(system: System) -> tuple[State, Guess]:
    """Return the wished state with rods as born and bar tensions by statics."""
    state = system.wished()
    return state, Guess(system.evaluate(state).stress, system.layout.bars.guess.copy())


def relative_error(system: System, residual: Floats, factor: float) -> float:
    """Return the largest residual against the weight (and weight times size for moments)."""
    weight = max(float(np.abs(system.layout.loads.force).sum()) * factor, system.rounding / TOLERANCE)
    unit = np.where(system.is_spin, weight * system.size, weight)
    return float(np.abs(residual / unit).max(initial=0.0))


def true_residual(system: System, state: State, now: Evaluated, factor: float) -> Floats:
    """Return the residual with bars that only pull."""
    return system.residual(state, now, pull(now.bars.force, system.soft)[0], factor)


def balanced(error: float, before: float, enough: float = TOLERANCE) -> bool:
    """Return whether a relative error is small `enough`, or as small as rounding lets it be after the step that
    came from the error `before`."""
    return error <= enough or HIDDEN * TOLERANCE >= error > 0.1 * before


def newton(
    system: System, state: State, guess: Guess, factor: float, most: int = 40, damper: float = 0.0,
    fade: float = 0.67, enough: float = TOLERANCE
) -> Found:
    """Iterate from a state and foreseen forces to equilibrium under `factor` times the load, to an error of `enough`.

    A `damper` above zero ties every node to where it was, each step by only the part `fade` of that, and by a tenth
    once it is near; it changes the way, not the end.
    """
    lay = system.layout
    unit = system.damping_unit(factor)
    now = system.evaluate(state)
    error, firm, tried = np.inf, False, (guess, now)
    for k in range(most + 1):
        tension = pull(now.bars.force, system.soft)[0]
        residual = system.residual(state, now, tension, factor)
        before, error = error, relative_error(system, residual, factor)
        if k > 0 and balanced(error, before, enough):
            return Found(state, now, k, error, True, firm and _held_alike(*tried, now))
        if k == most or not np.isfinite(error) or error > 1e12:
            break
        if any(k >= steps and error > far for steps, far in (LOST_BEHIND_DAMPERS if damper else LOST)):
            break
        guessed, pulling = pull(guess.bars, system.soft)
        foreseen = guessed + pulling * (now.bars.force - guess.bars)
        residual += system.pulls(now, foreseen - tension)
        tangent = system.tangent(state, now, guess, factor)
        factored = system.pattern.factor(tangent, system.hold + damper * unit)
        if factored is None:
            break
        firm, tried = error < CLOSE and damper == 0.0 and all_positive(factored), (guess, now)
        step = factored.solve(-residual)
        step *= shortening(system, step)
        damper *= 0.1 if damper < WEAK and error < NEAR and error < 0.5 * before else fade
        guess = _foresee(system, now, step, lay.bars.ea, lay.bars.length)
        state = system.moved(state, step)
        now = system.evaluate(state)
    return Found(state, now, k, error, False)


def newton_from_soft(system: System, state: State, guess: Guess, factor: float, widest: float) -> Found:
    """Iterate with bars whose going slack is rounded off, less and less, to those that only pull.

    `widest` is the first rounding as a part of a tape's share of the weight. Where the strips of a band
    hang between slack and taut the plain iteration flickers without end; this one finds them.
    """
    share = system.layout.loads.weight * factor / max(len(system.layout.model.tapes), 1)
    try:
        for width in (*(part for part in _ROUNDINGS if part <= widest), 0.0):
            system.soft = width * share
            found = newton(system, state, guess, factor, most=20)
            if not found.converged:
                break
            state, guess = found.state, found.guess
    finally:  # the work may be spent on the way, and the system is asked further
        system.soft = 0.0
    return found


def _held_alike(guess: Guess, before: Evaluated, now: Evaluated) -> bool:
    """Return whether in a tangent, taken with the bars of `guess` at `before`, the same bars pull and the same nodes
    are pushed as in the rest `now`."""
    was, touch = (() if one.contact is None else one.contact.nodes for one in (before, now))
    return np.array_equal(was, touch) and np.array_equal(guess.bars > 0, now.bars.force > 0)


def shortening(system: System, step: Floats) -> float:
    """Return the factor that keeps a step within a fifth of the cage and 0.6 rad."""
    far = float(np.abs(step[~system.is_spin]).max(initial=0.0)) / (0.2 * system.size)
    turn = float(np.abs(step[system.is_spin]).max(initial=0.0)) / 0.6
    return 1.0 / max(1.0, far, turn)


def _foresee(system: System, now: Evaluated, step: Floats, ea: Floats, length: Floats) -> Guess:
    """Return the forces that the step leads to, to first order."""
    full = np.append(step, 0.0)
    turned = now.rods.frame.transpose(0, 2, 1)
    ends = full[system.rod_dofs].reshape(-1, 4, 3)
    local = np.matmul(ends, turned.transpose(0, 2, 1))
    nine = np.concatenate(
        [local[:, 2] - local[:, 0], local[:, 3] - local[:, 1], 0.5 * (local[:, 1] + local[:, 3])], axis=1
    )
    strain = np.matmul(now.rods.gradient, nine[:, :, None])
    rods = now.stress + np.matmul(system.stiffness, strain)[:, :, 0]
    ends = full[system.bar_dofs].reshape(-1, 2, 3)
    bars = now.bars.force + ea / length * np.einsum("ni,ni->n", now.bars.unit, ends[:, 1] - ends[:, 0])
    return Guess(rods, bars)


def true_tangent(system: System, state: State, factor: float, now: Evaluated | None = None) -> Floats:
    """Return the values of the exact tangent of a state, bars that would push left out; ``now`` is what the state
    gives, where that is known."""
    now = now or system.evaluate(state)
    return system.tangent(state, now, Guess(now.stress, now.bars.force), factor)


def stands(system: System, found: Found, factor: float) -> bool:
    """Return whether a rest is stable: as its last step showed, else as `is_stable` says."""
    return found.firm or is_stable(system, found.state, factor, found.now)


def is_stable(system: System, state: State, factor: float, now: Evaluated | None = None) -> bool:
    """Return whether every pivot of the true tangent is positive: the state stands against any small push.

    A round hoop that may roll in its own ring is let roll: see `rolling`. ``now`` as in `true_tangent`.
    """
    tangent = true_tangent(system, state, factor, now)
    factored = system.pattern.factor(tangent, system.hold)
    if factored is None:
        return False
    return all_positive(factored) or only_rolls(system, state, tangent, factored)


def weakest(system: System, state: State, factor: float) -> Floats | None:
    """Return the movement (n,) that the state resists least, by inverse iteration; None if not found."""
    factored = system.pattern.factor(true_tangent(system, state, factor), system.hold)
    if factored is None:
        return None
    v: Floats = np.sin(1.0 + np.arange(system.n) ** 1.3)
    for _ in range(6):
        v = factored.solve(v)
        v = v / float(np.abs(v).max())
    return v
