"""The skirt over a wheel or side hoops as they hang under their load: what it is cut to.

Hoops on tapes or in channels all round keep the heights they were drawn at; what stands out from the waist by itself
goes down under the skirt, and a skirt cut to the shape as drawn would be too long by that.
"""

from __future__ import annotations

from dataclasses import replace

from hoopwright.shape.body import body_of
from hoopwright.shape.model import Skirt
from hoopwright.shape.skirt import for_petticoats, over_side
from hoopwright.shape.waist import waist_of
from hoopwright.strength.method import Problem, Solution


def skirt_worn(problem: Problem, solution: Solution) -> Skirt | None:
    """The skirt as its wearer wants it, its hem as far off the floor as wished with all of its weight hanging there;
    None where the hoops keep their heights, or no rest was found."""
    spec, shape = problem.spec, problem.shape
    if solution.wheel is not None and shape.wheel is not None:
        long = [point.skirt - sink for point, sink in zip(shape.wheel.rim, solution.wheel.sinks, strict=True)]
        return replace(shape.skirt, front=long[0], side=(long[2] + long[6]) / 2, back=long[4])
    if solution.sides and shape.sides is not None:
        waist, hip = waist_of(spec), shape.sides.hip
        outs = [(waist.side - one.drop, hip + one.reach) for one in solution.sides]
        side = over_side(spec, waist, body_of(spec), outs) + for_petticoats(spec.load)
        return replace(shape.skirt, side=side)
    return None
