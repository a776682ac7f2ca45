"""When a hoop buckles under an inward line load q.

In its plane: 3A/R^3 when the load stays normal (hydrostatic), 4 when it keeps its direction, 4.5 when it
is aimed at the centre (Timoshenko and Gere, Theory of Elastic Stability, quoted from memory). Sideways
out of its plane a wave of two: its stiffness B C m^2 (m^2 - 1)^2/[(B + C m^2) R^4] (see ``hang``) is used
up by the thrust q R on the slope, q m^2/R; with m = 2 that is q = 9BC/(B + 4C)/R^3. The screen takes the
least.
"""

from __future__ import annotations


def in_plane(weak: float, radius: float, factor: float = 3.0) -> float:
    """Critical inward line load in the hoop's plane, N/m; ``factor`` 3, 4 or 4.5 by the kind of load."""
    return factor * weak / radius**3


def sideways(strong: float, torsion: float, radius: float) -> float:
    """Critical inward line load out of the hoop's plane, N/m."""
    return 9 * strong * torsion / (strong + 4 * torsion) / radius**3


def screen(weak: float, strong: float, torsion: float, radius: float) -> float:
    """The lesser of the two, N/m: a lower bound for a hoop held by tapes."""
    return min(in_plane(weak, radius), sideways(strong, torsion, radius))
