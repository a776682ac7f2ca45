"""Half hoops against an independent integration of the elastica: EI theta'' = -P sin theta by
scipy.integrate.solve_ivp and solve_bvp, ends free to turn and held at a chord. Also the complete integrals by
scipy.special, and half-ellipse perimeters by scipy.special.ellipeinc."""

from collections.abc import Callable
from math import pi
from types import SimpleNamespace

import numpy as np
import pytest
from scipy.integrate import solve_bvp, solve_ivp
from scipy.optimize import brentq
from scipy.special import ellipe, ellipeinc, ellipk

from hoopwright.shape.curves.bow import of_length, of_reach
from hoopwright.shape.curves.ellipse import Ellipse, fraction_at, from_girth


def shot(angle: float) -> tuple[float, float, float]:
    """(length, chord, reach) under a pull of 1 of a spring of EI = 1 that leaves its end at an angle to the
    chord, followed to the next place without a moment."""
    def law(s: float, y: np.ndarray) -> list[float]:
        return [y[1], -np.sin(y[0]), np.cos(y[0]), np.sin(y[0])]

    def unbent(s: float, y: np.ndarray) -> float:
        return float(y[1]) if s > 1.0 else -1.0

    unbent.__dict__.update(terminal=True, direction=1.0)
    run = solve_ivp(law, (0, 40), [angle, 0.0, 0.0, 0.0], rtol=1e-12, atol=1e-13, events=unbent,
                    dense_output=True)
    length = float(run.t_events[0][0])
    return length, float(run.sol(length)[2]), float(run.sol(length / 2)[3])


@pytest.mark.parametrize(("length", "chord", "reach"), [
    (22.0, 14.0, 7.4245),
    (22.02, 12.0, 8.0002),
    (30.0, 20.0, 9.8113),
    (26.0, 10.0, 10.1895),
])
def test_reach_of_a_spring_held_at_a_chord(length: float, chord: float, reach: float) -> None:
    """The values printed here are those of the integration, to a tenth of a thousandth of an inch."""
    angle = brentq(lambda turn: shot(turn)[1] / shot(turn)[0] - chord / length, 0.2, 2.2, xtol=1e-11)
    run, _, high = shot(angle)
    assert high / run * length == pytest.approx(reach, abs=1e-4)
    bow = of_length(length, chord)
    assert bow.reach == pytest.approx(high / run * length, rel=1e-7)
    assert bow.pull == pytest.approx((run / length) ** 2, rel=1e-7)


@pytest.mark.parametrize(("chord", "reach"), [(14.0, 7.0), (12.0, 8.0), (10.0, 4.0), (20.0, 14.0)])
def test_a_steel_is_cut_as_long_as_a_spring_that_stands_so_far_out(
    drawn: Callable[[str], SimpleNamespace], chord: float, reach: float,
) -> None:
    """From a spec: the lowest half hoop of that chord and reach, in, against the integration's length."""
    text = (f"spec: 1\nunits: inches\nwearer: {{stature: 65 in, waist: 26 in, hip: 37 in}}\nshape: {{ground_plan:"
            f" {{kind: half, chord: {chord} in, reach: {{top: 4 in, hem: {reach} in}}}}, hoops: {{count: 4}},"
            f" hem: {{off_floor: 18 in}}}}\n")
    hoop = drawn(text).shape.hoops[-1]
    angle = brentq(lambda turn: shot(turn)[2] / shot(turn)[1] - reach / chord, 0.2, 2.2, xtol=1e-11)
    length, straight, _ = shot(angle)
    assert hoop.cut / 0.0254 == pytest.approx(length / straight * chord, rel=1e-6)


def test_the_whole_line_by_a_boundary_value_solver() -> None:
    bow = of_length(1.0, 0.6)
    s = np.linspace(0, 1, 81)
    guess = np.vstack([1.6 * (1 - 2 * s), np.full_like(s, -3.2), 0.6 * s, 0.35 * np.sin(pi * s)])

    def law(s: np.ndarray, y: np.ndarray, p: np.ndarray) -> np.ndarray:
        return np.vstack([y[1], -p[0] * np.sin(y[0]), np.cos(y[0]), np.sin(y[0])])

    def ends(a: np.ndarray, b: np.ndarray, p: np.ndarray) -> np.ndarray:
        return np.array([a[1], b[1], a[2], a[3], b[2] - 0.6])

    found = solve_bvp(law, ends, s, guess, p=[20.0], tol=1e-9, max_nodes=20000)
    assert found.success
    for share in (0.1, 0.25, 0.5, 0.8):
        x, y = found.sol(share)[2:4]
        along, off = bow.point(share)
        assert (0.3 - along, off) == pytest.approx((float(x), float(y)), abs=1e-6)


def test_complete_integrals() -> None:
    bow = of_reach(12.0, 8.0)
    assert bow.length / bow.reach == pytest.approx(float(ellipk(bow.k**2)) / bow.k, rel=1e-12)
    ratio = float(2 * ellipe(bow.k**2) / ellipk(bow.k**2) - 1)
    assert bow.chord / bow.length == pytest.approx(ratio, rel=1e-12)


@pytest.mark.parametrize("oval", [0.7, 1.2, 1.4, 3.5])
def test_part_ellipses(oval: float) -> None:
    """Length from centre front to a parameter, both ways round, by the incomplete integral."""
    ellipse = from_girth(2.8, oval)
    m = 1 - (ellipse.b / ellipse.a) ** 2
    for t in (0.3, pi / 2):
        assert fraction_at(ellipse, t) * 2.8 == pytest.approx(ellipse.a * float(ellipeinc(t, m)), rel=1e-9)
    half = Ellipse(6.0, 8.0)
    assert half.perimeter / 2 == pytest.approx(2 * 8 * float(ellipe(1 - (6 / 8) ** 2)), rel=1e-12)
