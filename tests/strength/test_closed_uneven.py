"""A hoop on tapes at any places: even spacing as the limit, balance, superposition, symmetry."""

from math import cos, pi, sin

import pytest
from apparatus import ring
from apparatus.hung import moment_over_tape
from hypothesis import given, settings
from hypothesis import strategies as st

from hoopwright.strength.forms import hang, influence
from hoopwright.strength.forms.uneven import hung, pressed, solve

places = st.lists(st.floats(0.02, 0.3), min_size=4, max_size=9)


def spread(gaps):
    """Fractions of the girth with gaps in those proportions."""
    total, at, found = sum(gaps), 0.0, []
    for gap in gaps:
        found.append(at)
        at += gap / total
    return found


@pytest.mark.parametrize("theta", [0.0, 0.4, 1.7, pi, 5.0])
def test_influence_functions_are_the_sums_of_their_waves(theta):
    waves = range(2, 4000)
    bend = sum(cos(m * theta) / (m * m - 1) ** 2 for m in waves)
    twist = sum(cos(m * theta) / (m * (m * m - 1)) ** 2 for m in waves)
    moment = sum(cos(m * theta) / (m * m - 1) for m in waves)
    assert influence.bend(theta) == pytest.approx(bend, abs=1e-9)
    assert influence.twist(theta) == pytest.approx(twist, abs=1e-9)
    assert influence.moment(theta) == pytest.approx(moment, abs=3e-4)


@pytest.mark.parametrize("n", [3, 4, 5, 6, 8, 12])
def test_even_spacing_gives_the_forms_for_equal_bays(n):
    even = [(k + 0.5) / n for k in range(n)]
    on_tapes, squeezed = hung(even, 1, 1, 80, 1), pressed(even, [1.0] * n, 1, 1)
    assert on_tapes.sag == pytest.approx(hang.sag(n, 1, 1, 80, 1), rel=1e-5)
    assert on_tapes.moment == pytest.approx(moment_over_tape(n, 1, 1))
    assert on_tapes.reactions == pytest.approx([2 * pi / n] * n)
    assert squeezed.inward == pytest.approx(ring.inward_at_load(n, 1, 1, 1))
    assert squeezed.outward == pytest.approx(ring.outward_midway(n, 1, 1, 1))
    assert squeezed.moment == pytest.approx(ring.moment_at_load(n, 1, 1))


@settings(deadline=None)
@given(places, st.floats(0.5, 90.0), st.floats(0.2, 3.0))
def test_reactions_balance_the_load(gaps, strong, torsion):
    fractions = spread(gaps)
    found = hung(fractions, 2.0, 0.4, strong, torsion)
    assert sum(found.reactions) == pytest.approx(2 * pi * 0.4 * 2.0, rel=1e-6)
    for part in (cos, sin):
        arm = sum(force * part(2 * pi * f) for force, f in zip(found.reactions, fractions, strict=True))
        assert arm == pytest.approx(0.0, abs=1e-5)


@settings(deadline=None, max_examples=30)
@given(places)
def test_three_or_more_tapes_share_whatever_the_turn_of_the_hoop(gaps):
    """Turning the whole hoop, or starting the list elsewhere, changes nothing."""
    fractions = spread(gaps)
    one = hung(fractions, 1, 1, 20, 1)
    turned = hung([f + 0.37 for f in fractions[1:] + fractions[:1]], 1, 1, 20, 1)
    assert turned.sag == pytest.approx(one.sag, rel=1e-4)
    assert turned.reactions[-1] == pytest.approx(one.reactions[0], rel=1e-4, abs=1e-6)


def test_three_tapes_are_shared_by_balance_alone():
    """Statically determinate: two at 0.2 and 0.8 and one at 0.5; moments about the side-to-side axis."""
    found = hung([0.2, 0.5, 0.8], 1 / (2 * pi), 1, 3, 7)
    behind = cos(0.4 * pi) / (1 + cos(0.4 * pi))
    assert found.reactions == pytest.approx([(1 - behind) / 2, behind, (1 - behind) / 2])


def test_a_wide_gap_sags_more_than_equal_bays_of_its_width():
    """The short bays beside it give way: so the widest gap must not be taken as if all were as wide."""
    gap = 0.236
    fractions = [gap / 2 + k * (1 - gap) / 5 for k in range(6)]
    assert hung(fractions, 1, 1, 55, 1).sag > 2.5 * hang.sag(1 / gap, 1, 1, 55, 1)


def test_tapes_that_cannot_hold_it_level_are_told():
    assert hung([0.0, 0.5], 1, 1, 1, 1) is None
    crowded = hung([0.0, 0.1, 0.2, 0.3], 1, 1, 1, 1)
    assert min(crowded.reactions) < 0


def test_pressing_adds_up():
    fractions = [0.1, 0.3, 0.45, 0.8]
    one = pressed(fractions, [1.0, 2.0, 0.5, 1.5], 0.4, 0.2)
    doubled = pressed(fractions, [2.0, 4.0, 1.0, 3.0], 0.4, 0.2)
    assert doubled.inward == pytest.approx(2 * one.inward)
    assert doubled.moment == pytest.approx(2 * one.moment)


def test_pulling_outward_swaps_in_and_out():
    even = [k / 5 for k in range(5)]
    push, pull = pressed(even, [1.0] * 5, 1, 1), pressed(even, [-1.0] * 5, 1, 1)
    assert (pull.inward, pull.outward) == pytest.approx((push.outward, push.inward))


def test_elimination_solves_and_refuses():
    assert solve([[0.0, 2.0], [1.0, 1.0]], [4.0, 5.0]) == pytest.approx([3.0, 2.0])
    assert solve([[1.0, 2.0], [2.0, 4.0]], [1.0, 2.0]) is None
