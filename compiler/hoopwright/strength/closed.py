"""The closed forms, hoop by hoop: each hung level on its tapes, tapes as statics, rings under their pull.

A hoop's tapes share its load as a ring does that is held at those places (``uneven``); from the shares
follow tensions and inward pulls, and from the pulls its shape. A hoop with no tape of its own (carried by the
hem band's cloth) hangs with all its load from the hoop above and sags with it. How one hoop's movement
changes the pull on the next is left to a solution of the whole cage.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, hypot, pi, sin

from hoopwright.shape.model import Hoop, Shape, Tape
from hoopwright.strength.formed import curved, worn
from hoopwright.strength.forms import buckle, uneven
from hoopwright.strength.forms.section import properties
from hoopwright.strength.forms.statics import TapeForces, tape_forces, thrust
from hoopwright.strength.forms.uneven import Hung
from hoopwright.strength.method import Problem, Solution, unjudged
from hoopwright.strength.model import Buckling, HoopStrength, Segment, TapeStrength

NAME = "closed forms for each hoop, tapes as statics"
_SLACK = "a tape would hang slack: only a solution of the whole cage tells what the hoops do then"
_OPEN = "some hoops are open, or pass by some tapes: only a solution of the whole cage tells"
_LEVEL = "the tapes stand so that they cannot hold a hoop level"


def solve(problem: Problem) -> Solution:
    """Solve a cage by closed forms."""
    shape = problem.shape
    if not _rings(shape):
        return unjudged(problem, NAME, _OPEN)
    loads = problem.loads
    carried = _onto_tapes(shape, loads)
    taped = [k for k, hoop in enumerate(shape.hoops) if hoop.fixings]
    hung = [_hung(problem, shape.hoops[k], carried[k]) for k in taped]
    forces = _forces(shape, [_shares(one, shape.hoops[k], carried[k])
                             for one, k in zip(hung, taped, strict=True)])
    slack = any(tension <= 0.0 for force in forces for tension in force.tension)
    reason = _SLACK if slack else _LEVEL if any(one is None for one in hung) else ""
    results: list[HoopStrength] = []
    for k, hoop in enumerate(shape.hoops):
        at = taped.index(k) if k in taped else None
        pulls = [] if at is None else [force.pull[at] for force in forces]
        held = None if at is None or reason else hung[at]
        results.append(_hoop(problem, hoop, loads[k], pulls, held, results[-1] if results else None))
    least = min(_factors(problem, results), default=None)
    return Solution(
        NAME, tuple(results), _tapes(shape, forces, taped),
        Buckling(None if least is None else least[0], True), "" if least is None else least[1], None,
        sum(force.waist_pull for force in forces),
        dict.fromkeys(("sag", "out-of-round", "set-worn"), reason) if reason else {},
        screened=True,
    )


def _rings(shape: Shape) -> bool:
    """Whether every hoop is closed and on all tapes, or on none."""
    return all(hoop.closed and len(hoop.fixings) in (0, len(shape.tapes)) for hoop in shape.hoops)


def _onto_tapes(shape: Shape, loads: Sequence[float]) -> list[float]:
    """Loads N with those of untaped hoops handed to the hoop above."""
    carried = list(loads)
    for k in range(len(carried) - 1, 0, -1):
        if not shape.hoops[k].fixings:
            carried[k - 1] += carried[k]
            carried[k] = 0.0
    return carried


def _hung(problem: Problem, hoop: Hoop, load: float) -> Hung | None:
    places = [fixing.fraction for fixing in hoop.fixings]
    worn = problem.worn
    return uneven.hung(places, load / hoop.girth, hoop.girth / (2 * pi), worn.ei_strong, worn.gj)


def _shares(hung: Hung | None, hoop: Hoop, load: float) -> tuple[float, ...]:
    """What each tape takes of a hoop's load, N; even shares where the tapes cannot hold it level."""
    count = len(hoop.fixings)
    return hung.reactions if hung is not None else (load / count,) * count


def _forces(shape: Shape, shares: Sequence[Sequence[float]]) -> list[TapeForces]:
    return [tape_forces([share[t] for share in shares], *_slopes(shape, tape, t))
            for t, tape in enumerate(shape.tapes)]


def _slopes(shape: Shape, tape: Tape, index: int) -> tuple[list[float], list[float]]:
    """Outward slope and length over drop of each stretch of a tape, as it arrives at its hoop.

    Outward is away from the hoop's centre at the fixing; the sideways part of the lean loads no ring.
    """
    slopes, stretches = [], []
    above = tape.start
    for mark in tape.marks:
        hoop = shape.hoop(mark.hoop)
        at = hoop.fixings[index].at
        x, y = at[0], at[1] + hoop.plan.offset
        out = ((at[0] - above[0]) * x + (at[1] - above[1]) * y) / hypot(x, y)
        slopes.append(sin(mark.lean) / cos(mark.lean) if mark.on_body else out / (above[2] - at[2]))
        stretches.append(1 / cos(mark.lean))
        above = at
    return slopes, stretches


def _hoop(problem: Problem, hoop: Hoop, load: float, pulls: Sequence[float], held: Hung | None,
          above: HoopStrength | None) -> HoopStrength:
    """One hoop: on its tapes, carried by the band's cloth, or (``held`` missing) not assessed."""
    radius, line = hoop.girth / (2 * pi), load / hoop.girth
    if not pulls:
        sag = None if above is None else above.sag
        return HoopStrength(hoop.id, line, 0.0, sag, 0.0, 0.0, _stress(problem, radius, 0.0, 0.0))
    if held is None:
        return HoopStrength(hoop.id, line, thrust(pulls), None, None, None, None)
    places = [fixing.fraction for fixing in hoop.fixings]
    pressed = uneven.pressed(places, pulls, radius, problem.worn.ei_weak)
    stress = _stress(problem, radius, pressed.moment, held.moment)
    return HoopStrength(hoop.id, line, thrust(pulls), held.sag, pressed.inward, pressed.outward, stress)


def _factors(problem: Problem, results: Sequence[HoopStrength]) -> list[tuple[float, str]]:
    """Load factor against buckling of each hoop that is compressed, by the screen."""
    worn, found = problem.worn, []
    for result, hoop in zip(results, problem.shape.hoops, strict=True):
        radius = hoop.girth / (2 * pi)
        if result.thrust > 0.0:
            critical = buckle.screen(worn.ei_weak, worn.ei_strong, worn.gj, radius)
            found.append((critical * radius / result.thrust, hoop.id))
    return found


def _stress(problem: Problem, radius: float, weak: float, strong: float) -> float:
    """Greatest stress as worn, Pa: whole curvature in the hoop's plane, and bending out of it.

    A hoop is born straight, unless it is pre-formed to its curve.
    """
    section = properties(problem.stock.section)
    in_plane = worn(problem, curved(problem, 1 / radius)) + curved(problem, weak / problem.material.ei_weak)
    return section.combined(in_plane, strong * section.strong_fibre / section.strong)


def _tapes(shape: Shape, forces: Sequence[TapeForces], taped: Sequence[int]) -> tuple[TapeStrength, ...]:
    return tuple(
        TapeStrength(tape.id, tuple(Segment(shape.hoops[k].id, max(tension, 0.0), tension <= 0.0)
                                    for k, tension in zip(taped, force.tension, strict=True)))
        for tape, force in zip(shape.tapes, forces, strict=True)
    )
