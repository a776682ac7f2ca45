"""The chart of a wheel's spokes: one bar for each length, with the rings' marks from its first line."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, heading, scale_bar
from hoopwright.render.drawing.page import figure, lines_of, write
from hoopwright.render.drawing.sheet import PAPER, Sheet
from hoopwright.render.figure import Figure
from hoopwright.render.words import listed
from hoopwright.shape.model import Spoke, Wheel
from hoopwright.source.quantity import length_text

LEFT = 18.0
ROW = 76.0
TOP = 76.0


def draw_spokes(plan: Plan, wheel: Wheel) -> Figure:
    """Every different spoke to one scale; spokes alike share a bar."""
    units = plan.spec.units
    kinds = _kinds(plan, wheel)
    longest = max(spoke.cut for spoke in wheel.spokes)
    scale = (PAGE - 2 * LEFT) / longest
    end = (wheel.spokes[0].cut - wheel.spokes[0].marks[-1][1]) / 2
    notes = lines_of(
        f"Every mark is measured from 0, the line {length_text(end, units)} from one end, to the middle of the"
        f" ring. Hatched: the ends, bound down at the ring round the hole and at the rim.")
    foot = TOP + ROW * len(kinds)
    sheet = Sheet("spokes", PAGE, foot + 17 * len(notes) + 44)
    heading(sheet, "Spoke chart", "numbered from centre front by the wearer's left; 0 is the ring of the hole")
    for row, spokes in enumerate(kinds):
        _bar(sheet, plan, spokes, TOP + ROW * row, scale, end)
    write(sheet, notes, foot + 8)
    scale_bar(sheet, 18, foot + 8 + 17 * len(notes), scale, units)
    told = "; ".join(_told(plan, spokes) for spokes in kinds)
    alt = f"Spokes with the rings' marks from the first line: {told}."
    return figure(plan, sheet, "Spoke chart", alt)


def _kinds(plan: Plan, wheel: Wheel) -> list[list[Spoke]]:
    """Spokes whose printed lengths are the same together, in order."""
    found: dict[tuple[str, ...], list[Spoke]] = {}
    for spoke in wheel.spokes:
        key = tuple(length_text(at, plan.spec.units) for _, at in spoke.marks)
        found.setdefault((length_text(spoke.cut, plan.spec.units), *key), []).append(spoke)
    return list(found.values())


def _bar(sheet: Sheet, plan: Plan, spokes: list[Spoke], y: float, scale: float, end: float) -> None:
    """One bar: names and cut length above it, marks below."""
    units, spoke = plan.spec.units, spokes[0]
    right, zero = LEFT + spoke.cut * scale, LEFT + end * scale
    sheet.text(LEFT, y - 10, listed(one.id for one in spokes), size=TEXT, bold=True)
    names = f"cut {len(spokes)}, {length_text(spoke.cut, units)}"
    sheet.text(LEFT + 84, y - 10, names, size=SMALL)
    sheet.rect(LEFT, y, right - LEFT, 12, fill=PAPER, line=1.2)
    last = zero + spoke.marks[-1][1] * scale
    for x1, x2 in ((LEFT, zero), (last, right)):
        sheet.rect(x1, y, x2 - x1, 12, fill=sheet.pattern("hatch"), line=0.9)
    for hoop, at in spoke.marks:
        x = zero + at * scale
        sheet.line((x, y - 3), (x, y + 15), width=1.6)
        sheet.text(x, y + 28, hoop, size=SMALL, anchor="middle", bold=True)
        sheet.text(x, y + 42, length_text(at, units) if at else "0", size=SMALL, anchor="middle")


def _told(plan: Plan, spokes: list[Spoke]) -> str:
    """A kind of spoke in words."""
    units = plan.spec.units
    marks = ", ".join(f"{hoop} at {length_text(at, units)}" for hoop, at in spokes[0].marks[1:])
    names = listed(one.id for one in spokes)
    return f"{names} {length_text(spokes[0].cut, units)}: {marks}"
