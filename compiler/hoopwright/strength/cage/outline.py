"""How a hoop lies: its shift, turn and tilt as a whole, and its departure from the wished line."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats, Ints
from hoopwright.strength.cage.build import Layout
from hoopwright.strength.cage.mesh import HoopMesh
from hoopwright.strength.cage.model import CageModel, HoopModel, Xyz

_CUTS = 4
"""Points looked at per element."""
_STRAIGHT = 1e-6
"""Part of its width by which a line must bulge to have an inner side."""


@record(frozen=True, slots=True)
class Outline:
    """Shift m, turn in plan (by the wearer's left), tilt rad; at every place looked at: departure outward in plan,
    m; `sag` the greatest drop below the line between neighbouring tape fixings, m (without any: over all)."""

    shift: Xyz
    turn: float
    tilt: float
    outward: Floats
    sag: float


class Line:
    """A hoop's wished line, against which it is seen how the hoop lies; `width` its greatest extent in plan, m."""

    def __init__(self, layout: Layout, hoop: HoopModel, mesh: HoopMesh) -> None:
        """Look at every quarter of every element."""
        self._mesh = mesh
        self._blend, self._slope = _cubic(layout.rods.length[mesh.elements])
        self.width = float(np.ptp(layout.x[mesh.nodes, :2], axis=0).max())
        ends = _closed(mesh.fractions, mesh, 1.0)
        count = _CUTS * (len(ends) - 1) + (0 if mesh.closed else 1)
        fractions = np.interp(np.arange(count) / _CUTS, np.arange(len(ends)), ends)
        self._weight = _shares(fractions, mesh)
        self._place, tangent = self._points(layout.x, layout.triads), self._tangents(layout.x, layout.triads)
        a = self._place[:, 0] + 1j * self._place[:, 1]
        self._mid = (self._weight * a).sum()
        self._arm = a - self._mid
        side = 1j * (tangent[:, 0] + 1j * tangent[:, 1])
        side /= np.maximum(np.abs(side), 1e-12)
        out = float((self._weight * (side * np.conj(self._arm)).real).sum())
        self._outward = -side if out < -_STRAIGHT * self.width else side
        plane = np.column_stack([np.ones(len(a)), self._arm.real, self._arm.imag])
        self._by_drop = np.linalg.pinv(plane)[1:]
        self._taken = _between_fixings(layout.model, hoop, fractions)

    def lies(self, x: Floats, triads: Floats) -> Outline:
        """Return how the hoop lies with nodes at x (nodes, 3) and their triads; its shift and turn are taken out of
        the departure, not out of the drop."""
        now = self._points(x, triads)
        b = now[:, 0] + 1j * now[:, 1]
        b_mid = (self._weight * b).sum()
        fit = (self._weight * (b - b_mid) * np.conj(self._arm)).sum()
        turn = float(np.angle(fit)) if abs(fit) > 0 else 0.0
        left = (b - b_mid) * np.exp(-1j * turn) - self._arm
        drop = self._place[:, 2] - now[:, 2]
        slope = self._by_drop @ drop
        moved = b_mid - self._mid
        shift = (float(moved.real), float(moved.imag), -float((self._weight * drop).sum()))
        tilt = float(np.arctan(np.sqrt(slope @ slope)))
        return Outline(shift, -turn, tilt, (self._outward * np.conj(left)).real, self._sag(drop))

    def _sag(self, drop: Floats) -> float:
        if self._taken is None:
            return float(np.ptp(drop))
        low, high, share = self._taken
        base = drop[low] + share * (drop[high] - drop[low])
        return max(0.0, float((drop - base).max()))

    def _points(self, x: Floats, triads: Floats) -> Floats:
        return self._between(self._blend, x, triads)

    def _tangents(self, x: Floats, triads: Floats) -> Floats:
        return self._between(self._slope, x, triads)

    def _between(self, blend: Floats, x: Floats, triads: Floats) -> Floats:
        """Points or tangents at every quarter of every element, and at the end of an open hoop."""
        nodes, closed = self._mesh.nodes, self._mesh.closed
        ends = np.concatenate([x[nodes], triads[nodes, :, 0]], axis=1)
        after = np.concatenate([ends[1:], ends[:1]]) if closed else ends[1:]
        four = np.concatenate([ends[: len(after)], after], axis=1).reshape(-1, 4, 3)
        found = np.matmul(blend, four)
        rows = found[:, :_CUTS].reshape(-1, 3)
        return rows if closed else np.vstack([rows, found[-1, -1]])


def _cubic(length: Floats) -> tuple[Floats, Floats]:
    """Return what points and their slopes at the quarters of each element, ends included, take of place and tangent
    at its first end, then at its second, each (n, cuts + 1, 4)."""
    s = np.arange(_CUTS + 1) / _CUTS
    blend = np.stack([(1 + 2 * s) * (1 - s) ** 2, s * (1 - s) ** 2, s**2 * (3 - 2 * s), -(s**2) * (1 - s)], axis=1)
    slope = np.stack([-6 * s * (1 - s), (1 - s) * (1 - 3 * s), 6 * s * (1 - s), s * (3 * s - 2)], axis=1)
    long = np.ones((len(length), 1, 4))
    long[:, 0, 1] = long[:, 0, 3] = length
    return blend * long, slope * long


def _between_fixings(model: CageModel, hoop: HoopModel, fractions: Floats) -> tuple[Ints, Ints, Floats] | None:
    """For every place looked at: the places at the tape fixings on either side, and how far it is from one to the
    other; None for a hoop that no tape holds. Beyond the last fixing of an open hoop both are that one."""
    at = np.array(sorted({f % 1.0 if hoop.closed else f for t in model.tapes for h, f in t.fixings if h == hoop.id}))
    if not len(at):
        return None
    f = fractions % 1.0 if hoop.closed else fractions
    away = np.abs(f[:, None] - at)
    place = np.argmin(np.minimum(away, 1.0 - away) if hoop.closed else away, axis=0)
    if hoop.closed:
        at, place = np.concatenate([at[-1:] - 1.0, at, at[:1] + 1.0]), np.concatenate([place[-1:], place, place[:1]])
    share = np.interp(f, at, np.arange(len(at)))
    low = np.minimum(share.astype(np.int64), len(at) - 1)
    high = np.minimum(low + 1, len(at) - 1)
    return place[low], place[high], share - low


def _closed(values: Floats, mesh: HoopMesh, add: float = 0.0) -> Floats:
    """Return values along the nodes, a closed hoop's first repeated at the end."""
    return np.concatenate([values, values[:1] + add]) if mesh.closed else values


def _shares(fractions: Floats, mesh: HoopMesh) -> Floats:
    """Return each point's share of the girth."""
    step = np.diff(np.append(fractions, fractions[0] + 1.0)) if mesh.closed else np.diff(fractions)
    share = step + np.roll(step, 1) if mesh.closed else np.append(step, 0) + np.insert(step, 0, 0)
    return np.asarray(share / share.sum())
