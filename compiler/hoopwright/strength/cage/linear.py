"""The linear load factor: when the tangent, its geometric part growing with the load, would lose a pivot.

K + (f - 1) G = 0, with K the tangent and G its geometric part at factor 1. The largest negative eigenvalue of
G against K is found by Lanczos iteration on the factored tangent, with full orthogonalisation (method: B. N.
Parlett, The Symmetric Eigenvalue Problem, 1980, chapter 13; from memory).
"""

from __future__ import annotations

import numpy as np

from hoopwright.strength.cage.arrays import Floats
from hoopwright.strength.cage.newton import Found
from hoopwright.strength.cage.sparse import Factored, all_positive
from hoopwright.strength.cage.system import Guess, System

_STEPS = 60


def linear_factor(system: System, found: Found) -> float | None:
    """Return the load factor at which a state found under the whole load would buckle; None when it is not stable now,
    infinite when no growth of the load makes it buckle.
    """
    now = system.evaluate(found.state)
    full = system.tangent(found.state, now, Guess(now.stress, now.bars.force), 1.0)
    none = Guess(np.zeros_like(now.stress), np.zeros_like(now.bars.force))
    bare = system.tangent(found.state, now, none, 0.0, taut=now.bars.force)
    factored = system.pattern.factor(full, system.hold)
    if factored is None or not all_positive(factored):
        return None
    worst = _largest(system, factored, full - bare)
    return 1 + 1 / worst if worst > 1e-9 else float("inf")


def _largest(system: System, factored: Factored, geometric: Floats) -> float:
    """Return the largest m of -G v = m K v (Lanczos in the K inner product)."""
    n = system.n
    start = np.sin(1.0 + np.arange(n) ** 1.3)
    v = factored.solve(start)
    pushed = start
    basis, images = [], []
    steps = min(_STEPS, n)
    small = np.zeros((steps, steps))
    for k in range(steps):
        size = float(np.sqrt(v @ pushed))
        if size < 1e-14:
            steps = k
            break
        basis.append(v / size)
        images.append(pushed / size)
        force = -system.pattern.times(geometric, basis[-1])
        small[: k + 1, k] = np.array(basis) @ force
        v = factored.solve(force)
        pushed = force
        for _ in range(2):
            parts = np.array(images) @ v
            v = v - parts @ np.array(basis)
            pushed = pushed - parts @ np.array(images)
    small = np.triu(small[:steps, :steps])
    return float(np.linalg.eigvalsh(small + np.triu(small, 1).T).max(initial=0.0))
