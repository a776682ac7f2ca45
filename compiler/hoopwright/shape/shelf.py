"""Shelves: stretches of tape that lean outward so far that the skirt lies on them. Each is told by its own two ends,
for only what lies at them makes it steeper. What leans inward, as under the hips, bears no skirt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import degrees, pi

from hoopwright.shape import problems
from hoopwright.shape.judge import judged, worst
from hoopwright.shape.model import Hoop, Tape
from hoopwright.source.diagnostic import Finding, Path
from hoopwright.source.record import record
from hoopwright.spec.check import Check

SHELF = pi / 4
_NO_FAULT = "no fault, period work has shelves"


@record(frozen=True, slots=True)
class Stretch:
    """A stretch of a tape from ``upper``, a hoop or None for the waistband, to ``lower``; ``lean`` radians."""

    tape: str
    upper: Hoop | None
    lower: Hoop
    lean: float

    @property
    def ends(self) -> str:
        """``from H11 to H12``."""
        return f"from {'the waistband' if self.upper is None else self.upper.id} to {self.lower.id}"


def shelf_check(tapes: Sequence[Tape], hoops: Sequence[Hoop]) -> Check:
    """The greatest lean of a stretch; a shelf is worth a look, no fault."""
    stretches = {f"{one.tape} {one.ends}": one for one in _stretches(tapes, hoops)}
    value, part = worst((one.lean, name) for name, one in stretches.items()) if stretches else (0.0, "")
    return judged(
        "shelf", part, value, SHELF, "angle", "at most", soft=True,
        says="no stretch of tape leans so far that the skirt lies on a shelf",
        source="the meaning of the word: a stretch of tape more than 45 degrees from the vertical",
        remedy=f"{_NO_FAULT}: {_steeper(stretches[part], hoops)} makes that stretch steeper" if part else "",
    )


def shelf_note(tapes: Sequence[Tape], hoops: Sequence[Hoop]) -> tuple[Finding, ...]:
    """A finding at what makes the worst shelf, where there is any."""
    shelves = [one for one in _stretches(tapes, hoops) if one.lean > SHELF]
    if not shelves:
        return ()
    _, ends = worst((one.lean, one.ends) for one in shelves)
    first = next(one for one in shelves if one.ends == ends)
    names = tuple(dict.fromkeys(one.tape for one in shelves))
    lean = f"{degrees(max(one.lean for one in shelves)):.0f}"
    said = "little more than 45" if lean == "45" else f"up to {lean}"
    return (problems.shelf(_decided(first, hoops), names, f"{said} degrees from the vertical, most of all {ends}",
                           _steeper(first, hoops)),)


def _stretches(tapes: Sequence[Tape], hoops: Sequence[Hoop]) -> Iterator[Stretch]:
    known = {hoop.id: hoop for hoop in hoops}
    for tape in tapes:
        upper: Hoop | None = None
        for mark in tape.marks:
            if not mark.inward:
                yield Stretch(tape.id, upper, known[mark.hoop], mark.lean)
            upper = known[mark.hoop]


def _decided(stretch: Stretch, hoops: Sequence[Hoop]) -> Path:
    """The key that decides a stretch first."""
    if stretch.upper is None:
        return ("shape", "top_hoop")
    return ("shape", "hem", "girth") if stretch.lower is hoops[-1] else ("shape", "hoops", "count")


def _steeper(stretch: Stretch, hoops: Sequence[Hoop]) -> str:
    """What makes a stretch steeper: its own hoops nearer to each other in size, or farther apart in height."""
    upper, lower = stretch.upper, stretch.lower
    if upper is None:
        return "a lower or a smaller top hoop (shape.top_hoop)"
    above = f"a larger {upper.id}"
    if upper.plan.kind == "bow" and lower.closed:
        above = f"a wider chord of {upper.id} (shape.ground_plan.chord.hem)"
    key = " (shape.hem.girth)" if lower is hoops[-1] and lower.closed else ""
    return f"{above}, a smaller {lower.id}{key} or more room between the two (shape.hoops)"
