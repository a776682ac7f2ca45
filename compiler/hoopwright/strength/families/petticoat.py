"""A petticoat whose cloth carries the hoops, by closed forms.

Cloth holds a hoop up all round, so that it neither sags between tapes nor is drawn out of round by them: an
even load leaves a round ring round. As statics the cloth is one tape all round: from hoop i down it carries
V_i, its slope above is s_i, and it presses the hoop inward with V_i s_i - V_(i+1) s_(i+1) in all, which gives
the thrust over 2 pi. A hoop so pressed may buckle: the screen of :mod:`hoopwright.strength.forms.buckle` is a
lower bound, for cloth holds it against some of the ways in which it would. Stress as worn is that of closing
the hoop; that cloth pulls unevenly beside a seam is left out.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from math import hypot, pi
from types import MappingProxyType

from hoopwright.shape.model import Shape
from hoopwright.spec.model import Layer, Spec
from hoopwright.strength.formed import preformed
from hoopwright.strength.forms import buckle, setting
from hoopwright.strength.forms.droop import GRAVITY
from hoopwright.strength.forms.section import properties
from hoopwright.strength.forms.statics import tape_forces, thrust
from hoopwright.strength.load import layer_shares
from hoopwright.strength.method import Method, Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength
from hoopwright.strength.panels import panels_mass

NAME = "closed forms: cloth holds every hoop up all round, and presses it inward as statics say"
_HELD = "cloth holds the hoop up all round (our model); the limit is our judgement"
SAYS: Mapping[str, str] = MappingProxyType({
    "equilibrium": "the cloth hangs at rest under its load",
    "buckling": "no hoop buckles under the inward pull of the cloth",
    "sag": "the hoops keep level in their channels",
    "out-of-round": "the hoops keep round under an even load",
    "swing": "the petticoat hangs straight down",
})
SOURCES: Mapping[str, str] = MappingProxyType({
    "equilibrium": "cloth that hangs from the waist all round under an even load is at rest (statics)",
    "sag": _HELD,
    "out-of-round": "an even load leaves a round hoop round (statics); the limit is our judgement",
    "swing": "a round petticoat under an even load hangs straight down (symmetry)",
    "set-worn": "pi E t/G (derived) against a share of the elastic limit (our judgement)",
})


def solve(problem: Problem) -> Solution:
    """Solve a petticoat."""
    shape, spec = problem.shape, problem.spec
    loads = [(a + b) * GRAVITY for a, b in zip(problem.skirt, problem.own, strict=True)]
    stations = [(spec.wearer.side, spec.wearer.waist / (2 * pi)),
                *((hoop.height, hoop.girth / (2 * pi)) for hoop in shape.hoops)]
    slopes = [(low[1] - high[1]) / (high[0] - low[0]) for high, low in pairwise(stations)]
    forces = tape_forces(loads, slopes, [hypot(1.0, slope) for slope in slopes])
    e = problem.material.ei_weak / properties(problem.stock.section).weak
    found, least = [], None
    for hoop, load, pull in zip(shape.hoops, loads, forces.pull, strict=True):
        pressed = thrust([pull])
        stress = setting.closing_stress(e, problem.stock.section.depth, hoop.girth)
        found.append(HoopStrength(hoop.id, load / hoop.girth, pressed, 0.0, 0.0, 0.0, _worn(problem, stress)))
        radius = hoop.girth / (2 * pi)
        if pressed > 0.0:
            worn = problem.worn
            factor = buckle.screen(worn.ei_weak, worn.ei_strong, worn.gj, radius) * radius / pressed
            least = min(least or (factor, hoop.id), (factor, hoop.id))
    return Solution(
        NAME, tuple(found), (), Buckling(None if least is None else least[0], True),
        "" if least is None else least[1], 0.0, forces.waist_pull, sources=SOURCES, says=SAYS,
    )


def _worn(problem: Problem, stress: float) -> float:
    """Stress as worn, Pa: nothing in a hoop that is pre-formed to its curve."""
    return 0.0 if preformed(problem, stress) else stress


def cloth_mass(spec: Spec, shape: Shape) -> float:
    """Mass of a petticoat's cloth, flounces left out, kg."""
    cloth = shape.petticoat
    if cloth is None:
        return 0.0
    panels = panels_mass(spec, shape)
    strips = 0.0
    if cloth.casing:
        goods = spec.goods[cloth.casing]
        strips = sum(one.strip * (one.height * goods.areal_density if goods.kind == "cloth"
                                  else goods.linear_density) for one in cloth.channels)
    return panels + strips


def cloth_masses(spec: Spec, shape: Shape) -> tuple[float, ...]:
    """What of a petticoat's cloth and flounces hangs from each hoop, from the top, kg."""
    cloth = shape.petticoat
    if cloth is None:
        return (0.0,) * len(shape.hoops)
    hem = shape.hoops[-1].height
    layers = [Layer("petticoat", cloth_mass(spec, shape), "gored")]
    layers += [Layer(one.id, flounce_mass(spec, shape, one.id), "flounced",
                     (hem + (one.up - one.depth / 2) * _fall(shape),)) for one in cloth.flounces]
    shares = [[share * layer.mass for share in layer_shares(layer, spec, shape)[1:]] for layer in layers]
    return tuple(sum(column) for column in zip(*shares, strict=True))


def flounce_mass(spec: Spec, shape: Shape, id: str | None = None) -> float:
    """Mass of one flounce, or of all, kg."""
    every = () if shape.petticoat is None else shape.petticoat.flounces
    return sum(one.length * one.height * spec.goods[one.material].areal_density for one in every
               if id is None or one.id == id)


def _fall(shape: Shape) -> float:
    """Drop over length of the lowest stretch of cloth."""
    if len(shape.hoops) < 2:
        return 1.0
    above, below = shape.hoops[-2:]
    drop = above.height - below.height
    return drop / hypot(drop, (below.girth - above.girth) / (2 * pi))


METHODS: Mapping[str, Method] = MappingProxyType({"channels": solve})
"""Methods of carriers that are not solved as cages on tapes."""
