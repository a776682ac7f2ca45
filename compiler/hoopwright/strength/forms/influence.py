"""What one point load does all round a ring: sums of waves in closed form.

A load at 0 on a ring has every wave cos m theta in the same strength; waves 0 and 1 move the ring as a
whole. From m = 2 on, with psi = pi - theta and theta from 0 to 2 pi:

- S0 = sum cos m theta/m^2 = pi^2/6 - pi theta/2 + theta^2/4 - cos theta
- S1 = sum cos m theta/(m^2 - 1) = 1/2 - cos psi/4 - (psi/2) sin psi
- S2 = sum cos m theta/(m^2 - 1)^2 = -1/2 + (psi/4) sin psi - (psi^2/8) cos psi + (3/16 + pi^2/24) cos psi

S2 follows from S2'' + S2 = -S1, even in psi and without a wave of one. In the ring's plane a wave of m has
the stiffness A (m^2 - 1)^2/R^4, out of it B C m^2 (m^2 - 1)^2/[(B + C m^2) R^4]; and 1/[m^2 (m^2 - 1)^2] is
1/m^2 - 1/(m^2 - 1) + 1/(m^2 - 1)^2. A moment, in either direction, is load R/(m^2 - 1).
"""

from __future__ import annotations

from math import cos, pi, sin

_S2_COSINE = 3 / 16 + pi**2 / 24


def moment(theta: float) -> float:
    """S1: bending moment times pi/R from a unit load at an angle, in either direction."""
    psi = pi - theta % (2 * pi)
    return 0.5 - cos(psi) / 4 - psi / 2 * sin(psi)


def bend(theta: float) -> float:
    """S2: movement times pi A/R^3 in the plane, or its part times pi B/R^3 out of it."""
    psi = pi - theta % (2 * pi)
    return -0.5 + psi / 4 * sin(psi) + (_S2_COSINE - psi * psi / 8) * cos(psi)


def twist(theta: float) -> float:
    """S0 - S1 + S2: the part of the movement out of the plane times pi C/R^3 that comes from twist."""
    turn = theta % (2 * pi)
    zeroth = pi**2 / 6 - pi * turn / 2 + turn * turn / 4 - cos(turn)
    return zeroth - moment(theta) + bend(theta)
