"""Cane that is soaked, bent round and left to dry lies in its curve unstrained; this says which hoops are."""

from __future__ import annotations

from math import pi

from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem
from hoopwright.strength.setting import curved_stress


def bent_wet(problem: Problem, girth: float) -> bool:
    """Whether a closed hoop of ``girth`` m is taken as bent wet to its curve.

    Cane is, where closing it dry would alone use up more than what may be worn; all else is sprung.
    """
    stock = problem.stock
    closing = curved_stress(modulus(stock, problem.material), stock.section.depth, 2 * pi / girth)
    return stock.form == "cane" and closing > problem.spec.limits.stress_worn * problem.material.elastic_limit
