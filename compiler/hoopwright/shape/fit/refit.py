"""Fittings applied one after the other: each is read against the shape the ones before it left."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from hoopwright.shape.body import Body, body_of
from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.fit.judge import doubts, reserve_findings
from hoopwright.shape.fit.read import Reading, reading
from hoopwright.shape.fit.takeup import mark_alone, shares, sunk, taken_up
from hoopwright.shape.lengths import hoop_cut
from hoopwright.shape.model import Fixing, Hoop, Mark, Moved, Point, Refit, Shape, Skirt, Tape
from hoopwright.shape.outline import Outline, Oval
from hoopwright.shape.skirt import over_petticoats, skirt_over
from hoopwright.shape.waist import waist_of
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Fitting, Spec

_NOISE = 1e-9


def refitted(spec: Spec, shape: Shape) -> tuple[Shape, tuple[Finding, ...]]:
    """The shape with the corrections of all fittings of the spec, and what is doubtful about them."""
    found: list[Finding] = []
    body = body_of(spec)
    for fitting in spec.fittings:
        read = reading(fitting, spec, shape)
        found.extend(doubts(fitting, read, spec, shape))
        shape = _apply(fitting, read, spec, shape, body)
    found.extend(reserve_findings(spec, shape))
    return shape, tuple(found)


def _apply(fitting: Fitting, read: Reading, spec: Spec, shape: Shape, body: Body) -> Shape:
    hoops = tuple(_remade(hoop, read.girths, spec) for hoop in shape.hoops)
    tapes: list[Tape] = []
    moved: list[Moved] = []
    drawn_up: dict[str, float] = {}
    for tape in shape.tapes:
        then, now = _points(tape, shape.hoops), _points(tape, hoops)
        whole = _whole_from(tape, shape)
        start = sunk(then, read.all_round)
        up = taken_up(start, (0.0, *([read.all_round] * len(tape.marks))), body) if read.all_round else ()
        if up:
            drawn_up[tape.id] = up[0]
        off = read.tapes.get(tape.id, 0.0)
        along = taken_up(start, tuple(off * share for share in shares(then, whole)), body) if off else ()
        marks = []
        for k, mark in enumerate(tape.marks):
            goes = mark.at - (along[k] if along else 0.0) + _alone(k, mark, then, now, read, body)
            if abs(goes - mark.at) > _NOISE:
                shift = up[k] if up else 0.0
                moved.append(Moved(tape.id, mark.hoop, mark.at - shift, goes - shift))
            marks.append(replace(mark, at=goes - (up[k] if up else 0.0)))
        tapes.append(replace(tape, marks=tuple(marks)))
    waistband = shape.waistband
    if read.waist is not None:
        wider = read.waist[1] - read.waist[0]
        waistband = replace(waistband, girth=read.waist[1], overlap=waistband.overlap - wider)
    lower = read.all_round + sum(refit.all_round for refit in shape.refits)
    changed = bool(read.girths) or bool(read.all_round)
    skirt = _skirt(spec, hoops, body, shape.skirt, lower) if changed else shape.skirt
    refit = Refit(fitting.on, read.low, read.all_round, drawn_up, tuple(moved), read.hoops, read.girths,
                  read.waist, (shape.skirt, skirt))
    return replace(shape, hoops=hoops, tapes=tuple(tapes), waistband=waistband, skirt=skirt,
                   refits=(*shape.refits, refit))


def _alone(k: int, mark: Mark, then: list[Point], now: list[Point], read: Reading, body: Body) -> float:
    """What a hoop that is off by itself asks of its own mark: its height restored, its girth as made."""
    low = read.hoops.get(mark.hoop, 0.0)
    if not low and mark.hoop not in read.girths:
        return 0.0
    above, (x, y, z) = then[k], then[k + 1]
    return mark_alone(above, (x, y, z - low), now[k + 1], body)


def _points(tape: Tape, hoops: tuple[Hoop, ...]) -> list[Point]:
    """The tape's start and its fixings, from the top."""
    at = {hoop.id: fix.at for hoop in hoops for fix in hoop.fixings if fix.tape == tape.id}
    return [tape.start, *(at[mark.hoop] for mark in tape.marks)]


def _whole_from(tape: Tape, shape: Shape) -> int:
    """The first of a tape's points that is off by as much as the hem: a band's upper hoop, else the last."""
    for k, mark in enumerate(tape.marks):
        if shape.band is not None and mark.hoop == shape.band.upper:
            return k + 1
    return len(tape.marks)


def _remade(hoop: Hoop, girths: Mapping[str, tuple[float, float]], spec: Spec) -> Hoop:
    """A hoop made to another girth: the same outline, larger or smaller about its own centre."""
    if hoop.id not in girths:
        return hoop
    drawn, made = girths[hoop.id]
    scale = made / drawn
    middle = -hoop.plan.offset

    def grown(fix: Fixing) -> Fixing:
        x, y, z = fix.at
        side = hoop.plan.sideways
        return replace(fix, at=(side + (x - side) * scale, middle + (y - middle) * scale, z))

    plan = replace(hoop.plan, width=hoop.plan.width * scale, depth=hoop.plan.depth * scale)
    closed = hoop.end - hoop.start >= 1.0
    return replace(hoop, girth=made, plan=plan, cut=hoop_cut(made, spec) if closed else made,
                   fixings=tuple(map(grown, hoop.fixings)))


def _skirt(spec: Spec, hoops: tuple[Hoop, ...], body: Body, before: Skirt, lower: float) -> Skirt:
    """The skirt over the hoops as made, from a waistline ``lower`` than measured; as before when a hoop is no
    ellipse."""
    if any(hoop.plan.kind not in ("round", "oval") or hoop.plan.sideways or hoop.plan.tilt for hoop in hoops):
        return before
    outlines: list[tuple[float, Outline]] = [
        (hoop.height, Oval(Ellipse(hoop.plan.width / 2, hoop.plan.depth / 2, hoop.plan.offset),
                           hoop.start, hoop.end)) for hoop in hoops]
    waist = waist_of(spec)
    skirt = skirt_over(replace(waist, c0=waist.c0 - lower), outlines, body, spec.skirt_off_floor)
    return over_petticoats(skirt, spec.load)
