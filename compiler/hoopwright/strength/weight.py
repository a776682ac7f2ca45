"""What the cage weighs, by groups of parts."""

from __future__ import annotations

from hoopwright.library.model import Goods
from hoopwright.shape.model import Shape
from hoopwright.spec.model import Spec
from hoopwright.strength.cloth import flounce_mass, frame_mass, petticoat_mass
from hoopwright.strength.model import Weights


def weights(spec: Spec, shape: Shape) -> Weights:
    """Mass of the finished cage, kg. Tapes count without the reserve that is trimmed off after fitting."""
    build, allow = spec.build, spec.allowances
    casing = build.hoops.casing
    band = shape.band
    areal = 0.0 if build.band is None else build.band.material.areal_density
    return Weights(
        hoops=(shape.total_hoop_length + _spokes(shape)) * build.hoops.material.linear_density,
        casings=0.0 if casing is None else sum(hoop.casing for hoop in shape.hoops) * per_metre(casing, 0.0),
        tapes=0.0 if build.tapes is None else sum(tape.cut - allow.tape_reserve for tape in shape.tapes)
        * per_metre(build.tapes.material, 0.0),
        waistband=shape.waistband.cut * per_metre(build.waistband.material, shape.waistband.width),
        band=0.0 if band is None else band.height * band.length * areal,
        cloth=petticoat_mass(spec, shape) + flounce_mass(spec, shape) + frame_mass(spec, shape),
        joins=sum(hoop.closed for hoop in shape.hoops) * build.hoops.join.mass,
    )


def _spokes(shape: Shape) -> float:
    """Stock in the spokes of a wheel, m."""
    return 0.0 if shape.wheel is None else sum(spoke.cut for spoke in shape.wheel.spokes)


def per_metre(goods: Goods, width: float) -> float:
    """Mass of a metre, kg/m: as given for tape and braid, of a doubled strip ``width`` wide for cloth."""
    return 2 * width * goods.areal_density if goods.kind == "cloth" else goods.linear_density
