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

from hoopwright.strength.formed import closing, worn
from hoopwright.strength.forms import buckle
from hoopwright.strength.forms.statics import tape_forces, thrust
from hoopwright.strength.method import Problem, Solution
from hoopwright.strength.model import Buckling, HoopStrength

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
    stations = [(spec.wearer.side, spec.wearer.waist / (2 * pi)),
                *((hoop.height, hoop.girth / (2 * pi)) for hoop in shape.hoops)]
    slopes = [(low[1] - high[1]) / (high[0] - low[0]) for high, low in pairwise(stations)]
    forces = tape_forces(problem.loads, slopes, [hypot(1.0, slope) for slope in slopes])
    found, least = [], None
    for hoop, load, pull in zip(shape.hoops, problem.loads, forces.pull, strict=True):
        pressed, stress = thrust([pull]), worn(problem, closing(problem, hoop.girth))
        found.append(HoopStrength(hoop.id, load / hoop.girth, pressed, 0.0, 0.0, 0.0, stress))
        radius, stock = hoop.girth / (2 * pi), problem.worn
        if pressed > 0.0:
            factor = buckle.screen(stock.ei_weak, stock.ei_strong, stock.gj, radius) * radius / pressed
            least = min(least or (factor, hoop.id), (factor, hoop.id))
    return Solution(
        NAME, tuple(found), (), Buckling(None if least is None else least[0], True),
        "" if least is None else least[1], 0.0, forces.waist_pull, sources=SOURCES, says=SAYS, screened=True,
    )
