"""Springs drawn into ovals by ties: the single tie worked by hand, symmetry, slack ties, more ties."""

from math import hypot, pi

import pytest

from hoopwright.shape.curves.ellipse import from_girth
from hoopwright.shape.curves.root import bracketed_root
from hoopwright.shape.curves.tied import tied_ring


def test_a_single_tie_that_makes_an_oval_of_six_to_five_pulls_1_157() -> None:
    """A hoop of mean radius R drawn to a width 1.2 times its depth by one tie: 1.157 A/R^2, and its line lies
    up to 0.012 R outside the ellipse of that width and depth."""
    def real(oval: float) -> float:
        line = tied_ring(oval, (0.0,)).line
        return line[0][0] / max(y for _, y in line)

    oval = bracketed_root(lambda value: real(value) - 1.2, 1.15, 1.3)
    ring = tied_ring(oval, (0.0,))
    assert ring.pulls[0] == pytest.approx(1.157, abs=0.003)
    a, b = ring.line[0][0], max(y for _, y in ring.line)
    out = max(hypot(x, y) * (1 - 1 / hypot(x / a, y / b)) for x, y in ring.line)
    assert out == pytest.approx(0.012, abs=0.0015)


@pytest.mark.parametrize("places", [(0.0,), (-0.5, 0.5), (-0.6, 0.0, 0.6)])
def test_the_ring_is_even_and_keeps_its_girth(places: tuple[float, ...]) -> None:
    ring = tied_ring(1.3, places)
    n = len(ring.line)
    length = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(ring.line, ring.line[1:], strict=False))
    assert length == pytest.approx(pi, rel=1e-9)
    for k in range(n // 2):
        assert ring.line[k][0] == pytest.approx(-ring.line[n - 1 - k][0], abs=1e-6)
        assert ring.line[k][1] == pytest.approx(ring.line[n - 1 - k][1], abs=1e-6)


def test_each_tie_is_as_long_as_the_ellipse_is_wide_there() -> None:
    ellipse = from_girth(2 * pi, 1.3)
    ring = tied_ring(1.3, (-0.5, 0.5))
    wanted = ellipse.b * (1 - 0.25) ** 0.5
    near = min(ring.line, key=lambda point: abs(point[0] - 0.5 * ellipse.a) if point[1] > 0.1 else 9.0)
    assert near[1] == pytest.approx(wanted, abs=0.02)


def test_two_ties_lie_nearer_to_the_oval_than_one() -> None:
    assert abs(tied_ring(1.4, (-0.5, 0.5)).off) < abs(tied_ring(1.4, (0.0,)).off) / 3


def test_a_tie_that_would_have_to_push_hangs_slack() -> None:
    ring = tied_ring(2.0, (-0.5, 0.0, 0.5))
    assert ring.pulls[1] == 0.0
    assert ring.pulls[0] == pytest.approx(tied_ring(2.0, (-0.5, 0.5)).pulls[0])


def test_a_nearly_round_oval_wants_little_pull() -> None:
    """Two opposite inward loads W press a ring in by 0.14878 W R^3/A per diameter (Roark, ring under two
    loads, from memory): a tie 2 d shorter than the diameter pulls 2 d A/(0.14878 R^3)."""
    ring = tied_ring(1.02, (0.0,))
    depth = from_girth(2 * pi, 1.02).b
    assert ring.pulls[0] == pytest.approx((2 - 2 * depth) / 0.14878, rel=0.03)
