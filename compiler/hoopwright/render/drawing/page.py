"""The page of a figure: lines of words under the drawing, the look straight down, and the whole as a figure."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import wrap
from hoopwright.render.drawing.marks import PAGE, SMALL, across
from hoopwright.render.drawing.sheet import GREY, XY, Sheet
from hoopwright.render.figure import Figure
from hoopwright.source.quantity import length_text
from hoopwright.source.record import record

MARGIN = 14.0
FROM_ABOVE = "front at the bottom; the wearer's left is on the right of the page"
"""How a look straight down lies on the page."""


@record(frozen=True, slots=True)
class Above:
    """A look straight down: ``scale`` user units are a metre, the waist's centre is at (``x``, ``y``)."""

    scale: float
    x: float
    y: float

    def at(self, left: float, forward: float) -> XY:
        """Page place of a point so far to the wearer's left and forward, m; forward is down the page."""
        return self.x + left * self.scale, self.y + forward * self.scale


def lines_of(*paragraphs: str) -> list[str]:
    """Words in lines that fit between the page's margins."""
    return [line for words in paragraphs for line in wrap(words, PAGE - 2 * MARGIN, SMALL)]


def write(sheet: Sheet, lines: Sequence[str], y: float, step: float = 17.0) -> None:
    """Lines of words from the left margin, the first on the baseline y."""
    for at, line in enumerate(lines):
        sheet.text(MARGIN, y + step * at, line, size=SMALL)


def jambs(sheet: Sheet, plan: Plan, left: float, right: float, ends: tuple[float, float], y: float) -> None:
    """Both jambs of the stated door at ``left`` and ``right``, from one end to the other, its clear width at y."""
    for x in (left, right):
        sheet.line((x, ends[0]), (x, ends[1]), stroke=GREY, width=1.2, dash="9 4")
    door = plan.spec.limits.door
    across(sheet, left, right, y, "" if door is None else f"door {length_text(door, plan.spec.units)} clear")


def waist_and_hips(sheet: Sheet, above: Above, hip: tuple[float, float], waist: tuple[float, float]) -> None:
    """The body from above by (width, depth), m: the hips dashed, the waist firm inside them and named."""
    for (width, depth), fill, dash in ((hip, "#f2f2f2", "5 3"), (waist, "#dedede", "")):
        sheet.ellipse(above.at(0, 0), width / 2 * above.scale, depth / 2 * above.scale, fill=fill,
                      stroke=GREY, width=1.0, dash=dash)
    sheet.text(*above.at(0, 0), "waist", size=SMALL, anchor="middle")


def figure(plan: Plan, sheet: Sheet, title: str, alt: str, told: str = "") -> Figure:
    """The finished figure under its sheet's name; the drawing itself is entitled ``told`` (else ``title``) and the
    plan's own title."""
    named = told or title
    whole = f"{named}: {plan.spec.title}" if plan.spec.title else named
    return Figure(sheet.name, title, alt, sheet.svg(whole, alt))
