"""One hoop, hung or pushed: closed forms of rings, and the buckling of a hoop hung on a cone of tapes.

Ring under n equal radial loads: Roark's Formulas for Stress and Strain, circular rings (form from memory,
derived again for the closed forms of this package). Sag: series solution of the circular beam with twist free
at its supports.
"""

from __future__ import annotations

from math import cos, pi, sin, tan

import pytest
from apparatus.ovals import oval_points

from hoopwright.strength.cage.build import lay_out
from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    HoopModel,
    HoopPoint,
    JoinModel,
    PointLoad,
    Section,
    TapeModel,
)
from hoopwright.strength.cage.newton import newton, start, true_tangent
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.system import System
from hoopwright.strength.cage.track import Stops


def pushed(n: int, elements: int, load: float = 1e-3) -> CageModel:
    """A unit hoop, EI = 1, with n even inward loads; held at one loaded point, by balance without force."""
    hoop = HoopModel("H", oval_points(2.0, 2.0, 0.0), Section(1e7, 1.0, 50.0, 1.0, 0.0, 1e-3))
    places = [2 * pi * k / n for k in range(n)]
    loads = tuple(
        PointLoad(HoopPoint("H", k / n), (-load * sin(a), -load * cos(a), 0.0)) for k, a in enumerate(places)
    )
    hold = JoinModel(HoopPoint("H", 0.0), FixedPoint((0.0, 1.0, 0.0)), stiff=True)
    return CageModel((hoop,), joins=(hold,), point_loads=loads)


@pytest.mark.parametrize(
    ("n", "moment", "inward", "outward"),
    [
        (2, 0.3183, 0.07439, 0.06831),
        (4, 0.1366, 0.006079, 0.005386),
        (6, 0.08890, 0.001682, 0.001480),
        (8, 0.06613, 0.0006931, 0.0006084),
    ],
)
def test_ring_under_even_inward_loads(n: int, moment: float, inward: float, outward: float) -> None:
    h = solve(pushed(n, 48), Options(48, factor=False)).hoops[0]
    assert h.moment_weak_n_m / 1e-3 == pytest.approx(moment, rel=1e-3)
    assert h.inward_m / 1e-3 == pytest.approx(inward, rel=2e-3)
    assert h.outward_m / 1e-3 == pytest.approx(outward, rel=2e-3)
    assert h.thrust_n / 1e-3 == pytest.approx(n / (2 * pi), rel=2e-3)


def hung(
    n: int, load: float, *, strong: float, twist: float, height: float = 5.0, waist: float = 1.0
) -> CageModel:
    """A unit hoop on n tapes from a circle of radius `waist` at `height` above it."""
    hoop = HoopModel(
        "H", oval_points(2.0, 2.0, 0.0), Section(1e7, 1.0, strong, twist, 0.0, 1e-3), line_load_n_per_m=load
    )
    tapes = tuple(
        TapeModel(f"T{k}", (waist * sin(a), waist * cos(a), height), (("H", k / n),), ea=2000.0)
        for k, a in enumerate(2 * pi * k / n for k in range(n))
    )
    return CageModel((hoop,), tapes)


def exact_sag(n: int, strong: float, twist: float) -> float:
    """4 w R^4 sum over odd j of (B + C j^2 n^2)/(B C j^2 n^2 (j^2 n^2 - 1)^2), with w = R = 1."""
    squares = [(j * n) ** 2 for j in range(1, 80, 2)]
    return 4 * sum((strong + twist * s) / (strong * twist * s * (s - 1) ** 2) for s in squares)


@pytest.mark.parametrize("n", [4, 5, 6, 8])
@pytest.mark.parametrize("elements", [24, 48, 96])
def test_sag_between_tapes(n: int, elements: int) -> None:
    load = 1e-3
    h = solve(hung(n, load, strong=80.0, twist=1.0), Options(elements, factor=False)).hoops[0]
    alpha = pi / n
    assert h.sag_m / load == pytest.approx(exact_sag(n, 80.0, 1.0), rel=1e-4)
    assert h.moment_strong_n_m / load == pytest.approx(1 - alpha / tan(alpha), rel=2e-4)


def test_holding_twist_at_the_tapes_stiffens() -> None:
    free = hung(6, 1e-3, strong=80.0, twist=1.0)
    stiff = CageModel(
        free.hoops,
        tuple(TapeModel(t.id, t.anchor, t.fixings, t.ea, twist_stiffness=1e3) for t in free.tapes),
    )
    sags = [solve(m, Options(48, factor=False)).hoops[0].sag_m for m in (free, stiff)]
    assert sags[1] < 0.75 * sags[0]


CONE = {"strong": 117.0, "twist": 1.46, "height": 0.6, "waist": 0.2}
SLOPE = (1.0 - CONE["waist"]) / CONE["height"]
FAR = Stops(sag=1.0, out_of_round=1.0, tilt=1.5)


def buckling_pull(n: int) -> float:
    """Line load times slope at which the cone-hung hoop leaves its even shape, in A/R^3; within one in a
    hundred.
    """
    unit = 7.0
    result = solve(hung(n, unit / SLOPE, **CONE), Options(96, stops=FAR))
    assert result.factor is not None
    assert result.factor.limit == "unstable"
    return unit * result.factor.value


@pytest.mark.parametrize(("n", "want"), [(6, 11.6), (8, 18.1), (16, 17.6)])
def test_hanging_hoop_buckles(n: int, want: float) -> None:
    """Values of an independent finite-element study: q R^3/A for B/A = 117, C/A = 1.46, R0/R = 0.2, h/R =
    0.6.
    """
    assert buckling_pull(n) == pytest.approx(want, rel=0.03)


def test_five_tapes_buckle_in_a_pair_of_shapes() -> None:
    """Five tapes: two equal pivots turn negative together at 17.0, and the determinant keeps its sign.

    The study quoted above has 19.9 here. The even shape is still in balance then (at 18 OpenSees finds the
    same one), so that a search by the sign of the determinant passes 17.0 unseen. The lower value is taken.
    """
    assert buckling_pull(5) == pytest.approx(17.0, rel=0.02)
    below, above = (negative_pivots(5, q) for q in (16.5, 18.0))
    assert (below, above) == (0, 2)


def test_six_tapes_buckle_in_one_shape() -> None:
    assert (negative_pivots(6, 11.0), negative_pivots(6, 12.5)) == (0, 1)


def negative_pivots(n: int, pull: float) -> int:
    system = System(lay_out(hung(n, pull / SLOPE, **CONE), 96))
    found = newton(system, *start(system), 1.0)
    assert found.converged
    factored = system.pattern.factor(true_tangent(system, found.state, 1.0), system.hold)
    assert factored is not None
    assert factored.pivots is not None
    return int((factored.pivots < 0).sum())


def test_screen_lies_below_every_hung_hoop() -> None:
    assert min(buckling_pull(n) for n in (5, 6, 8)) > 3.0


def test_past_its_buckle_an_even_shape_stands_only_by_symmetry() -> None:
    result = solve(hung(6, 12.5 / SLOPE, **CONE), Options(48, stops=FAR))
    assert result.status == "stands only by symmetry"
    assert [n.code for n in result.notes if n.code == "by-symmetry"]
    assert result.factor is not None
    assert result.factor.value < 1.0
    assert 12.5 * result.factor.value == pytest.approx(11.6, rel=0.03)
