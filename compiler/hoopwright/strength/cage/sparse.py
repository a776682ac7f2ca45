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
CROWD = 4000
"""Of so many unknowns each costs twice as much as one among few: their factors no longer fit beside the processor."""


_SYMMETRIC = {"SymmetricMode": True}
_PANEL = 4
"""Columns that SuperLU works on at once: at these sizes few are quickest, measured."""


class _Lu(Protocol):
    """What is used of SuperLU's factor object."""

    perm_r: Ints
    perm_c: Ints
    U: csc_matrix

    def solve(self, rhs: Floats) -> Floats: ...


class Factored:
    """The factors of a matrix; ``order`` says which unknown stands where in them, ``rank`` where each stands."""

    def __init__(self, lu: _Lu, order: Ints, rank: Ints) -> None:
        """Keep SuperLU's factors of the matrix in that order."""
        self._lu, self._order, self._rank = lu, order, rank

    def solve(self, rhs: Floats) -> Floats:
        """Return the solution for a right hand side (n,)."""
        return self._lu.solve(rhs[self._order])[self._rank]

    @property
    def pivots(self) -> Floats | None:
        """The pivots (n,), as many negative as the matrix has negative eigenvalues (Sylvester's law of inertia);
        None when rows were exchanged, so that their signs say nothing."""
        lu = self._lu
        return np.asarray(lu.U.diagonal()) if (lu.perm_r == lu.perm_c).all() else None


class Spent(Exception):
    """The work allowed for a cage is done; never leaves the solver."""


class Pattern:
    """Where the entries of element matrices go in a symmetric matrix of n unknowns, columns compressed.

    The unknowns stand in it in an order that fills few places of its factors (minimum degree), found once:
    the matrix of every step has the same places.
    """

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
        self.order = _order(n, i[kept], j[kept])
        self.rank = np.argsort(self.order)
        small = np.min_scalar_type(n)  # short whole numbers are sorted without comparing them
        row, column = self.rank[i[kept]].astype(small), self.rank[j[kept]].astype(small)
        by = np.lexsort((row, column))
        row, column = row[by], column[by]
        fresh = np.append(True, (row[1:] != row[:-1]) | (column[1:] != column[:-1]))
        place = np.empty(len(by), dtype=np.int64)
        place[by] = np.cumsum(fresh) - 1
        self.place = place[: len(self.used)]
        self.diagonal = place[len(self.used) :]
        self.indices = row[fresh].astype(np.int32)
        self.starts = np.searchsorted(column[fresh], np.arange(n + 1)).astype(np.int32)

    def fill(self, blocks: list[Floats]) -> Floats:
        """Return the values of the summed element matrices."""
        values = np.concatenate([b.ravel() for b in blocks])[self.used]
        return np.bincount(self.place, weights=values, minlength=len(self.indices)).astype(
            np.float64, copy=False
        )

    def times(self, values: Floats, v: Floats) -> Floats:
        """Return the product with a vector."""
        return np.asarray(self._matrix(values) @ v[self.order])[self.rank]

    def factor(self, values: Floats, shift: Floats) -> Factored | None:
        """Return the factors after `shift` (n,) is added to the diagonal; None when singular.

        Raises Spent when no work is left: an amount that is the same on every machine, unlike time.
        """
        self.left -= cost(self.n)
        if self.left < 0:
            raise Spent
        shifted = values.copy()
        shifted[self.diagonal] += shift
        if not np.isfinite(shifted).all():
            return None
        try:
            lu: _Lu = splu(self._matrix(shifted), "NATURAL", diag_pivot_thresh=0.0, panel_size=_PANEL,
                           options=_SYMMETRIC)
        except RuntimeError:  # SuperLU met a zero pivot
            return None
        return Factored(lu, self.order, self.rank)

    def _matrix(self, values: Floats) -> csc_matrix:
        return csc_matrix((values, self.indices, self.starts), shape=(self.n, self.n))


def cost(n: int) -> float:
    """What a step with n unknowns costs, counted in unknowns."""
    return n * (1 + n / CROWD) + SETTING_UP


def _order(n: int, i: Ints, j: Ints) -> Ints:
    """Return the unknowns in an order of minimum degree, as SuperLU finds it for any matrix of these places.

    They come in threes, movements or spins of one node, which meet nearly the same others: ordering the threes is
    as good and ten times quicker.
    """
    m = -(-n // 3)
    places = csc_matrix((np.ones(len(i)), (i // 3, j // 3)), shape=(m, m))
    places.sum_duplicates()
    places.data[:] = 1.0
    places.setdiag(2.0 * m)
    rank = splu(places, "MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=_SYMMETRIC).perm_c
    return np.argsort(3 * rank[np.arange(n) // 3] + np.arange(n) % 3)


def all_positive(factored: Factored) -> bool:
    """Return whether all pivots are positive: the matrix is positive definite."""
    pivots = factored.pivots
    return pivots is not None and bool((pivots > 0).all())
