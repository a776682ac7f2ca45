"""A hoop on tapes at any places round it: exact for small movements, whatever the gaps.

Hung: the tapes hold the height at their places and nothing else. Their reactions follow from equal heights
there (up to a shift and a tilt of the whole hoop) and from balance. Pressed: the pulls are known, and the
hoop moves by its influence functions; a shift as a whole does not put it out of round. At equal
spacing both are the forms in ``hang`` and ``ring``.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import cos, pi, sin

from hoopwright.source.record import record
from hoopwright.strength.forms import influence

_PER_GAP = 8


@record(frozen=True, slots=True)
class Hung:
    """``reactions`` N, upward, one a tape in the order given; ``sag`` m, greatest drop below the tapes;
    ``moment`` N m, greatest out of the plane. Tapes only pull: a reaction below 0 holds the hoop down."""

    reactions: tuple[float, ...]
    sag: float
    moment: float


@record(frozen=True, slots=True)
class Pressed:
    """Greatest movements m in and out against the hoop as it was drawn, and greatest bending moment N m in
    its plane."""

    inward: float
    outward: float
    moment: float


def hung(
    fractions: Sequence[float], load: float, radius: float, strong: float, torsion: float
) -> Hung | None:
    """A hoop under a line ``load`` N/m hung at ``fractions`` of its girth; None when the places cannot hold
    it level.

    ``strong`` = B = EI on edge, ``torsion`` = C = GJ, N m2.
    """
    turns = [2 * pi * fraction for fraction in fractions]
    count = len(turns)
    scale = radius**3 / pi

    def drop(theta: float) -> float:
        return scale * (influence.twist(theta) / torsion + influence.bend(theta) / strong)

    size = scale / torsion
    rows = [[drop(a - b) / size for b in turns] + [1.0, cos(a), sin(a)] for a in turns]
    for balance in ([1.0] * count, [cos(b) for b in turns], [sin(b) for b in turns]):
        rows.append([*balance, 0.0, 0.0, 0.0])
    solved = solve(rows, [0.0] * count + [2 * pi * radius * load, 0.0, 0.0])
    if solved is None:
        return None
    reactions, (level, tilt_y, tilt_x) = solved[:count], solved[count:]

    def height(theta: float) -> float:
        bent = sum(force * drop(theta - turn) for force, turn in zip(reactions, turns, strict=True))
        return bent + size * (level + tilt_y * cos(theta) + tilt_x * sin(theta))

    def moment(theta: float) -> float:
        bent = (f * influence.moment(theta - turn) for f, turn in zip(reactions, turns, strict=True))
        return radius / pi * abs(sum(bent))

    between = _between(turns)
    sag = max(-height(theta) for theta in between)
    return Hung(tuple(reactions), sag, max(moment(theta) for theta in (*turns, *between)))


def pressed(fractions: Sequence[float], pulls: Sequence[float], radius: float, weak: float) -> Pressed:
    """A hoop under inward ``pulls`` N at ``fractions`` of its girth; ``weak`` = A = EI in its plane, N m2."""
    turns = [2 * pi * fraction for fraction in fractions]

    def total(influenced: Sequence[float]) -> float:
        return sum(pull * one for pull, one in zip(pulls, influenced, strict=True))

    angles = (*turns, *_between(turns))
    moved = [radius**3 / (pi * weak) * total([influence.bend(a - b) for b in turns]) for a in angles]
    bent = [radius / pi * total([influence.moment(a - b) for b in turns]) for a in angles]
    return Pressed(max(0.0, *moved), max(0.0, *(-move for move in moved)), max(abs(one) for one in bent))


def _between(turns: Sequence[float]) -> tuple[float, ...]:
    """Angles in every gap, its middle among them."""
    places = sorted(turn % (2 * pi) for turn in turns)
    places.append(places[0] + 2 * pi)
    return tuple(a + (b - a) * k / _PER_GAP for a, b in pairwise(places) for k in range(1, _PER_GAP))


def solve(rows: list[list[float]], right: list[float]) -> list[float] | None:
    """A small system of linear equations by elimination with pivots; None when it is singular."""
    size = len(rows)
    work = [[*row, value] for row, value in zip(rows, right, strict=True)]
    for k in range(size):
        pivot = max(range(k, size), key=lambda i: abs(work[i][k]))
        if abs(work[pivot][k]) < 1e-12:
            return None
        work[k], work[pivot] = work[pivot], work[k]
        for i in range(k + 1, size):
            factor = work[i][k] / work[k][k]
            work[i] = [a - factor * b for a, b in zip(work[i], work[k], strict=True)]
    found = [0.0] * size
    for k in reversed(range(size)):
        known = sum(work[k][j] * found[j] for j in range(k + 1, size))
        found[k] = (work[k][size] - known) / work[k][k]
    return found
