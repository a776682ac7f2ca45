"""Bows: the line of a straight spring held at a chord, its limits and its own consistency."""

import itertools
from math import dist, pi

import pytest

from hoopwright.shape.curves.bow import CLOSED, Bow, amplitude, of_length, of_reach


def test_a_bow_found_by_its_reach_has_chord_and_reach() -> None:
    bow = of_reach(12.0, 8.0)
    assert bow.chord == pytest.approx(12.0)
    assert bow.reach == pytest.approx(8.0)
    assert bow.length == pytest.approx(22.02, abs=0.005)


def test_a_bow_found_by_its_length_has_that_chord() -> None:
    bow = of_length(22.0, 14.0)
    assert bow.chord == pytest.approx(14.0)
    assert of_reach(14.0, bow.reach).length == pytest.approx(22.0)


def test_it_is_shorter_than_the_circle_of_its_chord_and_reach() -> None:
    """A half circle of chord 14 is 7 pi = 22.0 long, an arc of chord 12 and reach 8 23.2."""
    assert of_reach(14.0, 7.0).length < 7 * pi
    assert of_reach(12.0, 8.0).length < 23.2


@pytest.mark.parametrize("ratio", [0.02, 0.5, 1.0, 2.0])
def test_its_points_measure_its_length_and_bend_as_its_law_says(ratio: float) -> None:
    bow = of_reach(1.0, ratio)
    n = 4000
    points = [bow.point(k / n) for k in range(n + 1)]
    assert sum(dist(a, b) for a, b in itertools.pairwise(points)) == pytest.approx(
        bow.length, rel=1e-6)
    assert points[0][0] == pytest.approx(0.5)
    assert points[-1] == pytest.approx((-0.5, 0.0), abs=1e-9)
    assert points[n // 2] == pytest.approx((0.0, ratio), abs=1e-9)
    step = bow.length / n
    for at in (n // 8, n // 3, n // 2):
        (x0, y0), (x1, y1), (x2, y2) = points[at - 1], points[at], points[at + 1]
        turn = abs((x2 - 2 * x1 + x0) * (y2 - y0) - (y2 - 2 * y1 + y0) * (x2 - x0)) / (2 * step**3)
        assert turn == pytest.approx(bow.pull * y1, rel=1e-4)  # EI curvature = pull times the arm


def test_a_flat_bow_is_half_a_sine_and_pulls_as_an_euler_strut_pushes() -> None:
    bow = of_reach(1.0, 0.001)
    assert bow.pull == pytest.approx(pi**2, rel=1e-4)
    assert bow.point(0.25)[1] == pytest.approx(0.001 * 2**-0.5, rel=1e-3)


def test_the_tightest_bow_closes() -> None:
    assert Bow(1.0, CLOSED).chord == pytest.approx(0.0, abs=1e-9)


def test_amplitude_turns_the_integral_back() -> None:
    from hoopwright.shape.curves.carlson import incomplete_f

    for angle in (0.1, 0.8, 1.5):
        assert amplitude(incomplete_f(angle, 0.6**2), 0.6) == pytest.approx(angle, abs=1e-12)


@pytest.mark.parametrize(("length", "chord"), [(1.0, 1.0), (1.0, 1.2), (1.0, -0.1)])
def test_a_chord_as_long_as_the_spring_is_refused(length: float, chord: float) -> None:
    with pytest.raises(ValueError, match="shorter"):
        of_length(length, chord)
