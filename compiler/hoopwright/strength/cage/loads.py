"""Dead loads on nodes: their weight, and the couples that keep a curved or unevenly loaded element exact.

The centre line of an element is a cubic between its ends, so that the work of a line load depends on the end
positions and on the end tangents: -w . (S/2 (x1 + x2) + S^2/12 (t1 - t2)) for an even load w over arc length
S.
"""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.mesh import HoopMesh, Rods
from hoopwright.strength.cage.model import HoopModel
from hoopwright.strength.gravity import GRAVITY

_DOWN = np.array([0.0, 0.0, -1.0])


@record(frozen=True, slots=True)
class Loads:
    """At load factor 1: forces (nodes, 3) N; tangent couples (hoop nodes, 3) N m; each rod's own end shares.

    `shares` (n, 4): downward force at end 1 and 2, and downward tangent couple at end 1 and 2 of every rod.
    """

    force: Floats
    couple: Floats
    shares: Floats

    @property
    def weight(self) -> float:
        """All that hangs on the cage, N."""
        return float(-self.force[:, 2].sum())


def line_load(hoop: HoopModel, fractions: Floats) -> Floats:
    """Return the downward line load, own weight included, at the given fractions, N/m."""
    base = hoop.line_load_n_per_m + hoop.section.mass_per_m * GRAVITY
    if not hoop.load_rows:
        return np.full(len(fractions), base)
    rows = sorted(hoop.load_rows)
    at = np.array([f for f, _ in rows])
    size = np.array([w for _, w in rows])
    if hoop.closed:
        return np.asarray(base + np.interp(fractions % 1.0, at, size, period=1.0))
    return np.asarray(base + np.interp(fractions, at, size))


def rod_shares(hoops: list[tuple[HoopModel, HoopMesh]], rods: Rods) -> Floats:
    """Return each rod's end shares (n, 4) of its line load, which runs straight from end to end."""
    start, end = [], []
    for hoop, mesh in hoops:
        f = np.append(mesh.fractions, mesh.fractions[0] + 1.0) if mesh.closed else mesh.fractions
        w = line_load(hoop, f)
        start.append(w[:-1])
        end.append(w[1:])
    a, b, s = np.concatenate(start), np.concatenate(end), rods.length
    return np.column_stack(
        [
            s * (7 * a + 3 * b) / 20,
            s * (3 * a + 7 * b) / 20,
            s**2 * (3 * a + 2 * b) / 60,
            -(s**2) * (2 * a + 3 * b) / 60,
        ]
    )


def gather(rods: Rods, shares: Floats, extra: Floats, hoop_nodes: int) -> Loads:
    """Return nodal loads from the rods' shares and from forces `extra` (nodes, 3)."""
    force = extra.copy()
    couple = np.zeros((hoop_nodes, 3))
    for node, down, turn in ((rods.first, 0, 2), (rods.second, 1, 3)):
        np.add.at(force, node, shares[:, down, None] * _DOWN)
        np.add.at(couple, node, shares[:, turn, None] * _DOWN)
    return Loads(force, couple, shares)
