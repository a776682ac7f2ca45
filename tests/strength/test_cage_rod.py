"""The rod element: forces and tangent are the exact derivatives of its energy, and rigid movement strains
nothing.
"""

from __future__ import annotations

import numpy as np
import pytest

from hoopwright.strength.cage import arc, rod
from hoopwright.strength.cage.rotation import exp, log


class Elements:
    """A few elements in arbitrary, strongly turned and strained states."""

    def __init__(self, n: int = 4) -> None:
        """Draw them from a fixed seed."""
        rng = np.random.default_rng(7)
        self.n = n
        self.length = rng.uniform(0.3, 0.6, n)
        self.x1 = rng.normal(size=(n, 3))
        self.r1 = exp(rng.normal(size=(n, 3)))
        self.r2 = self.r1 @ exp(0.4 * rng.normal(size=(n, 3)))
        ahead = self.length[:, None] * np.array([1.0, 0, 0]) + 0.05 * rng.normal(size=(n, 3))
        self.x2 = self.x1 + np.einsum("nij,nj->ni", self.r1, ahead)
        self.birth = 0.1 * rng.normal(size=(n, 6))
        section = np.tile([300.0, 2.0, 80.0, 1.0], (n, 1))
        self.stiffness = arc.arc_stiffness(self.length, np.tile([0.2, 0.1, 0.9], (n, 1)), section)

    def energy(self, move: np.ndarray) -> np.ndarray:
        """Energy (n,) after movements and spins (n, 12)."""
        e = rod.strains(
            self.x1 + move[:, :3],
            self.x2 + move[:, 6:9],
            exp(move[:, 3:6]) @ self.r1,
            exp(move[:, 9:]) @ self.r2,
            self.length,
        )
        e = e - self.birth
        return 0.5 * np.einsum("ni,nij,nj->n", e, self.stiffness, e)

    def state(self) -> tuple[rod.Kinematics, np.ndarray]:
        """Kinematics and stress resultants where nothing has moved."""
        k = rod.kinematics(self.x1, self.x2, self.r1, self.r2, self.length)
        return k, np.einsum("nij,nj->ni", self.stiffness, k.strain - self.birth)


def test_nodal_forces_are_the_slope_of_the_energy() -> None:
    e = Elements()
    h = 1e-5
    slope = np.zeros((e.n, 12))
    for i in range(12):
        step = np.zeros((e.n, 12))
        step[:, i] = h
        slope[:, i] = (e.energy(step) - e.energy(-step)) / (2 * h)
    forces = rod.nodal_forces(*e.state())
    assert np.abs(forces - slope).max() < 1e-7 * np.abs(forces).max()


def test_tangent_is_the_curvature_of_the_energy() -> None:
    e = Elements()
    h = 1e-4
    curvature = np.zeros((e.n, 12, 12))
    for i in range(12):
        for j in range(12):
            a, b = np.zeros((e.n, 12)), np.zeros((e.n, 12))
            a[:, i] += h
            a[:, j] += h
            b[:, i] += h
            b[:, j] -= h
            curvature[:, i, j] = (e.energy(a) - e.energy(b) - e.energy(-b) + e.energy(-a)) / (4 * h * h)
    k, stress = e.state()
    to = rod.to_nodes(k.frame)
    tangent = to.transpose(0, 2, 1) @ rod.tangent(k, e.stiffness, stress, e.length) @ to
    assert np.abs(tangent - curvature).max() < 1e-7 * np.abs(tangent).max()


def test_moving_and_turning_as_a_whole_strains_nothing() -> None:
    e = Elements()
    turn = exp(np.array([[1.2, -0.4, 2.0]]))[0]
    here = rod.strains(e.x1, e.x2, e.r1, e.r2, e.length)
    there = rod.strains(e.x1 @ turn.T + 3.0, e.x2 @ turn.T + 3.0, turn @ e.r1, turn @ e.r2, e.length)
    assert here == pytest.approx(there, abs=1e-12)


def test_log_undoes_exp() -> None:
    v = np.array([[0.0, 0, 0], [1e-9, 0, 0], [0.3, -0.2, 0.1], [2.0, 1.5, -1.0]])
    assert log(exp(v)) == pytest.approx(v, abs=1e-12)


def test_a_straight_bar_has_the_stiffness_of_a_bernoulli_beam() -> None:
    """EA, GJ, EI and 12 EI/L^2 across: the slope-deflection coefficients of any text on structures."""
    length = np.array([0.4])
    k = arc.arc_stiffness(length, np.zeros((1, 3)), np.array([[300.0, 2.0, 80.0, 1.0]]))[0] / 0.4
    want = np.diag([300.0, 12 * 1.0 / 0.16, 12 * 80.0 / 0.16, 2.0, 80.0, 1.0])
    assert k == pytest.approx(want, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("curvature", [(0.0, 0.0, 1.7), (0.6, -0.4, 1.2)])
def test_a_bent_bar_is_as_stiff_as_many_short_straight_ones(curvature: tuple[float, float, float]) -> None:
    """Compliance of a clamped arc or helix at its free end, against 200 straight pieces in series."""
    section = np.array([300.0, 2.0, 80.0, 1.0])
    length, bend = 0.8, np.array(curvature)
    one = _end_compliance(length, bend, section, 1)
    many = _end_compliance(length, bend, section, 200)
    assert one == pytest.approx(many, rel=1e-4, abs=1e-4 * np.abs(many).max())


def _end_compliance(length: float, bend: np.ndarray, section: np.ndarray, pieces: int) -> np.ndarray:
    """(6, 6) compliance of the far end, the near one clamped; each piece is one element."""
    s = np.linspace(0, length, pieces + 1)
    turned = exp(s[:, None] * bend)
    fine = np.linspace(0, length, 20001)
    tangents = exp(fine[:, None] * bend)[:, :, 0]
    steps = 0.5 * (tangents[1:] + tangents[:-1]) * np.diff(fine)[:, None]
    line = np.vstack([np.zeros(3), np.cumsum(steps, axis=0)])
    x = line[:: 20000 // pieces]
    cut = np.diff(s)
    k = rod.kinematics(x[:-1], x[1:], turned[:-1], turned[1:], cut)
    own = bend if pieces == 1 else np.zeros(3)
    stiffness = arc.arc_stiffness(cut, np.tile(own, (pieces, 1)), np.tile(section, (pieces, 1)))
    to = rod.to_nodes(k.frame)
    blocks = to.transpose(0, 2, 1) @ rod.tangent(k, stiffness, np.zeros((pieces, 6)), cut) @ to
    full = np.zeros((6 * pieces + 6, 6 * pieces + 6))
    for n, block in enumerate(blocks):
        full[6 * n : 6 * n + 12, 6 * n : 6 * n + 12] += block
    return np.linalg.solve(full[6:, 6:], np.eye(6 * pieces)[:, -6:])[-6:]
