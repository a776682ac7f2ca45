"""Ties: which hoops want any, where they lie, how long they are, how hard they pull, what line results.

A closed spring is a circle; ties square to the long axis of an oval draw it in. They keep clear of the
wearer: beside the legs of an oval that is wider than deep, behind (and if need be in front of) them where
it is deeper than wide. Half hoops are held at their chord by one tie, or by a lacing; hoops open in front by
a strap across the opening; these three lie round the body where it stands between the ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import asin, dist, pi

from hoopwright.shape.body import Body
from hoopwright.shape.curves.bow import of_length
from hoopwright.shape.curves.ellipse import Ellipse, fraction_at
from hoopwright.shape.curves.tied import TiedRing, tied_ring
from hoopwright.shape.families.half import BowLine
from hoopwright.shape.model import XY, Tie, TieKind
from hoopwright.shape.outline import Outline, Oval
from hoopwright.shape.tapes import Level
from hoopwright.shape.tying.bodyline import long, round_body
from hoopwright.source.record import record
from hoopwright.spec.model import Spec, TieBuild

CLEAR = 0.0254
"""Room between a tie and the legs, m: our choice."""
MOST_OFF = 0.0254
"""How far a tied hoop may lie off its oval before another tie is taken, m: 1 in, our choice."""
OUTERMOST = 0.85
"""A tie nearer to the end of the long axis than this share of it draws nothing in: our judgement."""
USUAL_PLACE = 0.5


@record(frozen=True, slots=True)
class Tied:
    """The ties of one hoop, its true line and how far that lies off the oval at worst, m (negative: inside).

    ``crossed``: how far a cross-tie passes inside the body or the legs at worst, m; 0 where none does.
    """

    ties: tuple[Tie, ...] = ()
    line: tuple[XY, ...] = ()
    off: float = 0.0
    crossed: float = 0.0


def tie_hoop(spec: Spec, level: Level, body: Body) -> Tied:
    """The ties of one hoop."""
    build, outline = spec.build.ties, level.outline
    if build is None:
        return Tied()
    if isinstance(outline, BowLine):
        return Tied((_chord(spec, build, level, outline, body),))
    if not isinstance(outline, Oval):
        return Tied()
    if outline.end - outline.start < 1.0:
        opening = spec.shape.opening
        return Tied((_strap(spec, build, level, outline, body),) if opening and opening.straps else ())
    ellipse = outline.ellipse
    if abs(ellipse.a - ellipse.b) <= spec.allowances.hoop_tolerance:
        return Tied()
    return _crossed(spec, build, level, ellipse, body)


def _crossed(spec: Spec, build: TieBuild, level: Level, ellipse: Ellipse, body: Body) -> Tied:
    """Cross-ties: as many as the maker says, else so many that the hoop keeps near its oval."""
    wide = ellipse.a > ellipse.b
    oval = max(ellipse.a / ellipse.b, ellipse.b / ellipse.a)
    scale = ellipse.perimeter / (2 * pi)
    legs = body.outline(level.height) or body.lowest
    best: tuple[TiedRing, tuple[float, ...]] | None = None
    for places in _choices(build.count, ellipse, legs, wide):
        ring = tied_ring(round(oval, 9), tuple(round(place, 9) for place in places))
        if best is None or abs(ring.off) < abs(best[0].off):
            best = (ring, places)
        if abs(ring.off) * scale <= MOST_OFF:
            break
    if best is None:
        return Tied()
    ring, places = best
    ties = tuple(
        _cross(spec, build, (level.id, k), ellipse, wide, place, pull / scale**2)
        for k, (place, pull) in enumerate(zip(places, ring.pulls, strict=True))
        if pull > 0
    )
    half = legs.a if wide else legs.b
    axis, middle = (ellipse.a, 0.0) if wide else (ellipse.b, ellipse.offset)
    crossed = max(half - abs(place * axis - middle) for place in places)
    return Tied(ties, _round_line(ring, ellipse, wide, scale), ring.off * scale, max(crossed, 0.0))


def _choices(count: int, ellipse: Ellipse, legs: Ellipse, wide: bool) -> list[tuple[float, ...]]:
    """Places along the long axis, from -1 to 1, to try in turn; none where the body leaves no room."""
    if wide:
        beside = max(USUAL_PLACE, (legs.a + CLEAR) / ellipse.a)
        if count == 1:
            return [(0.0,)]
        if count > 2:
            edge = max(beside, USUAL_PLACE)
            return [tuple(sorted(edge * (2 * k / (count - 1) - 1) for k in range(count)))]
        return [(-beside, beside)] if beside <= OUTERMOST else []
    behind = -(legs.b + CLEAR - ellipse.offset) / ellipse.b
    before = (legs.b + CLEAR + ellipse.offset) / ellipse.b
    back = min(0.0, behind) if count in (0, 1) else min(-USUAL_PLACE, behind)
    front = max(USUAL_PLACE, before)
    if count == 1:
        return [(max(back, -OUTERMOST),)]
    if count > 2:
        return [(*(back * (1 - k / (count - 1)) for k in range(count - 1)), min(front, OUTERMOST))]
    choices: list[tuple[float, ...]] = []
    if count == 0 and back >= -OUTERMOST:
        choices.append((back,))
    pair = min(-USUAL_PLACE, behind)
    if pair >= -OUTERMOST and front <= OUTERMOST:
        choices.append((pair, front))
    return choices


def _cross(
    spec: Spec, build: TieBuild, name: tuple[str, int], ellipse: Ellipse, wide: bool, place: float,
    pull: float,
) -> Tie:
    """A tie square to the long axis at a place along it."""
    fraction = fraction_at(ellipse, asin(abs(place)))
    if wide:
        at = fraction if place >= 0 else 1.0 - fraction
        to = 0.5 - fraction if place >= 0 else 0.5 + fraction
    else:
        turn = fraction_at(ellipse, pi / 2 - asin(place))
        at, to = turn, 1.0 - turn
    outline = Oval(ellipse)
    return _tie(spec, build, f"{name[0]}-tie-{name[1] + 1}", name[0], "cross", (at % 1.0, to), outline, pull)


def _chord(spec: Spec, build: TieBuild, level: Level, outline: BowLine, body: Body) -> Tie:
    """What holds the ends of a half hoop: a tie, or the lacing, which is cut as panels and cord."""
    tie = _tie(
        spec, build, f"{level.id}-tie-1", level.id, "chord", (outline.start, outline.end), outline, outline.bow.pull,
        body.outline(level.height) or body.lowest,
    )
    if spec.build.lacing is None:
        return tie
    return Tie(
        f"{level.id}-lacing", level.id, "lacing", tie.at, tie.to, tie.length, 0.0, tie.pull,
        spec.build.lacing.material.name, way=tie.way,
    )


def _strap(spec: Spec, build: TieBuild, level: Level, outline: Oval, body: Body) -> Tie:
    """A strap across the opening of a hoop; its pull is that of the spring held by nothing else."""
    chord = dist(outline.point(outline.start), outline.point(outline.end))
    pull = of_length(outline.length, chord).pull
    return _tie(spec, build, f"{level.id}-strap", level.id, "strap", (outline.start, outline.end), outline, pull,
                body.outline(level.height) or body.lowest)


def _tie(
    spec: Spec, build: TieBuild, id: str, hoop: str, kind: TieKind, ends: tuple[float, float],
    outline: Outline, pull: float, oval: Ellipse | None = None,
) -> Tie:
    """A tie between two fractions of a hoop, round the body's ``oval`` if one is given; cut with a wrap at both
    ends."""
    left, right = outline.point(ends[0]), outline.point(ends[1])
    way = () if oval is None else round_body(kind, (left, right), oval)
    length = long(way or (left, right))
    cut = length + 2 * spec.allowances.tape_hem
    return Tie(id, hoop, kind, *ends, length, cut, pull, build.material.name, way=way)


def _round_line(ring: TiedRing, ellipse: Ellipse, wide: bool, scale: float) -> tuple[XY, ...]:
    """The ring's line from centre front by the wearer's left, as a closed row of points."""
    half = [(u * scale, v * scale) for u, v in ring.line]
    whole = [*half, *((u, -v) for u, v in half[-2:0:-1])]
    if wide:
        front = len(half) // 2
        turned = [(u, v - ellipse.offset) for u, v in whole]
        return (*turned[front::-1], *turned[:front:-1])
    return tuple((v, u - ellipse.offset) for u, v in whole)


def ties_of(spec: Spec, levels: Sequence[Level], body: Body) -> tuple[Tied, ...]:
    """The ties of all hoops, from the top."""
    return tuple(tie_hoop(spec, level, body) for level in levels)
