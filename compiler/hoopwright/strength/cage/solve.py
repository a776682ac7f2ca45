"""Solve a cage: check the model, find its equilibrium, see whether it stands, and say what it does."""

from __future__ import annotations

from dataclasses import field
from math import inf

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.check import one_sided, problems
from hoopwright.strength.cage.model import CageModel
from hoopwright.strength.cage.newton import Found, stands, weakest
from hoopwright.strength.cage.relax import MOST_DOWNHILL, relax
from hoopwright.strength.cage.report import bar_results, held_results, hoop_results, rest_results
from hoopwright.strength.cage.result import CageResult, Factor, Note, Status, TapeResult, TieResult
from hoopwright.strength.cage.sparse import Spent
from hoopwright.strength.cage.system import System
from hoopwright.strength.cage.track import CAP, Stops, factor_of, reach

__all__ = ["Options", "solve"]


@record(frozen=True, slots=True)
class Options:
    """`elements` rods in every hoop; `factor`: whether it is asked how much more the cage carries, and `cap`, above 1:
    up to how many times its load that is followed.
    `work` is what a solve may cost: each factoring counts its unknowns and what setting it up costs besides;
    where it ends, the result says what was found by then.
    """

    elements: int = 48
    factor: bool = True
    cap: float = CAP
    stops: Stops = field(default_factory=Stops)
    work: float = inf


def solve(model: CageModel, options: Options | None = None) -> CageResult:
    """Return what the cage does under its load; never raises for a bad model, and gives no number it did not
    find.
    """
    options = options or Options()
    found = problems(model)
    if found:
        return CageResult(found[0][0], tuple(note for _, note in found))
    with np.errstate(all="ignore"):
        try:
            system = System(lay_out(model, options.elements))
            system.pattern.left = options.work
            return _solve(system, options)
        except Spent:
            note = Note("no-equilibrium", (), f"no shape was found in which the cage carries this load{_WAIT}")
            return CageResult("no equilibrium", (note,))
        except np.linalg.LinAlgError:
            note = Note("bad-line", ("cage",), "the cage's lines cannot be laid out smoothly")
            return CageResult("bad model", (note,))


def _solve(system: System, options: Options) -> CageResult:
    reached = reach(system, options.stops)
    factor = factor_of(system, reached, options.stops, options.cap) if options.factor else None
    found = reached.found
    if reached.sound:
        return describe(system, found, "solved", factor)
    limit, part = reached.trouble or ("no equilibrium", None)
    if not found.converged:
        tips = one_sided(system.layout.model)
        text = "no shape was found in which the cage carries this load"
        note = Note("no-equilibrium", (), text + (_WAIT if limit == "spent" else ""))
        why: Status = "tips over" if tips else "no equilibrium"
        return CageResult(why, (note, *tips), factor=factor, iterations=found.iterations)
    if limit == "unstable":
        try:
            settled = settle(system, found)
            text = _symmetry_text(found, settled)
        except Spent:
            settled, text = None, "the shape stands only by symmetry; where a small push leads was not followed"
        note = Note("by-symmetry", (), text)
        return describe(system, settled or found, "stands only by symmetry", factor, (note,))
    status: Status = "tips over" if limit in ("tilt", "shift") else "collapsed"
    note = Note("beyond-stop", (part or "cage",), f"{part or 'the cage'} passes the stop for {limit}")
    return describe(system, found, status, factor, (note, *one_sided(system.layout.model)))


_WAIT = ", in as many steps as a plan waits for"


def settle(system: System, found: Found) -> Found | None:
    """Return where a shape that stands only by symmetry goes after a small push, which is a long way down; None if to
    no rest."""
    system.follow(found.now)  # as it was found
    mode = weakest(system, found.state, 1.0)
    if mode is None:
        return None
    push = 1e-3 * system.size / float(np.abs(mode[~system.is_spin]).max(initial=1e-12))
    settled = relax(system, system.moved(found.state, push * mode), 1.0, most=2 * MOST_DOWNHILL)
    return settled if settled.converged and stands(system, settled, 1.0) else None


def _symmetry_text(found: Found, settled: Found | None) -> str:
    if settled is None:
        return "the shape stands only by symmetry: a small push makes it give way"
    moved = 1000 * float(np.sqrt(((settled.state.x - found.state.x) ** 2).sum(axis=1)).max())
    return f"the shape stands only by symmetry: a small push moves it {moved:.0f} mm to its rest"


def describe(
    system: System, found: Found, status: Status, factor: Factor | None, notes: tuple[Note, ...] = ()
) -> CageResult:
    """Return the result of a converged state at factor 1."""
    now = found.now
    hoops = hoop_results(system, found.state, now, 1.0)
    tapes, bands, ties = bar_results(system, now)
    low = min(range(len(hoops)), key=lambda k: min(p[2] for p in hoops[k].wished))
    x, y, _ = hoops[low].shift_m
    push = 0.0
    if now.contact is not None:
        count = now.contact.of_body
        push = float(np.sqrt((now.contact.push[:count] ** 2).sum(axis=1)).sum())
    return CageResult(
        status=status,
        notes=(*notes, *_notes(tapes, ties)),
        hoops=hoops,
        tapes=tapes,
        ties=ties,
        bands=bands,
        rests=rest_results(system, found.state),
        held=held_results(system, now),
        weight_n=system.layout.loads.weight,
        waist_pull_n=sum(t.pull_outward_n for t in tapes),
        waist_down_n=sum(t.pull_down_n for t in tapes),
        body_push_n=push,
        swing_m=float(np.hypot(x, y)),
        swing_xy=(x, y),
        factor=factor,
        error=found.error,
        iterations=found.iterations,
    )


def _notes(tapes: tuple[TapeResult, ...], ties: tuple[TieResult, ...]) -> tuple[Note, ...]:
    notes = []
    for tape in tapes:
        loose = [s.to for s in tape.segments if s.slack]
        if loose:
            notes.append(
                Note("slack-tape", (tape.id, *loose), f"{tape.id} hangs slack above {', '.join(loose)}")
            )
    notes += [Note("slack-tie", (t.id,), f"{t.id} hangs slack") for t in ties if t.slack]
    return tuple(notes)
