"""The steels of one side hoop from above: the half oval wished, the steel by itself, the tie inside."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar, upright
from hoopwright.render.drawing.page import figure, lines_of, write
from hoopwright.render.drawing.sheet import GREY, PAPER, XY, Sheet
from hoopwright.render.figure import Figure
from hoopwright.shape.model import SideChannel, SidePair
from hoopwright.source.quantity import length_text

TOP = 74.0
COLUMNS = 3


def draw_steels(plan: Plan, pair: SidePair) -> Figure:
    """Every hoop of the left side to one scale, the hip on the left of each; the right side is its mirror."""
    units, count, steel = plan.spec.units, len(pair.channels), named(plan.spec, "steel")
    columns = min(COLUMNS, count)
    cell = (PAGE - 20) / columns
    widest = max(max(one.wished, one.stands) for one in pair.channels)
    scale = min((cell - 56) / widest, 170 / pair.front_to_back)
    tall = pair.front_to_back * scale
    rows = -(-count // columns)
    high = tall + 128
    notes = lines_of(f"Firm: the half oval wished, as long as its channel. Dashed: where the {steel} lies when only its"
                 " ends are held. Thin: the tie, from its front end to its back end along the inner panel. The"
                 " right side is the mirror of the left.")
    sheet = Sheet("steels", PAGE, TOP + rows * high + 17 * len(notes) + 40)
    heading(sheet, f"The {steel}s from above", "front at the bottom; the hip on the left of each")
    ties = {tie.hoop: tie for tie in plan.shape.ties}
    for at, one in enumerate(pair.channels):
        left = 10 + cell * (at % columns) + 46
        y = TOP + high * (at // columns) + tall / 2
        _steel(sheet, plan, pair, one, (left, y), scale)
        told = (f"{steel} {length_text(one.steel, units)}", f"channel {length_text(one.width, units)}",
                f"tie {length_text(ties[one.hoops[0]].length, units)}",
                f"by itself out {length_text(one.stands, units)}" if one.stands else "by itself flat")
        for row, words in enumerate(told):
            sheet.text(left - 40, y + tall / 2 + 42 + 15 * row, words, size=SMALL)
    foot = TOP + rows * high + 4
    write(sheet, notes, foot)
    scale_bar(sheet, 18, foot + 17 * len(notes), scale, units)
    told_all = "; ".join(
        f"{' and '.join(one.hoops)} out {length_text(one.wished, units)}, {steel} {length_text(one.steel, units)},"
        f" channel {length_text(one.width, units)}" for one in pair.channels)
    alt = f"Each {steel} from above with its tie: {told_all}."
    return figure(plan, sheet, f"The {steel}s from above", alt)


def _steel(sheet: Sheet, plan: Plan, pair: SidePair, one: SideChannel, at: XY, scale: float) -> None:
    """One hoop: its oval, the steel by itself, tie and reach."""
    x, y = at
    half = pair.front_to_back / 2 * scale
    turns = [pi * k / 36 for k in range(37)]
    sheet.path([(x + one.wished * scale * sin(t), y - half * cos(t)) for t in turns], width=2.2)
    hoop = plan.shape.hoop(one.hoops[0])
    if hoop.real:
        sheet.path([(x + (a - pair.hip) * scale, y + b * scale) for a, b in hoop.real], stroke=GREY,
                   width=1.0, dash="4 3")
    sheet.line((x, y - half), (x, y + half), width=1.2)
    for end in (y - half, y + half):
        sheet.ellipse((x, end), 2.8, 2.8, fill=PAPER, width=1.2)
    across(sheet, x, x + one.wished * scale, y + 5, length_text(one.wished, plan.spec.units))
    upright(sheet, y - half, y + half, x - 14, (), side="left")
    sheet.text(x - 18, y - half - 8, length_text(pair.front_to_back, plan.spec.units), size=SMALL,
               anchor="middle")
    sheet.text(x - 40, y + half + 24, " and ".join(one.hoops), size=TEXT, bold=True)
