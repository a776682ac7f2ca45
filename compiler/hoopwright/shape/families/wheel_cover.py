"""What is cut of cloth for a wheel: its cover, flat, with hole and slit ruled on it, and the roll."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.shape.curves.ellipse import Ellipse, point_at
from hoopwright.shape.model import XY, Panel, Rule, Seam, Wheel

_POINTS = 72


def cover_and_roll(wheel: Wheel, hole: Ellipse, forward: float) -> tuple[Panel, ...]:
    """The cover, whole or as two halves with a seam from front to back, and the roll.

    ``hole`` is that of the wheel, which lies ``forward`` m before the middle of the cover as cut.
    """
    edge = wheel.cover / 2 + wheel.hem
    scale, off = wheel.cover / wheel.width, edge + forward
    around = [(x * scale, y * scale) for x, y in (point_at(hole, k / _POINTS) for k in range(_POINTS + 1))]
    cover = _halves if wheel.halves else _whole
    return (cover(wheel, edge, off, around), _roll(wheel))


def _roll(wheel: Wheel) -> Panel:
    return Panel(
        "roll",
        1,
        wheel.roll_material,
        ((0.0, 0.0), (wheel.roll_cut[0], 0.0), wheel.roll_cut, (0.0, wheel.roll_cut[1])),
        wheel.roll_cut[0],
        wheel.roll_cut[1],
        "across",
        (Seam((0, 1), "itself", wheel.seam), Seam((1, 2), "closed end", wheel.seam)),
    )


def _whole(wheel: Wheel, edge: float, off: float, hole: list[XY]) -> Panel:
    """The cover in one piece, ``edge`` m from its middle all round; the hole's own middle lies ``off`` up it."""
    top = max(y for _, y in hole)
    ring = tuple(
        (edge + edge * sin(2 * pi * k / _POINTS), edge + edge * cos(2 * pi * k / _POINTS))
        for k in range(_POINTS)
    )
    rules = (
        Rule("hole", tuple((edge + x, off + y) for x, y in hole), off),
        Rule("slit", ((edge, off + top), (edge, off + top + wheel.slit)), off + top),
    )
    return Panel(
        "cover",
        1,
        wheel.cover_material,
        ring,
        2 * edge,
        2 * edge,
        "up",
        (Seam((0, _POINTS - 1), "the rim, turned round it", wheel.hem),),
        rules,
    )


def _halves(wheel: Wheel, edge: float, off: float, hole: list[XY]) -> Panel:
    """The same as two mirrored halves, seamed from front to back."""
    seam, top = wheel.seam, max(y for _, y in hole)
    bow = tuple(
        (seam + edge * sin(pi * k / _POINTS), edge - edge * cos(pi * k / _POINTS)) for k in range(_POINTS + 1)
    )
    side = [(seam + max(x, 0.0), off + y) for x, y in hole[: _POINTS // 2 + 1]]
    rules = (
        Rule("half of the hole", tuple(side), off),
        Rule("slit, left open", ((seam, off + top), (seam, off + top + wheel.slit)), off + top),
    )
    return Panel(
        "half of the cover",
        2,
        wheel.cover_material,
        ((0.0, 0.0), *bow, (0.0, 2 * edge)),
        edge + seam,
        2 * edge,
        "up",
        (
            Seam((1, _POINTS + 1), "the rim, turned round it", wheel.hem),
            Seam((_POINTS + 2, 0), "the other half", seam),
        ),
        rules,
        mirrored=True,
    )
