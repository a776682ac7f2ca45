"""On a chair: where each hoop meets seat, thighs and floor, and how it is bent there.

The wearer sits down without care. Her waist comes down, the tapes fall slack, and each hoop goes as low as
its tapes and the floor let it, but what lies behind her stays on the seat. The worst is judged, so no hoop
is held up by its own stiffness.

- A hoop that hangs above her thighs keeps its shape.
- A large one stands round her: behind on the seat, in front of the knees as low as it goes. It only tilts.
  For that its diameter must span from the back of the body to the knees, down from the seat to where it lies.
  Where the tapes in front do not let it come so far forward, it needs room behind her on the seat, and when
  there is too little it is squeezed between the chair's back and the tapes as between two walls.
- Any other lies on the seat behind and over the thighs in front, and its sides hang down beside the chair: a
  saddle, up by d cos 2 theta. Its line keeps its length, so it draws in: the mean over theta of
  sqrt(r^2 + (2 d sin 2 theta)^2) is R. The sharpest curvature lies on top, 1/r in plan and 4 d/r^2 upright.

A strip that is free to roll in its fixings turns its flat side to the bend wherever that points, so the whole
curvature sits in its thin direction; a round one has no other. All of it is derived here; that the
slope of the saddle's sides stops at 45 degrees (it topples forward instead) and that she needs a hand's
length of seat are our judgement.
"""

from __future__ import annotations

from math import hypot, pi, sin, sqrt
from typing import Literal

from hoopwright.shape.curves.root import bracketed_root
from hoopwright.source.record import record

LEAST_SEAT = 0.20
"""How much of the seat's depth she must sit on, m: our judgement."""
STEEPEST = 0.5
"""Amplitude over radius of a saddle whose sides slope by 45 degrees: 2 d/r = 1."""

Lies = Literal["hangs free", "round the knees", "over the thighs"]


@record(frozen=True, slots=True)
class Sitter:
    """The wearer on the chair, m: ``seat`` above the floor and its ``depth``; ``waist`` and ``thigh`` above
    the seat; ``knee`` from the back of the body to the front of the knees; ``body`` from back to front at
    the waist."""

    seat: float
    depth: float
    waist: float
    thigh: float
    knee: float
    body: float


@record(frozen=True, slots=True)
class Place:
    """Where a hoop comes to lie: ``back``, ``front`` and ``sides`` above the floor, m; ``room`` it needs
    behind her on the seat, and ``gap`` it is squeezed into (None: it is not); ``saddle`` the amplitude of the
    saddle and ``radius`` its mean radius in plan, m."""

    lies: Lies
    back: float
    front: float
    sides: float
    room: float
    gap: float | None
    saddle: float
    radius: float

    @property
    def curvature(self) -> float:
        """Sharpest curvature of the saddle, 1/m: sqrt((1/r)^2 + (4 d/r^2)^2)."""
        return hypot(1 / self.radius, 4 * self.saddle / self.radius**2)


def place(sitter: Sitter, radius: float, below_waist: float, tape: float, half: float) -> Place:
    """Where a round hoop of ``radius`` m lies that hangs ``below_waist`` when standing, on a tape of ``tape``
    m in front; ``half`` is half its height as worn."""
    waist = sitter.seat + sitter.waist
    hangs = waist - below_waist
    low = max(hangs, half)
    thigh = sitter.seat + sitter.thigh
    if hangs >= thigh:
        return Place("hangs free", hangs, hangs, hangs, 0.0, None, 0.0, radius)
    back = max(low, sitter.seat)
    if 2 * radius >= hypot(sitter.knee, back - low):
        room = _room(sitter, radius, back - low, waist - low, tape)
        spare = max(sitter.depth - LEAST_SEAT, 0.0)
        gap = max(2 * radius - (room - spare), 0.05 * radius) if room > spare else None
        return Place("round the knees", back, low, (back + low) / 2, room, gap, 0.0, radius)
    return _astride(radius, back, thigh, low)


def _room(sitter: Sitter, radius: float, rise: float, drop: float, tape: float) -> float:
    """How far behind her the hoop's back lies, m: what its front cannot go forward on its tape."""
    front = sqrt(max((2 * radius) ** 2 - rise**2, 0.0))
    reach = sitter.body + sqrt(max(tape**2 - drop**2, 0.0))
    return max(front - reach, 0.0)


def _astride(radius: float, back: float, front: float, low: float) -> Place:
    """Back on the seat, front on the thighs, sides hanging to ``low`` or as steep as they can."""
    wanted = max(((back + front) / 2 - low) / 2, 0.0)
    steep = steepest_radius(radius)
    depth = min(wanted, STEEPEST * steep)
    drawn = drawn_in(radius, depth)
    return Place("over the thighs", back, front, (back + front) / 2 - 2 * depth, 0.0, None, depth, drawn)


def drawn_in(radius: float, depth: float) -> float:
    """Mean radius in plan of a hoop of ``radius`` bent to a saddle of amplitude ``depth``, m; its line keeps
    its length."""
    if depth <= 0.0:
        return radius
    return bracketed_root(lambda r: _line(r, depth) - radius, 1e-6 * radius, radius)


def steepest_radius(radius: float) -> float:
    """Mean radius in plan of the steepest saddle a hoop of ``radius`` makes, m."""
    return radius / _line(1.0, STEEPEST)


def _line(radius: float, depth: float) -> float:
    """Length of a saddle's line over 2 pi: the mean of sqrt(r^2 + (2 d sin 2 theta)^2), by 32 even steps,
    which for a periodic function are exact beyond what is printed."""
    return sum(hypot(radius, 2 * depth * sin(pi * k / 16)) for k in range(32)) / 32
