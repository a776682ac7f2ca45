"""A wheel at the waist and side hoops by closed forms: what tests hold the whole solutions against, and what
chooses the size of a remedy.

Wheel. Between spokes the rim is a ring hung on as many supports as there are spokes, whose ends keep level.
Side hoops. Their ends held by inner panel and tie, the steels are bows (elasticas): stress and the ties'
pulls follow.
"""

from __future__ import annotations

from math import pi

from hoopwright.strength.bows import bowed
from hoopwright.strength.formed import closing, curved, worn
from hoopwright.strength.forms.hang import sag
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength, TieStrength


def solve_wheel(problem: Problem) -> Solution:
    """Stress of closed rings, sag of the rim between level spokes."""
    wheel, rings, found = problem.shape.wheel, problem.shape.hoops, []
    spokes = 1 if wheel is None else len(wheel.spokes)
    for ring, pull in zip(rings, problem.loads, strict=True):
        load, radius = pull / ring.girth, ring.girth / (2 * pi)
        hangs = sag(spokes, load, radius, problem.worn.ei_strong, problem.worn.gj)
        stress = worn(problem, closing(problem, ring.girth / (ring.end - ring.start)))
        found.append(
            HoopStrength(ring.id, load, 0.0, hangs if ring is rings[-1] else 0.0, None, None, stress)
        )
    return Solution("closed forms: the rim as a ring on its spokes, every ring bent to its girth",
                    tuple(found), (), Buckling(None, False), "", None, 0.0)


def solve_pair(problem: Problem) -> Solution:
    """Stress of the steels as bows, and the pull that holds their ends."""
    bends = {hoop: curvature for curvature, hoop in bowed(problem.shape)}
    found = tuple(
        HoopStrength(hoop.id, pull / hoop.girth, 0.0, None, None, None,
                     worn(problem, curved(problem, bends.get(hoop.id, 0.0))))
        for hoop, pull in zip(problem.shape.hoops, problem.loads, strict=True)
    )
    ties = tuple(
        TieStrength(tie.id, tie.pull * problem.material.ei_weak, tie.pull <= 0.0)
        for tie in problem.shape.ties
    )
    return Solution("closed forms: each steel as a spring whose ends are held", found, (),
                    Buckling(None, False), "", None, 0.0, ties=ties)
