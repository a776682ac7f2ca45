"""Where the join of each hoop sits: beside a tape, staggered, never at centre front.

The rule (ours; common practice, no source): a join is a lump and the likeliest place to fail, so it sits
where a tape carries it. The two tapes on either side of centre front are left out, because the front is
what people look at and what knees and chairs press on. The remaining tapes are taken in turn so that
neighbouring hoops join half-way round from each other. The lap begins just beyond the tape, on its side
towards centre back.
"""

from __future__ import annotations

from itertools import cycle
from math import pi
from typing import Literal

from hoopwright.shape.model import Hoop, Shape, Tape
from hoopwright.source.record import record

_CLOSED = 2 * pi - 1e-9

HAND = 0.1016
"""Between the middles of two neighbouring joins beside a seam, m: 4 in, a hand, our rule."""


@record(frozen=True, slots=True)
class JoinPlace:
    """The join of one hoop: beside which tape, and on which side of that tape it lies.

    ``tape`` is a tape id. ``towards`` is the side of the tape the lap runs to: ``back`` for every tape
    but one that hangs at centre back, where the wearer's ``left`` is taken.
    """

    hoop: str
    tape: str
    towards: Literal["back", "left"]


def place_joins(shape: Shape) -> tuple[JoinPlace, ...]:
    """One place for each closed hoop, from the top. An open hoop (a half hoop) has no join.

    Neighbouring hoops get different tapes whenever two tapes or more are allowed.
    """
    order = join_tapes(shape.tapes)
    if not order:
        return ()
    closed = [hoop for hoop in shape.hoops if hoop.plan.arc >= _CLOSED]
    return tuple(_beside(hoop, order[i % len(order)]) for i, hoop in enumerate(closed))


@record(frozen=True, slots=True)
class BehindPlace:
    """The join of one hoop that no tape crosses: its middle at ``fraction`` of the girth from centre front by
    the wearer's left, ``beside`` two spokes, or the last seam, to which it lies on the wearer's ``side``."""

    hoop: str
    fraction: float
    beside: tuple[str, ...]
    side: Literal["left", "right"]


def place_behind(shape: Shape, lap: float) -> tuple[BehindPlace, ...]:
    """One place for each closed hoop of a wheel or a petticoat, from the top; none where tapes carry them.

    A ring joins midway between two spokes, next to those that straddle centre back (or next to the one that
    lies there), a petticoat's hoop a hand or a lap from its neighbour across the last seam, at centre back;
    neighbours lie at opposite sides (our rule; common practice, no source). ``lap`` m.
    """
    if shape.tapes or (shape.wheel is None and shape.petticoat is None):
        return ()
    closed = [hoop for hoop in shape.hoops if hoop.plan.arc >= _CLOSED]
    return tuple(_spoked(hoop, left) if shape.wheel is not None else _seamed(hoop, left, lap)
                 for hoop, left in zip(closed, cycle((True, False)), strict=False))


def _seamed(hoop: Hoop, left: bool, lap: float) -> BehindPlace:
    away = max(HAND, lap) / 2 / hoop.girth
    return BehindPlace(hoop.id, 0.5 - away if left else 0.5 + away, (), "left" if left else "right")


def _spoked(hoop: Hoop, left: bool) -> BehindPlace:
    """The gap between spokes is the one beyond the gap, or the spoke, at centre back."""
    count = len(hoop.fixings)
    last = (count - 1) // 2 if count % 2 else count // 2 - 1
    first = last - 1 if left else count - 1 - last
    one, other = hoop.fixings[first], hoop.fixings[first + 1]
    return BehindPlace(hoop.id, (one.fraction + other.fraction) / 2, (one.tape, other.tape),
                       "left" if left else "right")


def join_tapes(tapes: tuple[Tape, ...]) -> tuple[Tape, ...]:
    """The tapes a join may lie beside, in the order in which hoops take them."""
    return _in_turn(_allowed(tapes))


def join_towards(tape: Tape) -> Literal["back", "left"]:
    """The side of a tape to which a lap runs."""
    return "left" if abs(tape.hem_fraction - 0.5) < 1e-6 else "back"


def _beside(hoop: Hoop, tape: Tape) -> JoinPlace:
    return JoinPlace(hoop.id, tape.id, join_towards(tape))


def _allowed(tapes: tuple[Tape, ...]) -> tuple[Tape, ...]:
    """Every tape but the two nearest centre front; with fewer than four tapes only a tape at centre
    front itself is left out."""
    if len(tapes) < 4:
        return tuple(tape for tape in tapes if _from_front(tape) > 1e-6) or tapes
    front = sorted(tapes, key=lambda tape: (round(_from_front(tape), 9), tape.hem_fraction))[:2]
    names = {tape.id for tape in front}
    return tuple(tape for tape in tapes if tape.id not in names)


def _from_front(tape: Tape) -> float:
    """Distance from centre front as a fraction of the girth, 0 to 1/2."""
    return min(tape.hem_fraction % 1.0, 1.0 - tape.hem_fraction % 1.0)


def _in_turn(tapes: tuple[Tape, ...]) -> tuple[Tape, ...]:
    """The tapes reordered so that each follows one about half the list away: a c e b d, or a c b d."""
    half = (len(tapes) + 1) // 2
    turned: list[Tape] = []
    for first, second in zip(tapes[:half], (*tapes[half:], None), strict=False):
        turned.append(first)
        if second is not None:
            turned.append(second)
    return tuple(turned)
