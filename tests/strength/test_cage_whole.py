"""Whole cages: statics, equilibrium, invariance under turning, mirroring and change of units, convergence,
fallbacks.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import cos, dist, hypot, pi, sin

import numpy as np
import pytest
from apparatus.ovals import even_tapes, oval_points
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import eigsh

from hoopwright.strength.cage import track
from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.model import (
    BandModel,
    BodyModel,
    BodyRow,
    CageModel,
    HoopModel,
    HoopPoint,
    Section,
    TieModel,
    Xyz,
)
from hoopwright.strength.cage.newton import is_stable, newton, start
from hoopwright.strength.cage.result import CageResult, Factor
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.system import Guess, System
from hoopwright.strength.gravity import GRAVITY

PLAIN = Options(48, factor=False)


def strip(width: float = 9.5e-3, thickness: float = 1.07e-3) -> Section:
    e, twist = 205e9, width * thickness**3 / 3 * (1 - 0.63 * thickness / width)
    return Section(
        e * width * thickness,
        e * width * thickness**3 / 12,
        e * thickness * width**3 / 12,
        79e9 * twist,
        7850 * width * thickness,
        thickness / 2,
        width / 2,
        e,
    )


ROWS = ((0.50, -0.16), (0.68, -0.36), (0.82, -0.60), (0.90, -0.88))


def cage(section: Section, load: float = 3.0, gap: float = 0.0, count: int = 6, **more: object) -> CageModel:
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(d, d, z), section, line_load_n_per_m=load)
        for k, (d, z) in enumerate(ROWS)
    )
    return CageModel(hoops, even_tapes(tuple(h.id for h in hoops), count, (0.26, 0.19), gap=gap))


def uneven() -> CageModel:
    """No symmetry at all: a gap, uneven load, a thrown-back tilted hem, sprung hoops, a tie, a band."""
    base = cage(strip(), gap=0.25)
    rows = ((0.0, 0.0), (0.2, 4.0), (0.5, 0.0))
    hem = HoopModel(
        "H4", oval_points(0.9, 0.8, -0.88, -0.1, tilt=0.05), strip(), born="straight", load_rows=rows
    )
    low = HoopModel("H5", oval_points(0.9, 0.8, -1.05, -0.1), strip(), line_load_n_per_m=2.0)
    return replace(
        base,
        hoops=(*base.hoops[:3], hem, low),
        bands=(BandModel("B", "H4", "H5", 400.0, 50.0, 16),),
        ties=(TieModel("X", *_across("H3"), length=0.78),),
    )


def _across(hoop: str) -> tuple[HoopPoint, HoopPoint]:
    return HoopPoint(hoop, 0.25), HoopPoint(hoop, 0.75)


def test_statics_of_a_round_cage_with_stiff_hoops() -> None:
    """Tensions V sqrt(1 + s^2) and pulls V_i s_i - V_(i+1) s_(i+1) of statics: six hoops, six tapes, 1.892
    N/m.
    """
    radii, depths = (0.22, 0.33, 0.415, 0.475, 0.51, 0.5252), (0.06, 0.16, 0.30, 0.47, 0.68, 0.92)
    stiff = Section(1e9, 1e5, 1e5, 1e5, 0.0, 1e-3)
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(2 * r, 2 * r, -z), stiff, line_load_n_per_m=1.892)
        for k, (r, z) in enumerate(zip(radii, depths, strict=True))
    )
    tapes = even_tapes(tuple(h.id for h in hoops), 6, (0.21, 0.21))
    tapes = tuple(replace(t, ea=1e7) for t in tapes)
    result = solve(CageModel(hoops, tapes), PLAIN)
    tensions = [s.tension_n for s in result.tapes[0].segments]
    assert tensions == pytest.approx([10.60, 6.642, 4.462, 3.173, 2.079, 1.042], abs=5e-3)
    thrust = [h.thrust_n * 2 * pi / 6 for h in result.hoops]
    assert thrust == pytest.approx([4.484, 2.599, 1.260, 0.7141, 0.2759, 0.0659], abs=1e-2)
    first = 2 * pi * sum(radii) * 1.892 / 6
    assert result.waist_pull_n == pytest.approx(6 * first * (0.22 - 0.105) / 0.06, rel=2e-3)


@pytest.mark.parametrize("model", [cage(strip()), cage(strip(), gap=0.36), uneven()])
def test_equilibrium(model: CageModel) -> None:
    result = solve(model, PLAIN)
    assert result.status == "solved"
    assert result.error < 1e-8
    assert result.waist_down_n == pytest.approx(result.weight_n, rel=1e-6)


def test_weight_counts_skirt_and_steel() -> None:
    model = cage(strip(), load=3.0)
    girths = pi * sum(d for d, _ in ROWS)
    steel = 7850 * 9.5e-3 * 1.07e-3 * GRAVITY
    assert solve(model, PLAIN).weight_n == pytest.approx(girths * (3.0 + steel), rel=1e-6)


def _numbers(result: CageResult) -> np.ndarray:
    rows = [
        (h.sag_m, h.inward_m, h.outward_m, h.thrust_n, h.moment_weak_n_m, h.moment_strong_n_m, h.stress_pa)
        for h in result.hoops
    ]
    return np.array(rows)


def _moved(model: CageModel, to: object) -> CageModel:
    """The model with every point carried by `to`."""

    def points(hoop: HoopModel) -> HoopModel:
        return replace(hoop, points=tuple(to(p) for p in hoop.points))

    tapes = tuple(replace(t, anchor=to(t.anchor)) for t in model.tapes)
    return replace(model, hoops=tuple(points(h) for h in model.hoops), tapes=tapes)


def test_turning_the_cage_changes_nothing() -> None:
    def turn(p: Xyz) -> Xyz:
        return p[0] * cos(0.7) - p[1] * sin(0.7), p[0] * sin(0.7) + p[1] * cos(0.7), p[2]

    here, there = solve(uneven(), PLAIN), solve(_moved(uneven(), turn), PLAIN)
    assert _numbers(there) == pytest.approx(_numbers(here), rel=1e-5, abs=1e-9)
    assert there.swing_m == pytest.approx(here.swing_m, rel=1e-6)


def test_left_and_right_may_be_exchanged() -> None:
    model = uneven()

    def across(hoop: HoopModel) -> HoopModel:
        back = (hoop.points[0], *hoop.points[:0:-1])
        rows = tuple(sorted(((1 - f) % 1.0, w) for f, w in hoop.load_rows))
        return replace(hoop, points=tuple((-x, y, z) for x, y, z in back), load_rows=rows)

    tapes = tuple(
        replace(
            t, anchor=(-t.anchor[0], *t.anchor[1:]), fixings=tuple((h, (1 - f) % 1.0) for h, f in t.fixings)
        )
        for t in model.tapes
    )
    other = replace(model, hoops=tuple(across(h) for h in model.hoops), tapes=tapes)
    here, there = solve(model, PLAIN), solve(other, PLAIN)
    assert _numbers(there) == pytest.approx(_numbers(here), rel=1e-5, abs=1e-9)
    assert there.swing_xy == pytest.approx((-here.swing_xy[0], here.swing_xy[1]), abs=1e-8)


def test_a_cage_twice_as_large_in_matching_units_is_the_same_cage() -> None:
    """Lengths times 2, forces times 3: EA x 3, EI x 12, loads per length x 3/2."""
    s = strip()
    large = Section(
        3 * s.ea, 12 * s.ei_weak, 12 * s.ei_strong, 12 * s.gj, 0.0, 2 * s.half_thickness, 2 * s.half_width
    )
    small = replace(s, mass_per_m=0.0, modulus=0.0)
    model = cage(small, gap=0.3)
    scaled = _moved(model, lambda p: (2 * p[0], 2 * p[1], 2 * p[2]))
    scaled = replace(
        scaled,
        hoops=tuple(
            replace(h, section=large, line_load_n_per_m=1.5 * h.line_load_n_per_m) for h in scaled.hoops
        ),
        tapes=tuple(replace(t, ea=3 * t.ea) for t in scaled.tapes),
    )
    here, there = _numbers(solve(model, PLAIN)), _numbers(solve(scaled, PLAIN))
    assert there == pytest.approx(here * np.array([2, 2, 2, 3, 6, 6, 1]), rel=1e-6, abs=1e-10)


def test_results_converge_with_the_mesh() -> None:
    """24, 48, 96 elements a hoop against 192: each closer than the one before, the first within 1 %."""
    model = cage(strip(), gap=0.25)

    def figures(elements: int) -> np.ndarray:
        hem = solve(model, Options(elements, factor=False)).hoops[3]
        return np.array([hem.sag_m, hem.inward_m, hem.moment_weak_n_m, hem.moment_strong_n_m])

    best = figures(192)
    errors = [np.abs(figures(n) / best - 1).max() for n in (24, 48, 96)]
    assert errors[0] > errors[1] > errors[2]
    assert errors[0] < 0.02
    assert errors[1] < 0.005
    assert abs(figures(24)[0] / best[0] - 1) < 0.01


def test_softer_tapes_sag_more() -> None:
    model = cage(strip(), gap=0.36)
    sags = []
    for ea in (30000.0, 3000.0, 500.0):
        soft = replace(model, tapes=tuple(replace(t, ea=ea) for t in model.tapes))
        sags.append(max(h.sag_m for h in solve(soft, PLAIN).hoops))
    assert sags[0] < sags[1] < sags[2]
    assert sags[2] > 1.3 * sags[0]


def test_a_thrown_back_cage_swings_forward() -> None:
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(d, d, z, -0.15 * k / 3), strip(), line_load_n_per_m=3.0)
        for k, (d, z) in enumerate(ROWS)
    )
    result = solve(CageModel(hoops, even_tapes(tuple(h.id for h in hoops), 6, (0.26, 0.19))), PLAIN)
    assert result.swing_xy[1] > 0.12
    assert abs(result.swing_xy[0]) < 1e-6


def test_the_body_stops_the_swing() -> None:
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(d, d, z, -0.15 * k / 3), strip(), line_load_n_per_m=3.0)
        for k, (d, z) in enumerate(ROWS)
    )
    free = CageModel(hoops, even_tapes(tuple(h.id for h in hoops), 6, (0.26, 0.19)))
    rows = (BodyRow(-0.5, 0.35, 0.2, -0.32), BodyRow(-1.0, 0.35, 0.2, -0.32))
    hung, leaning = (solve(m, PLAIN) for m in (free, replace(free, body=BodyModel(rows))))
    assert leaning.status == "solved"
    assert leaning.body_push_n > 0
    assert sum(h.touching for h in leaning.hoops) > 0
    assert leaning.swing_m < 0.9 * hung.swing_m
    assert leaning.error < 1e-8


def test_the_bodys_push_is_the_slope_of_the_work_stored_in_it() -> None:
    """Stiffness times depth alone is no force on an oval: on this one it is a third too much at the sides and a
    quarter too little in front and behind."""
    hoops = tuple(
        HoopModel(f"H{k + 1}", oval_points(d, d, z, -0.15 * k / 3), strip(), line_load_n_per_m=3.0)
        for k, (d, z) in enumerate(ROWS)
    )
    a, b, y0, firm, step = 0.35, 0.2, -0.32, 2000.0, 1e-7
    body = BodyModel((BodyRow(-0.5, a, b, y0), BodyRow(-1.0, a, b, y0)), firm)
    found = solve(CageModel(hoops, even_tapes(tuple(h.id for h in hoops), 6, (0.26, 0.19)), body=body), PLAIN)

    def stored(x: float, y: float) -> float:
        depth = (a * b) ** 0.5 * (1 - ((x / a) ** 2 + ((y - y0) / b) ** 2) ** 0.5)
        return firm / 2 * max(depth, 0.0) ** 2

    nodes = {node for hoop in found.hoops for node in hoop.deformed if -1.0 <= node[2] <= -0.5}
    push = sum(
        hypot(stored(x + step, y) - stored(x - step, y), stored(x, y + step) - stored(x, y - step)) / (2 * step)
        for x, y, _ in nodes
    )
    assert found.body_push_n == pytest.approx(push, rel=1e-4)
    assert push > 1.0


def test_a_tape_in_pieces_is_the_same_tape() -> None:
    model = cage(strip(), gap=0.25)
    pieces = replace(model, tapes=tuple(replace(t, pieces=3) for t in model.tapes))
    here, there = solve(model, PLAIN), solve(pieces, PLAIN)
    assert _numbers(there) == pytest.approx(_numbers(here), rel=1e-5, abs=1e-9)
    ends = [[s.tension_n for s in r.tapes[1].segments] for r in (here, there)]
    assert ends[1] == pytest.approx(ends[0], rel=1e-6)


def test_a_tape_in_pieces_lies_over_the_hips() -> None:
    """The hips stand in the way: the tape bends over them, and pulls the first hoop less inward."""
    base = cage(strip())
    rows = (BodyRow(0.0, 0.12, 0.09), BodyRow(-0.08, 0.21, 0.2), BodyRow(-0.2, 0.2, 0.19))
    over = replace(base, body=BodyModel(rows, 20000.0), tapes=tuple(replace(t, pieces=6) for t in base.tapes))
    straight, bent = solve(base, PLAIN), solve(over, PLAIN)
    assert bent.status == "solved"
    assert bent.body_push_n > 1.0
    assert bent.error < 1e-8
    assert bent.hoops[0].touching == 0
    assert bent.hoops[0].thrust_n < 0.5 * straight.hoops[0].thrust_n


def test_a_linear_factor_lies_on_the_safe_side_of_the_one_followed() -> None:
    """With full sets of tapes the load at which the loaded shape's own tangent, its geometric part growing with the
    load, loses a pivot is low by under a third, and never high: K v = (1 - f) G v, by Lanczos (ARPACK, as scipy
    ships it)."""
    model = cage(strip(6e-3, 0.5e-3), load=2.6)
    followed = solve(model, Options(48)).factor
    assert followed is not None
    assert followed.limit == "unstable"
    system = System(lay_out(model, 48))
    found = newton(system, *start(system), 1.0)
    full = system.tangent(found.state, found.now, found.guess, 1.0)
    none = Guess(np.zeros_like(found.now.stress), np.where(found.now.bars.force > 0, 1e-12, 0.0))
    geometric = full - system.tangent(found.state, found.now, none, 0.0)
    k, g = (csc_matrix((values, system.pattern.indices, system.pattern.starts)) for values in (full, geometric))
    worst = float(eigsh(-g, k=1, M=k, which="LA", return_eigenvectors=False)[0])
    assert 0.65 * followed.value < 1 + 1 / worst < 1.02 * followed.value


def test_the_last_tangent_tells_of_stability_as_the_rest_itself_does(monkeypatch: pytest.MonkeyPatch) -> None:
    """Up to where the cage gives way: the same factor, to what is asked for."""
    model = cage(strip(6e-3, 0.5e-3), load=2.6)
    quick = solve(model, Options(48)).factor
    monkeypatch.setattr(track, "stands", lambda system, found, factor: is_stable(system, found.state, factor))
    exact = solve(model, Options(48)).factor
    assert quick is not None
    assert exact is not None
    assert quick.limit == exact.limit == "unstable"
    assert quick.value == pytest.approx(exact.value, rel=track.PRECISION)


def test_a_sturdy_cage_is_followed_to_three_times_its_load() -> None:
    assert solve(cage(strip(13e-3, 1.2e-3)), Options(48)).factor == Factor(3.0, True, "cap", None)


def test_factor_below_one_is_found_from_below() -> None:
    """Three times the load at which the factor was f is carried f/3 times."""
    model = cage(strip(6e-3, 0.5e-3), load=2.6)
    bare = replace(
        model, hoops=tuple(replace(h, section=replace(h.section, mass_per_m=0.0)) for h in model.hoops)
    )
    heavy = replace(bare, hoops=tuple(replace(h, line_load_n_per_m=3 * 2.6) for h in bare.hoops))
    light, much = (solve(m, Options(48)) for m in (bare, heavy))
    assert light.factor is not None
    assert much.factor is not None
    assert much.status != "solved"
    assert much.factor.value == pytest.approx(light.factor.value / 3, rel=0.03)


def test_spare_helpers_of_the_model() -> None:
    """Even tapes with a gap stand at its edges; points on an oval are even along it."""
    tapes = even_tapes(("H",), 5, (0.2, 0.2), gap=0.2)
    assert [t.fixings[0][1] for t in tapes] == pytest.approx([0.1, 0.3, 0.5, 0.7, 0.9])
    points = oval_points(1.0, 0.5, 0.0, count=40)
    steps = [dist(p, q) for p, q in pairwise(points)]
    assert max(steps) / min(steps) < 1.02
