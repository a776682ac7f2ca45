"""The monotone cubic against scipy.interpolate.PchipInterpolator (Fritsch and Butland 1984), knots and
between."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator

from hoopwright.shape.curves.pchip import monotone_cubic

rows = st.lists(st.tuples(st.floats(0.01, 1.0), st.floats(0.0, 4.0)), min_size=2, max_size=9)


@given(rows, st.floats(0.0, 1.0))
def test_same_curve(steps, share):
    x, y, at = [], [], 0.0
    for step, value in steps:
        at += step
        x.append(at)
        y.append(value)
    where = x[0] + share * (x[-1] - x[0])
    assert monotone_cubic(x, y)(where) == pytest.approx(float(PchipInterpolator(x, y)(where)), rel=1e-9,
    abs=1e-12)
