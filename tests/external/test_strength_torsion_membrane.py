"""The torsion constant against Prandtl's membrane: J = 4 times the integral of phi, with the membrane's
equation laplacian phi = -1 and phi = 0 on the edge solved by scipy's sparse solver on a grid."""

import numpy as np
import pytest
from scipy.sparse import diags_array as diags
from scipy.sparse import eye, kron
from scipy.sparse.linalg import spsolve

from hoopwright.strength.forms.section import strip_torsion


def membrane(width, thickness, m, n):
    """Five-point differences on m by n inner points; the error falls with the square of the step."""
    hx, hy = width / (m + 1), thickness / (n + 1)

    def second(count, step):
        return diags([1.0, -2.0, 1.0], offsets=[-1, 0, 1], shape=(count, count)) / step**2

    laplace = kron(second(m, hx), eye(n)) + kron(eye(m), second(n, hy))
    phi = spsolve(laplace.tocsc(), -np.ones(m * n))
    return 4 * phi.sum() * hx * hy


@pytest.mark.parametrize(("width", "thickness"), [(1.0, 1.0), (2.0, 1.0), (13.0, 1.2)])
def test_torsion_of_a_rectangle(width, thickness):
    coarse, fine = membrane(width, thickness, 59, 29), membrane(width, thickness, 119, 59)
    assert strip_torsion(width, thickness) == pytest.approx(fine + (fine - coarse) / 3, rel=2e-4)
