"""Panels of cloth that are no plain strips: each outline to scale, with dimensions, grain and lines."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import text_width, wrap
from hoopwright.render.drawing.marks import PAGE, SMALL, TEXT, across, heading, scale_bar, upright
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
    said = wrap(_said(plan, panel), PAGE - 28, SMALL)
    sheet = Sheet(name, PAGE, low + 62 + 17 * len(said) + 40)
    title = f"Panel: {panel.part}"
    heading(sheet, title, f"cut {panel.count} of {panel.material}{', mirrored' if panel.mirrored else ''}")

    def at(point: XY) -> XY:
        return LEFT + point[0] * scale, low - point[1] * scale

    places = [at(point) for point in panel.outline]
    sheet.path(places, closed=True, fill="#fff", width=1.8)
    beside = _beside(panel, [at(rule.points[-1])[1] for rule in panel.rules])
    for rule, row_y in zip(panel.rules, beside, strict=True):
        sheet.path([at(point) for point in rule.points], stroke=GREY, width=0.9, dash="5 3")
        x, y = at(rule.points[-1])
        side = length_text(rule.points[-1][0] - rule.points[0][0], units)
        level = abs(rule.points[0][1] - rule.points[-1][1]) < 1e-9 < rule.points[-1][0] - rule.points[0][0]
        words = f"{rule.name}: {side} wide, {length_text(rule.offset, units)} up" if level else rule.name
        if level:
            start = x + 12 + scale * max((seam.allowance for seam in panel.seams), default=0.0)
            if start + text_width(words, SMALL) > PAGE - 6:
                words = f"{rule.name}: {length_text(rule.offset, units)} up"
            sheet.text(start, row_y + 4, words, size=SMALL, halo=True)
        elif _inside(rule, panel):
            heights = [place for _, place in rule.points]
            x, y = at((max(across_ for across_, _ in rule.points), (min(heights) + max(heights)) / 2))
            sheet.text(x + 6, y + 4, words, size=SMALL, halo=True)
        else:
            sheet.text(at(rule.points[0])[0] + 5, low - 9, words, size=SMALL, halo=True)
    across(sheet, LEFT, LEFT + panel.width * scale, low + 40, length_text(panel.width, units))
    left, right = _upper(panel)
    if right - left < 0.98 * panel.width:
        across(sheet, LEFT + left * scale, LEFT + right * scale, TOP - 6, length_text(right - left, units))
    upright(sheet, TOP, low, LEFT - 82, ("over all", length_text(panel.height, units)))
    _grain(sheet, panel, (LEFT + panel.width * scale * 0.3, low), scale)
    for row, words in enumerate(said):
        sheet.text(14, low + 66 + 17 * row, words, size=SMALL)
    scale_bar(sheet, 18, low + 66 + 17 * len(said), scale, units)
    alt = (f"{panel.part}, {length_text(panel.width, units)} wide and {length_text(panel.height, units)} high"
           f" over all, {panel.count} of them, with {len(panel.rules)} lines ruled on it.")
    return Figure(name, title, alt, sheet.svg(f"{title}: {plan.spec.title}", alt))


def _beside(panel: Panel, places: list[float]) -> list[float]:
    """Where the words beside each rule go, so that none covers another; ``places`` of the rules, y down the
    page."""
    order = sorted(range(len(places)), key=lambda k: places[k])
    moved = spread([places[k] for k in order], [LINE] * len(order), 0.0, max(places, default=0.0) + 40)
    found = dict(zip(order, moved, strict=True))
    return [found[k] for k in range(len(places))]


def _inside(rule: Rule, panel: Panel) -> bool:
    """Whether an upright line ends well within the panel: a slit or a hole, named where it lies."""
    heights = [y for _, y in rule.points]
    return max(heights) - min(heights) < 0.7 * panel.height


def _upper(panel: Panel) -> tuple[float, float]:
    """The ends of a panel's uppermost edge, m across it."""
    ends = [x for x, y in panel.outline if y > panel.height * (1 - 1e-9)]
    return min(ends), max(ends)


def _grain(sheet: Sheet, panel: Panel, foot: XY, scale: float) -> None:
    """An arrow along the warp."""
    x, y = foot
    tall = panel.height * scale
    if panel.grain == "up":
        line = [(x, y - 0.2 * tall), (x, y - 0.6 * tall)]
        heads = [(x - 4, y - 0.6 * tall + 8), (x, y - 0.6 * tall), (x + 4, y - 0.6 * tall + 8)]
    else:
        line = [(x - 30, y - 0.4 * tall), (x + 30, y - 0.4 * tall)]
        heads = [(x + 22, y - 0.4 * tall - 4), (x + 30, y - 0.4 * tall), (x + 22, y - 0.4 * tall + 4)]
    sheet.path(line, width=1.2)
    sheet.path(heads, width=1.2)
    sheet.text(line[0][0] + 8, (line[0][1] + line[1][1]) / 2 + 14, "grain", size=TEXT, halo=True)


def _said(plan: Plan, panel: Panel) -> str:
    """Its seams and their allowances."""
    units = plan.spec.units
    seams = dict.fromkeys(f"{length_text(seam.allowance, units)} towards {seam.to}" for seam in panel.seams)
    words = f"turnings are in the outline: {', '.join(seams)}" if seams else "turnings are in the outline"
    return f"{words}; dashed: lines to rule on it."
