"""Haberdashery and cloth: physical data with sources, never a price.

Areal densities are the middle of the range in the trade; a maker who weighs a square states her own.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.library.cautions import PRACTICE
from hoopwright.library.model import Consumption, Goods

INCH = 0.0254
GRAM = 0.001
SHRINKAGE = 0.03
"""What unwashed cotton and linen loses in its first wash: about 3 % (common practice, no source)."""
SHRINKAGE_SOURCE = f"unwashed cotton or linen loses about 3 %; write 0 % for goods already washed: {PRACTICE}"
CLOTH_WIDTH = 45 * INCH
"""Width of cloth when a maker states none, m: 45 in, one of the usual 36, 45, 54 and 60 in."""


def _cloth(name: str, grams: float, source: str, width: float = CLOTH_WIDTH, shrinkage: float = SHRINKAGE,
           nap: bool = False) -> Goods:
    return Goods(name, "cloth", width=width, areal_density=grams * GRAM, shrinkage=shrinkage, nap=nap,
                 source=source)


_GOODS = (
    Goods("twill", "tape", width=1 * INCH, linear_density=6.2 * GRAM, shrinkage=SHRINKAGE,
          source="1 in cotton herringbone tape, at least 6.2 g/m: A-A-55071"),
    Goods("lacing cord", "tape", width=4 * GRAM, linear_density=5.0 * GRAM, shrinkage=SHRINKAGE,
          source=f"flat or round cotton cord of about 4 mm: {PRACTICE}"),
    Goods("braid", "braid", width=0.5 * INCH, linear_density=4.0 * GRAM, shrinkage=SHRINKAGE,
          source=f"flat tubular braid of about 1/2 in: {PRACTICE}"),
    Goods("piping cord", "cord", width=0.125 * INCH, linear_density=4.8 * GRAM, shrinkage=SHRINKAGE,
          source=f"soft laid cotton of about 1/8 in, 0.6 g/cm3 as it lies: {PRACTICE}"),
    _cloth("calico", 140, f"110-160 g/m2: {PRACTICE}"),
    _cloth("drill", 245, f"200-290 g/m2: {PRACTICE}", width=60 * INCH),
    _cloth("lawn", 70, f"60-80 g/m2: {PRACTICE}"),
    _cloth("taffeta", 80, f"60-100 g/m2: {PRACTICE}", width=54 * INCH, shrinkage=0.0),
    _cloth("wool flannel", 220, f"160-280 g/m2: {PRACTICE}", width=60 * INCH, shrinkage=0.0, nap=True),
    _cloth("serge", 380, "349-414 g/m2: MIL-DTL-3738", width=60 * INCH, shrinkage=0.0),
    Goods("hook and bar", "fastening", source=PRACTICE),
    Goods("buckle", "fastening", source=PRACTICE),
    Goods("buttons", "fastening", source=PRACTICE),
    Goods("solder and flux", "consumable", source=f"one pack serves about 40 laps: {PRACTICE}"),
    Goods("brazing rod and flux", "consumable", source=f"one pack serves about 20 laps: {PRACTICE}"),
    Goods("thread", "consumable", source=f"one reel holds 100 m: {PRACTICE}"),
    Goods("glue", "consumable", source=f"one tube serves about 40 laps: {PRACTICE}"),
    Goods("end tips", "consumable", source=f"one on each cut end: {PRACTICE}"),
    Goods("sleeve", "consumable", source=f"one a hoop, 1 1/2 to 2 in long: {PRACTICE}"),
    Goods("bolts", "consumable", source=f"two a hoop, with nuts: {PRACTICE}"),
    Goods("eyelets", "consumable", source=f"metal, set with a punch, or worked by hand: {PRACTICE}"),
    Goods("wadding", "consumable", source=f"one bag of 500 g fills about 12 litres of a firm roll:"
                                          f" {PRACTICE}"),
    Goods("starch", "consumable", source=f"dry, in boxes of 500 g: {PRACTICE}"),
    Goods("rivets", "consumable", source=f"two a hoop: {PRACTICE}"),
)

_OTHER_FIBRES = frozenset(("silk", "taffeta", "satin", "wool", "woollen", "flannel", "serge", "felt", "polyester",
                           "nylon", "polyamide", "acrylic", "polypropylene", "synthetic", "leather"))


def usual_shrinkage(name: str) -> float:
    """What goods of that name lose in the first wash, a share: of cotton or linen, unless the name says another fibre.

    >>> usual_shrinkage("tape"), usual_shrinkage("nylon tape")
    (0.03, 0.0)
    """
    return 0.0 if _OTHER_FIBRES & set(name.lower().replace("-", " ").split()) else SHRINKAGE


GOODS: Mapping[str, Goods] = MappingProxyType({goods.name: goods for goods in _GOODS})
"""Every article by name."""

HOOP_END = Consumption("end tips", 1, 1)
"""What one cut end of a hoop in a casing or band uses."""

EYELET = Consumption("eyelets", 1, 1)
"""What one eyelet of a lacing uses."""

TAPE_FIXING = Consumption("thread", 0.6, 100)
"""What one sewn crossing of hoop and tape uses: metres of thread, and metres on a reel."""

SEAM_METRE = Consumption("thread", 3.0, 100)
"""What a metre of seam uses: about three times its length in thread."""

STARCHING = Consumption("starch", 80, 500)
"""What starching a kilogram of dry cloth stiffly uses: grams of dry starch, and those in a box (common practice,
no source)."""

WADDING = Consumption("wadding", 1, 12)
"""What a litre of stuffed roll uses: litres, and those a bag fills."""

FASTENINGS_PER_BAND: Mapping[str, int] = MappingProxyType({"hook and bar": 2, "buckle": 1, "buttons": 2})
"""Pieces of a fastening that close one waistband; any other fastening counts 1."""
