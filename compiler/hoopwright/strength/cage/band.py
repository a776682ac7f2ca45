"""Symmetric band matrices: an ordering that keeps the band narrow, Cholesky and a general band solve
(LAPACK).
"""

from __future__ import annotations

from collections import deque

import numpy as np
from scipy.linalg import lapack

from hoopwright.strength.cage.arrays import Floats, Ints


def narrow_order(neighbours: list[set[int]], start_keys: Floats) -> list[int]:
    """Return an order of groups with a small band: the better of one by keys and one from outward levels.

    `start_keys` (n,) are places along the cage from front to back. The level order is that of Cuthill and
    McKee (Proc. 24th ACM National Conference, 1969).
    """
    by_key = [int(k) for k in np.argsort(start_keys, kind="stable")]
    by_level = _level_order(neighbours)
    return min((by_key, by_level), key=lambda order: _width(neighbours, order))


def _width(neighbours: list[set[int]], order: list[int]) -> int:
    place = {g: k for k, g in enumerate(order)}
    return max((abs(place[a] - place[b]) for a in place for b in neighbours[a]), default=0)


def _levels(neighbours: list[set[int]], start: int) -> list[int]:
    seen, order, queue = {start}, [start], deque([start])
    while queue:
        for b in sorted(neighbours[queue.popleft()] - seen, key=lambda g: (len(neighbours[g]), g)):
            seen.add(b)
            order.append(b)
            queue.append(b)
    return order


def _level_order(neighbours: list[set[int]]) -> list[int]:
    left = set(range(len(neighbours)))
    out: list[int] = []
    while left:
        start = min(left)
        for _ in range(2):
            start = _levels(neighbours, start)[-1]
        part = _levels(neighbours, start)
        out.extend(part)
        left.difference_update(part)
    return out


class BandPattern:
    """Where the entries of element matrices go in the lower band of a symmetric matrix of n unknowns."""

    def __init__(self, n: int, blocks: list[Ints]) -> None:
        """Take blocks of (elements, k) unknown numbers in band order, n meaning "held"."""
        self.n = n
        rows, cols, keep = [], [], []
        for dofs in blocks:
            k = dofs.shape[1]
            i = np.repeat(dofs, k, axis=1).ravel()
            j = np.tile(dofs, (1, k)).ravel()
            rows.append(i)
            cols.append(j)
            keep.append((i >= j) & (i < n) & (j < n))
        i, j, ok = np.concatenate(rows), np.concatenate(cols), np.concatenate(keep)
        self.used = np.flatnonzero(ok)
        self.width = int((i[ok] - j[ok]).max(initial=0))
        self.place = j[ok] * (self.width + 1) + (i[ok] - j[ok])

    def fill(self, blocks: list[Floats]) -> Floats:
        """Return the lower band (width + 1, n), Fortran order, of the summed element matrices."""
        values = np.concatenate([b.ravel() for b in blocks])[self.used]
        flat = np.bincount(self.place, weights=values, minlength=self.n * (self.width + 1))
        return np.asarray(flat, dtype=np.float64).reshape(self.n, self.width + 1).T


def cholesky(lower: Floats, shift: Floats | None = None) -> Floats | None:
    """Return the band Cholesky factor, or None when a pivot is not positive; `shift` (n,) is added to the
    diagonal.
    """
    band = lower.copy(order="F")
    if shift is not None:
        band[0] += shift
    factor, info = lapack.dpbtrf(band, lower=1, overwrite_ab=1)
    return None if info != 0 or not np.isfinite(factor[0]).all() else factor


def cholesky_solve(factor: Floats, right: Floats) -> Floats:
    """Return the solution for one or more right hand sides (n,) or (n, k)."""
    out, _ = lapack.dpbtrs(factor, right, lower=1)
    return np.asarray(out).reshape(right.shape)


def general_solve(lower: Floats, right: Floats) -> Floats | None:
    """Return the solution with pivoting, for a matrix that need not be positive; None when it is singular."""
    width, n = lower.shape[0] - 1, lower.shape[1]
    full = np.zeros((3 * width + 1, n), order="F")
    full[2 * width :] = lower
    for k in range(1, width + 1):
        full[2 * width - k, k:] = lower[k, : n - k]
    _, _, x, info = lapack.dgbsv(width, width, full, right, overwrite_ab=1)
    return None if info != 0 or not np.isfinite(x).all() else np.asarray(x).reshape(right.shape)
