"""What pushes on the cage: the body under it, as a penalty on nodes that come inside its ellipses, and rests.

Depth inside is c (1 - rho), rho = sqrt((x/a)^2 + ((y - y0)/b)^2), with a, b, y0 and c = sqrt(a b) at the rows
and straight between them; a rest's depth is how far its node has gone against its push. The energy is half
the stiffness times depth squared.
"""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats, Ints, outer
from hoopwright.strength.cage.model import BodyModel, RestModel


@record(frozen=True, slots=True)
class Contact:
    """What touches: `nodes` (k,), of the body first, `of_body` of them; `depth` m, its `gradient` (k, 3) and
    `curvature` (k, 3, 3) by position, `stiffness` N/m."""

    nodes: Ints
    depth: Floats
    gradient: Floats
    curvature: Floats
    stiffness: Floats
    of_body: int

    @property
    def push(self) -> Floats:
        """The force on each node (k, 3), N."""
        return np.asarray(-(self.stiffness * self.depth)[:, None] * self.gradient)


class Rests:
    """Pads under single nodes, ready to evaluate."""

    def __init__(self, nodes: list[int], rests: tuple[RestModel, ...]) -> None:
        """Take each rest with its node."""
        self.nodes = np.array(nodes, dtype=np.int64)
        self.touches = np.array([rest.touches for rest in rests], dtype=np.float64).reshape(-1, 3)
        push = np.array([rest.push for rest in rests], dtype=np.float64).reshape(-1, 3)
        self.push = push / np.sqrt(np.einsum("ni,ni->n", push, push))[:, None]
        self.stiffness = np.array([rest.stiffness for rest in rests], dtype=np.float64)

    def depth(self, x: Floats) -> Floats:
        """How far each node has gone against its push, m; below zero where it has left its pad."""
        return np.asarray(np.einsum("ni,ni->n", self.touches - x[self.nodes], self.push))


_NOWHERE = np.zeros(0, dtype=np.int64), np.zeros(0), np.zeros((0, 3)), np.zeros((0, 3, 3))
"""No nodes, their depth, its gradient and its curvature."""


def contact_of(body: Body | None, rests: Rests, x: Floats, moving: int) -> Contact | None:
    """What touches at node positions x, of which the first `moving` may touch the body; None when nothing does."""
    if body is None and not len(rests.nodes):
        return None
    nodes, depth, gradient, curvature = _NOWHERE if body is None else body.touching(x[:moving])
    count, deep = len(nodes), rests.depth(x)
    on = np.flatnonzero(deep > 0)
    if not count and not len(on):
        return None
    firm = np.full(count, 0.0 if body is None else body.stiffness)
    return Contact(np.concatenate([nodes, rests.nodes[on]]), np.concatenate([depth, deep[on]]),
                   np.vstack([gradient, -rests.push[on]]),
                   np.concatenate([curvature, np.zeros((len(on), 3, 3))]),
                   np.concatenate([firm, rests.stiffness[on]]), count)


class Body:
    """The rows of a body, ready to evaluate."""

    def __init__(self, model: BodyModel) -> None:
        """Take at least two rows of different height."""
        rows = sorted(model.rows, key=lambda r: r.z)
        self.z = np.array([r.z for r in rows])
        table = [(r.half_breadth, r.half_depth, r.y, (r.half_breadth * r.half_depth) ** 0.5) for r in rows]
        self.table = np.array(table)
        self.stiffness = model.stiffness
        a, b, y = self.table[:, 0].max(), self.table[:, 1].max(), self.table[:, 2]
        self._low = np.array([-a, y.min() - b, self.z[0]])
        self._high = np.array([a, y.max() + b, self.z[-1]])

    def _rows(self, z: Floats) -> tuple[Floats, Floats]:
        k = np.clip(np.searchsorted(self.z, z) - 1, 0, len(self.z) - 2)
        slope = (self.table[k + 1] - self.table[k]) / (self.z[k + 1] - self.z[k])[:, None]
        return self.table[k] + slope * (z - self.z[k])[:, None], slope

    def outside(self, x: Floats) -> Floats:
        """Return points (n, 3), those inside moved level and straight out on to the body."""
        row, _ = self._rows(x[:, 2])
        level = x[:, :2] - np.column_stack([np.zeros(len(x)), row[:, 2]])
        rho = np.sqrt(((level / row[:, :2]) ** 2).sum(axis=1))
        there = (x[:, 2] >= self.z[0]) & (x[:, 2] <= self.z[-1]) & (rho < 1)
        grown = level / np.where(there, np.maximum(rho, 1e-6), 1.0)[:, None]
        return np.column_stack([grown[:, 0], grown[:, 1] + row[:, 2], x[:, 2]])

    def touching(self, x: Floats) -> tuple[Ints, Floats, Floats, Floats]:
        """Return which nodes of x (n, 3) are inside, their depth m, its gradient (k, 3) and curvature (k, 3,
        3).
        """
        near = np.flatnonzero(((x >= self._low) & (x <= self._high)).all(axis=1))
        values, _ = self._rows(x[near, 2])
        rho2 = (x[near, 0] / values[:, 0]) ** 2 + ((x[near, 1] - values[:, 2]) / values[:, 1]) ** 2
        inside = near[rho2 < 1.0]
        return (inside, *self._depth(x[inside])) if len(inside) else _NOWHERE

    def _depth(self, x: Floats) -> tuple[Floats, Floats, Floats]:
        row, slope = self._rows(x[:, 2])
        (a, b, y0, c), (a1, b1, y1, c1) = row.T, slope.T
        zero = np.zeros(len(x))
        u, v = x[:, 0] / a, (x[:, 1] - y0) / b
        rho = np.maximum(np.sqrt(u * u + v * v), 1e-6)
        du = np.column_stack([1 / a, zero, -u * a1 / a])
        dv = np.column_stack([zero, 1 / b, -(y1 + v * b1) / b])
        dc = np.column_stack([zero, zero, c1])
        d2 = outer(du, du) + outer(dv, dv)
        mixed_x, mixed_y = -u * a1 / a**2, -v * b1 / b**2
        d2[:, 0, 2] += mixed_x
        d2[:, 2, 0] += mixed_x
        d2[:, 1, 2] += mixed_y
        d2[:, 2, 1] += mixed_y
        d2[:, 2, 2] += 2 * (u * a1 / a) ** 2 + 2 * v * b1 * (y1 + v * b1) / b**2
        dr = (u[:, None] * du + v[:, None] * dv) / rho[:, None]
        d2r = (d2 - outer(dr, dr)) / rho[:, None, None]
        gradient = dc * (1 - rho)[:, None] - c[:, None] * dr
        curvature = -outer(dc, dr) - outer(dr, dc) - c[:, None, None] * d2r
        return c * (1 - rho), gradient, curvature
