"""Stiffness of a bar of uniform curvature and twist in the six strains of the rod element (flexibility
method).

A cut in the middle of the bar carries a force F and a moment M; at arc length s from it the section carries
Lambda(s)^T (M - r(s) x F), which is integrated with the section's flexibility; Lambda turns by curvature
times s. Derived here; the method is that of any text on structures (Timoshenko, Strength of Materials, part
I, on curved bars; from memory).
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from hoopwright.strength.cage.arrays import Floats, apply, outer, skew
from hoopwright.strength.cage.rotation import angle_functions, exp

_GAUSS_X, _GAUSS_W = np.polynomial.legendre.leggauss(5)


def arc_stiffness(length: Floats, curvature: Floats, section: Floats) -> Floats:
    """Return (n, 6, 6) stiffness, so that stress resultants times length = stiffness x strain.

    `length` (n,) m; `curvature` (n, 3) 1/m: twist, strong, weak; `section` (n, 4): EA, GJ, EI strong, EI
    weak.
    """
    points, n = len(_GAUSS_X), len(length)
    at = 0.5 * length * _GAUSS_X[:, None]
    to_section = _to_section(at.ravel(), np.tile(curvature, (points, 1))).reshape(points, n, 4, 6)
    weight = 0.5 * length[:, None] * _GAUSS_W[:, None, None] / section
    rows = to_section.transpose(1, 3, 0, 2).reshape(n, 6, 4 * points)
    flex = np.matmul(rows, (rows * weight.transpose(1, 0, 2).reshape(n, 1, 4 * points)).transpose(0, 2, 1))
    moved = _moved_by_strain(length, curvature)
    stiffness: Floats = np.matmul(moved.transpose(0, 2, 1), np.linalg.solve(flex, moved))
    return 0.5 * (stiffness + stiffness.transpose(0, 2, 1))


def _place(s: Floats, curvature: Floats) -> Floats:
    """Return the point of the bar at s from its middle, in the frame of its middle, (n, 3).

    The integral of exp(curvature s) e1: s (e1 + (1 - cos t)/t^2 v x e1 + (t - sin t)/t^3 v x (v x e1)).
    """
    v = curvature * s[:, None]
    t2 = np.einsum("ni,ni->n", v, v)
    t = np.sqrt(t2)
    once = 0.5 * np.sinc(t / (2 * np.pi)) ** 2
    small: npt.NDArray[np.bool_] = t < 0.05
    safe = np.where(small, 1.0, t)
    twice = np.where(small, 1 / 6 - t2 / 120 + t2**2 / 5040, (safe - np.sin(safe)) / safe**3)
    hat = skew(v)
    first = hat[:, :, 0]
    out: Floats = s[:, None] * (once[:, None] * first + twice[:, None] * apply(hat, first))
    out[:, 0] += s
    return out


def _to_section(s: Floats, curvature: Floats) -> Floats:
    """Return (n, 4, 6): axial force and three moments in the section at s from F and M in the middle."""
    back = exp(curvature * s[:, None]).transpose(0, 2, 1)
    out = np.zeros((len(s), 4, 6))
    out[:, 0, :3] = back[:, 0]
    out[:, 1:, :3] = -np.matmul(back, skew(_place(s, curvature)))
    out[:, 1:, 3:] = back
    return out


def _moved_by_strain(length: Floats, curvature: Floats) -> Floats:
    """Return (n, 6, 6): relative movement of the two halves at the cut, by the six strains.

    With the frame held, nodes at r1, r2 and spins u -+ v/2, u = q turn x v / 2 (see `rod`): the movement
    is chord' - u x (r2 - r1) - v x (r1 + r2)/2, the turning v; and v = S turn'. The chord follows from
    the strains by |chord| = length (1 + stretch) / arc and its two inclinations (see `rod`).
    """
    n = len(length)
    turn = curvature * length[:, None]
    r, _, _, rho, _, q, _ = (f[:, None, None] for f in angle_functions(turn))
    bent = turn * np.array([0.0, 1.0, 1.0])
    arc, arc1 = angle_functions(bent)[:2]
    near, far = _place(-0.5 * length, curvature), _place(0.5 * length, curvature)
    chord = far - near
    v_by_turn = np.linalg.inv(r * np.eye(3) + rho * outer(turn, turn))
    size = np.sqrt(np.einsum("ni,ni->n", chord, chord))
    moved = np.zeros((n, 3, 6))
    moved[:, 1, 1] = moved[:, 2, 2] = length
    moved[:, 1:, 3] = turn[:, 1:] * (length**2 / 24)[:, None]
    moved[:, 1, 4] = moved[:, 2, 5] = turn[:, 0] * length**2 / 24
    moved[:, 0, 0] = length / arc * size
    moved[:, 0, 3:] = -(size**2 * arc1 / arc * length)[:, None] * bent
    moved[:, 0] -= np.einsum("ni,nij->nj", chord[:, 1:], moved[:, 1:])
    moved[:, 0] /= chord[:, :1]
    v = np.zeros((n, 3, 6))
    v[:, :, 3:] = v_by_turn * length[:, None, None]
    arm = 0.5 * q * np.matmul(skew(chord), skew(turn)) + 0.5 * skew(near + far)
    out = np.zeros((n, 6, 6))
    out[:, :3] = moved + np.matmul(arm, v)
    out[:, 3:] = v
    return out
