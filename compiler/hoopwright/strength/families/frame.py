"""A wheel at the waist and side hoops by closed forms: what tests hold the whole solutions against, and what
chooses the size of a remedy; and what of them is cloth.

Wheel. Between spokes the rim is a ring hung on as many supports as there are spokes, whose ends keep level.
Side hoops. Their ends held by inner panel and tie, the steels are bows (elasticas): stress and the ties'
pulls follow.
"""

from __future__ import annotations

from math import pi

from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.strength.formed import preformed
from hoopwright.strength.forms import setting
from hoopwright.strength.forms.droop import GRAVITY
from hoopwright.strength.forms.hang import sag
from hoopwright.strength.material import modulus
from hoopwright.strength.measures import bowed
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength, TieStrength
from hoopwright.strength.panels import panels_mass

WADDING = 40.0
"""Stuffing as it lies in a firm roll, kg/m3: our judgement."""


def solve_wheel(problem: Problem) -> Solution:
    """Stress of closed rings, sag of the rim between level spokes."""
    e, depth = modulus(problem.stock, problem.material), problem.stock.section.depth
    wheel, rings, found = problem.shape.wheel, problem.shape.hoops, []
    spokes = 1 if wheel is None else len(wheel.spokes)
    for ring, skirt, own in zip(rings, problem.skirt, problem.own, strict=True):
        load, radius = (skirt + own) * GRAVITY / ring.girth, ring.girth / (2 * pi)
        hangs = sag(spokes, load, radius, problem.worn.ei_strong, problem.worn.gj)
        stress = _worn(problem, setting.closing_stress(e, depth, ring.girth / (ring.end - ring.start)))
        found.append(
            HoopStrength(ring.id, load, 0.0, hangs if ring is rings[-1] else 0.0, None, None, stress)
        )
    return Solution("closed forms: the rim as a ring on its spokes, every ring bent to its girth",
                    tuple(found), (), Buckling(None, False), "", None, 0.0)


def solve_pair(problem: Problem) -> Solution:
    """Stress of the steels as bows, and the pull that holds their ends."""
    e, depth = modulus(problem.stock, problem.material), problem.stock.section.depth
    curved = {hoop: curvature for curvature, hoop in bowed(problem.shape)}
    found = tuple(
        HoopStrength(hoop.id, (skirt + own) * GRAVITY / hoop.girth, 0.0, None, None, None,
                     _worn(problem, setting.curved_stress(e, depth, curved.get(hoop.id, 0.0))))
        for hoop, skirt, own in zip(problem.shape.hoops, problem.skirt, problem.own, strict=True)
    )
    ties = tuple(
        TieStrength(tie.id, tie.pull * problem.material.ei_weak, tie.pull <= 0.0)
        for tie in problem.shape.ties
    )
    return Solution("closed forms: each steel as a spring whose ends are held", found, (),
                    Buckling(None, False), "", None, 0.0, ties=ties)


def _worn(problem: Problem, stress: float) -> float:
    """Stress as worn, Pa: nothing in a hoop that is pre-formed to its curve."""
    return 0.0 if preformed(problem, stress) else stress


def spoke_length(shape: Shape) -> float:
    """Strip in the spokes of a wheel, m."""
    return 0.0 if shape.wheel is None else sum(spoke.cut for spoke in shape.wheel.spokes)


def frame_cloth(spec: Spec, shape: Shape) -> float:
    """Mass of a wheel's cover and stuffed roll, or of the panels and ties of side hoops, kg."""
    if shape.wheel is None and shape.sides is None:
        return 0.0
    cloth = panels_mass(spec, shape)
    ties = sum(tie.cut * spec.goods[tie.material].linear_density for tie in shape.ties)
    stuffing = 0.0 if shape.wheel is None else shape.wheel.stuffing * WADDING
    return cloth + ties + stuffing
