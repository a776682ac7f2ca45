"""Array types of the solver and small helpers on stacks of 3-vectors."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]


def skew(v: Floats) -> Floats:
    """Return the (..., 3, 3) cross-product matrices of (..., 3) vectors: skew(a) b = a x b."""
    m = np.zeros((*v.shape, 3))
    m[..., 0, 1] = -v[..., 2]
    m[..., 0, 2] = v[..., 1]
    m[..., 1, 0] = v[..., 2]
    m[..., 1, 2] = -v[..., 0]
    m[..., 2, 0] = -v[..., 1]
    m[..., 2, 1] = v[..., 0]
    return m


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
