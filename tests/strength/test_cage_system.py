"""The assembled cage: residual and tangent are exact derivatives of its energy, every kind of part in it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from apparatus.ovals import even_tapes, oval_points

from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.contact import Body
from hoopwright.strength.cage.model import (
    BandModel,
    BodyModel,
    BodyRow,
    CageModel,
    FixedPoint,
    FreePoint,
    HoopModel,
    HoopPoint,
    JoinModel,
    PointLoad,
    RestModel,
    Section,
    TieModel,
)
from hoopwright.strength.cage.newton import newton, start, true_residual, true_tangent
from hoopwright.strength.cage.relax import relax
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.sparse import Pattern, all_positive
from hoopwright.strength.cage.system import State, System

STEEL = Section(2e4, 0.2, 16.0, 0.3, 0.08, 5e-4, 5e-3, 205e9)


def everything() -> CageModel:
    """Tapes, a band, a tie, a join, a body, a rest, uneven loads, twist held, sprung and open hoops."""
    half = oval_points(0.5, 0.4, -0.2, start=0.1, end=0.9)
    hoops = (
        HoopModel("H1", half, STEEL, closed=False, start=0.1, end=0.9, line_load_n_per_m=3.0),
        HoopModel(
            "H2", oval_points(0.8, 0.7, -0.6), STEEL, born="straight", load_rows=((0.0, 1.0), (0.3, 6.0))
        ),
        HoopModel("H3", oval_points(0.8, 0.7, -0.8), STEEL, born="straight", born_curvature=0.5),
    )
    tapes = even_tapes(("H1", "H2"), 5, (0.26, 0.19), gap=0.3)
    return CageModel(
        hoops,
        tuple(replace(t, twist_stiffness=0.2, mass_per_m=0.01) for t in tapes),
        (BandModel("B", "H2", "H3", 300.0, 40.0, 12),),
        (TieModel("X", HoopPoint("H2", 0.0), HoopPoint("H2", 0.5), 0.66),),
        (JoinModel(HoopPoint("H1", 0.5), FixedPoint((0.0, -0.2, -0.2))),),
        BodyModel((BodyRow(0.0, 0.13, 0.1), BodyRow(-0.3, 0.3, 0.25, -0.05), BodyRow(-0.9, 0.2, 0.33, 0.04))),
        (PointLoad(HoopPoint("H2", 0.25), (-1.0, 0.5, -0.5)),),
        rests=(RestModel("R", HoopPoint("H3", 0.5), (0.0, -0.35, -0.75), (0.0, 0.3, 2.0), 200.0),),
    )


@pytest.fixture
def shaken() -> tuple[System, State, np.ndarray]:
    """A state away from balance, and a direction."""
    knot = FreePoint("K", (0.0, 0.2, -0.75))
    knotted = (TieModel("Y", HoopPoint("H3", 0.0), knot, 0.1, pieces=3), TieModel("Z", HoopPoint("H2", 0.1), knot, 0.3))
    system = System(lay_out(replace(everything(), ties=(*everything().ties, *knotted)), 24))
    rng = np.random.default_rng(3)
    state = system.moved(system.wished(), 0.01 * rng.normal(size=system.n))
    return system, state, rng.normal(size=system.n)


def test_residual_is_the_slope_of_the_energy(shaken: tuple[System, State, np.ndarray]) -> None:
    system, state, way = shaken
    h = 1e-7
    slope = (
        system.energy(system.moved(state, h * way), 1.3) - system.energy(system.moved(state, -h * way), 1.3)
    ) / (2 * h)
    residual = true_residual(system, state, system.evaluate(state), 1.3)
    assert system.evaluate(state).contact is not None
    assert len(system.evaluate(state).contact.nodes) > 0
    assert residual @ way == pytest.approx(slope, rel=1e-6)


def test_tangent_is_the_curvature_of_the_energy(shaken: tuple[System, State, np.ndarray]) -> None:
    system, state, way = shaken
    h = 2e-5
    ahead, here, behind = (system.energy(system.moved(state, k * h * way), 1.3) for k in (1, 0, -1))
    tangent = true_tangent(system, state, 1.3)
    assert way @ system.pattern.times(tangent, way) == pytest.approx(
        (ahead - 2 * here + behind) / h**2, rel=1e-4
    )


def test_newton_and_going_downhill_find_the_same_balance() -> None:
    system = System(lay_out(replace(everything(), body=None, rests=()), 24))
    found, settled = newton(system, *start(system), 1.0), relax(system, system.wished(), 1.0)
    assert found.converged
    assert settled.converged
    assert settled.state.x == pytest.approx(found.state.x, abs=1e-7)


def test_everything_at_once_is_solved() -> None:
    result = solve(everything(), Options(24, factor=False))
    assert result.status == "solved"
    assert result.bands[0].uprights == 12
    assert result.error < 1e-8


def test_depth_in_the_body_and_its_derivatives() -> None:
    body = Body(everything().body or BodyModel(()))
    x = np.array([[0.1, 0.05, -0.2], [-0.15, 0.1, -0.5], [0.02, -0.1, -0.7]])
    inside, depth, gradient, curvature = body.touching(x)
    assert inside.tolist() == [0, 1, 2]
    assert depth.min() > 0
    h = 1e-5
    for k in range(3):
        step = np.zeros(3)
        step[k] = h
        _, up, slope_up, _ = body.touching(x + step)
        _, down, slope_down, _ = body.touching(x - step)
        assert (up - down) / (2 * h) == pytest.approx(gradient[:, k], rel=1e-6, abs=1e-8)
        assert (slope_up - slope_down) / (2 * h) == pytest.approx(curvature[:, :, k], rel=1e-5, abs=1e-6)
    outside = np.array([[0.5, 0.0, -0.3], [0.0, 0.0, 0.1], [0.0, 0.0, -1.0]])
    assert len(body.touching(outside)[0]) == 0


def test_pivots_tell_a_saddle_from_a_bowl() -> None:
    """Diagonal 1, 2, 3 with small coupling; one sign changed; one row empty."""
    pattern = Pattern(3, [np.array([[0, 1, 2]])])
    bowl = np.array([[[1.0, 0.1, 0.0], [0.1, 2.0, 0.1], [0.0, 0.1, 3.0]]])
    none = np.zeros(3)
    factored = pattern.factor(pattern.fill([bowl]), none)
    assert factored is not None
    assert all_positive(factored)
    assert factored.solve(bowl[0] @ np.ones(3)) == pytest.approx(np.ones(3))
    saddle = bowl.copy()
    saddle[0, 1, 1] = -2.0
    factored = pattern.factor(pattern.fill([saddle]), none)
    assert factored is not None
    assert not all_positive(factored)
    assert pattern.factor(pattern.fill([0 * bowl]), none) is None


def test_a_knot_that_only_a_join_names_is_a_node_of_its_own() -> None:
    """It goes where its hoop goes and carries nothing; what is held stays held."""
    model = everything()
    knot = JoinModel(HoopPoint("H2", 0.25), FreePoint("K", (0.4, 0.0, -0.6)))
    knotted = replace(model, joins=(*model.joins, knot))
    layout, bare = lay_out(knotted, 24), lay_out(model, 24)
    assert layout.moving_nodes == bare.moving_nodes + 1
    assert layout.x[layout.moving_nodes :] == pytest.approx(bare.x[bare.moving_nodes :])
    with_knot, without = solve(knotted, Options(24, factor=False)), solve(model, Options(24, factor=False))
    assert [hoop.sag_m for hoop in with_knot.hoops] == pytest.approx([hoop.sag_m for hoop in without.hoops], rel=1e-5)
