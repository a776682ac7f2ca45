"""Readings of a fitting that are hard to believe, and corrections a tape has no reserve for.

The limits are our judgement: they are there to catch a slip of the rule, the unit or the tape's name, and
they only warn.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hoopwright.shape.fit.read import Reading
from hoopwright.shape.model import Shape
from hoopwright.source.diagnostic import Finding, Path, warning
from hoopwright.source.printed import length_text
from hoopwright.spec.model import Fitting, Spec

FAR_OFF = 0.1
"""A hem or hoop off by more than this is more likely misread, m."""
GIRTH_OFF = 0.06
WAIST_OFF = 0.10
"""A girth off by more than this share is more likely misread."""
DIP = 0.04
"""A hem hoop does not bend further than this out of the line between two neighbouring tapes, m."""
_REPEATED = 0.0016
_LEAST_OVERLAP = 0.0254


def doubts(fitting: Fitting, read: Reading, spec: Spec, shape: Shape) -> Iterator[Finding]:
    """Warnings about one fitting, read against the shape the fittings before it left."""
    yield from _implausible(fitting, read, spec)
    yield from _dips(fitting, read, spec, shape)
    yield from _repeated(fitting, read, spec, shape)
    yield from _against_the_cut(fitting, spec)
    yield from _hem_twice(fitting, spec, shape)
    if read.waist is not None:
        over = shape.waistband.overlap - (read.waist[1] - read.waist[0])
        if over < min(_LEAST_OVERLAP, shape.waistband.overlap):
            yield warning("waistband-short", (*fitting.path, "waist"),
                          "closed so wide, too little of the waistband overlaps for its fastening",
                          "cut a longer waistband, or let an extension in", notes=(
                              f"{length_text(max(over, 0.0), spec.units)} of overlap is left",))


def _implausible(fitting: Fitting, read: Reading, spec: Spec) -> Iterator[Finding]:
    far = [((*fitting.path, "hem_height") if fitting.same else (*fitting.path, "hem_height", tape), low)
           for tape, low in read.low.items() if abs(low) > FAR_OFF]
    far += [((*fitting.path, "hoop_height", hoop), low) for hoop, low in read.hoops.items()
            if abs(low) > FAR_OFF]
    for path, low in dict(far).items():
        yield _warned(path, f"this is {_off(low, spec)} than drawn, which a fitting seldom finds")
    for hoop, (drawn, made) in read.girths.items():
        if abs(made / drawn - 1) > GIRTH_OFF:
            yield _warned((*fitting.path, "hoop_girth", hoop),
                          f"this hoop was drawn {length_text(drawn, spec.units)} round, far from this")
    if read.waist is not None and abs(read.waist[1] / read.waist[0] - 1) > WAIST_OFF:
        yield _warned((*fitting.path, "waist"),
                      f"the waist was measured {length_text(read.waist[0], spec.units)}, far from this")


def _warned(path: Path, message: str) -> Finding:
    return warning("fitting-implausible", path, message,
                   "measure again, and look at the unit and at which tape or hoop it was")


def _off(low: float, spec: Spec) -> str:
    return f"{length_text(abs(low), spec.units)} {'lower' if low > 0 else 'higher'}"


def _dips(fitting: Fitting, read: Reading, spec: Spec, shape: Shape) -> Iterator[Finding]:
    """One tape far out of line with both its neighbours: the hoop between them cannot bend so."""
    ids = [tape.id for tape in shape.tapes]
    if len(ids) < 4 or fitting.same:
        return
    for k, tape in enumerate(ids):
        if tape not in read.low:
            continue
        beside = [read.low.get(ids[k - 1], 0.0), read.low.get(ids[(k + 1) % len(ids)], 0.0)]
        out = read.low[tape] - sum(beside) / 2
        if abs(out) > DIP and all(abs(read.low[tape] - low) > DIP for low in beside):
            yield warning("fitting-contradicts", (*fitting.path, "hem_height", tape),
                          f"the hem is {_off(out, spec)} here than between the tapes on both sides",
                          "a hoop does not bend so far: measure again, or look for a clip that slipped")


def _repeated(fitting: Fitting, read: Reading, spec: Spec, shape: Shape) -> Iterator[Finding]:
    """The same reading as before a correction: the marks were not moved."""
    if not shape.refits:
        return
    before = shape.refits[-1]
    corrected = {tape for tape in before.low
                 if before.all_round or any(mark.tape == tape for mark in before.moved)}
    same = [tape for tape in read.low if tape in corrected
            and abs(read.low[tape]) > spec.allowances.hem_tolerance
            and abs(read.low[tape] - before.low[tape]) < _REPEATED]
    if same:
        path = (*fitting.path, "hem_height") if fitting.same else (*fitting.path, "hem_height", same[0])
        yield warning("fitting-contradicts", path,
                      f"this is what the fitting of {before.on} found, as if nothing had been moved since",
                      "move the marks as the plan says and measure again; leave this out until then")


def _against_the_cut(fitting: Fitting, spec: Spec) -> Iterator[Finding]:
    """A girth as made against the length that was cut for it."""
    lap = spec.build.hooped.lap if spec.build.hooped is not None else 0.0
    cut: Mapping[str, float] = spec.progress.cut
    for hoop, made in fitting.hoop_girths.items():
        if hoop in cut and made > cut[hoop] - lap + 2 * spec.allowances.hoop_tolerance:
            yield warning("fitting-contradicts", (*fitting.path, "hoop_girth", hoop),
                          "this girth is longer than the strip that was cut for it, less its lap",
                          "measure both again: the hoop's girth, and the length noted under `progress.cut`",
                          related=((("progress", "cut", hoop), "cut so long"),))


def _hem_twice(fitting: Fitting, spec: Spec, shape: Shape) -> Iterator[Finding]:
    """The hem hoop's height measured at its middle and at its lower edge, and not agreeing."""
    if not shape.hoops:
        return
    hem = shape.hoops[-1]
    if hem.id not in fitting.hoop_heights or not fitting.hem:
        return
    edge = fitting.hoop_heights[hem.id] - spec.build.hoops.material.section.height / 2
    low, high = min(fitting.hem.values()), max(fitting.hem.values())
    if not low - spec.allowances.hem_tolerance <= edge <= high + spec.allowances.hem_tolerance:
        yield warning("fitting-contradicts", (*fitting.path, "hoop_height", hem.id),
                      "the hem hoop's middle and its lower edge do not agree",
                      "keep `hem_height` for the hem hoop, and `hoop_height` for the hoops above it",
                      related=(((*fitting.path, "hem_height"), "its lower edge"),))


def reserve_findings(spec: Spec, shape: Shape) -> tuple[Finding, ...]:
    """Tapes whose last mark has moved beyond what was cut."""
    if not shape.refits:
        return ()
    rules = spec.allowances
    ends = rules.tape_top + rules.tape_hem
    wants = {tape.id: tape.marks[-1].at + ends - tape.cut for tape in shape.tapes if tape.marks}
    short = {tape: want for tape, want in wants.items() if want > rules.tape_tolerance}
    if not short:
        return ()
    names = " and ".join(short)
    most = length_text(max(short.values()), spec.units)
    return (warning("tape-too-short", (*spec.fittings[-1].path,),
                    f"let down so far, {names} would want {most} more than was cut",
                    "cut a longer tape, or lengthen it under the waistband"),)
