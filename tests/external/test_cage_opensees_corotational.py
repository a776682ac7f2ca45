"""Whole cages against OpenSees (Pacific Earthquake Engineering Research Center, version in the data file).

Corotational beams and trusses that only pull, 240 and 480 straight elements a hoop extrapolated; made by
make_opensees_references.py, kept in data/opensees_cages.json. Asymmetric cages at one and two times their
load. Tolerances: tensions 0.5 % of the tension (of a fiftieth of the greatest, where less), moments and
stress 1 %, movements 1 % of the cage's largest, all at 48 elements a hoop; only twice the load on the thin
strip, where the hoops twist by 25 degrees and small errors are magnified (1.2 % of movement, 2.3 % of moment
at 48, 0.3 and 0.8 at 96), is met with 96. Torque is constant along a straight chord, so that the reference
itself knows its greatest value less well: 3 % of it.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from hoopwright.strength.cage import model as m
from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.newton import is_stable
from hoopwright.strength.cage.report import hoop_results
from hoopwright.strength.cage.result import HoopResult
from hoopwright.strength.cage.system import System
from hoopwright.strength.cage.track import Reached, Stops, reach

DATA = Path(__file__).parent / "data" / "opensees_cages.json"
CAGES: list[dict[str, Any]] = json.loads(DATA.read_text(encoding="utf-8"))["cages"]
NAMES = [f"{c['case']}, {c['factor']:g} times the load" for c in CAGES]
FAR = Stops(sag=1.0, out_of_round=1.0, tilt=1.0)


def _tuples(value: Any) -> Any:
    return tuple(_tuples(v) for v in value) if isinstance(value, list) else value


def _place(row: dict[str, Any]) -> m.Place:
    return m.FixedPoint(_tuples(row["xyz"])) if "xyz" in row else m.HoopPoint(**row)


def _model(data: dict[str, Any], factor: float) -> m.CageModel:
    """The model of a reference, all its loads times `factor`."""
    hoops = []
    for row in data["hoops"]:
        fields = {k: _tuples(v) for k, v in row.items() if k != "section"}
        section = {**row["section"], "mass_per_m": factor * row["section"]["mass_per_m"]}
        fields["line_load_n_per_m"] *= factor
        fields["load_rows"] = tuple((f, factor * w) for f, w in fields["load_rows"])
        hoops.append(m.HoopModel(**fields, section=m.Section(**section)))
    ties = [{**row, "a": _place(row["a"]), "b": _place(row["b"])} for row in data["ties"]]
    loads = [
        m.PointLoad(m.HoopPoint(**row["at"]), tuple(factor * f for f in row["force"]))
        for row in data["point_loads"]
    ]
    return m.CageModel(
        tuple(hoops),
        tuple(m.TapeModel(**{k: _tuples(v) for k, v in row.items()}) for row in data["tapes"]),
        tuple(m.BandModel(**row) for row in data["bands"]),
        tuple(m.TieModel(**row) for row in ties),
        point_loads=tuple(loads),
    )


def _finer(index: int) -> int:
    return 2 if NAMES[index] == "thin strip near collapse, 2 times the load" else 1


@cache
def _solved(index: int) -> tuple[System, Reached, tuple[HoopResult, ...]]:
    case = CAGES[index]
    system = System(lay_out(_model(case["model"], case["factor"]), 48 * _finer(index)))
    reached = reach(system, FAR)
    state = reached.found.state
    return system, reached, hoop_results(system, state, system.evaluate(state), 1.0)


every_cage = pytest.mark.parametrize("index", range(len(CAGES)), ids=NAMES)


def test_there_are_asymmetric_cages_at_one_and_two_times_the_load() -> None:
    assert len({c["case"] for c in CAGES}) >= 6
    assert {c["factor"] for c in CAGES} == {1.0, 2.0}


@every_cage
def test_solved_and_stable(index: int) -> None:
    system, reached, _ = _solved(index)
    assert reached.sound
    assert is_stable(system, reached.found.state, 1.0)


@every_cage
def test_tensions(index: int) -> None:
    system, reached, _ = _solved(index)
    want = np.maximum(np.array(CAGES[index]["reference"]["tensions"]), 0.0)
    got = np.maximum(system.evaluate(reached.found.state).bars.force, 0.0)
    assert np.all(np.abs(got - want) <= 0.005 * np.maximum(want, 0.02 * want.max()))


@every_cage
def test_movements(index: int) -> None:
    system, reached, _ = _solved(index)
    hoops = CAGES[index]["reference"]["hoops"]
    largest = max(np.abs(np.array(h["moved"])).max() for h in hoops)
    for mesh, want in zip(system.layout.hoops, hoops, strict=True):
        nodes = mesh.nodes[:: _finer(index)]
        moved = reached.found.state.x[nodes] - system.layout.x[nodes]
        assert np.abs(moved - np.array(want["moved"])).max() <= 0.01 * largest


@every_cage
def test_moments_thrust_and_stress(index: int) -> None:
    _, _, got = _solved(index)
    for hoop, want in zip(got, CAGES[index]["reference"]["hoops"], strict=True):
        assert hoop.moment_weak_n_m == pytest.approx(want["weak"], rel=0.01)
        assert hoop.moment_strong_n_m == pytest.approx(want["strong"], rel=0.01)
        assert hoop.stress_pa == pytest.approx(want["stress"], rel=0.01)
        assert hoop.thrust_n == pytest.approx(want["thrust"], rel=0.01)
        assert hoop.torque_n_m == pytest.approx(want["torque"], rel=0.03)
