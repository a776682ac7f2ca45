"""The plain strips of a petticoat: waistband, casings and flounces, each to scale with its length and height."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, scale_bar
from hoopwright.render.drawing.page import figure, lines_of, write
from hoopwright.render.drawing.sheet import Sheet
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Petticoat
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record
from hoopwright.spec.model import Units
from hoopwright.supply.cloths import strips_of

LEFT = 18.0
ROW = 58.0
TOP = 66.0
LEAST = 5.0


@record(frozen=True, slots=True)
class Strip:
    """A strip as cut, pieces joined: its name, length and height, m; what is told beside it."""

    name: str
    length: float
    height: float
    told: str


def draw_strips(plan: Plan, petticoat: Petticoat) -> Figure:
    """Every strip to one scale along its length; thin ones are drawn a little too high."""
    units = plan.spec.units
    strips = strips_to_cut(plan, petticoat)
    scale = (PAGE - 2 * LEFT) / max(strip.length for strip in strips)
    notes = lines_of("Lengths are those of the strips as joined, ends included. Across to scale; a thin strip is"
                 " drawn a little too high.")
    tall = [max(LEAST, strip.height * scale) for strip in strips]
    foot = TOP + sum(ROW - 14 + high for high in tall)
    sheet = Sheet("strips", PAGE, foot + 17 * len(notes) + 44)
    heading(sheet, "Strips to cut", "length by height, turnings included")
    y = TOP
    for strip, high in zip(strips, tall, strict=True):
        sheet.text(LEFT, y, strip.name, size=TEXT, bold=True)
        sheet.text(LEFT + 96, y, _size(strip, units), size=SMALL)
        sheet.rect(LEFT, y + 8, strip.length * scale, high, fill=sheet.pattern("weave"), line=1.1)
        sheet.text(LEFT, y + high + 22, strip.told, size=SMALL)
        y += ROW - 14 + high
    write(sheet, notes, foot + 8)
    scale_bar(sheet, 18, foot + 8 + 17 * len(notes), scale, units)
    alt = f"Strips to cut: {'; '.join(f'{strip.name} {_size(strip, units)}' for strip in strips)}."
    return figure(plan, sheet, "Strips to cut", alt)


def strips_to_cut(plan: Plan, petticoat: Petticoat) -> tuple[Strip, ...]:
    """The strips of cloth or tape, from the waist down."""
    units = plan.spec.units
    found: list[Strip] = []
    band = plan.shape.waistband
    if not petticoat.drawstring:
        turn = length_text(plan.spec.allowances.waistband_turning, units)
        strip = next((placed for layout in plan.supply.layouts for placed in layout.placements
                      if placed.part == "waistband"), None)
        height = min(strip.width, strip.height) if strip is not None else band.width
        found.append(Strip("waistband", band.cut, height,
                           f"of {band.material}; {turn} turned in at each end, overlap"
                           f" {length_text(band.overlap, units)}"))
    for one in petticoat.channels:
        if one.strip:
            found.append(Strip(f"casing {one.hoop}", one.strip, one.height,
                               f"of {petticoat.casing}{_pieces(plan, f'casing {one.hoop}')}; sewn on to"
                               f" {length_text(one.width, units)} wide"))
    for flounce in petticoat.flounces:
        found.append(Strip(flounce.id, flounce.length, flounce.height,
                           f"of {flounce.material}{_pieces(plan, flounce.id)}; gathered to"
                           f" {length_text(flounce.girth, units)}, {length_text(flounce.depth, units)} deep"))
    return tuple(found)


def _pieces(plan: Plan, part: str) -> str:
    count = strips_of(plan.supply.layouts, part)
    return f", in {count} pieces" if count > 1 else ""


def _size(strip: Strip, units: Units) -> str:
    return f"{length_text(strip.length, units)} × {length_text(strip.height, units)}"
