"""Follow the cage along its load: reach it, then see how many times as much it carries and what stops it.

The load grows in steps from a known state; after each the pivots of the tangent and the stops are checked,
and a step that fails is halved until the factor is known to one part in a hundred. A shape beyond the stops,
or one that stands only by symmetry, is never a basis.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot, log

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.newton import Found, newton, newton_from_soft, stands, start
from hoopwright.strength.cage.relax import MOST_DOWNHILL, relax
from hoopwright.strength.cage.result import Factor, Limit
from hoopwright.strength.cage.sparse import Spent, cost
from hoopwright.strength.cage.system import Guess, State, System

CAP = 3.0
"""Times its load up to which a cage is followed where no more is asked of it."""
PRECISION = 0.01
"""Part of a load factor to which it is known."""
_LIGHT = (0.5, 0.1, 0.02, 2e-3, 1e-4, 1e-6)
_DAMPERS = ((3000.0, 0.5), (1000.0, 0.67))
"""First dampers, in the stiffness with which the cage hangs, and how they fade: the quicker of two ways that found
every cage tried, and the surer."""
_DOWNHILL = 0.4
"""Share of the work left that going downhill may take, so that some is left to climb with."""
ROUGH = 1e-3
"""Error, in weights, at which a rest is known well enough to take the rods' stiffness for the shape in it."""
PROBE = 1e-6
"""Error at which a rest under more than the load is known well enough to be judged."""
STOPPED: tuple[Limit, ...] = ("shift", "tilt", "out of round", "sag")
"""Limits that a state comes near by degrees."""
Trouble = tuple[Limit, str | None]


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

    Where none is sound, `found` is the first that was tried at factor 1, or the first there that balanced. `at_least`:
    the work allowed ended there.
    """

    found: Found
    sound: bool
    factor: float
    trouble: Trouble | None
    at_least: bool = False


def beyond(system: System, state: State, stops: Stops) -> tuple[Limit, str] | None:
    """Return the first stop that a state passes, and the hoop; None within all."""
    return next(((limit, hoop) for share, limit, hoop in _shares(system, state, stops) if share > 1), None)


def _shares(system: System, state: State, stops: Stops) -> Iterator[tuple[float, Limit, str]]:
    """How much of every stop a state takes up, hoop by hoop."""
    for hoop, line in zip(system.layout.model.hoops, system.lines, strict=True):
        lies = line.lies(state.x, state.triads)
        yield hypot(*lies.shift) / (stops.shift * system.size), "shift", hoop.id
        if len(hoop.points) > 2:
            yield lies.tilt / stops.tilt, "tilt", hoop.id
            yield float(np.abs(lies.outward).max()) / (stops.out_of_round * line.width), "out of round", hoop.id
            yield lies.sag / (stops.sag * line.width), "sag", hoop.id


def reach(system: System, stops: Stops) -> Reached:
    """Return the sound state at factor 1, the rods' stiffness taken for the shape that they have in it: at once in
    one of the ways, or by load steps from a light load."""
    tried: list[tuple[Found, Trouble]] = []
    for rough in _at_once(system):
        found = _settled(system, rough)
        trouble = _trouble(system, found, 1.0, stops)
        if trouble is None:
            return Reached(found, True, 1.0, None)
        tried.append((found, trouble))
        system.unfollow()
    first, trouble = tried[0]
    for light in _LIGHT:
        found = _from_wished(system, light)
        if _trouble(system, found, light, stops) is None:
            last, factor, why = climb(system, found, light, 1.0, light, stops)
            if why is None:
                found = _settled(system, last)
                trouble = _trouble(system, found, 1.0, stops)
                return Reached(found, trouble is None, 1.0, trouble)
            return Reached(first, False, factor, trouble if first.converged else why, why[0] == "spent")
    return Reached(*next(((found, False, 0.0, why) for found, why in tried if found.converged),
                         (first, False, 0.0, trouble)))


def _settled(system: System, rough: Found) -> Found:
    """Return a rest to the last figure, the rods' stiffness taken for their shape in it."""
    if not rough.converged:
        return rough
    system.follow(rough.now)
    found = newton(system, rough.state, rough.guess, 1.0)
    return replace(found, iterations=rough.iterations + found.iterations)


def _at_once(system: System) -> Iterator[Found]:
    """The whole load from the wished shape, roughly, one way after another, the quickest first: plainly; behind dampers
    that fade; with slackness rounded off; with a body, downhill in energy."""
    first = newton(system, *start(system), 1.0, most=25, enough=ROUGH)
    yield first
    balanced = first.converged
    for damper, fade in _DAMPERS:
        damped = newton(system, *start(system), 1.0, most=30, damper=damper, fade=fade, enough=ROUGH)
        balanced = balanced or damped.converged
        yield damped
    if not balanced:
        yield newton_from_soft(system, *start(system), 1.0, widest=1.0)
    if system.body is not None:
        yield relax(system, system.wished(), 1.0, most=_affordable(system))


def factor_of(system: System, reached: Reached, stops: Stops, cap: float = CAP) -> Factor | None:
    """Return the load factor, followed up to `cap`, above 1; None when nothing stands."""
    if not reached.sound and reached.factor <= 0:
        return None
    if not reached.sound:
        limit, part = reached.trouble if reached.trouble is not None else ("no equilibrium", None)
        return Factor(reached.factor, reached.at_least, "spent" if reached.at_least else limit, part)
    _, factor, why = climb(system, reached.found, 1.0, cap, min(cap, CAP) - 1.0, stops)
    return Factor(factor, why is None or why[0] == "spent", *(why or ("cap", None)))


def _from_wished(system: System, factor: float) -> Found:
    state, guess = start(system)
    return newton(system, state, Guess(guess.rods, guess.bars * factor), factor, most=15)


def climb(
    system: System, base: Found, low: float, top: float, step: float, stops: Stops
) -> tuple[Found, float, Trouble | None]:
    """Climb from a sound state at `low` to `top`; return the last sound state, its factor, and what stopped
    it.
    """
    why: Trouble | None = None
    known = np.inf  # the least factor at which a balance was found that does not do
    passed, sound = None, 0  # the balance that the last step but so many found to pass a stop
    while low < top * (1 - 1e-9):
        high = min(top, low + step)
        if high >= known * (1 - 1e-9):
            high = 0.5 * (low + known)
        if passed is not None and sound < 4:
            high = _foretold(low, known, *(_fullest(system, one.state, stops) for one in (base, passed)))
        try:
            ahead = _ahead(system, base, low, high)
            trouble = _trouble(system, ahead, high, stops)
            if trouble is None and high > 2 * low and leapt(system, base, ahead, high / low):
                step, passed = 0.5 * (high - low), None
                continue
        except Spent:  # what stops it lies somewhere between here and the step that failed
            return base, low, ("spent", None)
        if trouble is None:
            low, base, sound = high, ahead, sound + 1
            if known - low <= PRECISION * low:
                return base, low, why
            step = step if why is not None else max(step, 0.25 * low)
            continue
        why, known = trouble, high if ahead.converged else known
        passed, sound = ahead if ahead.converged and trouble[0] in STOPPED else None, 0
        if high - low <= PRECISION * low:
            return base, low, why
        step = max(0.5 * (high - low), 0.9 * PRECISION * low)
    return base, top, None


def _fullest(system: System, state: State, stops: Stops) -> float:
    """The greatest share of a stop that a state takes up."""
    return max(share for share, _, _ in _shares(system, state, stops))


def _foretold(low: float, high: float, at_low: float, at_high: float) -> float:
    """Return a factor just below the one at which a stop is passed, or just above `low` where that is as near.

    `at_low`, below 1, and `at_high`, above 1, are the shares of the stop taken up at either; they are taken to grow
    as a power of the load, which is what they nearly do.
    """
    power = log(high / low) / log(at_high / max(at_low, 1e-6))
    passes = high / float(at_high**power)
    aim = max((1 - 0.5 * PRECISION) * passes, (1 + 0.9 * PRECISION) * low)
    return min(aim, low + 0.75 * (high - low))


def leapt(system: System, base: Found, ahead: Found, more: float) -> bool:
    """Whether a long step moved the cage over twice as far as its movement so far foretells: it may have passed
    a place where the cage gives way."""
    so_far = float(np.abs(base.state.x - system.layout.x).max())
    return float(np.abs(ahead.state.x - base.state.x).max()) > 2 * (more - 1) * so_far


def _ahead(system: System, base: Found, low: float, high: float) -> Found:
    """The state at `high`, looked for from a sound one at `low`."""
    guess = Guess(base.guess.rods, base.guess.bars * (high / low))
    ahead = newton(system, base.state, guess, high, most=15, enough=PROBE)
    if not ahead.converged:
        ahead = newton_from_soft(system, base.state, guess, high, widest=0.1)
    if not ahead.converged and system.body is not None:
        ahead = relax(system, base.state, high, most=60)
    return ahead


def _affordable(system: System) -> int:
    """Steps downhill that the work left allows, the usual number at most."""
    return int(min(MOST_DOWNHILL, _DOWNHILL * system.pattern.left / cost(system.n)))


def _trouble(system: System, found: Found, factor: float, stops: Stops) -> Trouble | None:
    if not found.converged:
        return "no equilibrium", None
    over = beyond(system, found.state, stops)
    if over is not None:
        return over
    return None if stands(system, found, factor) else ("unstable", None)
