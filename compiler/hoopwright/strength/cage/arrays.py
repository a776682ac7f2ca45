"""Array types of the solver and small helpers on stacks of 3-vectors."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]


_SKEW = np.array([
    [0.0, 0.0, 0.0, 0.0, 0.0, -1.0, 0.0, 1.0, 0.0],
    [0.0, 0.0, 1.0, 0.0, 0.0, 0.0, -1.0, 0.0, 0.0],
    [0.0, -1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0],
])
"""The cross-product matrices of the three axes, row by row."""


def skew(v: Floats) -> Floats:
    """Return the (..., 3, 3) cross-product matrices of (..., 3) vectors: skew(a) b = a x b."""
    return np.asarray((v @ _SKEW).reshape(*v.shape, 3))


def cross(a: Floats, b: Floats) -> Floats:
    """Return a x b row by row (faster than numpy's general routine on short stacks)."""
    out = np.empty(np.broadcast_shapes(a.shape, b.shape))
    out[..., 0] = a[..., 1] * b[..., 2] - a[..., 2] * b[..., 1]
    out[..., 1] = a[..., 2] * b[..., 0] - a[..., 0] * b[..., 2]
    out[..., 2] = a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]
    return out


def outer(a: Floats, b: Floats) -> Floats:
    """Return a b^T row by row."""
    return a[..., :, None] * b[..., None, :]


def apply(m: Floats, v: Floats) -> Floats:
    """Return m v row by row."""
    out: Floats = np.matmul(m, v[..., None])[..., 0]
    return out


def apply_t(m: Floats, v: Floats) -> Floats:
    """Return m^T v row by row."""
    out: Floats = np.matmul(v[..., None, :], m)[..., 0, :]
    return out
