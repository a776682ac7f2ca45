"""Numbers of each family worked by hand (plain geometry with a pencil; no source beyond that), got from specs: a
text goes in, the stages run, and what a maker would measure on the result is compared.

Lengths are in inches unless a row says otherwise. A row's last number is how far off the value may be: half of
the last digit that the hand wrote, or one of it where the hand added rounded numbers.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from itertools import pairwise
from math import degrees, dist, hypot
from pathlib import Path
from typing import NamedTuple

import pytest

from hoopwright.compile import compile_spec
from hoopwright.plan.model import Plan
from hoopwright.render.markdown import plan_markdown
from hoopwright.shape.draw import draw
from hoopwright.shape.model import Shape
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

INCH = 0.0254
SPECS = Path(__file__).parent / "data" / "by_hand"
ROUND, BAND, OVAL, CONE, WHEEL, SIDES, BUSTLE, CRINOLETTE, LEANING = (
    (SPECS / f"{name}.yaml").read_text() for name in
    ("round", "band", "oval", "cone", "wheel", "sides", "bustle", "crinolette", "leaning"))
TUCKS = CONE.replace("gores: 6, top: 30 in", "breadths: 3").replace("3/8 in", "1/2 in")
TUBE = re.sub("{grade: .*", "{grade: polyethylene, section: {kind: tube, diameter: 10 mm, wall: 1.5 mm}}", CONE)
FLOUNCE = CONE.replace("hoops: {material: strip}", """hoops: {material: strip}
  flounce: {depth: 10 1/2 in, material: lawn}""") + """\
  lawn: {kind: cloth, weight: 70 g/m2, width: 44 in, shrinkage: 0 %, sold: [{per: 1 yd, step: 1 in, price: 3 USD}]}
"""


@cache
def shape(text: str) -> Shape:
    document, said = read(text.encode(), "spec.yaml")
    assert document is not None, said
    spec, found = resolve(document)
    assert spec is not None, found
    drawn, told = draw(spec)
    assert drawn is not None, told
    return drawn


@cache
def plan(text: str) -> Plan:
    found = compile_spec(text.encode(), "spec.yaml")
    assert found.plan is not None, found.diagnostics
    return found.plan


def marks(text: str, k: int) -> list[float]:
    """The marks of a tape, in."""
    return [mark.at / INCH for mark in shape(text).tapes[k].marks]


def girths(text: str) -> list[float]:
    """Girths of the hoops from the top, in."""
    return [hoop.girth / INCH for hoop in shape(text).hoops]


def gaps(text: str) -> list[float]:
    """Drops from hoop to hoop, in."""
    heights = [hoop.height / INCH for hoop in shape(text).hoops]
    return [a - b for a, b in pairwise(heights)]


def gore(text: str) -> tuple[float, float, float]:
    """A gore as it lies flat, in: width at the waist's line, at the hem hoop's, and from one to the other."""
    panel, cloth = shape(text).panels[0], shape(text).petticoat
    assert cloth is not None
    (x0, _), (x1, _), (x2, top), (x3, _) = panel.outline
    waist, hem = top - cloth.head, panel.rules[-1].offset

    def wide(y: float) -> float:
        return ((x1 - x0) + ((x2 - x3) - (x1 - x0)) * y / top) / INCH

    return wide(waist), wide(hem), (waist - hem) / INCH


def rim(k: int) -> tuple[float, float]:
    """Reach and height of the rim in a direction, in."""
    wheel = shape(WHEEL).wheel
    assert wheel is not None
    return wheel.rim[k].reach / INCH, wheel.rim[k].height / INCH


def cloth(text: str) -> tuple[float, float, float]:
    """Pieces of the first flounce, their height and the length of cloth they need, in."""
    layout = next(one for one in plan(text).supply.layouts if one.material == "lawn")
    strips = [place for place in layout.placements if place.part == "flounce 1"]
    return len(strips), max(place.height for place in strips) / INCH, layout.need / INCH


def side(k: int) -> tuple[float, float]:
    """A channel of the side hoops and what its steel is shorter, in."""
    pair = shape(SIDES).sides
    assert pair is not None
    return pair.channels[k].width / INCH, (pair.channels[k].width - pair.channels[k].steel) / INCH


def door() -> list[float]:
    """Across both side hoops, and what a door leaves on each side, in."""
    drawn = shape(SIDES)
    limit = next(check.limit for check in drawn.checks if check.code == "door-width")
    assert drawn.sides is not None
    assert limit is not None
    return [drawn.sides.across / INCH, (limit - drawn.sides.across) / 2 / INCH]


def spring(text: str, k: int) -> list[float]:
    """Chord, reach and length of a half hoop, in, the first two measured on its line."""
    hoop = shape(text).hoops[k]
    (x, y), (x1, y1) = hoop.plan.path[0], hoop.plan.path[-1]
    deepest = max((y + y1) / 2 - at for _, at in hoop.plan.path)
    return [dist((x, y), (x1, y1)) / INCH, deepest / INCH, hoop.cut / INCH]


def moved(text: str) -> float:
    """How far the hem's mark on the one tape that a fitting corrects goes up it, in."""
    refit, = shape(text).refits
    assert {one.tape for one in refit.moved} == {"T2"}
    return (refit.moved[-1].was - refit.moved[-1].goes) / INCH


def hem_oval(text: str) -> list[float]:
    """Width, depth, and reaches in front of and behind the waist's centre, of the hem, in."""
    hem = shape(text).hoops[-1].plan
    return [at / INCH for at in (hem.width, hem.depth, hem.depth / 2 - hem.offset, hem.depth / 2 + hem.offset)]


def waist(text: str) -> list[float]:
    """Width and depth of the waist where tapes start at front and left, in."""
    front, left, *_ = shape(text).tapes
    return [2 * left.start[0] / INCH, 2 * front.start[1] / INCH]


def joined(join: str) -> list[float]:
    """What each hoop is cut longer than its girth, in."""
    drawn = shape(ROUND.replace("lap soldered", join))
    return [(hoop.cut - hoop.girth) / INCH for hoop in drawn.hoops]


class Row(NamedTuple):
    """What is compared: the value found and the value by hand, and how far one may be off the other."""

    what: str
    found: Callable[[], float | list[float] | tuple[float, ...]]
    by_hand: float | list[float] | tuple[float, ...]
    within: float


def petticoat(text: str) -> tuple[float, float]:
    """Slant, in, and half-angle, degrees."""
    of = shape(text).petticoat
    assert of is not None
    return of.slant / INCH, degrees(of.half_angle)


def taken(text: str) -> float:
    """Length that tucks take, in."""
    of = shape(text).petticoat
    assert of is not None
    return of.takes / INCH


def channel_mm(text: str) -> float:
    """Flat width of the channels, mm."""
    of = shape(text).petticoat
    assert of is not None
    return of.channels[0].width * 1000


def band(ease: str) -> float:
    """Height of the hem band's strip before it is folded, in."""
    of = shape(BAND.replace("EASE", ease)).band
    assert of is not None
    return of.height / INCH


TABLE = (
    Row("round cage: marks of every tape", lambda: marks(ROUND, 3),
        [6.52, 13.92, 21.31, 28.71, 36.10], 0.006),
    Row("round cage: steel of five hoops with 1 in laps",
        lambda: shape(ROUND).total_hoop_length / INCH, 405, 1e-6),
    Row("hem band 8 deep, 5/8 seams, a 3/8 strip, no ease: 17 1/4 and twice the strip",
        lambda: band("0 in") - 2 * 0.375, 17.25, 1e-6),
    Row("hem band 8 deep, 5/8 seams, a 3/8 strip, 1/4 ease", lambda: band("1/4 in"), 18.5, 1e-6),
    Row("oval: 110 round at 1.2, thrown back 5", lambda: hem_oval(OVAL), [38.1, 31.8, 10.9, 20.9], 0.05),
    Row("oval: waist 28 at 1.4", lambda: waist(OVAL), [10.3, 7.4], 0.06),
    Row("oval: tapes to front, left, back, right", lambda: [marks(OVAL, k)[-1] for k in range(4)],
        [34.3, 36.6, 37.7, 36.6], 0.06),
    Row("cone: slant and half-angle", lambda: petticoat(CONE), (38.2, 19.5), 0.05),
    Row("cone: girths every 5 from the hem", lambda: girths(CONE)[::-1],
        [110, 99.5, 89.0, 78.6, 68.1, 57.6], 0.06),
    Row("cone: sum of girths", lambda: sum(girths(CONE)), 502.9, 0.1),
    Row("cone: six gores with 1/2 in seams, top, hem, length", lambda: gore(CONE), (6, 19.375, 38.2), 0.06),
    Row("cone: six tucks 3/4 deep", lambda: taken(TUCKS), 9, 1e-6),
    Row("drum: rim 36 across", lambda: girths(WHEEL)[-1], 113.1, 0.05),
    Row("drum: reach in front, at the sides, behind", lambda: [rim(k)[0] for k in (0, 2, 6, 4)],
        [9.5, 13.1, 13.1, 17.5], 0.05),
    Row("drum: rim lower in front, higher behind", lambda: [41 - rim(0)[1], rim(4)[1] - 41], [2.4, 3.8], 0.05),
    Row("drum: skirt in front and behind (sums of rounded numbers)",
        lambda: [shape(WHEEL).skirt.front / INCH, shape(WHEEL).skirt.back / INCH],
        [47.1, 61.3], 0.1),
    Row("side hoops: channels of half ovals 12 deep, reach 4, 6 1/2, 8", lambda: [side(k)[0] for k in range(3)],
        [15.9, 19.6, 22.1], 0.05),
    Row("side hoops: a steel is 1/2 shorter", lambda: [side(k)[1] for k in range(3)], [0.5] * 3, 1e-6),
    Row("side hoops: across at hips of 14, left each side of a 32 in door", door, [30, 1], 0.005),
    Row("bustle: six steels 3 1/2 apart", lambda: [*gaps(BUSTLE), sum(gaps(BUSTLE))],
        [3.5] * 5 + [17.5], 0.001),
    Row("crinolette: thirteen hoops 2 1/4 apart", lambda: gaps(CRINOLETTE), [2.25] * 12, 0.001),
    Row("crinolette: half hoops before the full one",
        lambda: [float(hoop.closed) for hoop in shape(CRINOLETTE).hoops], [0.0] * 12 + [1.0], 0),
    Row("flounce: 220 in six strips, cut 11 1/2, out of 69 of cloth 44 wide", lambda: cloth(FLOUNCE),
        (6, 11.5, 69), 1e-3),
    Row("flounce: gathered double on 110", lambda: flounced(FLOUNCE), 220, 1e-6),
    Row("channel of a 10 mm tube, mm", lambda: channel_mm(TUBE), 19.7, 0.05),
    Row("lap soldered", lambda: joined("lap soldered"), [1.0] * 5, 1e-9),
    Row("lap bound, 3 more a hoop", lambda: joined("lap bound"), [1.0 + 3.0] * 5, 1e-9),
    Row("sleeve crimped", lambda: joined("sleeve crimped"), [0.0] * 5, 1e-9),
    Row("lap bolted", lambda: joined("lap bolted"), [2.0] * 5, 1e-9),
    Row("lap riveted", lambda: joined("lap riveted"), [2.0] * 5, 1e-9),
    Row("hem 1/4 low at a tape that leans 32 degrees", lambda: moved(LEANING), 0.21, 0.005),
    Row("that tape's lean, degrees", lambda: degrees(shape(LEANING).tapes[1].marks[0].lean), 32, 0.3),
)


def flounced(text: str) -> float:
    """Length of the first flounce, in."""
    of = shape(text).petticoat
    assert of is not None
    return of.flounces[0].length / INCH


@pytest.mark.parametrize("row", TABLE, ids=lambda row: row.what)
def test_by_hand(row: Row) -> None:
    assert row.found() == pytest.approx(row.by_hand, abs=row.within)


@pytest.mark.parametrize(("k", "chord", "reach", "arc"), [(0, 14, 7, 22.0), (5, 12, 8, 23.2)])
def test_a_spring_through_the_same_three_points_is_shorter_than_the_circle_of_the_hand(
        k: int, chord: float, reach: float, arc: float) -> None:
    """By hand, as circles: chord 14 and reach 7 are half of one, 22.0; chord 12 and reach 8 lie on a radius of
    6.25, 23.2 of it. A spring is an elastica (its own integration: ``test_shape_bow_elastica_scipy``), flatter
    at its ends, and reaches as far with 2 to 6 % less steel."""
    found = spring(BUSTLE, k)
    assert found[:2] == pytest.approx([chord, reach], abs=1e-3)
    assert 0.94 * arc < found[2] < 0.98 * arc
    assert hypot(chord / 2, reach) * 2 < found[2]


def test_small_stuff_and_money_have_a_tenth_in_reserve() -> None:
    """Two bolts a hoop and a proof, 12 in all, and a tenth: 13.2, so 14 are bought one by one; 0.10 each, 1.40 in
    all; a tenth of the money once more."""
    text = ROUND.replace("lap soldered", "lap bolted") + (
        "  bolts: {kind: consumable, sold: [{count: 1, price: 0.10 USD}]}\n")
    supply = plan(text).supply
    line = next(line for line in supply.shopping if line.item == "bolts")
    assert line.packs == 14
    assert supply.cost.reserve == pytest.approx(supply.cost.total / 10)


def test_two_abreast_need_both_hems_and_a_flame_the_radius_and_three_feet() -> None:
    """110 round is 35.0 across: two are 70.0 in, 5 ft 10 in; 17.5 and 36 are 53.5 in, 4 ft 5 1/2 in."""
    page = plan_markdown(plan(ROUND))
    assert "Two abreast need 5 ft 10 in of floor" in page
    assert "**4 ft 5 1/2 in** from the middle" in page
