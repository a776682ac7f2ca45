"""A hoop hung from n tapes at equal spacing under a line load w: its sag between them.

A sewn tape hardly holds twist, so the hoop is free to twist at the tapes. Exact: sag =
4 w R^4 sum over odd j of (B + C j^2 n^2)/[B C j^2 n^2 (j^2 n^2 - 1)^2], B = EI strong, C = GJ.
For a drop v = a cos m theta with a turn b cos m theta the ring's curvature is (b + m^2 a/R)/R and its
twist m (b + a/R)/R; the b of least energy leaves a stiffness B C m^2 (m^2 - 1)^2/[(B + C m^2) R^4] against
a load of that wave. The n reactions are the waves 2 w cos j n theta, and odd j part the middle from the
tape. n need not be whole: a bay as wide as the widest gap then stands for the worst case.
"""

from __future__ import annotations

_TERMS = 41


def sag(n: float, load: float, radius: float, strong: float, torsion: float) -> float:
    """Drop midway between tapes below the tapes, m, for ``load`` N/m; n greater than 1."""
    total = 0.0
    for j in range(1, _TERMS, 2):
        square = (j * n) ** 2
        total += (strong + torsion * square) / (strong * torsion * square * (square - 1) ** 2)
    return 4 * load * radius**4 * total
