"""The corded petticoat: straight breadths stiffened by rows of cord, and no hoop anywhere.

The cloth falls straight from the waistband's lower edge to the hem, as a cone through the mean round of the
waist and that of the hem; lengths down it are slants. A row of cord takes up cloth: in a sandwich each layer goes
over half the cord, pi d/2 where it lay flat over d, so (pi/2 - 1) d; in a tuck the cloth goes all round it, pi d.
What washing and starching still take is made up by dividing what is cut by 1 less the shrinkage.
"""

from __future__ import annotations

from math import atan2, cos, pi, sin

from hoopwright.shape.body import body_of
from hoopwright.shape.clearance import edge_checks
from hoopwright.shape.curves.ellipse import Ellipse
from hoopwright.shape.families import problems
from hoopwright.shape.families.petticoat import head
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.lengths import CORD_ENDS, waistband
from hoopwright.shape.model import CordedPetticoat, CordRow, Panel, Rule, Seam, Shape
from hoopwright.shape.outline import Oval
from hoopwright.shape.skirt import over_petticoats, skirt_over
from hoopwright.shape.waist import Waist
from hoopwright.source.quantity import length_text, printed_length
from hoopwright.spec.model import CordBuild, PanelBuild, Spec

SAMPLE = "sample"
"""The part that the sample's cloth is cut for."""


def sandwich_take_up(diameter: float) -> float:
    """What a cord between two layers takes of each layer's length, m: half its round less its thickness.

    >>> round(24 * sandwich_take_up(0.125), 1)  # inches: 24 cords of 1/8 in
    1.7
    """
    return (pi / 2 - 1) * diameter


def tuck_take_up(diameter: float) -> float:
    """What a cord in a tuck takes of the cloth's length, m: its whole round.

    >>> round(24 * tuck_take_up(0.125), 1)  # inches
    9.4
    """
    return pi * diameter


def draw_corded(spec: Spec, waist: Waist) -> Shape:
    """The shape of a corded petticoat. Raises :class:`Impossible`."""
    panels, cords = spec.build.panels, spec.build.cords
    if panels is None or cords is None:
        raise ValueError("a corded petticoat has breadths and cords")
    cloth = _petticoat(spec, waist, panels, cords)
    body = body_of(spec)
    highest = cloth.rows[-1]
    rings = [(highest.height, _ring(highest.girth)), (cloth.hem_height, _ring(cloth.hem))]
    skirt = over_petticoats(skirt_over(waist, rings, body, spec.skirt_off_floor), spec.load)
    return Shape(
        waist_heights=spec.wearer.waist_heights,
        waistband=waistband(spec),
        body=body.rows,
        skirt=skirt,
        checks=edge_checks(spec),
        panels=_panels(cloth, cords, spec.allowances.seam),
        corded=cloth,
    )


def _ring(girth: float) -> Oval:
    return Oval(Ellipse(girth / (2 * pi), girth / (2 * pi)))


def _petticoat(spec: Spec, waist: Waist, panels: PanelBuild, cords: CordBuild) -> CordedPetticoat:
    seam, count, hem = spec.allowances.seam, panels.count, spec.shape.hem_girth
    radius, out = spec.wearer.waist / (2 * pi), hem / (2 * pi)
    half = atan2(out - radius, waist.side_start[0] - spec.shape.hem_off_floor)
    usual = sandwich_take_up if cords.held == "sandwich" else tuck_take_up
    take = usual(cords.diameter) if cords.take_up is None else cords.take_up
    wide = _fitting(spec, panels, (hem / count + 2 * seam) / (1 - cords.shrinkage_round))
    drawn = panels.cord is not None
    above = head(spec, drawn)
    long = (spec.shape.length + cords.rows * take + above + seam) / (1 - cords.shrinkage)
    rows = _rows(spec, cords, take, wide * count, half)
    band = rows[-1].up + cords.diameter / 2 + seam
    facing = (band + cords.rows * take + 2 * seam) / (1 - cords.shrinkage) if cords.facing else 0.0
    return CordedPetticoat(
        count, panels.material.name, spec.shape.length, hem, spec.shape.hem_off_floor, half, wide, long, above, seam,
        cords.held, cords.material.name, cords.diameter, take, cords.take_up is not None, cords.rows * take,
        cords.shrinkage, cords.shrinkage_round, cords.facing.name if cords.facing else "", facing, band,
        panels.placket, hem + CORD_ENDS if drawn else 0.0, panels.cord.name if panels.cord else "", rows)


def _fitting(spec: Spec, panels: PanelBuild, wide: float) -> float:
    """The breadth as it can be cut: the cloth's own where the two are printed alike, for a seam may be a hair
    narrower. Raises when it is wider than the cloth."""
    cloth, seam = panels.material, spec.allowances.seam
    room = cloth.washed_width
    if printed_length(wide, spec.units) <= printed_length(room, spec.units):
        return min(wide, room)
    cords = spec.build.cords
    shrink = 1 - (cords.shrinkage_round if cords is not None else 0.0)
    each = room * shrink - 2 * seam
    enough = int(spec.shape.hem_girth / each - 1e-9) + 1 if each > 0 else 0
    raise Impossible(problems.breadths_too_few(
        panels.count, length_text(wide, spec.units), panels.material.name, length_text(room, spec.units),
        enough, "build.panels.breadths" in spec.stated))


def _rows(spec: Spec, cords: CordBuild, take: float, run: float, half: float) -> tuple[CordRow, ...]:
    """Every row from the hem up, numbered so. Raises when they do not fit below the waist."""
    seam, shrink = spec.allowances.seam, 1 - cords.shrinkage
    length, hem = spec.shape.length, spec.shape.hem_girth
    found: list[CordRow] = []
    up = 0.0
    for number, group in enumerate(cords.groups, start=1):
        for k in range(group.cords):
            up += group.gap if k == 0 else group.spacing
            if up + cords.diameter / 2 >= length - spec.build.waistband.width:
                raise Impossible(problems.cords_too_high(number, k, len(found), cords.rows,
                                                         length_text(length, spec.units)))
            at = (seam + up + (len(found) + 0.5) * take) / shrink
            found.append(CordRow(
                f"C{len(found) + 1}", number, up, at, run, run * (1 + cords.reserve),
                hem - 2 * pi * up * sin(half), spec.shape.hem_off_floor + up * cos(half)))
    return tuple(found)


def _panels(cloth: CordedPetticoat, cords: CordBuild, seam: float) -> tuple[Panel, ...]:
    """A breadth, and one of the inner layer; a line ruled at the lowest and the highest row of every group."""
    rules = tuple(_rule(row, cloth.wide) for number in range(1, cloth.groups + 1)
                  for row in dict.fromkeys((cloth.group(number)[0], cloth.group(number)[-1])))
    above = "drawstring edge" if cloth.drawstring else "waistband"
    breadth = Panel(
        "breadth", cloth.count, cloth.material, _box(cloth.wide, cloth.high), cloth.wide, cloth.high, "up",
        (Seam((1, 2), "next breadth", seam), Seam((3, 0), "next breadth", seam),
         Seam((2, 3), above, cloth.head), Seam((0, 1), "hem", cloth.turning)), rules)
    samples = _samples(cloth, cords)
    if not cloth.facing:
        return breadth, *samples
    facing = Panel(
        "facing", cloth.count, cloth.facing, _box(cloth.wide, cloth.facing_high), cloth.wide, cloth.facing_high,
        "up", (Seam((1, 2), "next facing", seam), Seam((3, 0), "next facing", seam),
               Seam((0, 1), "hem", cloth.turning), Seam((2, 3), "breadth", seam)), rules)
    return breadth, facing, *samples


def _samples(cloth: CordedPetticoat, cords: CordBuild) -> tuple[Panel, ...]:
    """Cloth of the sample, as many layers as the petticoat has: its cords across, each with its spacing and
    what it takes up."""
    long = cords.sample.length
    high = cords.sample.cords * (cords.groups[0].spacing + cloth.take_up) + 2 * cloth.turning

    def layers(part: str, count: int, material: str) -> Panel:
        return Panel(part, count, material, _box(long, high), long, high, "up")

    if cloth.facing in ("", cloth.material):
        return (layers(SAMPLE, 2 if cloth.facing else 1, cloth.material),)
    return layers(SAMPLE, 1, cloth.material), layers(f"{SAMPLE} facing", 1, cloth.facing)


def _box(wide: float, high: float) -> tuple[tuple[float, float], ...]:
    return ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))


def _rule(row: CordRow, wide: float) -> Rule:
    return Rule(row.id, ((0.0, row.flat), (wide, row.flat)), row.flat)
