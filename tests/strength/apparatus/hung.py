"""A hoop hung from n tapes at equal spacing under a line load, free to twist at them: its moment."""

from __future__ import annotations

from math import cos, pi, sin


def moment_over_tape(n: float, load: float, radius: float) -> float:
    """Bending moment out of the plane over a tape, N m: w R^2 (1 - alpha cot alpha).

    From midway M = c cos phi - w R^2, and the torque, its integral, is 0 at the tape: c = w R^2 alpha/sin
    alpha.
    """
    a = pi / n
    return load * radius**2 * (1 - a * cos(a) / sin(a))
