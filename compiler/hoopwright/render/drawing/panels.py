"""Panels of cloth that are no plain strips: each outline to scale, with dimensions, grain and lines."""

from __future__ import annotations

from itertools import pairwise

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import Box, free, text_width
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar, upright
from hoopwright.render.drawing.page import figure, lines_of, write
from hoopwright.render.drawing.sheet import GREY, XY, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Panel, Rule
from hoopwright.source.quantity import length_text

WIDE = 250.0
TALL = 420.0
LEFT = 104.0
TOP = 86.0
LINE = 14.5


def draw_panels(plan: Plan) -> tuple[Figure, ...]:
    """One figure for each different panel, ``panel-1``, ``panel-2`` ..."""
    drawn = [panel for panel in plan.shape.panels if not panel.part.startswith("sample")]
    return tuple(_panel(plan, panel, number) for number, panel in enumerate(drawn, 1))


def _panel(plan: Plan, panel: Panel, number: int) -> Figure:
    units, name = plan.spec.units, f"panel-{number}"
    scale = min(WIDE / panel.width, TALL / panel.height)
    low = TOP + panel.height * scale
    named = _labels(plan, panel, scale)
    told = [] if named else [_measures(plan, panel, rule) for rule in sorted(panel.rules, key=lambda one: -one.offset)
                            if _level(rule)]
    told += [_measures(plan, panel, rule) for rule in panel.rules if not _level(rule)]
    said = lines_of(*told, _said(plan, panel))
    sheet = Sheet(name, PAGE, low + 62 + 17 * len(said) + 40)
    title = f"Panel: {panel.part}"
    heading(sheet, title, f"cut {panel.count} of {panel.material}{', mirrored' if panel.mirrored else ''}")

    def at(point: XY) -> XY:
        return LEFT + point[0] * scale, low - point[1] * scale

    sheet.path([at(point) for point in panel.outline], closed=True, fill="#fff", width=1.8)
    beside = _apart({rule.name: at(rule.points[-1])[1] for rule in panel.rules if _level(rule)})
    for rule in panel.rules:
        sheet.path([at(point) for point in rule.points], stroke=GREY, width=0.9, dash="5 3")
        if _level(rule):
            x, row_y = at(rule.points[-1])[0], beside[rule.name]
            lines = named.get(rule.name, (rule.name,))
            for row, words in enumerate(lines):
                sheet.text(x + _out(panel, scale), row_y + 4 + 14 * row - 7 * (len(lines) - 1), words, size=SMALL,
                           halo=True)
        elif _inside(rule, panel):
            heights = [place for _, place in rule.points]
            x, y = at((max(across_ for across_, _ in rule.points), (min(heights) + max(heights)) / 2))
            sheet.text(x + 6, y + 4, rule.name, size=SMALL, halo=True)
        else:
            sheet.text(at(rule.points[0])[0] + 5, low - 9, rule.name, size=SMALL, halo=True)
    across(sheet, LEFT, LEFT + panel.width * scale, low + 40, length_text(panel.width, units))
    left, right = _upper(panel)
    if right - left < 0.98 * panel.width and right - left > 0.05 * panel.width:
        across(sheet, LEFT + left * scale, LEFT + right * scale, TOP - 6, length_text(right - left, units))
    upright(sheet, TOP, low, LEFT - 82, ("over all", length_text(panel.height, units)))
    _grain(sheet, panel, low, scale)
    write(sheet, said, low + 66)
    scale_bar(sheet, 18, low + 66 + 17 * len(said), scale, units)
    many = len(panel.rules)
    ruled = f", with {many} {'line' if many == 1 else 'lines'} ruled on it" if many else ""
    alt = (f"{panel.part}, {length_text(panel.width, units)} wide and {length_text(panel.height, units)} high"
           f" over all, {panel.count} of them{ruled}.")
    return figure(plan, sheet, title, alt)


def _apart(places: dict[str, float]) -> dict[str, float]:
    """Where the words beside each line go, so that none covers another; ``places`` of the lines, y down the
    page."""
    order = sorted(places, key=lambda name: places[name])
    low = max(places.values(), default=0.0) + 40
    moved = spread([places[name] for name in order], [LINE] * len(order), 0.0, low)
    return dict(zip(order, moved, strict=True))


def _level(rule: Rule) -> bool:
    """Whether a line runs across the panel from side to side."""
    (x1, y1), (x2, y2) = rule.points[0], rule.points[-1]
    return abs(y1 - y2) < 1e-9 < x2 - x1


def _out(panel: Panel, scale: float) -> float:
    """From a line's end to its label, clear of the seam's allowance."""
    return 12 + scale * max((seam.allowance for seam in panel.seams), default=0.0)


def _labels(plan: Plan, panel: Panel, scale: float) -> dict[str, tuple[str, ...]]:
    """What stands beside each line across: in one line of text or in two, none where there is no room."""
    level = sorted((rule for rule in panel.rules if _level(rule)), key=lambda rule: -rule.offset)
    gaps = [(a.offset - b.offset) * scale for a, b in pairwise(level)]
    room = {rule.name: PAGE - 6 - LEFT - rule.points[-1][0] * scale - _out(panel, scale) for rule in level}
    for split in (False, True):
        found = {rule.name: _beside(plan, rule, split) for rule in level}
        apart = 30.0 if split else 15.0
        if all(gap >= apart for gap in gaps) and all(
                text_width(words, SMALL) <= room[name] for name, lines in found.items() for words in lines):
            return found
    return {}


def _beside(plan: Plan, rule: Rule, split: bool) -> tuple[str, ...]:
    """A line's name, its length from seam to seam and its place."""
    wide = length_text(rule.points[-1][0] - rule.points[0][0], plan.spec.units)
    up = length_text(rule.offset, plan.spec.units)
    if split:
        return f"{rule.name}:", f"{wide} wide, {up} up"
    return (f"{rule.name}: {wide} wide, {up} up",)


def _measures(plan: Plan, panel: Panel, rule: Rule) -> str:
    """A line in words: how long and where, from the left and the lower cut edge."""
    units = plan.spec.units
    if _level(rule):
        return f"{_beside(plan, rule, False)[0]}."
    xs, ys = [x for x, _ in rule.points], [y for _, y in rule.points]
    wide, high = max(xs) - min(xs), max(ys) - min(ys)
    up = f"from {length_text(min(ys), units)} to {length_text(max(ys), units)} up"
    if wide < 1e-9:
        return f"{rule.name}: {length_text(high, units)} long, {up}, {length_text(xs[0], units)} from the left."
    return (f"{rule.name}: {length_text(wide, units)} wide and {length_text(high, units)} high, {up},"
            f" from {length_text(min(xs), units)} to {length_text(max(xs), units)} from the left.")


def _inside(rule: Rule, panel: Panel) -> bool:
    """Whether an upright line ends well within the panel: a slit or a hole, named where it lies."""
    heights = [y for _, y in rule.points]
    return max(heights) - min(heights) < 0.7 * panel.height


def _upper(panel: Panel) -> tuple[float, float]:
    """The ends of a panel's uppermost edge, m across it."""
    ends = [x for x, y in panel.outline if y > panel.height * (1 - 1e-9)]
    return min(ends), max(ends)


def _grain(sheet: Sheet, panel: Panel, low: float, scale: float) -> None:
    """An arrow along the warp, at the first place where it runs through no words; ``low`` is the lower edge's y."""
    wide, tall = panel.width * scale, panel.height * scale
    places = [_arrow(panel, LEFT + wide * share, low - mid * tall, 0.2 * tall)
              for share, mid in ((0.3, 0.4), (0.3, 0.28), (0.5, 0.4), (0.5, 0.28), (0.65, 0.4))]
    line = next((one for one in places if free(_room(one), sheet.boxes)), places[0])
    (x1, y1), (x2, y2) = line
    heads = [(x2 - 4, y2 + 8), (x2, y2), (x2 + 4, y2 + 8)] if panel.grain == "up" else [
        (x2 - 8, y2 - 4), (x2, y2), (x2 - 8, y2 + 4)]
    sheet.path(line, width=1.2)
    sheet.path(heads, width=1.2)
    sheet.text(x1 + 8, (y1 + y2) / 2 + 14, "grain", size=TEXT, halo=True)


def _arrow(panel: Panel, x: float, y: float, half: float) -> list[XY]:
    """Foot and tip of an arrow along the warp round (x, y)."""
    return [(x, y + half), (x, y - half)] if panel.grain == "up" else [(x - 30, y), (x + 30, y)]


def _room(line: list[XY]) -> Box:
    """The room that an arrow takes."""
    (x1, y1), (x2, y2) = line
    return Box(x1 - 4, y2 - 4, x2 + 4, y1 + 4)


def _said(plan: Plan, panel: Panel) -> str:
    """Its seams and their allowances."""
    units = plan.spec.units
    seams = dict.fromkeys(f"{length_text(seam.allowance, units)} towards {seam.to}" for seam in panel.seams)
    words = f"Turnings are in the outline: {', '.join(seams)}" if seams else "Turnings are in the outline"
    slit = any(rule.name.startswith("slit") for rule in panel.rules)
    front = " The front is at the top." if slit else ""
    lines = "; dashed: lines to rule on it, lengths from seam to seam" if panel.rules else ""
    return f"{words}{lines}.{front}"
