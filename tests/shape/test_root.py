"""The bracketed root: found to its tolerance, in few steps, and refused without a change of sign."""

from math import cos, exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.shape.curves.root import bracketed_root


@given(st.floats(-5.0, 5.0), st.floats(0.1, 9.0), st.floats(0.1, 9.0), st.sampled_from([1, 3, 5]))
def test_finds_the_root_between_the_ends(root, below, above, power):
    found = bracketed_root(lambda x: (x - root) ** power, root - below, root + above)
    assert found == pytest.approx(root, abs=2e-12 * (below + above) + 1e-15)


@given(st.floats(-3.0, 3.0))
def test_the_ends_may_be_given_in_either_order(root):
    assert bracketed_root(lambda x: exp(x) - exp(root), 4.0, -4.0) == pytest.approx(root, abs=1e-10)


def test_an_end_may_be_the_root():
    assert bracketed_root(lambda x: x, 0.0, 3.0) == 0.0
    assert bracketed_root(lambda x: x - 3.0, 0.0, 3.0) == 3.0


def test_a_smooth_function_takes_few_steps():
    seen = []

    def function(x):
        seen.append(x)
        return cos(x) - x

    assert bracketed_root(function, 0.0, 1.5) == pytest.approx(0.7390851332151607, abs=1e-12)
    assert len(seen) < 12


def test_no_change_of_sign_is_refused():
    with pytest.raises(ValueError, match="no change of sign"):
        bracketed_root(lambda x: x * x + 1, -1.0, 1.0)
