"""Closed forms at other sizes than one: a number of the tables, worked out by hand for a real hoop.

The tables (see the other tests of closed forms) are for W = R = A = 1. Here R = 0.5 m and A = 0.2 N m2, B = 16 and
C = 0.2 N m2, so that R^3 is 0.125 and R^4 is 0.0625: forces, moments and movements follow by multiplying.
"""

from __future__ import annotations

import pytest
from apparatus import ring
from apparatus.hung import moment_over_tape

from hoopwright.library.model import Section
from hoopwright.strength.forms import buckle, hang, uneven
from hoopwright.strength.forms.section import properties

R, A, B, C = 0.5, 0.2, 16.0, 0.2


def test_six_loads_of_two_newtons_on_a_hoop_of_a_metre_across() -> None:
    """0.08890 W R, 0.04507 W R, 0.001682 W R^3/A and 0.001480 W R^3/A with W R = 1 and W R^3/A = 1.25."""
    assert ring.moment_at_load(6, 2.0, R) == pytest.approx(0.0889, rel=5e-4)
    assert ring.moment_midway(6, 2.0, R) == pytest.approx(-0.04507, rel=5e-4)
    assert ring.inward_at_load(6, 2.0, R, A) == pytest.approx(0.001682 * 1.25, rel=5e-4)
    assert ring.outward_midway(6, 2.0, R, A) == pytest.approx(0.00148 * 1.25, rel=5e-4)


def test_an_uneven_load_of_three_newtons_a_metre() -> None:
    """p R^4/[A (k^2 - 1)^2] = 3 x 0.0625/(0.2 x 9) for two waves, an eighth of 9/64 of that for three."""
    assert ring.uneven_amplitude(3.0, 2, R, A) == pytest.approx(0.1041667, rel=1e-6)
    assert ring.uneven_amplitude(3.0, 3, R, A) == pytest.approx(3 * 0.0625 / (0.2 * 64), rel=1e-6)


def test_a_hoop_hung_on_six_tapes_under_two_newtons_a_metre() -> None:
    """B = 80 C: 1.322e-4 w R^4/C with w R^4/C = 0.625; over a tape w R^2 (1 - alpha cot alpha), alpha = pi/6:
    0.5 x 0.09310."""
    assert hang.sag(6, 2.0, R, B, C) == pytest.approx(1.322e-4 * 0.625, rel=1e-3)
    assert moment_over_tape(6, 2.0, R) == pytest.approx(0.5 * 0.0931, rel=1e-3)


def test_uneven_places_at_equal_spacing_are_the_same_hoop() -> None:
    """Six tapes all alike, asked of the forms for any places: each bears a sixth of w 2 pi R, 6.283 N."""
    places = [k / 6 for k in range(6)]
    hung = uneven.hung(places, 2.0, R, B, C)
    assert hung is not None
    assert hung.reactions == pytest.approx([6.283185 / 6] * 6, rel=1e-6)
    assert hung.sag == pytest.approx(1.322e-4 * 0.625, rel=1e-3)
    assert hung.moment == pytest.approx(0.5 * 0.0931, rel=1e-3)
    pressed = uneven.pressed(places, [2.0] * 6, R, A)
    assert pressed.inward == pytest.approx(0.001682 * 1.25, rel=5e-4)
    assert pressed.outward == pytest.approx(0.00148 * 1.25, rel=5e-4)
    assert pressed.moment == pytest.approx(0.0889, rel=5e-4)


def test_what_such_a_hoop_bears_pressed_inward() -> None:
    """3 A/R^3 = 0.6/0.125 in its plane; 9 B C/(B + 4 C)/R^3 = 28.8/16.8/0.125 sideways; the lesser counts."""
    assert buckle.in_plane(A, R) == pytest.approx(4.8)
    assert buckle.in_plane(A, R, 4.5) == pytest.approx(7.2)
    assert buckle.sideways(B, C, R) == pytest.approx(13.714, abs=1e-3)
    assert buckle.screen(A, B, C, R) == pytest.approx(4.8)
    assert buckle.screen(1.0, B, C, R) == pytest.approx(13.714, abs=1e-3)


def test_where_the_round_begins_changes_nothing() -> None:
    """Six tapes at equal spacing, the first a twentieth of the round further on."""
    hung = uneven.hung([0.05 + k / 6 for k in range(6)], 2.0, R, B, C)
    assert hung is not None
    assert hung.sag == pytest.approx(1.322e-4 * 0.625, rel=1e-3)
    assert hung.moment == pytest.approx(0.5 * 0.0931, rel=1e-3)
    pressed = uneven.pressed([0.05 + k / 6 for k in range(6)], [2.0] * 6, R, A)
    assert pressed.inward == pytest.approx(0.001682 * 1.25, rel=5e-4)
    assert pressed.moment == pytest.approx(0.0889, rel=5e-4)


def test_the_outer_fibres_of_a_strip_and_of_a_tube_lie_at_half_their_sizes() -> None:
    strip = properties(Section("flat", width=0.013, thickness=0.0012))
    assert (strip.weak_fibre, strip.strong_fibre) == pytest.approx((0.0006, 0.0065))
    tube = properties(Section("tube", diameter=0.010, wall=0.0015))
    assert (tube.weak_fibre, tube.strong_fibre) == pytest.approx((0.005, 0.005))
    assert (tube.weak, tube.strong, tube.torsion) == pytest.approx((373.0e-12, 373.0e-12, 746.0e-12), rel=1e-3)
