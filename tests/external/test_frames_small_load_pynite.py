"""A wheel of spokes and a half-oval side hoop under next to no load, against frames of short beams solved by PyNite.

Where movements vanish the nonlinear solver must agree with any linear one: within 2 % where something moves by
much, beams being straight where rings are curved. The wheel lies level: its rings are held at the hole, spokes
are one with hole and rim and pinned to the ring between; three spokes lie on rests. The side hoop is solved by its
front half here and whole there: a half oval on three strips, tied from end to end, leaning on two rests; without
its stiffness under tension a frame would sway to front and back, which a spring at its middle keeps it from.
"""

from __future__ import annotations

import contextlib
import io
from math import cos, dist, pi, sin

import numpy as np
import pytest
from apparatus.ovals import oval_points
from Pynite import FEModel3D

from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    FreePoint,
    HoopModel,
    HoopPoint,
    JoinModel,
    RestModel,
    Section,
    TapeModel,
    TieModel,
)
from hoopwright.strength.cage.result import CageResult, HoopResult
from hoopwright.strength.cage.solve import Options, solve

E, G, WIDTH, THICKNESS = 205e9, 79e9, 10e-3, 0.7e-3
STRIP = Section(
    E * WIDTH * THICKNESS, E * WIDTH * THICKNESS**3 / 12, E * THICKNESS * WIDTH**3 / 12,
    G * WIDTH * THICKNESS**3 / 3, 0.0, THICKNESS / 2, WIDTH / 2, E,
)
CLOSE = 0.02
"""Greatest difference, as a share of the largest movement of its kind."""
SPOKES, RADII, LOAD = 6, (0.11, 0.28, 0.45), 1e-3
PAD, ON = 300.0, 0.05
"""A rest's stiffness N/m, and how far from the hole it is, m."""
GAP = 2e-3
"""A pin between ring and spoke in PyNite: a short stiff link, free to turn at the spoke, m."""


def _frame() -> FEModel3D:
    model = FEModel3D()
    model.add_material("steel", E, G, 0.3, 0.0)
    model.add_section("strip", STRIP.ea / E, STRIP.ei_weak / E, STRIP.ei_strong / E, STRIP.gj / G)
    return model


def _beam(model: FEModel3D, name: str, a: str, b: str, section: str = "strip") -> None:
    model.add_member(name, a, b, "steel", section)


def _solved(model: FEModel3D) -> FEModel3D:
    with contextlib.redirect_stdout(io.StringIO()):
        model.analyze_linear(check_statics=False)
    return model


def _place(angle: float, radius: float) -> tuple[float, float]:
    return radius * sin(angle), radius * cos(angle)


def wheel() -> CageResult:
    """Our wheel: spokes from centre front, rings preformed, load on the rim."""
    rings = [HoopModel(f"H{n}", oval_points(2 * r, 2 * r, 0.0), STRIP, line_load_n_per_m=LOAD if n == 2 else 0.0)
             for n, r in enumerate(RADII)]
    spokes, joins, rests = [], [], []
    for k in range(SPOKES):
        ends = [(*_place(2 * pi * k / SPOKES, r), 0.0) for r in (RADII[0], RADII[-1])]
        spokes.append(HoopModel(f"S{k}", tuple(ends), STRIP, False, elements=12))
        for n, r in enumerate(RADII):
            share = (r - RADII[0]) / (RADII[-1] - RADII[0])
            joins.append(JoinModel(HoopPoint(f"S{k}", share), HoopPoint(f"H{n}", k / SPOKES), n != 1))
        joins.append(JoinModel(HoopPoint("H0", k / SPOKES), FixedPoint(ends[0])))
        if k % 2 == 0:
            at = (*_place(2 * pi * k / SPOKES, RADII[0] + ON), 0.0)
            rests.append(RestModel(f"P{k}", HoopPoint(f"S{k}", ON / (RADII[-1] - RADII[0])), at, (0, 0, 1), PAD))
    got = solve(CageModel((*rings, *spokes), joins=tuple(joins), rests=tuple(rests)), Options(96, factor=False))
    assert got.status == "solved"
    return got


def wheel_frame(count: int) -> FEModel3D:
    """The same by PyNite, ``count`` beams a ring; its Y is up and its Z back."""
    model = _frame()
    model.add_section("pin", 1e-6, 1e-11, 1e-11, 1e-11)
    for n, radius in enumerate(RADII):
        for k in range(count):
            x, y = _place(2 * pi * k / count, radius)
            model.add_node(f"H{n}N{k}", x, 0.0, -y)
            if n == 2:
                model.add_node_load(f"H{n}N{k}", "FY", -LOAD * 2 * pi * radius / count)
        for k in range(count):
            _beam(model, f"H{n}M{k}", f"H{n}N{k}", f"H{n}N{(k + 1) % count}")
    for k in range(SPOKES):
        angle, at = 2 * pi * k / SPOKES, k * count // SPOKES
        model.def_support(f"H0N{at}", True, True, True)
        x, y = _place(angle, RADII[1])
        model.add_node(f"S{k}mid", x, GAP, -y)
        x, y = _place(angle, RADII[0] + ON)
        model.add_node(f"S{k}pad", x, 0.0, -y)
        _beam(model, f"S{k}a", f"H0N{at}", f"S{k}pad")
        _beam(model, f"S{k}b", f"S{k}pad", f"S{k}mid")
        _beam(model, f"S{k}c", f"S{k}mid", f"H2N{at}")
        _beam(model, f"S{k}p", f"H1N{at}", f"S{k}mid", "pin")
        model.def_releases(f"S{k}p", Rxj=True, Ryj=True, Rzj=True)
        if k % 2 == 0:
            model.def_support_spring(f"S{k}pad", "DY", PAD)
    return _solved(model)


def _drop(hoop: HoopResult, share: float) -> float:
    at = int(np.argmin(np.abs(np.array(hoop.fractions) - share)))
    return hoop.wished[at][2] - hoop.deformed[at][2]


def test_a_wheel_sinks_as_a_frame_of_beams_does() -> None:
    ours, frame, count = wheel(), wheel_frame(96), 96
    drops = {(n, m): (_drop(ours.hoops[n], m / 12), -float(frame.nodes[f"H{n}N{m * count // 12}"].DY["Combo 1"]))
             for n in (1, 2) for m in range(12)}
    largest = max(theirs for _, theirs in drops.values())
    for place, (mine, theirs) in drops.items():
        assert mine == pytest.approx(theirs, abs=CLOSE * largest), place


def test_its_rests_bear_what_springs_bear() -> None:
    ours, frame = wheel(), wheel_frame(96)
    for k, rest in zip((0, 2, 4), ours.rests, strict=True):
        assert rest.push_n > 0
        assert rest.push_n == pytest.approx(-PAD * float(frame.nodes[f"S{k}pad"].DY["Combo 1"]), rel=CLOSE)


HIP, DEEP, OUT, DOWN = 0.17, 0.15, 0.2, -0.25
"""Half oval: its ends ``DEEP`` before and behind the middle, at ``HIP`` from it, standing out by ``OUT``."""
LINE, CLOTH, TIE, WALL = 0.01, 300.0, 3000.0, 2000.0


def _oval(share: float) -> tuple[float, float, float]:
    return HIP + OUT * sin(pi * share), DEEP * cos(pi * share), DOWN


ANCHORS = ((0.13, 0.22, 0.0), (0.13, 0.0, 0.0), (0.13, -0.22, 0.0))


def side() -> CageResult:
    """Our side hoop, by its front half: a strip at its end, half a strip at its middle."""
    points = (*(_oval(k / 80) for k in range(40)), (HIP + OUT, 0.0, DOWN))
    steel = HoopModel("L", points, STRIP, False, 0.0, 0.5, line_load_n_per_m=LINE)
    strips = (TapeModel("end", ANCHORS[0], (("L", 0.0),), CLOTH),
              TapeModel("middle", ANCHORS[1], (("L", 0.5),), CLOTH / 2))
    tie = TieModel("tie", HoopPoint("L", 0.0), FreePoint("knot", (HIP, 0.0, DOWN)), DEEP, TIE)
    rest = RestModel("wall", HoopPoint("L", 0.0), points[0], (1.0, 0.0, 0.0), WALL)
    third = TapeModel("spare", (0.13, 0.11, 0.0), (("L", 0.25),), 1e-6)
    model = CageModel((steel,), (*strips, third), ties=(tie,), mirrors=("y",), rests=(rest,))
    got = solve(model, Options(96, factor=False))
    assert got.status == "solved", got.notes
    return got


def side_frame(count: int) -> FEModel3D:
    """The whole of it by PyNite, ``count`` beams of equal turns of the oval."""
    model = _frame()
    for name, ea in (("strip of cloth", CLOTH), ("tie", TIE)):
        model.add_section(name, ea / E, 1e-16, 1e-16, 1e-16)
    places = [_oval(k / count) for k in range(count + 1)]
    for k, (x, y, z) in enumerate(places):
        model.add_node(f"N{k}", x, z, -y)
    for k in range(count):
        _beam(model, f"M{k}", f"N{k}", f"N{k + 1}")
        half = LINE * dist(places[k], places[k + 1]) / 2
        model.add_node_load(f"N{k}", "FY", -half)
        model.add_node_load(f"N{k + 1}", "FY", -half)
    for name, anchor, at in zip(("end", "middle", "back"), ANCHORS, (0, count // 2, count), strict=True):
        x, y, z = anchor
        model.add_node(name, x, z, -y)
        model.def_support(name, *[True] * 6)
        _beam(model, f"T{name}", name, f"N{at}", "strip of cloth")
    _beam(model, "Ttie", "N0", f"N{count}", "tie")
    for name in ("Tend", "Tmiddle", "Tback", "Ttie"):
        model.def_releases(name, Ryi=True, Rzi=True, Ryj=True, Rzj=True, Rxj=True)
    for k in (0, count):
        model.def_support_spring(f"N{k}", "DX", WALL)
    model.def_support_spring(f"N{count // 2}", "DZ", 1.0)
    return _solved(model)


@pytest.fixture(scope="module")
def sides() -> tuple[CageResult, FEModel3D]:
    return side(), side_frame(160)


def test_a_side_hoop_moves_as_a_frame_of_beams_does(sides: tuple[CageResult, FEModel3D]) -> None:
    ours, frame = sides
    steel = ours.hoops[0]
    far = {"end": (0, "N0"), "middle": (-1, "N80")}
    moves = []
    for at, name in far.values():
        a, b, node = steel.wished[at], steel.deformed[at], frame.nodes[name]
        theirs = [float(node.DX["Combo 1"]), -float(node.DZ["Combo 1"]), float(node.DY["Combo 1"])]
        moves += [(q - p, other) for p, q, other in zip(a, b, theirs, strict=True)]
    largest = max(abs(theirs) for _, theirs in moves)
    assert largest > 0
    for mine, theirs in moves:
        assert mine == pytest.approx(theirs, abs=CLOSE * largest)


def test_strips_tie_and_wall_bear_the_same(sides: tuple[CageResult, FEModel3D]) -> None:
    ours, frame = sides
    pulls = {tape.id: tape.segments[0].tension_n for tape in ours.tapes}
    beams = {name: abs(float(frame.members[f"T{name}"].max_axial("Combo 1"))) for name in ("end", "middle", "tie")}
    assert pulls["end"] == pytest.approx(beams["end"], rel=CLOSE)
    assert 2 * pulls["middle"] == pytest.approx(beams["middle"], rel=CLOSE)
    assert ours.ties[0].tension_n == pytest.approx(beams["tie"], rel=CLOSE)
    assert ours.rests[0].push_n == pytest.approx(-WALL * float(frame.nodes["N0"].DX["Combo 1"]), rel=CLOSE)
