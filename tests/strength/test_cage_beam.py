"""Large deflections of single strips: cantilevers, a strip closed into a ring, and sprung arcs, against
closed forms.

Bisshopp and Drucker, Large deflection of cantilever beams, Quarterly of Applied Mathematics 3 (1945) 272-275:
values quoted from memory. The elastica of a pinned strip: any text on stability (Timoshenko and Gere, Theory
of Elastic Stability, 2nd ed. 1961, section 2.7; from memory). Own-weight droop: EI theta'' = -q (L - s) cos
theta, integrated apart from the engine.
"""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from apparatus.ovals import oval_points
from scipy.optimize import brentq
from scipy.special import ellipe, ellipk

from hoopwright.strength.cage.model import (
    CageModel,
    FixedPoint,
    HoopModel,
    HoopPoint,
    JoinModel,
    PointLoad,
    Section,
    TieModel,
)
from hoopwright.strength.cage.result import CageResult
from hoopwright.strength.cage.solve import Options, solve
from hoopwright.strength.cage.track import Stops

FREE = Stops(sag=1e3, out_of_round=1e3, tilt=1e3, shift=1e3)
"""No stops: these strips are meant to bend far."""


def section(ea: float = 1e5, strong: float = 50.0) -> Section:
    return Section(ea, 1.0, strong, 1.0, 0.0, 1e-3, 1e-2, 1.0)


def cantilever(load: float, weight: float, elements: int = 24) -> CageResult:
    """A unit strip lying flat, clamped at x = 0."""
    hoop = HoopModel(
        "S",
        ((0.0, 0.0, 0.0), (1.0, 0.0, 0.0)),
        section(),
        closed=False,
        line_load_n_per_m=weight,
        edge=(0.0, 1.0, 0.0),
    )
    clamp = JoinModel(HoopPoint("S", 0.0), FixedPoint((0.0, 0.0, 0.0)), stiff=True)
    loads = (PointLoad(HoopPoint("S", 1.0), (0.0, 0.0, -load)),) if load else ()
    model = CageModel((hoop,), joins=(clamp,), point_loads=loads)
    return solve(model, Options(elements, factor=False, stops=FREE))


@pytest.mark.parametrize(
    ("load", "drop", "reach"),
    [
        (1, 0.30172, 0.94357),
        (2, 0.49346, 0.83936),
        (3, 0.60325, 0.74558),
        (5, 0.71379, 0.61237),
        (10, 0.81061, 0.44500),
    ],
)
def test_tip_load_bisshopp_drucker(load: float, drop: float, reach: float) -> None:
    result = cantilever(load, 0.0)
    x, _, z = result.hoops[0].deformed[-1]
    assert result.status == "solved"
    assert (-z, x) == pytest.approx((drop, reach), abs=4e-4)


@pytest.mark.parametrize(("weight", "drop"), [(1, 0.12347), (2, 0.23851), (4, 0.42516), (8, 0.64063)])
def test_droop_under_own_weight(weight: float, drop: float) -> None:
    assert -cantilever(0.0, weight).hoops[0].deformed[-1][2] == pytest.approx(drop, abs=4e-4)


def test_cantilever_converges_with_the_mesh() -> None:
    errors = [abs(-cantilever(5.0, 0.0, n).hoops[0].deformed[-1][2] - 0.713792) for n in (6, 12, 24)]
    assert errors[0] > errors[1] > errors[2]
    assert errors[2] < 3e-4


def test_clamped_end_moment_is_load_times_reach() -> None:
    result = cantilever(5.0, 0.0)
    assert result.hoops[0].moment_weak_n_m == pytest.approx(5.0 * result.hoops[0].deformed[-1][0], rel=1e-6)


def ring(radius: float, ties: tuple[TieModel, ...] = (), elements: int = 48, **more: object) -> CageModel:
    """A round hoop held at its left, by symmetry without force."""
    hoop = HoopModel("H", oval_points(2 * radius, 2 * radius, 0.0), section(), born="straight")
    hold = JoinModel(HoopPoint("H", 0.25), FixedPoint((radius, 0.0, 0.0)), stiff=True)
    return CageModel((hoop,), ties=ties, joins=(hold,))


@pytest.mark.parametrize("elements", [24, 48])
def test_closing_a_straight_strip_strains_it_by_pi_t_over_girth(elements: int) -> None:
    """sigma = pi E t/G, from curvature 2 pi/G over half the thickness."""
    strip = Section(2.05e11 * 13e-3 * 1.2e-3, 0.3838, 45.0, 0.56, 0.0, 0.6e-3, 0.0, 2.05e11)
    girth = 3.3
    hoop = HoopModel("H", oval_points(girth / pi, girth / pi, 0.0), strip, born="straight")
    hold = JoinModel(HoopPoint("H", 0.0), FixedPoint(hoop.points[0]), stiff=True)
    h = solve(CageModel((hoop,), joins=(hold,)), Options(elements, factor=False)).hoops[0]
    assert h.stress_pa == pytest.approx(pi * 2.05e11 * 1.2e-3 / girth, rel=1e-6)
    assert h.closing_stress_pa == pytest.approx(h.stress_pa, rel=1e-6)
    assert h.least_radius_m == pytest.approx(girth / (2 * pi), rel=1e-6)
    assert max(h.inward_m, h.outward_m) < 1e-7


@pytest.mark.parametrize(("gap", "force"), [(0.95, 0.6254), (0.80, 2.115)])
def test_hoop_drawn_in_by_one_tie_is_the_squeezed_elastica(gap: float, force: float) -> None:
    """A free hoop between two points at gap x diameter: F R^2/A from the elastica of a ring in two-point
    contact.
    """
    tie = TieModel("X", HoopPoint("H", 0.0), HoopPoint("H", 0.5), 2.0 * gap, ea=1e5)
    result = solve(ring(1.0, (tie,)), Options(48, factor=False, stops=FREE))
    assert result.status == "solved"
    assert result.ties[0].tension_n == pytest.approx(force, rel=2e-3)


def test_oval_of_one_point_two_by_a_tie() -> None:
    """Breadth over depth of 1.2 needs a tie of 1.157 A/R^2 (the same elastica)."""

    def shape(depth: float) -> tuple[float, float]:
        tie = TieModel("X", HoopPoint("H", 0.0), HoopPoint("H", 0.5), depth, ea=1e5)
        result = solve(ring(1.0, (tie,)), Options(48, factor=False, stops=FREE))
        x = [p[0] for p in result.hoops[0].deformed]
        y = [p[1] for p in result.hoops[0].deformed]
        return (max(x) - min(x)) / (max(y) - min(y)), result.ties[0].tension_n

    depth = brentq(lambda d: shape(d)[0] - 1.2, 1.75, 1.95, xtol=1e-6)
    assert shape(depth)[1] == pytest.approx(1.157, rel=3e-3)


def test_strip_sprung_between_laced_ends_is_the_pinned_elastica() -> None:
    """Half hoop of length L laced to a chord c: c/L = 2 E(k)/K(k) - 1, pull 4 K(k)^2 A/L^2."""
    length, chord = pi, 2.2
    m = brentq(lambda k: 2 * ellipe(k) / ellipk(k) - 1 - chord / length, 1e-6, 0.99)
    pull = 4 * ellipk(m) ** 2 / length**2
    hoop = HoopModel(
        "H",
        oval_points(2.0, 2.0, 0.0, start=0.25, end=0.75),
        section(),
        closed=False,
        start=0.25,
        end=0.75,
        born="straight",
    )
    hold = JoinModel(HoopPoint("H", 0.5), FixedPoint((0.0, -1.0, 0.0)), stiff=True)
    lace = TieModel("L", HoopPoint("H", 0.25), HoopPoint("H", 0.75), chord, ea=1e5)
    result = solve(CageModel((hoop,), ties=(lace,), joins=(hold,)), Options(48, factor=False, stops=FREE))
    assert result.status == "solved"
    assert result.ties[0].tension_n == pytest.approx(pull, rel=1e-3)
    rise = max(p[1] for p in result.hoops[0].deformed) - min(p[1] for p in result.hoops[0].deformed)
    assert rise == pytest.approx(length * np.sqrt(m) / ellipk(m), rel=1e-3)
