"""A wheel at the waist and side hoops: what closed forms can honestly say of them, and why not more.

Wheel. The skirt hangs from the rim. Between spokes the rim is a ring hung on as many supports as there are
spokes; its sag there (as of any hoop on tapes) supposes that the spokes' ends keep level. Whether they do
lies in how the wheel sits on roll, hips and waistband, which no form here describes.

Side hoops. Their ends held by inner panel and tie, the steels are bows (elasticas): stress and the ties'
pulls follow. How far cloth and skirt press them down lies in the cloth, and is tried on the body.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from math import pi
from types import MappingProxyType

from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.strength import setting
from hoopwright.strength.droop import GRAVITY
from hoopwright.strength.formed import preformed
from hoopwright.strength.hang import sag
from hoopwright.strength.material import modulus
from hoopwright.strength.measures import bowed
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength, TieStrength

WADDING = 40.0
"""Stuffing as it lies in a firm roll, kg/m3: our judgement."""
_SITS = (
    "how a wheel sits on roll and hips is in no formula: the stop on the bare wheel tries it,"
    " weights at the rim"
)
_RIGID = "a wheel is held round by its spokes and does not fold: lift it, and sit on a stool without arms"
_CLOTH = (
    "how far cloth and skirt press a side hoop down lies in the cloth: the stop at a door and on a"
    " chair tries it"
)
_TRIED = "no form is known to us; it is tried at the stop"
WHEEL_OPEN: Mapping[str, str] = MappingProxyType(
    {
        "equilibrium": _SITS,
        "buckling": "rings bound to spokes buckle otherwise than free ones, and no form here covers them",
        "out-of-round": "the spokes hold the rings; how stiffly lies in the bindings",
        "swing": _SITS,
        "door": _RIGID,
        "chair": _RIGID,
        "car": _RIGID,
        "bag": _RIGID,
    }
)
PAIR_OPEN: Mapping[str, str] = MappingProxyType(
    {
        "equilibrium": _CLOTH,
        "buckling": _CLOTH,
        "sag": _CLOTH,
        "out-of-round": _CLOTH,
        "swing": _CLOTH,
        "door": "side hoops are pressed up or in by hand, which bends no steel in a known way; the door's"
                " width is"
        " checked by itself",
        "chair": _CLOTH,
        "car": _CLOTH,
        "bag": "side hoops fold flat and lie in a bag as they are",
    }
)


def solve_wheel(problem: Problem) -> Solution:
    """What is known of a wheel: stress of its closed rings, sag of the rim between spokes."""
    e, depth = modulus(problem.stock, problem.material), problem.stock.section.depth
    wheel, rings, found = problem.shape.wheel, problem.shape.hoops, []
    carried = sum(layer.mass for layer in problem.spec.load)
    spokes = 1 if wheel is None else len(wheel.spokes)
    for ring in rings:
        own = ring.girth * problem.stock.linear_density
        mass = own + (carried if ring is rings[-1] else 0.0)
        load, radius = mass * GRAVITY / ring.girth, ring.girth / (2 * pi)
        hangs = sag(spokes, load, radius, problem.worn.ei_strong, problem.worn.gj)
        stress = _worn(problem, setting.closing_stress(e, depth, ring.girth / (ring.end - ring.start)))
        found.append(
            HoopStrength(ring.id, load, 0.0, hangs if ring is rings[-1] else 0.0, None, None, stress)
        )
    return Solution(
        "closed forms: the rim as a ring on its spokes, every ring bent to its girth",
        tuple(found),
        (),
        Buckling(None, False),
        "",
        None,
        0.0,
        unassessed=WHEEL_OPEN,
        says={
            "equilibrium": "the wheel lies at rest on its roll under its load",
            "buckling": "no ring buckles under the pull of the skirt",
            "out-of-round": "the rings keep their shape between the spokes",
            "sag": "the rim keeps level between spokes whose ends are level",
        },
        sources={
            **dict.fromkeys(WHEEL_OPEN, _TRIED),
            "sag": "ring on n supports, bent and twisted together, free to twist at the spokes (derived); the"
            " limit is our judgement"
        },
    )


def solve_pair(problem: Problem) -> Solution:
    """What is known of side hoops: stress of their steels as bows, and the pull that holds their ends."""
    e, depth = modulus(problem.stock, problem.material), problem.stock.section.depth
    curved = {hoop: curvature for curvature, hoop in bowed(problem.shape)}
    found = tuple(
        HoopStrength(
            hoop.id,
            hoop.cut * problem.stock.linear_density * GRAVITY / hoop.girth,
            0.0,
            None,
            None,
            None,
            _worn(problem, setting.curved_stress(e, depth, curved.get(hoop.id, 0.0))),
        )
        for hoop in problem.shape.hoops
    )
    ties = tuple(
        TieStrength(tie.id, tie.pull * problem.material.ei_weak, tie.pull <= 0.0)
        for tie in problem.shape.ties
    )
    return Solution(
        "closed forms: each steel as a spring whose ends are held; loads are its own weight",
        found,
        (),
        Buckling(None, False),
        "",
        None,
        0.0,
        unassessed=PAIR_OPEN,
        ties=ties,
        says={
            "equilibrium": "the side hoops hang at rest under their load",
            "buckling": "no steel buckles under the pull of cloth and skirt",
            "sag": "the steels keep level in their channels",
            "out-of-round": "the steels keep their half ovals",
            "set-closed": "bending a steel into its channel leaves no set in it",
        },
        sources={
            **dict.fromkeys(PAIR_OPEN, _TRIED),
            "set-closed": "greatest curvature of an elastica held at its chord times E t/2 (derived)"
                          " against a"
            " share of the elastic limit (our judgement)",
            "set-worn": "greatest curvature of an elastica held at its chord times E t/2 (derived) against a"
            " share of the elastic limit (our judgement)",
        },
    )


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
    cloth = sum(
        piece.count * _area(piece.outline) * spec.goods[piece.material].areal_density
        for piece in shape.panels
    )
    ties = sum(tie.cut * spec.goods[tie.material].linear_density for tie in shape.ties)
    stuffing = 0.0 if shape.wheel is None else shape.wheel.stuffing * WADDING
    return cloth + ties + stuffing


def _area(outline: tuple[tuple[float, float], ...]) -> float:
    """Area inside an outline, m2."""
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*outline, outline[0])))) / 2
