"""A smooth curve through a hoop's points, walked by arc length."""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats, Ints, cross
from hoopwright.strength.cage.model import HoopModel

_GAUSS_X, _GAUSS_W = np.polynomial.legendre.leggauss(3)


@record(frozen=True, slots=True)
class Curve:
    """Cubic spline over the chord length of the points; `bend` second derivatives (all per unit of that
    length).
    """

    points: Floats  # (m, 3); a closed curve repeats its first point
    bend: Floats  # (m, 3)
    steps: Floats  # (m - 1,) chord lengths
    marks: Floats  # (m,) arc length at the points

    @property
    def length(self) -> float:
        """Arc length of the whole, m."""
        return float(self.marks[-1])


def curve_of(hoop: HoopModel) -> Curve:
    """Return the smooth wished centre line of a hoop (not-a-knot at open ends, periodic when closed)."""
    points = np.array(hoop.points, dtype=np.float64)
    if hoop.closed:
        points = np.vstack([points, points[:1]])
    steps = np.sqrt(np.einsum("ni,ni->n", np.diff(points, axis=0), np.diff(points, axis=0)))
    bend = _periodic_bend(points, steps) if hoop.closed else _open_bend(points, steps)
    empty = np.zeros(len(points))
    curve = Curve(points, bend, steps, empty)
    pieces = np.arange(len(steps))
    arcs = _arc(curve, pieces, steps)
    return Curve(points, bend, steps, np.concatenate([[0.0], np.cumsum(arcs)]))


def _slopes(points: Floats, steps: Floats) -> Floats:
    return np.asarray(np.diff(points, axis=0) / steps[:, None])


def _periodic_bend(points: Floats, steps: Floats) -> Floats:
    n = len(steps)
    matrix = np.zeros((n, n))
    rows = np.arange(n)
    before = np.roll(steps, 1)
    matrix[rows, rows] += (before + steps) / 3
    matrix[rows, (rows - 1) % n] += before / 6
    matrix[rows, (rows + 1) % n] += steps / 6
    slope = _slopes(points, steps)
    bend = np.linalg.solve(matrix, slope - np.roll(slope, 1, axis=0))
    return np.asarray(np.vstack([bend, bend[:1]]))


def _open_bend(points: Floats, steps: Floats) -> Floats:
    n = len(points)
    if n < 4:
        return np.zeros_like(points)
    matrix = np.zeros((n, n))
    rows = np.arange(1, n - 1)
    matrix[rows, rows] = (steps[:-1] + steps[1:]) / 3
    matrix[rows, rows - 1] = steps[:-1] / 6
    matrix[rows, rows + 1] = steps[1:] / 6
    matrix[0, :3] = [1 / steps[0], -1 / steps[0] - 1 / steps[1], 1 / steps[1]]
    matrix[-1, -3:] = [1 / steps[-2], -1 / steps[-2] - 1 / steps[-1], 1 / steps[-1]]
    right = np.zeros_like(points)
    right[1:-1] = np.diff(_slopes(points, steps), axis=0)
    return np.asarray(np.linalg.solve(matrix, right))


def _speed(curve: Curve, piece: Ints, t: Floats) -> tuple[Floats, Floats]:
    """Return derivatives and their sizes at distances t (..., n) into the pieces (n,)."""
    h = curve.steps[piece][:, None]
    p, q = curve.bend[piece], curve.bend[piece + 1]
    v = t[..., None]
    u = h - v
    chord = (curve.points[piece + 1] - curve.points[piece]) / h
    slope = chord + ((h - 3 * u * u / h) * p + (3 * v * v / h - h) * q) / 6
    return slope, np.sqrt(np.einsum("...ni,...ni->...n", slope, slope))


def _place(curve: Curve, piece: Ints, t: Floats) -> Floats:
    """Return points at distances t (n,) into the given pieces."""
    h, v = curve.steps[piece][:, None], t[:, None]
    u = h - v
    straight = (curve.points[piece] * u + curve.points[piece + 1] * v) / h
    bent = u * (u * u / h - h) * curve.bend[piece] + v * (v * v / h - h) * curve.bend[piece + 1]
    return np.asarray(straight + bent / 6)


def _arc(curve: Curve, piece: Ints, t: Floats) -> Floats:
    """Return the arc length from the start of each piece to t."""
    speeds = _speed(curve, piece, 0.5 * (1 + _GAUSS_X)[:, None] * t)[1]
    return np.asarray(0.5 * t * (_GAUSS_W @ speeds))


def walk(curve: Curve, s: Floats) -> tuple[Floats, Floats]:
    """Return points and unit tangents (n, 3) at arc lengths s (n,) within the curve."""
    piece = np.clip(np.searchsorted(curve.marks, s, side="right") - 1, 0, len(curve.steps) - 1)
    want = s - curve.marks[piece]
    t = want * curve.steps[piece] / np.diff(curve.marks)[piece]
    for _ in range(2):
        t = t - (_arc(curve, piece, t) - want) / _speed(curve, piece, t)[1]
    slope, size = _speed(curve, piece, t)
    return _place(curve, piece, t), slope / size[:, None]


def plane_normal(points: Floats) -> Floats:
    """Return the unit normal (3,) of the plane through the points' area, upward; z when they enclose none."""
    arm = points - points.mean(axis=0)
    normal = cross(arm, np.roll(arm, -1, axis=0)).sum(axis=0)
    size = float(np.sqrt(normal @ normal))
    if size <= 1e-9 * float(np.abs(arm).max()) ** 2 or abs(normal[2]) <= 1e-9 * size:
        return np.array([0.0, 0.0, 1.0])
    return np.asarray(normal / size * np.sign(normal[2]))


def triads(tangents: Floats, edge: Floats) -> Floats:
    """Return (n, 3, 3) triads with columns tangent, width x tangent, width; the width as near to `edge` as it
    can.
    """
    width = edge - tangents * (tangents @ edge)[:, None]
    size = np.sqrt(np.einsum("ni,ni->n", width, width))
    lost = size < 1e-6
    if lost.any():
        spare = np.eye(3)[np.argmin(np.abs(tangents[lost]), axis=1)]
        width[lost] = spare - tangents[lost] * np.einsum("ni,ni->n", spare, tangents[lost])[:, None]
        size = np.sqrt(np.einsum("ni,ni->n", width, width))
    width = width / size[:, None]
    return np.stack([tangents, cross(width, tangents), width], axis=2)
