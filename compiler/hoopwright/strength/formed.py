"""Stress of bending a hoop to its curve; and hoops that lie in it unstrained: rolled or set to it, or of cane that
was bent to it wet.
"""

from __future__ import annotations

from hoopwright.strength.forms.setting import closing_stress, curved_stress
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem


def closing(problem: Problem, girth: float) -> float:
    """Stress in a hoop of ``girth`` m closed from straight stock, Pa."""
    return closing_stress(modulus(problem.stock, problem.material), problem.stock.section.depth, girth)


def curved(problem: Problem, curvature: float) -> float:
    """Stress in straight stock bent to a ``curvature`` of 1/m, Pa."""
    return curved_stress(modulus(problem.stock, problem.material), problem.stock.section.depth, curvature)


def preformed(problem: Problem, stress: float) -> bool:
    """Whether a hoop is pre-formed that, sprung to its curve, would carry ``stress`` Pa.

    As the spec says. Where it says nothing, cane is taken as bent wet when bending it dry would alone use up
    more than what may be worn, and all else as sprung.
    """
    said = problem.spec.build.hoops.formed
    if said is not None:
        return said == "pre-formed"
    return problem.stock.form == "cane" and stress > (
        problem.spec.limits.stress_worn * problem.material.elastic_limit)


def worn(problem: Problem, stress: float) -> float:
    """What of the ``stress`` of springing a hoop to its curve stays in it as worn, Pa: none where it is pre-formed."""
    return 0.0 if preformed(problem, stress) else stress
