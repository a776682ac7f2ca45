"""Whether a rest that was found stands is judged of that rest: what pulls and pushes in it, its own stiffness."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin

import numpy as np
import pytest
from apparatus.ovals import oval_points

from hoopwright.strength.cage import solve as solving
from hoopwright.strength.cage import track
from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    HoopModel,
    HoopPoint,
    RestModel,
    Section,
    TapeModel,
    TieModel,
)
from hoopwright.strength.cage.newton import (
    Found,
    is_stable,
    newton,
    newton_from_soft,
    relative_error,
    stands,
    start,
    true_residual,
)
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.sparse import Spent, cost
from hoopwright.strength.cage.system import Guess, State, System

FAR = track.Stops(sag=1.0, out_of_round=1.0, tilt=1.5)
HAIR = 1e-12
"""m: a tie as much too long is slack, and yet its missing push would not unbalance anything."""
PLACES = tuple(k / 12 for k in range(12))


def cone(pull: float) -> CageModel:
    """A unit hoop on a cone of six tapes; past a ``pull`` of 11.6 it stands only by symmetry."""
    hoop = HoopModel("H", oval_points(2.0, 2.0, 0.0), Section(1e7, 1.0, 117.0, 1.46, 0.0, 1e-3),
                     line_load_n_per_m=0.75 * pull)
    tapes = tuple(TapeModel(f"T{k}", (0.2 * sin(a), 0.2 * cos(a), 0.6), (("H", k / 6),), ea=2000.0)
                  for k, a in enumerate(2 * pi * k / 6 for k in range(6)))
    return CageModel((hoop,), tapes)


@pytest.fixture(scope="module")
def wobbly() -> tuple[CageModel, System, Found]:
    """A cage whose even shape is in balance but does not stand."""
    model = cone(12.5)
    system = System(lay_out(model, 48))
    found = newton(system, *start(system), 1.0)
    assert found.converged
    assert not is_stable(system, found.state, 1.0)
    return model, system, found


def outward(fraction: float) -> np.ndarray:
    return np.array([sin(2 * pi * fraction), cos(2 * pi * fraction), 0.0])


def node_at(system: System, fraction: float) -> int:
    return int(np.argmin(np.abs(system.layout.hoops[0].fractions - fraction)))


def test_ties_that_go_slack_in_the_last_step_hold_nothing(wobbly: tuple[CageModel, System, Found]) -> None:
    """They were foreseen to pull, and with them the shape would stand."""
    model, alone, rest = wobbly
    where = [rest.state.x[node_at(alone, f)] for f in PLACES]
    ties = tuple(
        TieModel(f"X{k}", HoopPoint("H", f), FixedPoint(tuple(x + 0.5 * outward(f))), 0.5 + HAIR, 1000.0)
        for k, (f, x) in enumerate(zip(PLACES, where, strict=True)))
    system = System(lay_out(replace(model, ties=ties), 48))
    state = State(np.vstack([rest.state.x[:48], system.wished().x[48:]]), rest.state.triads)
    foreseen = Guess(rest.guess.rods, np.append(rest.guess.bars, np.ones(len(ties))))
    found = newton(system, state, foreseen, 1.0)
    assert (found.converged, found.iterations) == (True, 1)
    assert (found.now.bars.force[6:] < 0).all()
    assert not stands(system, found, 1.0)


def test_pads_that_are_left_in_the_last_step_hold_nothing(wobbly: tuple[CageModel, System, Found]) -> None:
    model, alone, rest = wobbly
    where = [rest.state.x[node_at(alone, f)] for f in PLACES]
    pads = tuple(RestModel(f"X{k}", HoopPoint("H", f), tuple(x + HAIR * outward(f)), tuple(-outward(f)), 1000.0)
                 for k, (f, x) in enumerate(zip(PLACES, where, strict=True)))
    system = System(lay_out(replace(model, rests=pads), 48))
    x = rest.state.x.copy()
    for fraction in PLACES:
        x[node_at(system, fraction)] += 2 * HAIR * outward(fraction)
    pressed = State(x, rest.state.triads)
    touch = system.evaluate(pressed).contact
    assert touch is not None
    assert len(touch.nodes) == len(pads)
    found = newton(system, pressed, rest.guess, 1.0)
    assert (found.converged, found.iterations, found.now.contact) == (True, 1, None)
    assert not stands(system, found, 1.0)


def test_a_shape_that_stands_only_by_symmetry_is_pushed_with_the_stiffness_it_was_found_with(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """In balance, then; with the stiffness of the wished shape a hundredth of the weight was missing."""
    missing = []
    weakest = solving.weakest

    def watched(system: System, state: State, factor: float) -> np.ndarray | None:
        now = system.evaluate(state)
        missing.append(relative_error(system, true_residual(system, state, now, factor), factor))
        return weakest(system, state, factor)

    monkeypatch.setattr(solving, "weakest", watched)
    result = solve(cone(12.5), Options(48, stops=FAR))
    assert result.status == "stands only by symmetry"
    assert missing == [pytest.approx(0.0, abs=1e-4)]
    assert "a small push moves it 15" in result.notes[0].text


def test_a_system_whose_work_is_spent_behind_rounded_slackness_pulls_sharply_again(
    wobbly: tuple[CageModel, System, Found],
) -> None:
    system = System(lay_out(wobbly[0], 48))
    system.pattern.left = 2.5 * cost(system.n)
    with pytest.raises(Spent):
        newton_from_soft(system, *start(system), 1.0, widest=1.0)
    assert system.soft == 0.0
