"""Where the splices of a hoop made of several lengths sit: never at centre front, between tapes.

The lengths come from the cutting plan; what is free is their order round the hoop and, in a closed hoop, the
tape beside which its own join lies. Of all such ways the one is taken that keeps every splice furthest from
centre front (a fifth of the girth is far enough), then furthest from any tape, so that no lap lies under a
fixing, the joins of neighbouring hoops apart as ever; then the usual tape for the join, then the lengths in
the order they are cut. Only when a splice or the join would otherwise come near centre front, the join may
lie beside one of the two tapes in front. The rule is ours; common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise, permutations, product

from hoopwright.plan.joins import JoinPlace, join_tapes, join_towards
from hoopwright.shape.model import Hoop, Shape, Tape
from hoopwright.source.record import record
from hoopwright.supply.model import Cutting

_FAR = 0.2
"""Share of the girth from centre front that is far enough."""
_NEAR = 0.1
"""Share of the girth from centre front that is too near, when there is another way."""
_CLEAR = 0.04
"""Distance of a lap's middle from a tape beyond half the lap that is clear of its fixing, m."""


@record(frozen=True, slots=True)
class SplicePlace:
    """One splice of a hoop. It lies ``along`` metres from the middle of the hoop's own join, or from the end
    at the wearer's left of an open hoop, going round from the front by the wearer's left, at ``fraction`` of
    the girth, ``between`` two tapes. It joins the lengths ``first`` and ``then``, numbered as in the cutting
    plan."""

    hoop: str
    number: int
    along: float
    fraction: float
    between: tuple[str, str]
    first: int
    then: int


def place_splices(
    shape: Shape, cutting: Cutting, joins: tuple[JoinPlace, ...], lap: float
) -> tuple[tuple[JoinPlace, ...], tuple[SplicePlace, ...]]:
    """The joins, moved where splices ask for it, and the splices, hoop by hoop. Lengths m."""
    moved = {join.hoop: join for join in joins}
    found: list[SplicePlace] = []
    for hoop in shape.hoops:
        lengths = _lengths(hoop, cutting)
        if len(lengths) < 2:
            continue
        at = _tape_fractions(hoop, shape.tapes)
        starts = _starts(hoop, shape.tapes, moved.get(hoop.id), _beside(hoop, joins, moved))
        ways = (_way(hoop, at, lengths, *one, lap) for one in product(permutations(lengths), starts))
        way = min(ways, key=lambda way: way.key)
        if way.join is not None:
            moved[hoop.id] = way.join
        found.extend(way.splices)
    return tuple(moved[join.hoop] for join in joins), tuple(found)


def _beside(hoop: Hoop, joins: tuple[JoinPlace, ...], moved: dict[str, JoinPlace]) -> frozenset[str]:
    """The tapes beside which the neighbouring hoops join."""
    order = [join.hoop for join in joins]
    if hoop.id not in order:
        return frozenset()
    at = order.index(hoop.id)
    return frozenset(moved[name].tape for name in (*order[max(0, at - 1) : at], *order[at + 1 : at + 2]))


@record(frozen=True, slots=True)
class _Way:
    """One order of a hoop's lengths from one tape; the least ``key`` is the best."""

    key: tuple[bool, bool, bool, float, float, int, tuple[int, ...]]
    join: JoinPlace | None
    splices: tuple[SplicePlace, ...]


@record(frozen=True, slots=True)
class _Start:
    """A tape the hoop's join may lie beside (None for an open hoop), how far down the list of such tapes, and
    what speaks against it: it hangs in front, or a neighbouring hoop joins there."""

    join: JoinPlace | None
    place: int = 0
    in_front: bool = False
    taken: bool = False


def _lengths(hoop: Hoop, cutting: Cutting) -> dict[int, float]:
    """The hoop's lengths by their number in the cutting plan."""
    pieces = [piece for pack in cutting.packs for piece in pack.pieces if piece.part == hoop.id]
    return {piece.share: piece.length for piece in sorted(pieces, key=lambda piece: piece.share)}


def _starts(
    hoop: Hoop, tapes: tuple[Tape, ...], usual: JoinPlace | None, beside: frozenset[str]
) -> tuple[_Start, ...]:
    if usual is None:
        return (_Start(None),)
    allowed = join_tapes(tapes)
    others = tuple(tape for tape in tapes if tape not in allowed)
    tried = sorted((*allowed, *others), key=lambda tape: tape.id != usual.tape)
    return tuple(
        _Start(JoinPlace(hoop.id, tape.id, join_towards(tape)), place, tape not in allowed, tape.id in beside)
        for place, tape in enumerate(tried)
    )


def _way(
    hoop: Hoop,
    at: dict[str, float],
    lengths: dict[int, float],
    order: tuple[int, ...],
    start: _Start,
    lap: float,
) -> _Way:
    """The splices of one order from one start. A lap begins just beyond the tape, on the join's side."""
    join = start.join
    origin, along, span = hoop.start, lap / 2, hoop.end - hoop.start
    if join is not None:
        side = 1 if join.towards == "left" or at[join.tape] % 1.0 < 0.5 else -1
        origin, along, span = at[join.tape] + side * lap / 2 / hoop.girth, 0.0, 1.0
    splices: list[SplicePlace] = []
    for number, (first, then) in enumerate(pairwise(order), 1):
        along += lengths[first] - lap
        fraction = (origin + span * along / hoop.girth) % 1.0
        splices.append(SplicePlace(hoop.id, number, along, fraction, _between(fraction, at), first, then))
    front = min(_round(splice.fraction, 0.0) for splice in splices)
    near = front < _NEAR or (start.in_front and join is not None and _round(at[join.tape], 0.0) < _NEAR)
    tape = min((_round(splice.fraction, one) for splice in splices for one in at.values()), default=1.0)
    clear = (lap / 2 + _CLEAR) / hoop.girth
    far = (-min(front, _FAR), -min(tape, clear))
    return _Way((near, start.in_front, start.taken, *far, start.place, order), join, tuple(splices))


def _tape_fractions(hoop: Hoop, tapes: tuple[Tape, ...]) -> dict[str, float]:
    """Where the tapes cross the hoop; where they end above it, where they would."""
    fixed = {fixing.tape: fixing.fraction for fixing in hoop.fixings}
    return {tape.id: fixed.get(tape.id, tape.hem_fraction) for tape in tapes}


def _between(fraction: float, at: dict[str, float]) -> tuple[str, str]:
    """The tapes on either side, the one before it first."""
    if not at:
        return ("", "")
    before = min(at, key=lambda name: ((fraction - at[name]) % 1.0, name))
    after = min(at, key=lambda name: ((at[name] - fraction) % 1.0, name))
    return (before, after)


def _round(one: float, other: float) -> float:
    """Distance round the girth, a share of it, 0 to 1/2."""
    away = abs(one - other) % 1.0
    return min(away, 1.0 - away)
