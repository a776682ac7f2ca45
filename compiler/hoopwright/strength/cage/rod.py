"""The hoop element: a corotational two-node rod that is exact for any uniformly curved and twisted shape.

Each node has a position and a triad (tangent, in-plane normal, width). The element's own frame stands halfway
between its two triads. Six strains describe it: stretch of the arc over the chord, the chord's two
inclinations in the frame, and the three components of the rotation from triad to triad per unit of length. A
straight-born strip closed into a ring is met exactly, whatever the mesh. The stiffness (see `arc`) is that of
a curved bar, found from statics, so bending that varies along the element and its coupling to twist are in it
as well.

Source: the frame halfway between the triads is that of G. Jelenic and M. A. Crisfield, Comput. Methods Appl.
Mech. Engrg 171 (1999) 141-171 (from memory); the derivatives are worked out in the comments below.
"""

from __future__ import annotations

import numpy as np

from hoopwright.source.record import record
from hoopwright.strength.cage.arrays import Floats, apply, apply_t, cross, outer, skew
from hoopwright.strength.cage.rotation import angle_functions, log, turned

_EYE = np.eye(3)
_BENT = np.array([0.0, 1.0, 1.0])


@record(frozen=True, slots=True)
class Kinematics:
    """Geometry of n elements in one state: frames, chords in the frame, rotations, strains and their
    gradients.
    """

    frame: Floats  # (n, 3, 3) columns are the frame's axes
    chord: Floats  # (n, 3) chord in the frame
    turn: Floats  # (n, 3) rotation vector from triad 1 to triad 2
    strain: Floats  # (n, 6) stretch, two inclinations, twist, strong and weak curvature
    gradient: (
        Floats  # (n, 6, 9) strain by (chord movement, difference and mean of the nodes' spins) in the frame
    )
    by_turn: Floats  # (n, 6, 9) movement of (chord in the frame, turn) by the same nine
    functions: Floats  # (7, n) of the turn, see `angle_functions`
    bent: Floats  # (n, 3) the turn without its twist
    arc: Floats  # (3, n) r, r1, r2 of the bent part: length of arc over chord, and its derivatives


def kinematics(x1: Floats, x2: Floats, r1: Floats, r2: Floats, length: Floats) -> Kinematics:
    """Return the geometry of elements between nodes at x1, x2 (n, 3) with triads r1, r2 (n, 3, 3)."""
    turn = log(np.matmul(r1.transpose(0, 2, 1), r2))
    bent = turn * _BENT
    both = angle_functions(np.concatenate([turn, bent]))
    functions, arc = both[:, : len(turn)], both[:3, len(turn) :]
    frame = np.matmul(r1, _half(turn, functions))
    chord = apply_t(frame, x2 - x1)
    by = _by_nodes(chord, turn, functions)
    strain, size = _strain(chord, turn, arc[0], length)
    first = _by_chord_and_turn(chord, turn, size, length, bent, arc)
    return Kinematics(frame, chord, turn, strain, np.matmul(first, by), by, functions, bent, arc)


def strains(x1: Floats, x2: Floats, r1: Floats, r2: Floats, length: Floats) -> Floats:
    """Return the six strains alone, (n, 6)."""
    turn = log(np.matmul(r1.transpose(0, 2, 1), r2))
    chord = apply_t(np.matmul(r1, _half(turn, angle_functions(turn))), x2 - x1)
    return _strain(chord, turn, angle_functions(turn * _BENT)[0], length)[0]


def _half(turn: Floats, functions: Floats) -> Floats:
    """Return the rotations (n, 3, 3) of half the turns: with v = turn / 2, sin v / v = 1 / r and
    (1 - cos v) / v^2 = 2 q / r."""
    r, q = functions[0], functions[5]
    return turned(0.5 * turn, 0.25 * np.einsum("ni,ni->n", turn, turn), 1 / r, 2 * q / r)


def _strain(chord: Floats, turn: Floats, arc: Floats, length: Floats) -> tuple[Floats, Floats]:
    """Return strains (n, 6) and chord lengths (n,).

    A bar of even bend and twist that is not stretched has a chord of length / arc, which leans by turn x
    twist / 24 in its frame (a helix, to second order in the turn); what differs from that is strain.
    """
    size = np.sqrt(np.einsum("ni,ni->n", chord, chord))
    strain = np.empty((len(length), 6))
    strain[:, 0] = size * arc / length - 1
    strain[:, 1:3] = chord[:, 1:] / length[:, None] - turn[:, 1:] * turn[:, :1] / 24
    strain[:, 3:] = turn / length[:, None]
    return strain, size


def _by_nodes(chord: Floats, turn: Floats, f: Floats) -> Floats:
    """Movement of chord and turn, seen from the frame, by (d, v, u): chord ends, difference and mean of the
    spins.

    Triads exp(-turn/2) and exp(turn/2) seen from the frame give v = S turn', S = sinc I + (1 - sinc) n
    n^T of half the turn, so turn' = (r I + rho turn turn^T) v; and the frame's own spin is w = u - q turn
    x v / 2 (q = tan/.).
    """
    r, _, _, rho, _, q, _ = f
    out = np.zeros((len(turn), 6, 9))
    p_hat = skew(chord)
    out[:, :3, :3] = _EYE
    out[:, :3, 3:6] = -0.5 * q[:, None, None] * np.matmul(p_hat, skew(turn))
    out[:, :3, 6:] = p_hat
    out[:, 3:, 3:6] = r[:, None, None] * _EYE + rho[:, None, None] * outer(turn, turn)
    return out


def _by_chord_and_turn(
    chord: Floats,
    turn: Floats,
    size: Floats,
    length: Floats,
    bent: Floats,
    arc: Floats,
) -> Floats:
    """Strain by chord and turn, (n, 6, 6)."""
    out = np.zeros((len(turn), 6, 6))
    out[:, 0, :3] = (arc[0] / (length * size))[:, None] * chord
    out[:, 0, 3:] = (size * arc[1] / length)[:, None] * bent
    inverse = 1 / length
    for k in range(1, 6):
        out[:, k, k] = inverse
    out[:, 1:3, 3] = -turn[:, 1:] / 24
    out[:, 1, 4] = out[:, 2, 5] = -turn[:, 0] / 24
    return out


def tangent(k: Kinematics, stiffness: Floats, stress: Floats, length: Floats) -> Floats:
    """Return the exact symmetric tangent (n, 9, 9) in (chord movement, spin difference, mean spin), in the
    frame.

    `stress` (n, 6) are the stress resultants times length that act in the geometric part.
    """
    r, r1, r2 = (f[:, None, None] for f in k.arc)
    p, bent = k.chord, k.bent
    size = np.sqrt(np.einsum("ni,ni->n", p, p))[:, None]
    unit = p / size
    axial, across, long = stress[:, :1], stress[:, 1:3], length[:, None]
    # forces conjugate to chord and turn
    g_p = axial * r[:, 0] / long * unit
    g_p[:, 1:] += across / long
    g_t = axial * size * r1[:, 0] / long * bent + stress[:, 3:] / long
    g_t[:, 0] -= np.einsum("ni,ni->n", across, k.turn[:, 1:]) / 24
    g_t[:, 1:] -= across * k.turn[:, :1] / 24
    # second derivatives of the strains by chord and turn, times their forces
    second = np.empty((len(p), 6, 6))
    pull = (axial / long)[:, :, None]
    second[:, :3, :3] = pull * r / size[:, :, None] * (_EYE - outer(unit, unit))
    second[:, :3, 3:] = pull * r1 * outer(unit, bent)
    second[:, 3:, :3] = second[:, :3, 3:].transpose(0, 2, 1)
    second[:, 3:, 3:] = pull * size[:, :, None] * (r1 * np.diag(_BENT) + r2 * outer(bent, bent))
    second[:, 3, 4:] -= across / 24
    second[:, 4:, 3] -= across / 24
    by = k.by_turn
    out = np.matmul(k.gradient.transpose(0, 2, 1), np.matmul(stiffness, k.gradient))
    out += np.matmul(by.transpose(0, 2, 1), np.matmul(second, by))
    _add_moving_frame(out, k, g_p, g_t, outer(k.turn, k.turn))
    symmetric: Floats = 0.5 * (out + out.transpose(0, 2, 1))
    return symmetric


def _add_moving_frame(out: Floats, k: Kinematics, g_p: Floats, g_t: Floats, turn_turn: Floats) -> None:
    """Add to the tangent what comes from the turning of frame and triads under forces g_p and moments g_t.

    The nine forces are g_p; h = (r I + rho turn turn^T) g_t - q m x turn / 2; m = g_p x chord. Each also
    turns with the frame's spin w, which adds w x force.
    """
    r, r1, _, rho, rho1, q, q1 = (f[:, None, None] for f in k.functions)
    p, turn = k.chord, k.turn
    m = cross(g_p, p)
    along = np.einsum("ni,ni->n", turn, g_t)[:, None, None]
    h = (r[:, 0] * g_t + rho[:, 0] * along[:, 0] * turn) - 0.5 * q[:, 0] * cross(m, turn)
    by_p, by_t = k.by_turn[:, :3], k.by_turn[:, 3:, 3:6]
    turn_hat, g_hat, m_hat = skew(turn), skew(g_p), skew(m)
    spin_v = -0.5 * q * turn_hat
    out[:, :3, 3:6] -= np.matmul(g_hat, spin_v)
    out[:, :3, 6:] -= g_hat
    pull = np.matmul(g_hat, by_p)
    out[:, 6:] += pull
    out[:, 6:, 3:6] -= np.matmul(m_hat, spin_v)
    out[:, 6:, 6:] -= m_hat
    turning = r1 * outer(g_t, turn) + rho1 * along * turn_turn + rho * (along * _EYE + outer(turn, g_t))
    turning -= 0.5 * (q * m_hat + q1 * np.matmul(m_hat, turn_turn))
    h_hat = skew(h)
    out[:, 3:6] += 0.5 * q * np.matmul(turn_hat, pull)
    out[:, 3:6, 3:6] += np.matmul(turning, by_t) - np.matmul(h_hat, spin_v)
    out[:, 3:6, 6:] -= h_hat


def to_nodes(frame: Floats) -> Floats:
    """Return T (n, 9, 12): the nine movements in the frame by the movements and spins of both nodes."""
    n = len(frame)
    back = frame.transpose(0, 2, 1)
    out = np.zeros((n, 9, 12))
    out[:, :3, :3] = -back
    out[:, :3, 6:9] = back
    out[:, 3:6, 3:6] = -back
    out[:, 3:6, 9:] = back
    out[:, 6:, 3:6] = 0.5 * back
    out[:, 6:, 9:] = 0.5 * back
    return out


def nodal_forces(k: Kinematics, stress: Floats) -> Floats:
    """Return what the elements ask of their nodes, (n, 12): force and moment at node 1, then at node 2."""
    nine = apply_t(k.gradient, stress)
    force = apply(k.frame, nine[:, :3])
    part = apply(k.frame, nine[:, 3:6])
    half = 0.5 * apply(k.frame, nine[:, 6:])
    return np.concatenate([-force, half - part, force, half + part], axis=1)
