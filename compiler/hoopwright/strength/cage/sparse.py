"""Symmetric sparse matrices with a fixed pattern, and their factors (SuperLU in its symmetric mode).

SuperLU (X. S. Li and others, as scipy ships it) does not call threaded kernels at these sizes, so that a busy
machine does not slow it down and rounding does not depend on the number of processors.
"""

from __future__ import annotations

from math import inf
from typing import Protocol

import numpy as np
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu

from hoopwright.strength.cage.arrays import Floats, Ints

SETTING_UP = 4000
"""What a step costs besides its unknowns, counted in unknowns: measured."""


class Factored(Protocol):
    """What is used of SuperLU's factor object."""

    perm_r: Ints
    perm_c: Ints
    U: csc_matrix

    def solve(self, rhs: Floats) -> Floats:
        """Return the solution for a right hand side (n,)."""


class Spent(Exception):
    """The work allowed for a cage is done; never leaves the solver."""


class Pattern:
    """Where the entries of element matrices go in a symmetric matrix of n unknowns, columns compressed."""

    def __init__(self, n: int, blocks: list[Ints]) -> None:
        """Take blocks of (elements, k) unknown numbers, n meaning "held"; a full diagonal is always kept."""
        self.n = n
        self.left = inf
        rows = [np.repeat(d, d.shape[1], axis=1).ravel() for d in blocks]
        columns = [np.tile(d, (1, d.shape[1])).ravel() for d in blocks]
        i = np.concatenate([*rows, np.arange(n)])
        j = np.concatenate([*columns, np.arange(n)])
        kept = (i < n) & (j < n)
        self.used = np.flatnonzero(kept[: len(i) - n])
        codes, place = np.unique(j[kept] * n + i[kept], return_inverse=True)
        self.place = place[: len(self.used)]
        self.diagonal = place[len(self.used) :]
        self.indices = (codes % n).astype(np.int32)
        self.starts = np.searchsorted(codes, np.arange(n + 1) * n).astype(np.int32)

    def fill(self, blocks: list[Floats]) -> Floats:
        """Return the values of the summed element matrices."""
        values = np.concatenate([b.ravel() for b in blocks])[self.used]
        return np.bincount(self.place, weights=values, minlength=len(self.indices)).astype(
            np.float64, copy=False
        )

    def times(self, values: Floats, v: Floats) -> Floats:
        """Return the product with a vector."""
        return np.asarray(self._matrix(values) @ v)

    def factor(self, values: Floats, shift: Floats) -> Factored | None:
        """Return the factors after `shift` (n,) is added to the diagonal; None when singular.

        Raises Spent when no work is left: an amount that is the same on every machine, unlike time.
        """
        self.left -= self.n + SETTING_UP
        if self.left < 0:
            raise Spent
        shifted = values.copy()
        shifted[self.diagonal] += shift
        if not np.isfinite(shifted).all():
            return None
        try:
            lu: Factored = splu(
                self._matrix(shifted), "MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
            )
        except RuntimeError:  # SuperLU met a zero pivot
            return None
        return lu

    def _matrix(self, values: Floats) -> csc_matrix:
        return csc_matrix((values, self.indices, self.starts), shape=(self.n, self.n))


def all_positive(lu: Factored) -> bool:
    """Return whether all pivots are positive: positive definite, by Sylvester's law of inertia."""
    return bool((lu.perm_r == lu.perm_c).all() and (lu.U.diagonal() > 0).all())
