"""Sketches of the hem band: strips joined, channels sewn, hoops threaded, the band closed."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip
from hoopwright.render.drawing.marks import SMALL, upright
from hoopwright.render.drawing.sheet import GREY, PAPER, Sheet
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    cloth,
    finish,
    flat,
    say,
    stitches,
    tell,
    the,
    torn,
)
from hoopwright.render.figure import Figure


def join_band(plan: Plan, action: str) -> Figure:
    """Two strips of the band, selvage to selvage, whip stitched."""
    sheet, band = begin(action, 172), the(plan.shape.band, "hem band")
    top, low, middle = 22.0, 118.0, 150.0
    for x, out in ((28.0, 28.0), (middle + 1, 272.0)):
        cloth(sheet, x, top, 121, low - top)
        torn(sheet, out, top, low)
    for y in range(int(top) + 6, int(low) - 2, 9):
        sheet.line((middle - 7, y + 5), (middle + 8, y - 2), width=1.6)
    for x in (middle - 2.5, middle + 3.5):
        sheet.line((x, top), (x, low), width=2)
    upright(sheet, top, low, 286, ())
    sheet.text(304, 70 + 52, say(plan, band.height), size=SMALL, turned=True, halo=True)
    tell(sheet, (middle - 3, low), (136, 136), "selvage to selvage, flat whip stitch", anchor="middle")
    below(sheet, 160, f"In all {say(plan, band.length)} long; the last join stays open.")
    return finish(
        sheet,
        "Joining the strips of the band",
        "Two strips of the hem band laid selvage to selvage and whip stitched flat.",
    )


def sew_channels(plan: Plan, action: str) -> Figure:
    """The band folded and sewn: fold above, long seam below, a channel along each edge."""
    sheet, band = begin(action, 190), the(plan.shape.band, "hem band")
    _folded(sheet, 24, 176)
    upright(sheet, 40, 120, 196, ("between the", "channels' middles", say(plan, band.depth)))
    tell(sheet, (150, 22), (196, 24), "fold")
    tell(sheet, (150, 137), (196, 152), "long seam, turned in")
    sheet.text(100, 84, f"channels {say(plan, band.channel)} deep", size=SMALL, anchor="middle", halo=True)
    below(sheet, 176, "Stitched along the broken lines; ends stay open.")
    return finish(
        sheet,
        "Sewing the channels",
        f"The folded band with a channel {say(plan, band.channel)} deep along "
        f"each edge, {say(plan, band.depth)} apart from middle to middle.",
    )


def thread_channel(plan: Plan, action: str) -> Figure:
    """The open hoops in their channels, their ends coming out where the band is open."""
    sheet, band = begin(action, 176), the(plan.shape.band, "hem band")
    for y in (40.0, 120.0):
        flat(sheet, 104, 216, y, 6)
    _folded(sheet, 14, 118)
    _folded(sheet, 202, 306, left=True)
    for y in (40.0, 120.0):
        sheet.line((30, y), (118, y), stroke=GREY, width=2.4, dash="5 3")
        sheet.line((202, y), (290, y), stroke=GREY, width=2.4, dash="5 3")
        sheet.line((160, y - 7), (160, y + 7), width=2, stroke=PAPER)
    for y, name in ((40.0, band.upper), (120.0, band.lower)):
        sheet.text(160, y + 20, clip(name, 76, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)
    sheet.text(160, 84, "band open", size=SMALL, anchor="middle", fill=GREY)
    below(sheet, 162, "Thread both hoops open; they are joined in here.")
    return finish(
        sheet,
        "Threading the band",
        f"{band.upper} and {band.lower} in their channels, ends coming out at the open join of the band.",
    )


def close_band(plan: Plan, action: str) -> Figure:
    """The band drawn over both joins and closed."""
    sheet, band = begin(action, 176), the(plan.shape.band, "hem band")
    _folded(sheet, 14, 306, both=True)
    for y in (40.0, 120.0):
        sheet.line((20, y), (300, y), stroke=GREY, width=2.4, dash="5 3")
        sheet.rect(146, y - 5, 28, 10, fill=sheet.pattern("hatch"), line=1.0)
    for y in range(26, 134, 9):
        sheet.line((153, y + 5), (168, y - 2), width=1.6)
    tell(sheet, (174, 42), (212, 68), "joins inside")
    tell(sheet, (168, 96), (212, 98), "last join closed")
    below(sheet, 162, f"Lies flat all round: {say(plan, band.length)}.")
    return finish(
        sheet, "Closing the band", "The band drawn over the joins of both hoops, its last join sewn."
    )


def _folded(sheet: Sheet, x1: float, x2: float, *, left: bool = False, both: bool = False) -> None:
    """A stretch of the folded band seen flat: fold above, seam below, two rows of stitches."""
    cloth(sheet, x1, 22, x2 - x1, 116)
    sheet.line((x1, 22), (x2, 22), width=2.6)
    for y in (58.0, 102.0):
        stitches(sheet, [(x1, y), (x2, y)])
    if both:
        torn(sheet, x1, 22, 138)
        torn(sheet, x2, 22, 138)
    else:
        torn(sheet, x2 if left else x1, 22, 138)


SKETCHES: dict[str, Sketch] = {
    "join-band": join_band,
    "sew-channels": sew_channels,
    "thread-channel": thread_channel,
    "close-band": close_band,
}
