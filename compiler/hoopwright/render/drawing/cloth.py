"""Cloth laid out on its width: selvages upright, strips and panels in their places, what is left hatched."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip, text_width, wrap
from hoopwright.render.drawing.marks import SMALL, across, arrow_line, upright
from hoopwright.render.drawing.page import lines_of
from hoopwright.render.drawing.sheet import GREY, PAPER, Sheet
from hoopwright.source.quantity import length_text, long_length_text
from hoopwright.supply.model import ClothLayout, Placement

LEFT = 40.0
WIDEST = 320.0
LONGEST = 470.0


def layout_scale(layout: ClothLayout) -> float:
    """User units a metre."""
    return min(WIDEST / layout.width, LONGEST / _length(layout))


def layout_height(layout: ClothLayout) -> float:
    """Room the drawing takes on the page, with its measures."""
    return 44 + _length(layout) * layout_scale(layout) + 26


def layout_notes(plan: Plan, layout: ClothLayout) -> list[str]:
    """The layout in words, in lines that fit the page."""
    units = plan.spec.units
    said = f"{layout.material}: "
    need = long_length_text(layout.after_wash(layout.need), units)
    washed = f", {long_length_text(layout.washed, units)} once washed" if layout.shrinks else ""
    said += (f"buy {long_length_text(layout.buy, units)}{washed}, {need} needed"
             if layout.buy else f"{need} of a length on hand")
    if layout.strips:
        said += f"; {_count(layout.strips, 'strip')} cut {layout.direction} the cloth"
    if layout.joins:
        said += f", {_count(layout.joins, 'join')}"
    if layout.longer_way is not None:
        other = "along" if layout.direction == "across" else "across"
        said += f"; cut {other} it would need {long_length_text(layout.after_wash(layout.longer_way), units)}"
    said += ". " + "; ".join(_sizes(plan, layout)) + ". Hatched: left over."
    return lines_of(said)


def _sizes(plan: Plan, layout: ClothLayout) -> list[str]:
    """Every size of every part, and how many pieces have it: ``band: 2 of 45 in × 20 1/4 in``."""
    units = plan.spec.units
    alike: dict[tuple[str, str], int] = {}
    for placed in layout.placements:
        size = f"{length_text(placed.width, units)} × {length_text(placed.height, units)}"
        alike[placed.part, size] = alike.get((placed.part, size), 0) + 1
    parts: dict[str, list[str]] = {}
    for (part, size), count in alike.items():
        parts.setdefault(part, []).append(f"{count} of {size}")
    return [f"{part}: {', '.join(said)}" for part, said in parts.items()]


def draw_layout(sheet: Sheet, plan: Plan, layout: ClothLayout, y: float) -> None:
    """The cloth from y downward: width across the page, length down it."""
    units, scale = plan.spec.units, layout_scale(layout)
    top, wide, long = y + 30, layout.width * scale, _length(layout) * scale
    across(sheet, LEFT, LEFT + wide, y + 20, f"{length_text(layout.width, units)} wide")
    sheet.rect(LEFT, top, wide, long, fill=sheet.pattern("hatch"), line=1.0, kind="cloth")
    for at, placed in enumerate(layout.placements):
        _piece(sheet, plan, layout, placed, at, top, scale)
    for x in (LEFT, LEFT + wide):
        sheet.line((x, top), (x, top + long), width=3.0)
    if long > text_width("selvage", SMALL) + 8:
        middle = top + long / 2 + text_width("selvage", SMALL) / 2
        sheet.text(LEFT - 8, middle, "selvage", size=SMALL, fill=GREY, turned=True)
    right = LEFT + wide + 18
    taken = "washed" if layout.shrinks else "buy" if layout.buy else "on hand"
    words = (taken, *wrap(long_length_text(_length(layout), units), 64, SMALL))
    upright(sheet, top, top + long, right, words)
    if long > 90:
        arrow_line(sheet, (right + 78, top + long - 8), (right + 78, top + 8))
        sheet.text(right + 74, top + long - 12, "lengthwise", size=SMALL, fill=GREY, turned=True, halo=True)


def _length(layout: ClothLayout) -> float:
    """Length of cloth drawn, m: what is bought, once washed, or what of a length on hand is used."""
    return layout.washed


def _piece(sheet: Sheet, plan: Plan, layout: ClothLayout, placed: Placement, at: int, top: float,
           scale: float) -> None:
    """One strip or panel with its name, number and size."""
    x, y = LEFT + placed.x * scale, top + placed.y * scale
    wide, high = placed.width * scale, placed.height * scale
    if placed.outline:
        corners = [(LEFT + a * scale, top + b * scale) for a, b in placed.outline]
        sheet.path(corners, closed=True, fill=PAPER, width=1.3)
    else:
        sheet.rect(x, y, wide, high, fill=PAPER, line=1.3, kind="strip")
    same = [other for other in layout.placements if other.part == placed.part]
    number = sum(1 for other in layout.placements[:at] if other.part == placed.part) + 1
    name = placed.part if len(same) == 1 else f"{placed.part} {number} of {len(same)}"
    units = plan.spec.units
    size = f"{length_text(placed.width, units)} × {length_text(placed.height, units)}"
    upright_text = high > wide and wide < text_width(size, SMALL) + 8
    room = (high if upright_text else wide) - 8
    across_room = wide if upright_text else high
    lines = [clip(name, room, SMALL, bold=True)]
    lines += [size] if text_width(size, SMALL) <= room else []
    lines = lines if across_room > 36 else [clip(f"{name}: {size}", room, SMALL)] if across_room > 15 else []
    for index, line in enumerate(lines):
        shift = (index - (len(lines) - 1) / 2) * 16 + 4.3
        bold = index == 0 and across_room > 36
        if upright_text:
            sheet.text(x + wide / 2 + shift, y + high / 2 + text_width(line, SMALL, bold=bold) / 2, line,
                       size=SMALL, bold=bold, turned=True)
        else:
            sheet.text(x + wide / 2, y + high / 2 + shift, line, size=SMALL, anchor="middle", bold=bold)


def _count(number: int, word: str) -> str:
    """``1 strip``, ``3 strips``."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
