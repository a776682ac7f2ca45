"""Hoops that lie in their curve unstrained: rolled or set to it, or of cane that was bent to it wet."""

from __future__ import annotations

from hoopwright.strength.forms.setting import closing_stress
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem


def preformed(problem: Problem, closing: float) -> bool:
    """Whether a closed hoop is pre-formed that, sprung, would carry ``closing`` Pa.

    As the spec says. Where it says nothing, cane is taken as bent wet when closing it dry would alone use up
    more than what may be worn, and all else as sprung.
    """
    said = problem.spec.build.hoops.formed
    if said is not None:
        return said == "pre-formed"
    return problem.stock.form == "cane" and closing > (
        problem.spec.limits.stress_worn * problem.material.elastic_limit)


def closing(problem: Problem, girth: float) -> float:
    """Stress in a hoop of ``girth`` m closed from straight stock, Pa."""
    return closing_stress(modulus(problem.stock, problem.material), problem.stock.section.depth, girth)
