"""Finite rotations on stacks, and the scalar functions of an angle that the rod element needs.

The functions are even in the angle and are summed as power series in x = angle^2, so that their derivatives
are exact and nothing divides by a small angle. All converge for angles under 2 pi; the rod element turns by a
fraction of a radian over its length, where ten terms are exact to rounding.
"""

from __future__ import annotations

from math import factorial

import numpy as np

from hoopwright.strength.cage.arrays import Floats, outer, skew

_BERNOULLI = (
    1 / 6,
    -1 / 30,
    1 / 42,
    -1 / 30,
    5 / 66,
    -691 / 2730,
    7 / 6,
    -3617 / 510,
    43867 / 798,
    -174611 / 330,
)


def _cosec_series() -> Floats:
    """Coefficients of (t/2)/sin(t/2) in t^2."""
    c = [1.0]
    for k, b in enumerate(_BERNOULLI, start=1):
        c.append(abs(2 * (2 ** (2 * k - 1) - 1) * b) / factorial(2 * k) / 4**k)
    return np.array(c)


def _tan_series() -> Floats:
    """Coefficients of tan(t/4)/t in t^2."""
    return np.array(
        [
            4**k * (4**k - 1) * abs(b) / factorial(2 * k) / 4 ** (2 * k - 1)
            for k, b in enumerate(_BERNOULLI, start=1)
        ]
    )


def _derivative(c: Floats) -> Floats:
    """Coefficients of (df/dt)/t = 2 df/dx."""
    return 2 * c[1:] * np.arange(1, len(c))


_R = _cosec_series()
_R1 = _derivative(_R)
_R2 = _derivative(_R1)
_RHO = -_R[1:]
_RHO1 = _derivative(_RHO)
_Q = _tan_series()
_Q1 = _derivative(_Q)
_WIDTH = len(_R)


def _padded(c: Floats) -> Floats:
    return np.concatenate([c, np.zeros(_WIDTH - len(c))])


_TABLE = np.stack([_padded(c) for c in (_R, _R1, _R2, _RHO, _RHO1, _Q, _Q1)], axis=1)


def angle_functions(theta: Floats) -> Floats:
    """Return r, r1, r2, rho, rho1, q, q1 of rotation vectors (n, 3), as the rows of (7, n).

    With t the length: r = (t/2)/sin(t/2), rho = (1 - r)/t^2, q = tan(t/4)/t; a 1 is (d/dt)/t once more.
    """
    x = np.minimum(np.einsum("ni,ni->n", theta, theta), 9.0)
    return np.asarray((np.vander(x, _WIDTH, increasing=True) @ _TABLE).T)


def exp(v: Floats) -> Floats:
    """Return the rotation matrices (n, 3, 3) of rotation vectors (n, 3) (Rodrigues)."""
    t2 = np.einsum("ni,ni->n", v, v)
    t = np.sqrt(t2)
    return turned(v, t2, np.sinc(t / np.pi), 0.5 * np.sinc(t / (2 * np.pi)) ** 2)


def turned(v: Floats, t2: Floats, a: Floats, b: Floats) -> Floats:
    """Return I + a skew(v) + b skew(v)^2, (n, 3, 3), with t2 the squared lengths of v."""
    out = a[:, None, None] * skew(v) + b[:, None, None] * outer(v, v)
    out[:, (0, 1, 2), (0, 1, 2)] += (1 - b * t2)[:, None]
    return out


def log(m: Floats) -> Floats:
    """Return the rotation vectors (n, 3) of rotation matrices (n, 3, 3), for angles under pi."""
    ax = 0.5 * np.stack([m[:, 2, 1] - m[:, 1, 2], m[:, 0, 2] - m[:, 2, 0], m[:, 1, 0] - m[:, 0, 1]], axis=1)
    s = np.sqrt(np.einsum("ni,ni->n", ax, ax))
    t = np.arctan2(s, 0.5 * (m[:, 0, 0] + m[:, 1, 1] + m[:, 2, 2] - 1))
    factor = np.where(s > 1e-12, t / np.maximum(s, 1e-300), 1.0)
    return ax * factor[:, None]
