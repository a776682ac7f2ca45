"""Stiffness of a uniformly curved bar in the six strains of the rod element, from statics (flexibility
method).

A cut in the middle of the bar carries a force F and a moment M; at arc length s from it the section carries
Lambda(s)^T (M - r(s) x F), which is integrated with the section's flexibility. Derived here; the method is
that of any text on structures (for example Timoshenko, Strength of Materials, part I, on curved bars; from
memory).
"""

from __future__ import annotations

import numpy as np

from hoopwright.strength.cage.arrays import Floats, skew

_GAUSS_X, _GAUSS_W = np.polynomial.legendre.leggauss(6)


def arc_stiffness(length: Floats, curvature: Floats, section: Floats) -> Floats:
    """Return (n, 6, 6) stiffness, so that stress resultants times length = stiffness x strain.

    `length` (n,) m; `curvature` (n,) signed 1/m about the width; `section` (n, 4): EA, GJ, EI strong, EI
    weak.
    """
    n = len(length)
    flex = np.zeros((n, 6, 6))
    for x, w in zip(_GAUSS_X, _GAUSS_W, strict=True):
        s = 0.5 * length * x
        to_section = _to_section(s, curvature)
        weight = (0.5 * length * w)[:, None] / section
        flex += np.matmul(to_section.transpose(0, 2, 1), weight[:, :, None] * to_section)
    moved = _moved_by_strain(length, curvature)
    stiffness: Floats = np.matmul(moved.transpose(0, 2, 1), np.linalg.solve(flex, moved))
    return 0.5 * (stiffness + stiffness.transpose(0, 2, 1))


def _place(s: Floats, curvature: Floats) -> Floats:
    """Return the point of the arc at s from its middle, in the frame of its middle, (n, 3)."""
    half = 0.5 * curvature * s
    chord = s * np.sinc(half / np.pi)
    return np.column_stack([chord * np.cos(half), chord * np.sin(half), np.zeros_like(s)])


def _to_section(s: Floats, curvature: Floats) -> Floats:
    """Return (n, 4, 6): axial force and three moments in the section at s from F and M in the middle."""
    turn = curvature * s
    c, d = np.cos(turn), np.sin(turn)
    back = np.zeros((len(s), 3, 3))
    back[:, 0, 0], back[:, 0, 1] = c, d
    back[:, 1, 0], back[:, 1, 1] = -d, c
    back[:, 2, 2] = 1
    out = np.zeros((len(s), 4, 6))
    out[:, 0, :3] = back[:, 0]
    out[:, 1:, :3] = -np.matmul(back, skew(_place(s, curvature)))
    out[:, 1:, 3:] = back
    return out


def _moved_by_strain(length: Floats, curvature: Floats) -> Floats:
    """Return (n, 6, 6): relative movement of the two halves at the cut, by the six strains.

    With the frame held, nodes at r1, r2 and spins u -+ v/2, u = tan(phi/2) n x v / 2 (phi half the turn):
    movement = chord' - u x (r2 - r1) - v x (r1 + r2)/2 and v.
    """
    n = len(length)
    phi = 0.5 * curvature * length
    sinc = np.sinc(phi / np.pi)
    end = _place(0.5 * length, curvature)
    along = np.zeros((n, 3))
    along[:, 0] = 2 * end[:, 0]
    middle = np.zeros((n, 3))
    middle[:, 1] = end[:, 1]
    axis = np.zeros((n, 3))
    axis[:, 2] = 0.5 * np.tan(0.5 * phi)
    u_by_v = skew(axis)
    v_by_turn = np.zeros((n, 3, 3))
    v_by_turn[:, 0, 0] = v_by_turn[:, 1, 1] = sinc
    v_by_turn[:, 2, 2] = 1
    chord = np.zeros((n, 3, 6))
    chord[:, 0, 0] = length * sinc
    chord[:, 0, 5] = 0.5 * length**2 * _sinc_slope(phi)
    chord[:, 1, 1] = chord[:, 2, 2] = length
    v = np.zeros((n, 3, 6))
    v[:, :, 3:] = v_by_turn * length[:, None, None]
    out = np.zeros((n, 6, 6))
    out[:, :3] = chord + np.matmul(np.matmul(skew(along), u_by_v) + skew(middle), v)
    out[:, 3:] = v
    return out


def _sinc_slope(phi: Floats) -> Floats:
    """Return d/dphi of sin(phi)/phi."""
    small = np.abs(phi) < 1e-3
    safe = np.where(small, 1.0, phi)
    return np.where(small, -phi / 3, (np.cos(safe) - np.sin(safe) / safe) / safe)
