"""How a hoop lies: its shift, turn and tilt as a whole, and its departure from the wished line."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.mesh import HoopMesh
from hoopwright.strength.cage.model import HoopModel, Xyz
from hoopwright.strength.cage.system import State, System

_CUTS = 4
"""Points looked at per element."""


@record(frozen=True, slots=True)
class Outline:
    """Shift m, turn in plan (by the wearer's left), tilt rad; at `fractions`: drop and departure m."""

    shift: Xyz
    turn: float
    tilt: float
    fractions: Floats
    drop: Floats
    outward: Floats


def outline(system: System, state: State, mesh: HoopMesh) -> Outline:
    """Return how a hoop lies; its shift and turn are taken out of the departure, not out of the drop."""
    lengths = system.layout.rods.length[mesh.elements]
    wished, tangent = _between(system.layout.x, system.layout.triads, mesh, lengths)
    now, _ = _between(state.x, state.triads, mesh, lengths)
    ends = _closed(mesh.fractions, mesh, 1.0)
    fractions = np.interp(np.arange(len(now)) / _CUTS, np.arange(len(ends)), ends)
    weight = _shares(fractions, mesh)
    a, b = wished[:, 0] + 1j * wished[:, 1], now[:, 0] + 1j * now[:, 1]
    a_mid, b_mid = (weight * a).sum(), (weight * b).sum()
    fit = (weight * (b - b_mid) * np.conj(a - a_mid)).sum()
    turn = float(np.angle(fit)) if abs(fit) > 0 else 0.0
    left = (b - b_mid) * np.exp(-1j * turn) - (a - a_mid)
    side = 1j * (tangent[:, 0] + 1j * tangent[:, 1])
    side /= np.maximum(np.abs(side), 1e-12)
    way = 1.0 if (weight * (side * np.conj(a - a_mid)).real).sum() >= 0 else -1.0
    drop = wished[:, 2] - now[:, 2]
    plane = np.column_stack([np.ones(len(a)), (a - a_mid).real, (a - a_mid).imag])
    slope = np.linalg.lstsq(plane, drop, rcond=None)[0][1:]
    shift = (float((b_mid - a_mid).real), float((b_mid - a_mid).imag), -float((weight * drop).sum()))
    tilt = float(np.arctan(np.sqrt(slope @ slope)))
    return Outline(shift, -turn, tilt, fractions, drop, way * (side * np.conj(left)).real)


def sag(system: System, hoop: HoopModel, lies: Outline) -> float:
    """Return the greatest drop below the line between neighbouring tape fixings, m; without any, over all."""
    model = system.layout.model
    at = sorted({f % 1.0 if hoop.closed else f for t in model.tapes for h, f in t.fixings if h == hoop.id})
    if not at:
        return float(np.ptp(lies.drop))
    f = lies.fractions % 1.0 if hoop.closed else lies.fractions
    away = np.abs(f[:, None] - np.array(at))
    place = np.argmin(np.minimum(away, 1.0 - away) if hoop.closed else away, axis=0)
    base = np.interp(f, at, lies.drop[place], period=1.0 if hoop.closed else None)
    return max(0.0, float((lies.drop - base).max()))


def _closed(values: Floats, mesh: HoopMesh, add: float = 0.0) -> Floats:
    """Return values along the nodes, a closed hoop's first repeated at the end."""
    return np.concatenate([values, values[:1] + add]) if mesh.closed else values


def _between(x: Floats, triads: Floats, mesh: HoopMesh, lengths: Floats) -> tuple[Floats, Floats]:
    """Return points and tangents at every quarter of every element (cubic between its ends)."""
    p, t = _closed(x[mesh.nodes], mesh), _closed(triads[mesh.nodes, :, 0], mesh)
    p1, p2, long = p[:-1, None], p[1:, None], lengths[:, None, None]
    m1, m2 = long * t[:-1, None], long * t[1:, None]
    s = (np.arange(_CUTS) / _CUTS)[None, :, None]
    points = (1 + 2 * s) * (1 - s) ** 2 * p1 + s * (1 - s) ** 2 * m1
    points = points + s**2 * (3 - 2 * s) * p2 - s**2 * (1 - s) * m2
    slopes = 6 * s * (1 - s) * (p2 - p1) + (1 - s) * (1 - 3 * s) * m1 + s * (3 * s - 2) * m2
    points, slopes = points.reshape(-1, 3), slopes.reshape(-1, 3)
    if not mesh.closed:
        points, slopes = np.vstack([points, p[-1:]]), np.vstack([slopes, t[-1:] * lengths[-1]])
    return points, slopes


def _shares(fractions: Floats, mesh: HoopMesh) -> Floats:
    """Return each point's share of the girth."""
    step = np.diff(np.append(fractions, fractions[0] + 1.0)) if mesh.closed else np.diff(fractions)
    share = step + np.roll(step, 1) if mesh.closed else np.append(step, 0) + np.insert(step, 0, 0)
    return np.asarray(share / share.sum())
