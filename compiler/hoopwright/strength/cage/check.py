"""What is wrong with a model before anything is solved, in words. Needs no arrays."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from itertools import accumulate, pairwise
from math import dist

from hoopwright.strength.cage.model import CageModel, FreePoint, HoopModel, HoopPoint, Place
from hoopwright.strength.cage.result import Note, Status

Problem = tuple[Status, Note]
MOST = 1e15
"""No sound number of a model is as large."""


def problems(model: CageModel) -> list[Problem]:
    """Return what keeps a model from being solved; numbers first, for the rest needs sound ones."""
    found = list(_numbers(model))
    if found:
        return found
    found = list(_references(model))
    if found:
        return found
    return [*_hanging(model), *_rising(model)]


def _bad(code: str, part: str, text: str) -> Problem:
    return "bad model", Note(code, (part,), text)


def _numbers(model: CageModel) -> Iterator[Problem]:
    if not model.hoops:
        yield _bad("no-hoops", "cage", "the cage has no hoops")
    for part in (
        *model.hoops,
        *model.tapes,
        *model.bands,
        *model.ties,
        *model.joins,
        *model.rests,
        *model.point_loads,
        model.body,
        model.waist_centre,
    ):
        if part is not None and not _finite(part):
            yield _bad("not-finite", str(getattr(part, "id", "cage")), "a number is not finite")
            return
    for hoop in model.hoops:
        yield from _hoop_numbers(hoop)
    for tape in model.tapes:
        if tape.ea <= 0 or not tape.fixings or any(length <= 0 for length in tape.lengths):
            yield _bad("bad-tape", tape.id, "a tape needs a fixing, and a stiffness and lengths above zero")
        elif not 1 <= tape.pieces <= 50:
            yield _bad("bad-tape", tape.id, "a stretch of tape may be cut into 1 to 50 pieces")
    for band in model.bands:
        if band.ea <= 0 or band.ea_diagonal < 0 or band.strips < 3 or band.mass_per_m < 0:
            yield _bad("bad-band", band.id, "a band needs at least three strips and a stiffness above zero")
    for tie in model.ties:
        if tie.ea <= 0 or tie.length <= 0:
            yield _bad("bad-tie", tie.id, "a tie needs a length and a stiffness above zero")
        elif not 1 <= tie.pieces <= 50:
            yield _bad("bad-tie", tie.id, "a tie may be cut into 1 to 50 pieces")
    for rest in model.rests:
        if rest.stiffness <= 0 or not any(rest.push):
            yield _bad("bad-rest", rest.id, "a rest needs a stiffness above zero and a way to push")
    yield from _body_numbers(model)


def _finite(value: object) -> bool:
    if isinstance(value, float | int):
        return -MOST < value < MOST
    if isinstance(value, tuple):
        return all(map(_finite, value))
    if is_dataclass(value):
        return all(_finite(getattr(value, f.name)) for f in fields(value))
    return True


def _hoop_numbers(hoop: HoopModel) -> Iterator[Problem]:
    s = hoop.section
    if min(s.ea, s.ei_weak, s.ei_strong, s.gj, s.half_thickness) <= 0 or min(s.mass_per_m, s.half_width) < 0:
        yield _bad("bad-section", hoop.id, "every stiffness of a section must be above zero")
    if len(hoop.points) < 4 and (hoop.closed or len(hoop.points) != 2):
        yield _bad("bad-line", hoop.id, "a hoop needs at least four points, a straight open piece two")
        return
    after = (*hoop.points[1:], hoop.points[0]) if hoop.closed else hoop.points[1:]
    steps = [dist(a, b) for a, b in zip(hoop.points, after, strict=False)]
    if min(steps) <= 1e-9 or max(steps) > 1e3:
        yield _bad("bad-line", hoop.id, "neighbouring points of a hoop must differ")
    if not hoop.closed and not hoop.start < hoop.end:
        yield _bad("bad-line", hoop.id, "an open hoop must start before it ends")


def _body_numbers(model: CageModel) -> Iterator[Problem]:
    if model.body is None:
        return
    rows = sorted(model.body.rows, key=lambda r: r.z)
    close = any(b.z - a.z < 1e-6 for a, b in pairwise(rows))
    if (
        len(rows) < 2
        or close
        or any(min(r.half_breadth, r.half_depth) <= 0 for r in rows)
        or model.body.stiffness < 0
    ):
        yield _bad("bad-body", "body", "a body needs two rows of different height and widths above zero")


def _references(model: CageModel) -> Iterator[Problem]:
    hoops = {h.id: h for h in model.hoops}
    others = [t.id for t in model.tapes] + [b.id for b in model.bands] + [t.id for t in model.ties]
    others += [r.id for r in model.rests]
    for ids in ([h.id for h in model.hoops], others):  # a hoop may be called like a tape
        for twice in sorted({i for i in ids if ids.count(i) > 1}):
            yield _bad("same-id", twice, f"two parts are called {twice}")
    for owner, place in _places(model):
        hoop = hoops.get(place.hoop)
        if hoop is None:
            yield _bad("unknown-hoop", owner, f"{owner} names {place.hoop}, which is no hoop")
        elif not hoop.closed and not hoop.start - 1e-9 <= place.fraction <= hoop.end + 1e-9:
            yield _bad("off-hoop", owner, f"{owner} meets {place.hoop} where it is open")
    for band in model.bands:
        if band.upper not in hoops or band.lower not in hoops or band.upper == band.lower:
            yield _bad("unknown-hoop", band.id, f"{band.id} must join two hoops")
    for tie in model.ties:
        if not isinstance(tie.a, HoopPoint) and not isinstance(tie.b, HoopPoint):
            yield _bad("bad-tie", tie.id, "a tie must hold a hoop")


def _places(model: CageModel) -> Iterator[tuple[str, HoopPoint]]:
    for tape in model.tapes:
        for hoop, fraction in tape.fixings:
            yield tape.id, HoopPoint(hoop, fraction)
    pairs: list[tuple[str, Place]] = [(t.id, p) for t in model.ties for p in (t.a, t.b)]
    pairs += [("a join", p) for j in model.joins for p in (j.a, j.b)]
    pairs += [("a load", load.at) for load in model.point_loads]
    pairs += [(rest.id, rest.at) for rest in model.rests]
    for owner, place in pairs:
        if isinstance(place, HoopPoint):
            yield owner, place


def _hanging(model: CageModel) -> Iterator[Problem]:
    held = _held(model)
    for hoop in model.hoops:
        if hoop.id not in held:
            text = f"{hoop.id} hangs from nothing: no tape, band, tie or join leads from it to the waistband"
            yield "hangs from nothing", Note("hangs-from-nothing", (hoop.id,), text)
        elif not _otherwise_held(model, hoop.id):
            count = len({round(f % 1.0, 6) for f in _fixings(model, hoop.id)})
            if count < 3:
                text = f"{hoop.id} has {count} fixings; it takes three to hold a hoop level"
                yield "too few fixings", Note("too-few-fixings", (hoop.id,), text)


def _held(model: CageModel) -> set[str]:
    links = [(t.fixings[0][0], "") for t in model.tapes]
    links += [(a[0], b[0]) for t in model.tapes for a, b in zip(t.fixings[:-1], t.fixings[1:], strict=True)]
    links += [(b.upper, b.lower) for b in model.bands]
    links += [(_owner(t.a), _owner(t.b)) for t in model.ties]
    links += [(_owner(j.a), _owner(j.b)) for j in model.joins]
    held = {""}
    for _ in range(len(model.hoops) + 1):
        held |= {a for a, b in links if b in held} | {b for a, b in links if a in held}
    return held


def _owner(place: Place) -> str:
    """The hoop or knot that a place is on; empty for what the wearer holds."""
    if isinstance(place, FreePoint):
        return f"knot {place.id}"
    return place.hoop if isinstance(place, HoopPoint) else ""


def _otherwise_held(model: CageModel, hoop: str) -> bool:
    joined = any(hoop in (_owner(j.a), _owner(j.b)) for j in model.joins)
    return joined or any(hoop in (b.upper, b.lower) for b in model.bands)


def _fixings(model: CageModel, hoop: str) -> list[float]:
    found = [f for t in model.tapes for h, f in t.fixings if h == hoop]
    for tie in model.ties:
        if _owner(tie.a) != _owner(tie.b):
            found += [p.fraction for p in (tie.a, tie.b) if isinstance(p, HoopPoint) and p.hoop == hoop]
    return found


def one_sided(model: CageModel) -> list[Note]:
    """Return a note for every closed hoop whose fixings all lie on one side of it, so that it tips."""
    notes = []
    for hoop in model.hoops:
        at = sorted(f % 1.0 for f in _fixings(model, hoop.id))
        if not hoop.closed or not at or _otherwise_held(model, hoop.id):
            continue
        gap = max(b - a for a, b in zip(at, [*at[1:], at[0] + 1.0], strict=True))
        if gap > 0.5:
            text = (
                f"all fixings of {hoop.id} lie on one side of it, within {100 * (1 - gap):.0f} % of its girth"
            )
            notes.append(Note("one-sided", (hoop.id,), f"{text}: it tips"))
    return notes


def _rising(model: CageModel) -> Iterator[Problem]:
    lines = {h.id: _Heights(h) for h in model.hoops}
    for tape in model.tapes:
        above = tape.anchor[2]
        for hoop, fraction in tape.fixings:
            here = lines[hoop].at(fraction)
            if here >= above - 1e-6:
                text = f"{tape.id} does not descend to {hoop}: it could only push"
                yield "tapes do not descend", Note("tape-rises", (tape.id, hoop), text)
            above = here


class _Heights:
    """Heights along a hoop, on straight lines from point to point."""

    def __init__(self, hoop: HoopModel) -> None:
        self.hoop, self.points = hoop, (*hoop.points, hoop.points[0]) if hoop.closed else hoop.points
        self.along = [0.0, *accumulate(dist(a, b) for a, b in pairwise(self.points))]

    def at(self, fraction: float) -> float:
        """Height of a place on the hoop."""
        hoop, along = self.hoop, self.along
        share = fraction % 1.0 if hoop.closed else (fraction - hoop.start) / (hoop.end - hoop.start)
        place = min(max(share, 0.0), 1.0) * along[-1]
        k = max(bisect_left(along, place, hi=len(along) - 1), 1)
        low, high = self.points[k - 1][2], self.points[k][2]
        return low + (high - low) * (place - along[k - 1]) / (along[k] - along[k - 1])
