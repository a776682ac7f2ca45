"""A whole round cage under next to no load, against a linear frame of many short beams solved by PyNite.

Where movements vanish the nonlinear solver must agree with any linear one. Straight beams miss a hoop by the
square of their length, so the frame is solved with 48 and 96 beams a hoop and extrapolated. Elastic stiffness
alone lets hoops turn about their axis and the cage swing; the load excites neither, and springs of 1 mN/m
hold both.
"""

from __future__ import annotations

import contextlib
import io
from math import cos, hypot, pi, sin

import numpy as np
import pytest
from apparatus.ovals import oval_points
from Pynite import FEModel3D

from hoopwright.strength.cage.model import CageModel, HoopModel, Section, TapeModel
from hoopwright.strength.cage.solve import Options, solve

TAPES, EA_TAPE, LOAD = 6, 3000.0, 1e-3
ROWS = ((0.30, -0.20), (0.45, -0.60))
"""Radius and depth of each hoop, m."""
WAIST = 0.11
E, G, WIDTH, THICKNESS = 205e9, 79e9, 9.5e-3, 1.07e-3
STRIP = Section(
    E * WIDTH * THICKNESS, E * WIDTH * THICKNESS**3 / 12, E * THICKNESS * WIDTH**3 / 12,
    G * WIDTH * THICKNESS**3 / 3, 0.0, THICKNESS / 2, WIDTH / 2, E,
)


def ours() -> dict[str, float]:
    """Tensions N, and movements m at a tape and midway, by our solver."""
    hoops = tuple(HoopModel(f"H{k + 1}", oval_points(2 * r, 2 * r, z), STRIP, line_load_n_per_m=LOAD)
                  for k, (r, z) in enumerate(ROWS))
    tapes = tuple(
        TapeModel(f"T{k + 1}", (WAIST * sin(2 * pi * k / TAPES), WAIST * cos(2 * pi * k / TAPES), 0.0),
                  (("H1", k / TAPES), ("H2", k / TAPES)), EA_TAPE)
        for k in range(TAPES)
    )
    got = solve(CageModel(hoops, tapes), Options(96, factor=False))
    assert got.status == "solved"
    found = {f"tension {part.to}": part.tension_n for part in got.tapes[0].segments}
    for hoop in got.hoops:
        for name, share in (("tape", 0.0), ("midway", 0.5 / TAPES)):
            at = int(np.argmin(np.abs(np.array(hoop.fractions) - share)))
            a, b = hoop.wished[at], hoop.deformed[at]
            found[f"drop {hoop.id} {name}"] = a[2] - b[2]
            found[f"out {hoop.id} {name}"] = hypot(*b[:2]) - hypot(*a[:2])
    return found


def frame(count: int) -> dict[str, float]:
    """The same by PyNite, ``count`` beams a hoop; Y is up there."""
    model = FEModel3D()
    model.add_material("steel", E, G, 0.3, 0.0)
    model.add_section("strip", STRIP.ea / E, STRIP.ei_weak / E, STRIP.ei_strong / E, STRIP.gj / G)
    model.add_section("tape", EA_TAPE / E, 1e-16, 1e-16, 1e-16)
    for h, (r, z) in enumerate(ROWS, 1):
        for k in range(count):
            name, turn = f"H{h}N{k}", 2 * pi * k / count
            model.add_node(name, r * sin(turn), z, -r * cos(turn))
            model.def_support_spring(name, "DX", 1e-3)
            model.def_support_spring(name, "DZ", 1e-3)
            model.add_node_load(name, "FY", -LOAD * 2 * pi * r / count)
        for k in range(count):
            model.add_member(f"H{h}M{k}", f"H{h}N{k}", f"H{h}N{(k + 1) % count}", "steel", "strip")
    for k in range(TAPES):
        turn, at = 2 * pi * k / TAPES, k * count // TAPES
        model.add_node(f"W{k}", WAIST * sin(turn), 0.0, -WAIST * cos(turn))
        model.def_support(f"W{k}", *[True] * 6)
        model.add_member(f"T{k}A", f"W{k}", f"H1N{at}", "steel", "tape")
        model.add_member(f"T{k}B", f"H1N{at}", f"H2N{at}", "steel", "tape")
        for end in ("A", "B"):
            model.def_releases(f"T{k}{end}", Ryi=True, Rzi=True, Ryj=True, Rzj=True, Rxj=True)
    with contextlib.redirect_stdout(io.StringIO()):
        model.analyze_linear(check_statics=False)
    return _read(model, count)


def _read(model: FEModel3D, count: int) -> dict[str, float]:
    case = "Combo 1"
    found = {f"tension H{n}": abs(float(model.members[f"T0{end}"].max_axial(case)))
             for n, end in ((1, "A"), (2, "B"))}
    for h in (1, 2):
        for name, k in (("tape", 0), ("midway", count // TAPES // 2)):
            node, turn = model.nodes[f"H{h}N{k}"], 2 * pi * k / count
            found[f"drop H{h} {name}"] = -float(node.DY[case])
            found[f"out H{h} {name}"] = float(node.DX[case]) * sin(turn) - float(node.DZ[case]) * cos(turn)
    return found


@pytest.fixture(scope="module")
def both() -> tuple[dict[str, float], dict[str, float]]:
    coarse, fine = frame(48), frame(96)
    return ours(), {name: value + (value - coarse[name]) / 3 for name, value in fine.items()}


def test_tensions_agree(both: tuple[dict[str, float], dict[str, float]]) -> None:
    mine, theirs = both
    for name in ("tension H1", "tension H2"):
        assert mine[name] == pytest.approx(theirs[name], rel=1e-5)


def test_movements_agree(both: tuple[dict[str, float], dict[str, float]]) -> None:
    """Each within a thousandth of the largest movement of its kind."""
    mine, theirs = both
    for kind in ("drop", "out"):
        names = [name for name in mine if name.startswith(kind)]
        largest = max(abs(theirs[name]) for name in names)
        assert largest > 0
        for name in names:
            assert mine[name] == pytest.approx(theirs[name], abs=1e-3 * largest), name
