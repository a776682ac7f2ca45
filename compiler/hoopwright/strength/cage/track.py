"""Follow the cage along its load: how many times the load it carries, and what stops it.

The load grows in steps from a known state; after each the pivots of the tangent and the stops are checked.
What fails is halved until the factor is known to one part in a hundred. A shape beyond the stops is never a
basis.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from hoopwright.strength.cage.newton import Found, is_stable, newton, start
from hoopwright.strength.cage.relax import relax
from hoopwright.strength.cage.report import outline, sag
from hoopwright.strength.cage.result import Factor, Limit
from hoopwright.strength.cage.system import Guess, State, System

CAP = 3.0
STEP = 0.25
PRECISION = 0.01
LEAST = 1e-6


@dataclass(frozen=True)
class Stops:
    """When a hoop counts as collapsed: sag and out of round as shares of its width, tilt in rad. Our
    judgement.
    """

    sag: float = 0.10
    out_of_round: float = 0.15
    tilt: float = 0.5


def beyond(system: System, state: State, stops: Stops) -> tuple[Limit, str] | None:
    """Return the first stop that a state passes, and the hoop; None within all."""
    for hoop, mesh in zip(system.layout.model.hoops, system.layout.hoops, strict=True):
        lies = outline(system, state, mesh)
        width = float(np.ptp(system.layout.x[mesh.nodes, :2], axis=0).max())
        if lies.tilt > stops.tilt:
            return "tilt", hoop.id
        if float(np.abs(lies.outward).max()) > stops.out_of_round * width:
            return "out of round", hoop.id
        if sag(system, mesh, hoop, lies.drop) > stops.sag * width:
            return "sag", hoop.id
    return None


def seek(system: System, factor: float) -> Found:
    """Return the equilibrium under `factor` times the load, from the wished shape: Newton, then fading
    dampers.
    """
    state, guess = start(system)
    guess = Guess(guess.rods, guess.bars * factor)
    found = newton(system, state, guess, factor)
    for damper in (1.0, 30.0):
        if found.converged:
            return found
        found = newton(system, state, guess, factor, damper=damper)
    return found if found.converged else relax(system, state, factor)


def factor_of(system: System, base: Found | None, stops: Stops, method: str) -> Factor | None:
    """Return the load factor, tracked from `base` at factor 1, or from below when there is no sound base."""
    if method == "none":
        return None
    if base is None:
        return _below_one(system, stops)
    return _climb(system, base, 1.0, CAP, stops)


def _climb(system: System, base: Found, low: float, top: float, stops: Stops) -> Factor:
    state, step = base, STEP
    why: tuple[Limit, str | None] = ("cap", None)
    while low < top:
        high = min(top, low + step)
        ahead = _further(system, state, high / low, high)
        trouble = _trouble(system, ahead, high, stops)
        if trouble is None:
            low, state = high, ahead
            continue
        why = trouble
        if step <= PRECISION * low:
            return Factor(low, False, why[0], why[1], "tracked")
        step = max(0.5 * (high - low), 0.9 * PRECISION * low)
        top = min(top, high)
    return Factor(low, why[0] == "cap", why[0], why[1], "tracked")


def _further(system: System, found: Found, growth: float, factor: float) -> Found:
    guess = Guess(found.guess.rods, found.guess.bars * growth)
    return newton(system, found.state, guess, factor, most=25)


def _trouble(system: System, found: Found, factor: float, stops: Stops) -> tuple[Limit, str | None] | None:
    if not found.converged:
        return "no equilibrium", None
    over = beyond(system, found.state, stops)
    if over is not None:
        return over
    return None if is_stable(system, found.state, factor) else ("unstable", None)


def _below_one(system: System, stops: Stops) -> Factor | None:
    """Return a factor under 1: halve the load until the cage stands, then climb; None if it never does."""
    low = 0.5
    while low > LEAST:
        found = newton(system, *_light_start(system, low), low)
        if _trouble(system, found, low, stops) is None:
            climbed = _climb_to(system, found, low, min(1.0, 2 * low), stops)
            return (
                climbed
                if climbed.limit != "cap"
                else Factor(climbed.value, False, "no equilibrium", None, "tracked")
            )
        low *= 0.5 if low > 0.1 else 0.25
    return None


def _light_start(system: System, factor: float) -> tuple[State, Guess]:
    state, guess = start(system)
    return state, Guess(guess.rods, guess.bars * factor)


def _climb_to(system: System, base: Found, low: float, top: float, stops: Stops) -> Factor:
    """Climb in eighths of the way; the first trouble is halved as in `_climb`."""
    state, step = base, (top - low) / 8
    why: tuple[Limit, str | None] = ("cap", None)
    while low < top * (1 - 1e-9):
        high = min(top, low + step)
        ahead = _further(system, state, high / low, high)
        trouble = _trouble(system, ahead, high, stops)
        if trouble is None:
            low, state = high, ahead
            continue
        why, top = trouble, high
        if step <= PRECISION * low:
            break
        step = max(0.5 * (high - low), 0.9 * PRECISION * low)
    return Factor(low, False, why[0], why[1], "tracked")
