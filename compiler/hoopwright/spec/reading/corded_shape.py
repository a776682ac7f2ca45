"""The shape of a corded petticoat: a hem, and either a length or a height off the floor."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi, sqrt

from hoopwright.library.body import ANKLE_HEIGHT
from hoopwright.source.diagnostic import Finding, error
from hoopwright.spec.model import Build, GroundPlan, Line, PlaceListed, ShapeSpec, Wearer
from hoopwright.spec.reading.node import Node, Notebook

INCH = 0.0254
HAND = 4 * INCH
OFF_FLOOR = 6.5 * INCH


def read_corded_shape(node: Node, wearer: Wearer, build: Build, notes: Notebook) -> ShapeSpec:
    """The shape of a corded petticoat: a cone from the waistband's lower edge to the hem. Its length down the
    cloth and the height of its edge off the floor give each other."""
    girth, path = node["hem"]["girth"].length() or 0.0, node["hem"]["off_floor"]
    high = wearer.side - build.waistband.width / 2
    out = (girth - wearer.waist) / (2 * pi)
    length, off = node["length"].length(), path.length()
    if length is not None and off is not None:
        notes.tell(error("keys-clash", path.path, "`length` and `off_floor` both say where the petticoat ends",
                         "keep one of them", at_key=True, related=((node["length"].path, "said here too"),)))
    if length is not None:
        off = _off_floor(node["length"], length, high, out, notes)
    elif off is None:
        off = _usual_off_floor(wearer, notes)
    drop = high - off
    if drop <= 0.0 and path:
        notes.tell(error("height-above-waist", path.path, "the petticoat's edge is not below its waistband",
                         "measure from the floor up, and look at the unit",
                         related=((("wearer", "waist_height"), "the waist's height"),)))
    long = length if length is not None else sqrt(max(drop, 0.0) ** 2 + max(out, 0.0) ** 2)
    return ShapeSpec(GroundPlan(), Line("cone", 1.0), PlaceListed(), None, girth, max(off, 0.0), 0, "from hem",
                     1.0, length=long)


def _off_floor(node: Node, length: float, high: float, out: float, notes: Notebook) -> float:
    """How high the edge hangs when the petticoat is so long and stands out so far."""
    if length <= out:
        notes.tell(error("hem-beyond-length", node.path, "the hem stands out further than the petticoat is long",
                         "make it longer, or its hem narrower: the cloth runs from the waist out to the hem",
                         related=((("shape", "hem", "girth"), "the hem's girth"),)))
        return high / 2
    off = high - sqrt(length**2 - max(out, 0.0) ** 2)
    if off <= 0.0:
        notes.tell(error("hem-beyond-length", node.path, "the petticoat is so long that it lies on the floor",
                         "make it shorter, or its hem wider, or say how high it hangs with `hem: {off_floor}`",
                         related=((("wearer",), "the wearer"),)))
    return off


def _usual_off_floor(wearer: Wearer, notes: Notebook) -> float:
    if wearer.stature is None:
        return notes.assume("shape.hem.off_floor", OFF_FLOOR, "length",
                            "a hand above the ankle; common practice, no source")
    return notes.assume("shape.hem.off_floor", ANKLE_HEIGHT * wearer.stature + HAND, "length",
                        f"ankle height {ANKLE_HEIGHT} x stature and a hand of 4 in")


def corded_ranges(wearer: Wearer, shape: ShapeSpec) -> Iterator[Finding]:
    """A petticoat widens from waist to hem."""
    if shape.hem_girth <= wearer.waist:
        yield error("hem-not-wider", ("shape", "hem", "girth"), "the hem is not wider than the waist",
                    "a petticoat is gathered from the hem's width into the waist: check both girths and units",
                    related=((("wearer", "waist"), "the waist"),))
