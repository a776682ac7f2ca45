"""A hoop set back swings forward as two lines and a bar do: worked by hand, whatever the solver says.

Front and back tapes seen from the side are two lines to a bar, the hoop. Their directions meet in a point; the hoop
turns about it, and rests only where its weight lies below it. With the back tape leaning more than the front one that
point lies high above the waist and before its middle, far from where a hoop that is set back has its weight: so it
swings forward by nearly as much as it is set back, and no stiffness of hoop or tape holds it.
"""

from __future__ import annotations

from math import acos, atan2, cos, hypot, pi, sin

import pytest
from apparatus.ovals import oval_points

from hoopwright.strength.cage.model import CageModel, HoopModel, Section, TapeModel
from hoopwright.strength.cage.solve import Options, solve

FIRM = Section(5e6, 4e3, 4e3, 4e3, 0.3, 1e-3, 5e-3, 205e9)
WAIST, RADIUS, DEEP, NEAR = 0.094, 0.40, 0.85, 0.01
"""Half the waist's depth, the hoop's radius and how far below the waist it is, m; how far each of a pair of tapes is
from the middle, as a fraction of the girth."""


def by_hand(back: float) -> float:
    """How far the middle of a bar on two lines moves forward, m: the lowest place of its middle, by halving."""
    reach = RADIUS * cos(2 * pi * NEAR)
    front, behind = (reach - back - WAIST, DEEP), (reach + back - WAIST, DEEP)
    lines, bar = (hypot(*front), hypot(*behind)), 2 * reach

    def middle(lean: float) -> tuple[float, float]:
        a = (WAIST + lines[0] * sin(lean), -lines[0] * cos(lean))
        far = hypot(a[0] + WAIST, a[1])
        share = (bar**2 + far**2 - lines[1] ** 2) / (2 * bar * far)
        turn = atan2(-a[1], -WAIST - a[0]) + acos(share)
        return a[0] + bar / 2 * cos(turn), a[1] + bar / 2 * sin(turn)

    low, high = atan2(*front) - 0.3, atan2(*front) + 0.6
    for _ in range(200):
        third = (high - low) / 3
        if middle(low + third)[1] < middle(high - third)[1]:
            high -= third
        else:
            low += third
    return middle((low + high) / 2)[0] + back


def solved(back: float) -> float:
    """The same by the solver: a firm hoop on a pair of tapes in front and a pair behind."""
    hoop = HoopModel("H1", oval_points(2 * RADIUS, 2 * RADIUS, -DEEP, -back), FIRM, line_load_n_per_m=5.0)
    tapes = []
    for fraction in (NEAR, 1 - NEAR, 0.5 - NEAR, 0.5 + NEAR):
        front = cos(2 * pi * fraction) > 0
        anchor = (RADIUS * sin(2 * pi * fraction), WAIST if front else -WAIST, 0.0)
        tapes.append(TapeModel(f"T{len(tapes) + 1}", anchor, (("H1", fraction),), 1e6))
    got = solve(CageModel((hoop,), tuple(tapes)), Options(24, factor=False))
    assert got.status == "solved", got.notes
    return got.swing_xy[1]


@pytest.mark.parametrize("inches", [1.0, 2.0, 3.0, 5.0])
def test_a_hoop_set_back_swings_forward_as_two_lines_and_a_bar_do(inches: float) -> None:
    back = inches * 0.0254
    assert solved(back) == pytest.approx(by_hand(back), abs=0.002)
    assert by_hand(back) > 0.95 * back


def test_a_hoop_under_the_waist_stays() -> None:
    assert by_hand(0.0) == pytest.approx(0.0, abs=1e-6)
    assert solved(0.0) == pytest.approx(0.0, abs=1e-6)
