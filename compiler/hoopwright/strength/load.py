"""Where the weight goes: every layer of skirt shared out to the hoops, and what they carry of the cage itself.

Each hoop takes the stretch of skirt halfway to its neighbours. Half of the top stretch hangs from
the waistband, all below the hem hoop from the hem hoop. What lies beside hoops that stand vertical
hangs from the hoop above. All of a skirt over a wheel hangs from its rim. A layer is ``straight`` (even per
length of height from the waistline to the skirt's hem), ``gored`` (by the skirt's own area) or
``flounced`` (at stated heights).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot, pi

from hoopwright.shape.model import Hoop, Shape
from hoopwright.spec.model import Layer, Spec
from hoopwright.strength.cloth import flounce_mass, petticoat_mass

_UPRIGHT = 1e-4
"""A hoop that stands out less than this beyond the one above, m, stands vertical below it."""

Station = tuple[float, float]
"""(height, girth) of the skirt, m."""


def layer_shares(layer: Layer, spec: Spec, shape: Shape) -> tuple[float, ...]:
    """Shares of a layer's mass, from the waistband and then each hoop from the top; they add up to 1."""
    if shape.wheel is not None:
        return (*(0.0 for _ in shape.hoops), 1.0)
    if shape.sides is not None:
        return _sides(layer, spec, shape)
    return shares_on(layer, spec, [(hoop.height, hoop.girth) for hoop in shape.hoops])


def shares_on(layer: Layer, spec: Spec, rings: Sequence[Station]) -> tuple[float, ...]:
    """The same for rings of any kind, given as (height, girth) from the top."""
    stations = _stations(spec, rings)
    if layer.hang == "flounced" and layer.heights:
        raw = _at_heights(layer.heights, stations)
    else:
        raw = _by_stretch(stations, gored=layer.hang == "gored")
    return _past_upright(raw, [girth for _, girth in rings])


def _sides(layer: Layer, spec: Spec, shape: Shape) -> tuple[float, ...]:
    """Of side hoops: as much of the layer as lies along the lowest hoop of each side hangs there, down from the
    waist like any skirt; the rest hangs in front and behind from the waistband."""
    left = [hoop for hoop in shape.hoops if hoop.plan.sideways > 0]
    along = min(0.5, left[-1].girth / shape.skirt.hem_girth)
    shares = shares_on(layer, spec, [(hoop.height, hoop.girth) for hoop in left])
    side = [along * share for share in shares]
    return (1.0 - 2 * sum(side[1:]), *side[1:], *side[1:])


def skirt_masses(spec: Spec, shape: Shape) -> tuple[float, ...]:
    """Mass of all layers at the waistband and at each hoop, kg."""
    total = [0.0] * (len(shape.hoops) + 1)
    for layer in spec.load:
        for k, share in enumerate(layer_shares(layer, spec, shape)):
            total[k] += share * layer.mass
    return tuple(total)


def own_masses(spec: Spec, shape: Shape) -> tuple[float, ...]:
    """Mass of each hoop with its lap, join and casing, and half the hem band on each of its hoops, kg."""
    build = spec.build
    band = 0.0 if shape.band is None or build.band is None else (
        shape.band.height * shape.band.length * build.band.material.areal_density)

    def mass(hoop: Hoop) -> float:
        casing = 0.0 if build.hoops.casing is None else hoop.casing * build.hoops.casing.linear_density
        half = band / 2 if shape.band is not None and hoop.id in (shape.band.upper, shape.band.lower) else 0.0
        join = build.hoops.join.mass if hoop.closed else 0.0
        return hoop.cut * build.hoops.material.linear_density + join + casing + half

    return tuple(mass(hoop) for hoop in shape.hoops)


def cloth_masses(spec: Spec, shape: Shape) -> tuple[float, ...]:
    """What of a petticoat's cloth and flounces hangs from each hoop, from the top, kg; 0 without a petticoat."""
    cloth = shape.petticoat
    if cloth is None:
        return (0.0,) * len(shape.hoops)
    hem = shape.hoops[-1].height
    layers = [Layer("petticoat", petticoat_mass(spec, shape), "gored")]
    layers += [Layer(one.id, flounce_mass(spec, shape, one.id), "flounced",
                     (hem + (one.up - one.depth / 2) * _fall(shape),)) for one in cloth.flounces]
    shares = [[share * layer.mass for share in layer_shares(layer, spec, shape)[1:]] for layer in layers]
    return tuple(sum(column) for column in zip(*shares, strict=True))


def _fall(shape: Shape) -> float:
    """Drop over length of the lowest stretch of cloth."""
    if len(shape.hoops) < 2:
        return 1.0
    above, below = shape.hoops[-2:]
    drop = above.height - below.height
    return drop / hypot(drop, (below.girth - above.girth) / (2 * pi))


def _stations(spec: Spec, rings: Sequence[Station]) -> list[Station]:
    """The skirt's line: the waistline at the side, every hoop, the skirt's own hem."""
    hem = min(spec.skirt_off_floor, rings[-1][0])
    return [(spec.wearer.side, spec.wearer.waist), *rings, (hem, rings[-1][1])]


def _by_stretch(stations: Sequence[Station], gored: bool) -> list[float]:
    """Shares by the stretch halfway to the neighbours; the last stretch goes to the hem hoop whole."""
    amounts = [0.0] * (len(stations) - 1)
    for k, (above, below) in enumerate(pairwise(stations)):
        upper, lower = _halves(above, below, gored)
        amounts[k] += upper
        amounts[min(k + 1, len(amounts) - 1)] += lower
    total = sum(amounts)
    return [amount / total for amount in amounts]


def _halves(above: Station, below: Station, gored: bool) -> tuple[float, float]:
    """What the upper and the lower half of a stretch weigh, in height or in area of a cone's mantle."""
    drop = above[0] - below[0]
    if not gored:
        return drop / 2, drop / 2
    slant = hypot(drop, (below[1] - above[1]) / (2 * pi))
    middle = (above[1] + below[1]) / 2
    return (above[1] + middle) / 4 * slant, (middle + below[1]) / 4 * slant


def _at_heights(heights: Sequence[float], stations: Sequence[Station]) -> list[float]:
    """Equal shares at stated heights, each to the hoop (or waistband) in whose stretch it lies."""
    borders = [(above[0] + below[0]) / 2 for above, below in pairwise(stations[:-1])]
    shares = [0.0] * (len(stations) - 1)
    for height in heights:
        shares[sum(height < border for border in borders)] += 1 / len(heights)
    return shares


def _past_upright(shares: Sequence[float], girths: Sequence[float]) -> tuple[float, ...]:
    """Hand the share of a hoop that stands vertical below another to the one above it."""
    passed = list(shares)
    for k in range(len(girths) - 1, 0, -1):
        if (girths[k] - girths[k - 1]) / (2 * pi) < _UPRIGHT:
            passed[k] += passed[k + 1]
            passed[k + 1] = 0.0
    return tuple(passed)
