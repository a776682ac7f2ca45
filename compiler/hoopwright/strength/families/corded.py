"""A corded petticoat, by closed forms and by the droop of a corded sample; no handbook has its stiffness.

Sample. A strip with its cords running out over a table's edge bends under its own weight and what hangs from it.
Its stiffness EI along the cords follows from the drop, however far it bends (:mod:`hoopwright.strength.forms.droop`);
over its number of cords that is the stiffness of one cord with the cloth that goes with it. The bending length is
c = (EI/q)^(1/3), q its weight for length: the cantilever test of ISO 9073-7 and ASTM D1388, after Peirce (1930), in
which a strip whose tip hangs 41.5 degrees below the edge hangs over by twice c.

Ring. All rows together are taken as one ring at their mean height. The cloth above it goes out with a slope s and
carries V, so that it presses the ring inward with V s all round, V s/(2 pi R) for each metre. A ring gives way in
its plane under 3 A/R^3 at the least, A the sum of the cords' EI: that cords sewn to the same cloth help each other
is left out, and so is what the cloth between them holds. How stiffly corded cloth twists, on which it hangs whether
the band rolls over sideways, no droop test tells: that is looked at when it is tried on.
"""

from __future__ import annotations

from math import ceil, pi

from hoopwright.library.model import Droop, Weigh
from hoopwright.shape.judge import MARGIN, judged
from hoopwright.shape.model import CordedPetticoat, Shape
from hoopwright.source.diagnostic import Finding, warning
from hoopwright.source.printed import length_text, mass_text
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import CordBuild, Layer, Spec
from hoopwright.strength.forms import buckle
from hoopwright.strength.forms.droop import droop
from hoopwright.strength.gravity import GRAVITY
from hoopwright.strength.load import shares_on
from hoopwright.strength.model import Assessment, Buckling, CordedStrength, Weights
from hoopwright.strength.samples.bench import DISAGREES, droop_stiffnesses, spread_of
from hoopwright.strength.verdict import verdict
from hoopwright.strength.weight import per_metre

METHOD = ("closed forms: all rows of cord as one ring in its plane, its stiffness from the droop of a corded sample;"
          " whether the band rolls over sideways is in no test and is looked at on the body")
SOURCE = ("least inward load of a ring, 3A/R^3: Timoshenko and Gere, Theory of Elastic Stability (from memory), a lower"
          " bound; A from the sample as a cantilever under its own weight (the test of ISO 9073-7 and ASTM D1388,"
          " after Peirce 1930, here with large bending); the factor asked for is our judgement")
SAYS = "the corded band stands out round under the inward pull of its load"
_MOST_CORDS = 1000


def assess_corded(spec: Spec, shape: Shape) -> tuple[Assessment, tuple[Finding, ...]]:
    """What a corded petticoat does under its load, judged; what its sample does not tell is not assessed."""
    cloth, cords = shape.corded, spec.build.cords
    if cloth is None or cords is None:
        raise ValueError("only a corded petticoat is assessed by its sample")
    mass = corded_weights(spec, shape, cloth, cords)
    found = corded_strength(spec, shape)
    checks = (_ring(spec, cloth, cords, found), _weight(spec, mass))
    word, reasons = verdict(checks)
    carried = mass.total + sum(layer.mass for layer in spec.load)
    return Assessment(METHOD, checks, (), (), Buckling(found.factor, True), None, carried * GRAVITY * found.slope,
                      carried, mass, (), word, reasons, corded=found), _findings(found)


def corded_strength(spec: Spec, shape: Shape) -> CordedStrength:
    """What the sample says, and the ring of all rows under its load."""
    cloth, cords = shape.corded, spec.build.cords
    if cloth is None or cords is None:
        raise ValueError("only a corded petticoat has a sample")
    line, weighed = sample_line(spec, cloth, cords)
    stiff = droop_stiffnesses(cords.sample.bench, line)
    mean = sum(stiff) / len(stiff) if stiff else None
    ring = ring_of(spec, cloth, cords)
    cord = None if mean is None else mean / cords.sample.cords
    return CordedStrength(
        mean, cord, line, weighed, None if mean is None else (mean / line) ** (1 / 3), spread_of(stiff),
        ring.radius, ring.height, ring.slope, ring.carried, ring.press,
        None if cord is None else buckle.in_plane(cord * cords.rows, ring.radius))


@record(frozen=True, slots=True)
class Ring:
    """All rows as one ring: ``radius`` and ``height`` of its middle, m; ``slope`` of the cloth above it;
    ``carried`` kg hung from it, ``skirt`` of that what is worn over it; ``press`` inward, N/m."""

    radius: float
    height: float
    slope: float
    carried: float
    skirt: float
    press: float


def ring_of(spec: Spec, cloth: CordedPetticoat, cords: CordBuild) -> Ring:
    """The ring and its load: of the cloth and the skirt what hangs below halfway to the waist, and all cord."""
    count = len(cloth.rows)
    height = sum(row.height for row in cloth.rows) / count
    girth = sum(row.girth for row in cloth.rows) / count
    radius = girth / (2 * pi)
    drop = spec.wearer.side - spec.build.waistband.width / 2 - height
    slope = (radius - spec.wearer.waist / (2 * pi)) / drop
    rings = [(height, girth)]

    def hung(layer: Layer) -> float:
        return layer.mass * shares_on(layer, spec, rings)[1]

    own = hung(Layer("petticoat", breadth_mass(spec, cloth), "straight")) + facing_mass(spec, cloth)
    own += cord_mass(cloth, cords)
    skirt = sum(hung(layer) for layer in spec.load)
    press = max(0.0, (own + skirt) * GRAVITY * slope / (2 * pi * radius))
    return Ring(radius, height, slope, own + skirt, skirt, press)


def breadth_mass(spec: Spec, cloth: CordedPetticoat) -> float:
    """Mass of the breadths, kg."""
    return cloth.count * cloth.wide * cloth.high * spec.goods[cloth.material].areal_density


def facing_mass(spec: Spec, cloth: CordedPetticoat) -> float:
    """Mass of the inner layer, kg."""
    if not cloth.facing:
        return 0.0
    return cloth.count * cloth.wide * cloth.facing_high * spec.goods[cloth.facing].areal_density


def cord_mass(cloth: CordedPetticoat, cords: CordBuild) -> float:
    """Mass of the cord as it lies in the petticoat, kg."""
    return cloth.run * cords.material.linear_density


def corded_weights(spec: Spec, shape: Shape, cloth: CordedPetticoat, cords: CordBuild) -> Weights:
    """What the finished petticoat weighs, starch left out."""
    band = shape.waistband
    metre = per_metre(spec.build.waistband.material, band.width)
    return Weights(0.0, 0.0, 0.0, band.cut * metre, 0.0, 0.0,
                   breadth_mass(spec, cloth) + facing_mass(spec, cloth), cord_mass(cloth, cords))


def sample_line(spec: Spec, cloth: CordedPetticoat, cords: CordBuild) -> tuple[float, bool]:
    """Weight of the sample for length, N/m, and whether it was weighed; else what its cloth and cord weigh."""
    weighed = [test for test in cords.sample.bench if isinstance(test, Weigh)]
    if weighed:
        return GRAVITY * sum(test.mass for test in weighed) / sum(test.length for test in weighed), True
    high = cords.sample.cords * (cords.groups[0].spacing + cloth.take_up)
    layers = spec.goods[cloth.material].areal_density
    layers += spec.goods[cloth.facing].areal_density if cloth.facing else 0.0
    return GRAVITY * (high * layers + cords.sample.cords * cords.material.linear_density), False


def _ring(spec: Spec, cloth: CordedPetticoat, cords: CordBuild, found: CordedStrength) -> Check:
    """The load factor of the ring: below 1 it falls into folds, up to the factor asked for it is close."""
    limit, value = spec.limits.factor, found.factor
    soft = value is not None and value >= 1.0
    low = value is not None and value < limit * (1 + MARGIN)
    return judged(
        "cord-ring", "cords", value, limit, "ratio", "at least", says=SAYS, source=SOURCE, soft=soft, margin=MARGIN,
        remedy=_remedy(spec, cords, found, limit) if low else "", unknown=_unknown(spec, cords))


def _remedy(spec: Spec, cords: CordBuild, found: CordedStrength, limit: float) -> str:
    """What would do: more cords, a stiffer sample, less load; each worked out by the same form."""
    said = []
    value = found.factor or 0.0
    wanted = 1.2 * limit if value >= limit else limit
    lead = "with little in reserve: " if value >= limit else ""
    droops = [test for test in cords.sample.bench if isinstance(test, Droop)]
    if found.stiffness is not None and droops:
        test = droops[0]
        stiff = found.stiffness * wanted / value
        tip, own = test.hang * GRAVITY * test.overhang**2 / stiff, found.line * test.overhang**3 / stiff
        drop = droop(tip, own, test.angle)[0] * test.overhang
        said.append(f"starch it more stiffly, or take thicker cord: the sample should then drop"
                    f" {length_text(drop, spec.units)} instead of {length_text(test.mean_drop, spec.units)}")
    more = cords_needed(cords, found, wanted)
    if more is not None and more > cords.rows:
        said.append(f"or about {more} cords like these instead of {cords.rows}")
    bears = found.carried * value / wanted
    said.append(f"or hang {mass_text(bears, spec.units)} from the band instead of"
                f" {mass_text(found.carried, spec.units)}: lighter or fewer skirts over it")
    return lead + ", ".join(said)


def cords_needed(cords: CordBuild, found: CordedStrength, factor: float) -> int | None:
    """How many like cords give a load factor, their own weight counted; None when no number does, or too many.

    With K = 6 pi EI/(R^2 s g) of one cord, n K = factor (rest + n w), w what one more row weighs.
    """
    if found.cord is None or found.slope <= 0.0:
        return None
    each = 6 * pi * found.cord / (found.radius**2 * found.slope * GRAVITY)
    own = cords.material.linear_density * 2 * pi * found.radius
    rest = found.carried - cords.rows * own
    if each <= factor * own:
        return None
    count = ceil(factor * rest / (each - factor * own) - 1e-9)
    return count if count <= _MOST_CORDS else None


def _unknown(spec: Spec, cords: CordBuild) -> str:
    """How the sample is made and tested, and where the result is written."""
    sample = cords.sample
    layers = "two layers with its cords between them"
    if cords.held == "tuck":
        layers = "one layer with its cords in tucks"
    stiff = f"starch it as stiffly as the petticoat ({cords.starch.name})" if cords.starch else "leave it unstarched"
    long, hang = length_text(sample.length, spec.units), length_text(sample.overhang, spec.units)
    return (f"its stiffness is in no handbook. Sew a sample of {sample.cords} cords {long} long, {layers}, as the"
            f" petticoat will be; wash it, {stiff} and dry it flat. Clamp it to a table with {hang} over the edge, the"
            " cords running out over it, and read how far the free end drops; turn it over, read again; weigh it."
            f" Write `sample: {{bench: [{{test: droop, overhang: {hang}, drop: ..., turned: ...}}, {{test: weight,"
            f" length: {long}, weight: ...}}]}}` under `build.cords`, and build the plan again")


def _weight(spec: Spec, mass: Weights) -> Check:
    heavier = "cloth" if mass.cloth >= mass.cords else "cord"
    return judged(
        "weight", "petticoat", mass.total, spec.limits.weight, "mass", "at most",
        says="the petticoat alone is light enough",
        source="sum of its parts, starch left out; the limit is the maker's",
        remedy=f"most of it is {heavier}: fewer or thinner cords, lighter cloth, or fewer breadths",
        unknown="no limit was stated (limits.weight)")


def _findings(found: CordedStrength) -> tuple[Finding, ...]:
    """Droop tests that lie too far apart."""
    if found.spread is None or found.spread <= DISAGREES:
        return ()
    return (warning(
        "bench-contradictory", ("build", "cords", "sample", "bench"),
        "the droop tests of the corded sample lie more than 30 % apart in stiffness; their mean is taken",
        "repeat the one that stands alone; every sample is starched alike and bone dry"),)
