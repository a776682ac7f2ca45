"""Where the join of each hoop sits: beside a tape, staggered, never at centre front.

The rule (ours; common practice, no source): a join is a lump and the likeliest place to fail, so it sits
where a tape carries it. The two tapes on either side of centre front are left out, because the front is
what people look at and what knees and chairs press on. The remaining tapes are taken in turn so that
neighbouring hoops join half-way round from each other. The lap begins just beyond the tape, on its side
towards centre back.
"""

from __future__ import annotations

from math import pi
from typing import Literal

from hoopwright.shape.model import Hoop, Shape, Tape
from hoopwright.source.record import record

_CLOSED = 2 * pi - 1e-9


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
