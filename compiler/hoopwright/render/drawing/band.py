"""The hem band: its strips on the cloth, and the finished band in section, a hoop in each channel."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.cloth import draw_layout, layout_height, layout_notes
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, leader, upright
from hoopwright.render.drawing.page import figure, write
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, Sheet
from hoopwright.render.figure import Figure
from hoopwright.shape.model import HemBand
from hoopwright.source.quantity import length_text
from hoopwright.supply.model import ClothLayout

SECTION = 296.0
TALL = 206.0
CHANNEL = 44.0


def draw_band(plan: Plan, band: HemBand) -> Figure:
    """Cloth layouts that hold the band's strips, then the band in section."""
    mine = [layout for layout in plan.supply.layouts if any(p.part == "band" for p in layout.placements)]
    notes = [layout_notes(plan, layout) for layout in mine]
    high = sum(layout_height(layout) + 17 * len(lines) for layout, lines in zip(mine, notes, strict=True))
    sheet = Sheet("band", PAGE, 56 + high + 10 * len(mine) + SECTION)
    units = plan.spec.units
    heading(sheet, "Hem band", f"a strip {length_text(band.height, units)} high and "
                               f"{length_text(band.length, units)} long, folded double")
    y = 52.0
    for layout, lines in zip(mine, notes, strict=True):
        draw_layout(sheet, plan, layout, y)
        y += layout_height(layout)
        write(sheet, lines, y)
        y += 17 * len(lines) + 10
    _section(sheet, plan, band, y)
    return figure(plan, sheet, "Hem band: cloth layout and section", _alt(plan, band, mine), told="Hem band")


def draw_cloths(plan: Plan) -> tuple[Figure, ...]:
    """Layouts of every other cloth that is bought and cut, one figure each."""
    others = [layout for layout in plan.supply.layouts
              if not any(placed.part == "band" for placed in layout.placements)]
    figures = []
    for at, layout in enumerate(others, start=1):
        lines = layout_notes(plan, layout)
        sheet = Sheet(f"cloth-{at}", PAGE, 56 + layout_height(layout) + 17 * len(lines) + 6)
        heading(sheet, "Cloth layout")
        draw_layout(sheet, plan, layout, 40.0)
        write(sheet, lines, 44 + layout_height(layout))
        alt = " ".join(lines)
        figures.append(Figure(f"cloth-{at}", f"Cloth layout: {layout.material}", alt,
                              sheet.svg("Cloth layout", alt)))
    return tuple(figures)


def _section(sheet: Sheet, plan: Plan, band: HemBand, y: float) -> None:
    """The band cut through: both edges to one scale, the middle left out, the cloth drawn too thick."""
    stock = plan.spec.build.hoops.material.section
    scale = CHANNEL / band.channel
    x, gap, top = 170.0, 32.0, y + 56
    low, middle = top + TALL, top + TALL / 2
    seam = min(band.seam * scale, TALL * 0.3)
    sheet.text(14, y + 26, "The band in section", size=TEXT, bold=True)
    sheet.text(160, y + 26, "its two edges; the middle is left out", size=SMALL, fill=GREY)
    fold = [(x, middle - 9), (x, top + 9), (x + 3, top + 2), (x + gap / 2, top), (x + gap - 3, top + 2),
            (x + gap, top + 9), (x + gap, middle - 9)]
    sheet.path(fold, width=2.4)
    for side in (0, 1):
        edge, turn = x + side * gap, x + gap / 2 + (side - 0.5) * 18
        sheet.path([(edge, middle + 9), (edge, low - 4), (edge + (turn - edge) / 3, low), (turn, low - 3),
                    (turn, low - seam)], width=2.4)
        for at in (middle - 9, middle + 9):
            broken = [(edge - 6, at + 3), (edge - 2, at - 3), (edge + 2, at + 3), (edge + 6, at - 3)]
            sheet.path(broken, width=1.0)
    for line in (top + CHANNEL, low - CHANNEL):
        sheet.line((x - 7, line), (x + gap + 7, line), width=1.3, dash="3 2")
    wide, high = min(9.0, max(3.0, stock.depth * scale)), max(6.0, stock.height * scale)
    centres = (top + CHANNEL / 2, low - CHANNEL / 2)
    for centre, name in zip(centres, (band.upper, band.lower), strict=True):
        sheet.rect(x + gap / 2 - wide / 2, centre - high / 2, wide, high, fill=INK, stroke=PAPER, line=0.8)
        leader(sheet, [(x + gap / 2 + 2, centre), (x + gap + 22, centre)])
        sheet.text(x + gap + 26, centre + 4.3, name, size=SMALL, bold=True)
    upright(sheet, centres[0], centres[1], x - 36,
            ("hoop centre", "to hoop centre", length_text(band.depth, plan.spec.units)), side="left")
    _section_words(sheet, plan, band, x + gap, (top, middle, low))


def _section_words(sheet: Sheet, plan: Plan, band: HemBand, x: float, at: tuple[float, float, float]) -> None:
    """What the section's lines are, with leaders."""
    units = plan.spec.units
    top, middle, low = at
    stitched = f"stitched {length_text(band.channel, units)} from the edge"
    folded = length_text((band.height - 2 * band.seam) / 2, units)
    told = (
        ((x - 6, top), top - 8, "fold"),
        ((x + 7, top + CHANNEL), top + CHANNEL + 14, stitched),
        ((x + 1, middle + 18), middle + 14, f"folded height {folded}"),
        ((x + 7, low - CHANNEL), low - CHANNEL - 8, stitched),
        ((x - 4, low), low + 14, f"long seam, {length_text(band.seam, units)} turned in on each side"),
    )
    for start, y, words in told:
        leader(sheet, [start, (x + 22, y), (x + 28, y)])
        sheet.text(x + 32, y + 4.3, words, size=SMALL)


def _alt(plan: Plan, band: HemBand, layouts: list[ClothLayout]) -> str:
    """The figure in words."""
    units = plan.spec.units
    strips = sum(layout.strips for layout in layouts)
    return (f"Strips of the hem band on the cloth ({strips} in all), each "
            f"{length_text(band.height, units)} high; below, the folded band in section "
            f"with {band.upper} and {band.lower} in channels "
            f"{length_text(band.depth, units)} apart.")


