"""Every committed spec and starter hangs at rest: forces, moments and every node's balance, worked out outside the
solver.

Reference: statics. From the shape found (places and triads of the nodes alone) the energy of every rod is worked out
anew with SciPy's rotations and differentiated by differences; tapes, cloth, body and rests are taken from their
definitions; loads are integrated along the line. What is left over at a free node must vanish; what is
left at held points, the wearer's force, must balance all loads, in force and in moment about the waist.
A petticoat has no rods: there its cloth is balanced by hand, hoop by hoop.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from math import pi
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from hoopwright.shape.draw import draw
from hoopwright.shape.model import Shape
from hoopwright.source.fetch import Fetched
from hoopwright.source.read import read
from hoopwright.spec.document.choice import AS_WRITTEN
from hoopwright.spec.document.joining import join
from hoopwright.spec.model import Spec
from hoopwright.spec.resolve import resolve
from hoopwright.strength import whole
from hoopwright.strength.assess import assess
from hoopwright.strength.cage.build import Layout, lay_out
from hoopwright.strength.cage.model import CageModel
from hoopwright.strength.cage.solve import describe
from hoopwright.strength.cage.system import State, System
from hoopwright.strength.cage.track import Stops, reach
from hoopwright.strength.families import pair, wheel
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.methods import METHODS, kind_of
from hoopwright.strength.problem import pose

SPECS = Path(__file__).parents[2] / "specs"
MODELS: dict[str, Callable[[Any], CageModel]] = {"pair": pair.model, "wheel": wheel.model}


def _designs(cloth: bool) -> list[Path]:
    """Committed specs and starters, those whose cloth carries the hoops or all the others."""
    found = sorted(path for path in SPECS.rglob("*.yaml") if path.parent.name not in ("bodies", "cast"))
    carried = ("carried_by: channels", "carried_by: cords")
    kinds = {path: path.read_text(encoding="utf-8") for path in found if path.name != "cast.yaml"}
    return [path for path, text in kinds.items()
            if cloth is (any(word in text for word in carried) and "side_hoops:" not in text)]


STEP = 1e-7
"""Step of the differences, m and rad."""
NODE = 2e-5
"""What may be left at a node over the weight of the cage; moments times its size."""
WHOLE = 1e-5
"""The same of the sums."""


def _drawn(path: Path) -> tuple[Spec, Shape]:
    """A spec with the body file it names, and its shape."""

    def fetch(name: str, file: str) -> Fetched:
        return Fetched(name, (Path(file).parent / name).read_bytes())

    document, said = read(path.read_bytes(), str(path))
    assert document is not None, said
    joined = join(document, AS_WRITTEN, fetch).document
    assert joined is not None
    spec, told = resolve(joined)
    assert spec is not None, told
    shape, told = draw(spec)
    assert shape is not None, told
    return spec, shape


def _name(path: Path) -> str:
    return path.relative_to(SPECS).as_posix()


@pytest.fixture(scope="module", params=_designs(False), ids=_name)
def found(request) -> SimpleNamespace:
    problem = pose(*_drawn(request.param))
    system = System(lay_out(MODELS.get(kind_of(problem.spec), whole.model)(problem), 24))
    got = reach(system, Stops())
    assert got.sound, got.trouble
    result = describe(system, got.found, "solved", None)
    return SimpleNamespace(problem=problem, system=system, state=got.found.state, result=result)


def rods(layout: Layout, stiffness: np.ndarray, x: list[np.ndarray], r: list[np.ndarray]) -> np.ndarray:
    """Energy of every rod, J, from the places and triads of its two ends."""
    length = layout.rods.length
    turn = Rotation.from_matrix(np.swapaxes(r[0], 1, 2) @ r[1]).as_rotvec()
    frame = r[0] @ Rotation.from_rotvec(turn / 2).as_matrix()
    chord = np.einsum("nji,nj->ni", frame, x[1] - x[0])
    bend = np.hypot(turn[:, 1], turn[:, 2])
    half = np.maximum(bend / 2, 1e-9)
    strain = np.column_stack([
        np.linalg.norm(chord, axis=1) / length * half / np.sin(half) - 1,
        chord[:, 1:] / length[:, None] - turn[:, 1:] * turn[:, :1] / 24,
        turn / length[:, None],
    ]) - layout.rods.birth
    return 0.5 * np.einsum("ni,nij,nj->n", strain, stiffness, strain)


def rod_forces(system: System, state: State) -> tuple[np.ndarray, np.ndarray]:
    """Force and moment that the rods ask of every node, by central differences of their energy."""
    lay = system.layout
    force, moment = np.zeros_like(state.x), np.zeros_like(state.x)
    ends = (lay.rods.first, lay.rods.second)
    x, r = [state.x[k] for k in ends], [state.triads[k] for k in ends]
    for end, nodes in enumerate(ends):
        for axis in range(3):
            step = np.zeros(3)
            step[axis] = STEP
            sides_of = []
            for sign in (1.0, -1.0):
                moved, turned = list(x), list(r)
                moved[end] = x[end] + sign * step
                turned[end] = Rotation.from_rotvec(sign * step).as_matrix() @ r[end]
                sides_of.append((rods(lay, system.stiffness, moved, r), rods(lay, system.stiffness, x, turned)))
            (up, round_up), (down, round_down) = sides_of
            np.add.at(force[:, axis], nodes, (up - down) / (2 * STEP))
            np.add.at(moment[:, axis], nodes, (round_up - round_down) / (2 * STEP))
    return force, moment


def loads(system: System, state: State) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Force and moment of the load on every node, and the load's own moment about the waist (3,), each rod's weight
    spread evenly along the cubic through its ends."""
    lay, weights = system.layout, []
    for hoop, mesh in zip(lay.model.hoops, lay.hoops, strict=True):
        assert not hoop.load_rows
        weights += [hoop.line_load_n_per_m + hoop.section.mass_per_m * 9.80665] * len(mesh.elements)
    w, length = np.array(weights), lay.rods.length
    force, moment = np.zeros_like(state.x), np.zeros_like(state.x)
    total = np.zeros(3)
    nodes, weight = np.polynomial.legendre.leggauss(4)
    a, b = lay.rods.first, lay.rods.second
    for at, share in zip((nodes + 1) / 2, weight / 2, strict=True):
        h = ((1 + 2 * at) * (1 - at) ** 2, at * (1 - at) ** 2, at**2 * (3 - 2 * at), -(at**2) * (1 - at))
        down = np.zeros((len(w), 3))
        down[:, 2] = -w * length * share
        place = (h[0] * state.x[a] + h[2] * state.x[b]
                 + length[:, None] * (h[1] * state.triads[a, :, 0] + h[3] * state.triads[b, :, 0]))
        total += np.cross(place, down).sum(axis=0)
        for node, by_place, by_tangent in ((a, h[0], h[1]), (b, h[2], h[3])):
            np.add.at(force, node, by_place * down)
            np.add.at(moment, node, by_tangent * length[:, None] * np.cross(state.triads[node, :, 0], down))
    assert not lay.model.point_loads
    return force, moment, total


def bars(system: System, state: State) -> np.ndarray:
    """What bars that only pull ask of every node, N."""
    lay, force = system.layout.bars, np.zeros_like(state.x)
    d = state.x[lay.second] - state.x[lay.first]
    size = np.linalg.norm(d, axis=1)
    tension = np.maximum(lay.ea * (size / lay.length - 1), 0.0)
    pull = d * (tension / size)[:, None]
    np.add.at(force, lay.first, -pull)
    np.add.at(force, lay.second, pull)
    return force


def pushes(system: System, state: State) -> np.ndarray:
    """What body and rests give every node, N: the stiffness times the depth, against the depth's own slope."""
    model, force = system.layout.model, np.zeros_like(state.x)
    for rest, node in zip(model.rests, system.layout.rests.nodes, strict=True):
        push = np.array(rest.push) / np.linalg.norm(rest.push)
        force[node] += max(0.0, float(push @ (np.array(rest.touches) - state.x[node]))) * rest.stiffness * push
    if model.body is None:
        return force
    rows = sorted(model.body.rows, key=lambda row: row.z)
    z = [row.z for row in rows]

    def energy(x: np.ndarray) -> np.ndarray:
        def between(values: list[float]) -> np.ndarray:
            return np.interp(x[:, 2], z, values)

        wide, deep = between([row.half_breadth for row in rows]), between([row.half_depth for row in rows])
        rho = np.hypot(x[:, 0] / wide, (x[:, 1] - between([row.y for row in rows])) / deep)
        size = between([(row.half_breadth * row.half_depth) ** 0.5 for row in rows])
        inside = (x[:, 2] >= z[0]) & (x[:, 2] <= z[-1])
        return np.where(inside, 0.5 * model.body.stiffness * np.maximum(size * (1 - rho), 0.0) ** 2, 0.0)

    moving = system.layout.moving_nodes
    for axis in range(3):
        step = np.zeros(3)
        step[axis] = STEP
        force[:moving, axis] -= (energy(state.x[:moving] + step) - energy(state.x[:moving] - step)) / (2 * STEP)
    return force


@pytest.fixture(scope="module")
def left(found) -> SimpleNamespace:
    """What is left at every node of what the parts ask less what is given: force, moment."""
    system, state = found.system, found.state
    force, moment = rod_forces(system, state)
    load, couple, total = loads(system, state)
    push = pushes(system, state)
    pull = bars(system, state)
    # spins belong to nodes of hoops only
    return SimpleNamespace(force=force + pull - load - push, moment=moment[: len(state.triads)]
                           - couple[: len(state.triads)], load=load, push=push, about=total)


def test_every_free_node_is_in_balance(found, left) -> None:
    lay, system = found.system.layout, found.system
    weight = float(-left.load[:, 2].sum())
    force = np.bincount(system.move.ravel(), left.force.ravel(), minlength=system.n + 1)[: system.n]
    turn = np.bincount(system.spin.ravel(), left.moment.ravel(), minlength=system.n + 1)[: system.n]
    assert weight == pytest.approx(lay.loads.weight, rel=1e-9)
    assert np.abs(force).max() < NODE * weight
    assert np.abs(turn).max() < NODE * weight * system.size


def test_the_waist_and_the_body_carry_all_of_it(found, left) -> None:
    """Held points give what the parts ask of them; with the pushes of body and rests they balance every load, in
    force and in moment about the waist's centre. Half a cage is balanced only along its mirror's plane."""
    lay, system = found.system.layout, found.system
    weight = float(-left.load[:, 2].sum())
    held = np.zeros(len(lay.x), dtype=bool)
    held[lay.moving_nodes :] = True
    on = held[system.moves_with]
    given = np.where(on[:, None], left.force, 0.0) + left.push
    # in front and behind the mirror the halves pull at each other
    kept = np.array(["xyz"[axis] not in lay.model.mirrors for axis in range(3)])
    force = given.sum(axis=0) + left.load.sum(axis=0)
    assert np.abs(force[kept]).max() < WHOLE * weight
    waist = np.array([0.0, 0.0, found.problem.spec.wearer.side])
    about = np.cross(found.state.x - waist, given).sum(axis=0) + left.about - np.cross(waist, left.load.sum(axis=0))
    turns = ~kept if lay.model.mirrors else np.ones(3, dtype=bool)
    assert np.abs(about[turns]).max() < NODE * weight * system.size
    told = np.array([one.force for one in found.result.held]).sum(axis=0)
    assert told == pytest.approx(np.where(on[:, None], left.force, 0.0).sum(axis=0), abs=WHOLE * weight)


def test_the_solver_says_how_well_it_balances(found) -> None:
    assert found.result.error < 1e-8


@pytest.mark.parametrize("path", _designs(True), ids=_name)
def test_a_petticoat_has_no_rods_to_solve_and_says_so(path: Path) -> None:
    """Its cloth is balanced hoop by hoop: from each down it carries all that hangs there, and presses it inward."""
    spec, shape = _drawn(path)
    told, _ = assess(spec, shape)
    assert told is not None
    assert "closed forms" in told.method
    assert not told.lines
    if shape.corded is not None:
        assert not told.hoops
        assert "whether the band rolls over sideways is in no test" in told.method
        return
    problem = pose(spec, shape)
    solution = METHODS[kind_of(spec)].solve(problem)
    assert "closed forms" in solution.method
    loads = [(a + b) * GRAVITY for a, b in zip(problem.skirt, problem.own, strict=True)]
    rows = [(spec.wearer.side, spec.wearer.waist), *((one.height, one.girth) for one in shape.hoops)]
    slopes = [(low[1] - high[1]) / (2 * pi) / (high[0] - low[0]) for high, low in pairwise(rows)]
    hangs = [sum(loads[k:]) for k in range(len(loads))]
    pulls = [v * s for v, s in zip(hangs, slopes, strict=True)]
    inward = [a - b for a, b in zip(pulls, [*pulls[1:], 0.0], strict=True)]
    assert solution.waist_pull == pytest.approx(pulls[0], rel=1e-9)
    for hoop, press in zip(solution.hoops, inward, strict=True):
        assert hoop.thrust == pytest.approx(press / (2 * pi), rel=1e-9, abs=1e-12)
