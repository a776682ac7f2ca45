"""A straight-born round hoop may roll in its ring; that is no instability, and hides none."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from apparatus.ovals import even_tapes, oval_points

from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.model import CageModel, HoopModel, Section
from hoopwright.strength.cage.newton import is_stable, true_tangent
from hoopwright.strength.cage.rolling import rolls
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.system import System
from hoopwright.strength.cage.track import Stops, reach


def wire(diameter: float, e: float = 205e9) -> Section:
    second, area = np.pi * diameter**4 / 64, np.pi * diameter**2 / 4
    return Section(e * area, e * second, e * second, 0.39 * e * 2 * second, 7850 * area, diameter / 2,
                   diameter / 2, e, is_round=True)


def cage(section: Section, load: float, born: str = "straight") -> CageModel:
    rows = ((0.5, -0.2), (0.8, -0.6), (0.9, -0.9))
    hoops = tuple(HoopModel(f"H{k + 1}", oval_points(d, d, z), section, born=born, line_load_n_per_m=load)
                  for k, (d, z) in enumerate(rows))
    return CageModel(hoops, even_tapes(("H1", "H2", "H3"), 6, (0.26, 0.19)))


@pytest.mark.parametrize("elements", [24, 48, 96])
def test_a_round_hoop_sprung_from_straight_wire_stands(elements: int) -> None:
    got = solve(cage(wire(0.0025), 2.0), Options(elements))
    assert got.status == "solved"
    assert got.factor is not None
    assert got.factor.value > 1.5


@pytest.mark.parametrize("elements", [24, 48])
def test_the_roll_is_slight_and_falls_with_the_mesh(elements: int) -> None:
    """The stiffness of a whole roll falls with the square of the rods' length: to a quarter for half."""

    def resists(count: int) -> float:
        system = System(lay_out(cage(wire(0.0025), 2.0), count))
        state = reach(system, Stops()).found.state
        tangent = true_tangent(system, state, 1.0)
        per_metre = [float(roll @ system.pattern.times(tangent, roll)) for roll in rolls(system, state)]
        return max(map(abs, per_metre))

    assert resists(2 * elements) == pytest.approx(resists(elements) / 4, rel=0.02)


def test_what_really_gives_way_is_still_found() -> None:
    """The same load on ever thinner wire: from some thickness on it does not stand, rolls or not."""
    assert solve(cage(wire(0.0025), 8.0)).status == "solved"
    assert solve(cage(wire(0.0008), 8.0)).status != "solved"
    system = System(lay_out(cage(wire(0.0008), 8.0), 24))
    found = reach(system, Stops()).found
    assert not found.converged or not is_stable(system, found.state, 1.0)


def test_a_strip_does_not_roll() -> None:
    flat = replace(wire(0.0025), is_round=False)
    system = System(lay_out(cage(flat, 2.0), 24))
    assert rolls(system, system.wished()) == []
    formed = System(lay_out(cage(wire(0.0025), 2.0, born="preformed"), 24))
    assert rolls(formed, formed.wished()) == []


def test_wire_born_straight_and_wire_bent_to_its_ring_move_alike_under_a_light_load() -> None:
    straight, formed = (solve(cage(wire(0.003), 0.5, born)) for born in ("straight", "preformed"))
    for one, other in zip(straight.hoops, formed.hoops, strict=True):
        assert one.thrust_n == pytest.approx(other.thrust_n, rel=0.02, abs=1e-3)
    assert straight.waist_pull_n == pytest.approx(formed.waist_pull_n, rel=0.01)
