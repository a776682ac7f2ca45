"""Follow the cage along its load: reach it, then see how many times as much it carries and what stops it.

The load grows in steps from a known state; after each the pivots of the tangent and the stops are checked,
and a step that fails is halved until the factor is known to one part in a hundred. A shape beyond the stops,
or one that stands only by symmetry, is never a basis.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.linear import linear_factor
from hoopwright.strength.cage.newton import Found, is_stable, newton, newton_from_soft, start
from hoopwright.strength.cage.outline import outline, sag
from hoopwright.strength.cage.relax import MOST_DOWNHILL, relax
from hoopwright.strength.cage.result import Factor, Limit
from hoopwright.strength.cage.sparse import SETTING_UP, Spent
from hoopwright.strength.cage.system import Guess, State, System

CAP = 3.0
PRECISION = 0.01
_LIGHT = (0.5, 0.1, 0.02, 2e-3, 1e-4, 1e-6)
_DAMPERS = ((3000.0, 0.5), (1000.0, 0.67))
"""First dampers, in the stiffness with which the cage hangs, and how they fade: the quicker of two ways that found
every cage tried, and the surer."""
_DOWNHILL = 0.4
"""Share of the work left that going downhill may take, so that some is left to climb with."""
Trouble = tuple[Limit, str | None]
Method = Literal["auto", "tracked", "none"]


@record(frozen=True, slots=True)
class Stops:
    """When a hoop counts as collapsed: sag, out of round as shares of its width, tilt in rad; shift as a
    share of the cage.

    Our judgement, not a standard's.
    """

    sag: float = 0.10
    out_of_round: float = 0.15
    tilt: float = 0.5
    shift: float = 0.5


@record(frozen=True, slots=True)
class Reached:
    """What was reached on the way to factor 1: a sound state there, or the last factor and what stopped it.

    `found` is the last thing tried at factor 1, sound or not. `at_least`: the work allowed ended there.
    """

    found: Found
    sound: bool
    factor: float
    trouble: Trouble | None
    at_least: bool = False


def beyond(system: System, state: State, stops: Stops, margin: float = 1.0) -> tuple[Limit, str] | None:
    """Return the first stop that a state passes (its departures times `margin`), and the hoop; None within
    all.
    """
    for hoop, mesh in zip(system.layout.model.hoops, system.layout.hoops, strict=True):
        lies = outline(system, state, mesh)
        if margin * float(np.sqrt(np.dot(lies.shift, lies.shift))) > stops.shift * system.size:
            return "shift", hoop.id
        if len(hoop.points) == 2:
            continue
        width = float(np.ptp(system.layout.x[mesh.nodes, :2], axis=0).max())
        if margin * lies.tilt > stops.tilt:
            return "tilt", hoop.id
        if margin * float(np.abs(lies.outward).max()) > stops.out_of_round * width:
            return "out of round", hoop.id
        if margin * sag(system, hoop, lies) > stops.sag * width:
            return "sag", hoop.id
    return None


def reach(system: System, stops: Stops) -> Reached:
    """Return the sound state at factor 1, the rods' stiffness taken for the shape that they have in it."""
    reached = _reach(system, stops)
    if not reached.sound or not system.follow(system.evaluate(reached.found.state)):
        return reached
    last = reached.found
    found = newton(system, last.state, last.guess, 1.0)
    found = replace(found, iterations=last.iterations + found.iterations)
    trouble = _trouble(system, found, 1.0, stops)
    return Reached(found, trouble is None, 1.0, trouble)


def _reach(system: System, stops: Stops) -> Reached:
    """At once in one of the ways, or by load steps from a light load."""
    tried: list[tuple[Found, Trouble]] = []
    for found in _at_once(system):
        trouble = _trouble(system, found, 1.0, stops)
        if trouble is None:
            return Reached(found, True, 1.0, None)
        tried.append((found, trouble))
    first, trouble = tried[0]
    for light in _LIGHT:
        found = _from_wished(system, light)
        if _trouble(system, found, light, stops) is None:
            last, factor, why = climb(system, found, light, 1.0, light, stops)
            if why is None:
                return Reached(last, True, 1.0, None)
            return Reached(first, False, factor, trouble if first.converged else why, why[0] == "spent")
    return Reached(*next(((found, False, 0.0, why) for found, why in tried if found.converged),
                         (first, False, 0.0, trouble)))


def _at_once(system: System) -> Iterator[Found]:
    """The whole load from the wished shape, one way after another, the quickest first: plainly; behind dampers
    that fade; with slackness rounded off; with a body, downhill in energy."""
    first = _from_wished(system, 1.0)
    yield first
    balanced = first.converged
    for damper, fade in _DAMPERS:
        damped = newton(system, *start(system), 1.0, most=30, damper=damper, fade=fade)
        balanced = balanced or damped.converged
        yield damped
    if not balanced:
        yield newton_from_soft(system, *start(system), 1.0, widest=1.0)
    if system.body is not None:
        yield relax(system, system.wished(), 1.0, most=_affordable(system))


def factor_of(system: System, reached: Reached, stops: Stops, method: Method) -> Factor | None:
    """Return the load factor; None when asked for none or when nothing stands."""
    if method == "none" or (not reached.sound and reached.factor <= 0):
        return None
    if not reached.sound:
        limit, part = reached.trouble if reached.trouble is not None else ("no equilibrium", None)
        return Factor(reached.factor, reached.at_least, "spent" if reached.at_least else limit, part, "tracked")
    try:
        enough = method == "auto" and linear_will_do(system, reached.found, stops)
    except Spent:
        return Factor(1.0, True, "spent", None, "linear")
    if enough:
        return Factor(CAP, True, "cap", None, "linear")
    _, factor, why = climb(system, reached.found, 1.0, CAP, CAP - 1.0, stops)
    return Factor(factor, why is None or why[0] == "spent", *(why or ("cap", None)), "tracked")


def linear_will_do(system: System, found: Found, stops: Stops) -> bool:
    """Return whether the linear factor shows on the safe side that the cage carries `CAP` times its load.

    Only with full sets of tapes on closed hoops, no gap over a quarter of the girth, and movement under
    0.2 of the shortest stretch of tape is it low rather than high; and it must exceed the cap by half,
    with the movement, grown accordingly, far within the stops.
    """
    model, bars = system.layout.model, system.layout.bars
    if model.ties or model.joins or model.bands or not model.tapes or not all(h.closed for h in model.hoops):
        return False
    if any(h.section.is_round for h in model.hoops):
        return False
    for hoop in model.hoops:
        at = sorted(f % 1.0 for t in model.tapes for h, f in t.fixings if h == hoop.id)
        gaps = [b - a for a, b in zip(at, [*at[1:], at[0] + 1.0], strict=True)] if at else [1.0]
        if len(at) < len(model.tapes) or max(gaps) > 0.25:
            return False
    moved = float(np.sqrt(((found.state.x - system.layout.x) ** 2).sum(axis=1)).max())
    if moved > 0.2 * float(bars.length.min()) or beyond(system, found.state, stops, 3 * CAP) is not None:
        return False
    value = linear_factor(system, found)
    return value is not None and value > 1.5 * CAP


def _from_wished(system: System, factor: float) -> Found:
    state, guess = start(system)
    return newton(
        system, state, Guess(guess.rods, guess.bars * factor), factor, most=25 if factor == 1.0 else 15
    )


def climb(
    system: System, base: Found, low: float, top: float, step: float, stops: Stops
) -> tuple[Found, float, Trouble | None]:
    """Climb from a sound state at `low` to `top`; return the last sound state, its factor, and what stopped
    it.
    """
    why: Trouble | None = None
    known = np.inf  # the least factor at which a balance was found that does not do
    while low < top * (1 - 1e-9):
        high = min(top, low + step)
        if high >= known * (1 - 1e-9):
            high = 0.5 * (low + known)
        try:
            ahead = _ahead(system, base, low, high)
            trouble = _trouble(system, ahead, high, stops)
            if trouble is None and high > 2 * low and leapt(system, base, ahead, high / low):
                step = 0.5 * (high - low)
                continue
        except Spent:  # what stops it lies somewhere between here and the step that failed
            return base, low, ("spent", None)
        if trouble is None:
            low, base = high, ahead
            if known - low <= PRECISION * low:
                return base, low, why
            step = step if why is not None else max(step, 0.25 * low)
            continue
        why, known = trouble, high if ahead.converged else known
        if high - low <= PRECISION * low:
            return base, low, why
        step = max(0.5 * (high - low), 0.9 * PRECISION * low)
    return base, low, None


def leapt(system: System, base: Found, ahead: Found, more: float) -> bool:
    """Whether a long step moved the cage over twice as far as its movement so far foretells: it may have passed
    a place where the cage gives way."""
    so_far = float(np.abs(base.state.x - system.layout.x).max())
    return float(np.abs(ahead.state.x - base.state.x).max()) > 2 * (more - 1) * so_far


def _ahead(system: System, base: Found, low: float, high: float) -> Found:
    """The state at `high`, looked for from a sound one at `low`."""
    guess = Guess(base.guess.rods, base.guess.bars * (high / low))
    ahead = newton(system, base.state, guess, high, most=15)
    if not ahead.converged:
        ahead = newton_from_soft(system, base.state, guess, high, widest=0.1)
    if not ahead.converged and system.body is not None:
        ahead = relax(system, base.state, high, most=60)
    return ahead


def _affordable(system: System) -> int:
    """Steps downhill that the work left allows, the usual number at most."""
    return int(min(MOST_DOWNHILL, _DOWNHILL * system.pattern.left / (system.n + SETTING_UP)))


def _trouble(system: System, found: Found, factor: float, stops: Stops) -> Trouble | None:
    if not found.converged:
        return "no equilibrium", None
    over = beyond(system, found.state, stops)
    if over is not None:
        return over
    return None if is_stable(system, found.state, factor) else ("unstable", None)
