"""Sketches of a petticoat with channels: tucks, applied casings, a hoop threaded, the waist pinned, flounces."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, upright
from hoopwright.render.drawing.sheet import GREY, PAPER
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    cloth,
    finish,
    first_part,
    flat,
    say,
    stitches,
    tell,
    the,
)
from hoopwright.render.figure import Figure


def sew_tucks(plan: Plan, action: str) -> Figure:
    """A tuck in section: cloth folded, stitched as wide as the channel, pressed down."""
    sheet, petticoat = begin(action, 190), the(plan.shape.petticoat, "petticoat")
    wide = say(plan, petticoat.channels[0].width)
    for y1, y2 in ((18, 62), (62, 150)):
        sheet.line((120, y1), (120, y2), width=2.4)
    sheet.path([(120, 62), (132, 66), (140, 84), (138, 108), (130, 116), (124, 108), (124, 84), (122, 68)],
               width=2.4)
    stitches(sheet, [(112, 67), (140, 67)])
    upright(sheet, 67, 116, 168, ("tuck", wide))
    tell(sheet, (118, 66), (100, 40), "line of stitches", anchor="end")
    tell(sheet, (128, 114), (100, 136), "fold, on the line", anchor="end")
    taken = say(plan, petticoat.takes)
    below(sheet, 172, f"Seen from the side. Each takes twice its width of cloth; all {taken}.")
    return finish(sheet, "Sewing the tucks", f"A tuck in section, {wide} from stitches to fold, pressed down.")


def apply_casings(plan: Plan, action: str) -> Figure:
    """A strip sewn on, its middle on the line, both edges stitched, its end open at the seam."""
    sheet, petticoat = begin(action, 190), the(plan.shape.petticoat, "petticoat")
    cloth(sheet, 14, 16, 236, 138)
    sheet.rect(14, 62, 236, 46, fill=PAPER, line=1.2)
    sheet.line((14, 85), (250, 85), stroke=GREY, width=0.9, dash="5 3")
    for y in (66.0, 104.0):
        stitches(sheet, [(18, y), (250, y)])
    upright(sheet, 66, 104, 262, ("", say(plan, petticoat.channels[0].width)))
    sheet.text(24, 81, "middle on the line", size=SMALL, halo=True)
    tell(sheet, (246, 94), (150, 138), "end open at the seam", anchor="middle")
    below(sheet, 174, "Inside of the cloth; both long edges turned in.")
    return finish(sheet, "Sewing a casing on",
                  f"A strip with both edges turned in, stitched on {say(plan, petticoat.channels[0].width)} wide"
                  " with its middle on the ruled line; its end stays open.")


def thread_hoop(plan: Plan, action: str) -> Figure:
    """A hoop in its channel, its ends coming out at the open seam and clamped."""
    sheet, name = begin(action, 176), first_part(plan, action)
    for x, wide in ((14.0, 112.0), (194.0, 112.0)):
        cloth(sheet, x, 24, wide, 112)
        sheet.rect(x, 60, wide, 34, fill=PAPER, line=1.1)
    flat(sheet, 112, 208, 77, 6)
    for x1, x2 in ((22, 112), (208, 298)):
        sheet.line((x1, 77), (x2, 77), stroke=GREY, width=2.4, dash="5 3")
    for x in (142, 174):
        sheet.rect(x, 67, 6, 20, fill="#bbb", line=1.2)
    sheet.text(160, 56, name, size=SMALL, anchor="middle", bold=True)
    sheet.text(160, 112, "clamped", size=SMALL, anchor="middle")
    sheet.text(160, 130, "seam open", size=SMALL, anchor="middle", fill=GREY)
    below(sheet, 162, f"{name} round, clamped: {say(plan, plan.shape.hoop(name).girth)}.")
    return finish(sheet, "Threading a hoop",
                  f"{name} in its channel, both ends coming out at the open last seam, clamped.")


def pin_waist(plan: Plan, action: str) -> Figure:
    """The upper edge pinned under a tape round the waist, what stands above it to spare."""
    own = plan.shape.corded or the(plan.shape.petticoat, "petticoat")
    sheet = begin(action, 176)
    cloth(sheet, 40, 22, 180, 116)
    sheet.rect(30, 56, 200, 14, fill=PAPER, line=1.3)
    for x in range(60, 216, 30):
        sheet.line((x, 48), (x + 6, 78), width=1.3)
    upright(sheet, 22, 63, 244, ("", say(plan, own.head)))
    sheet.text(130, 108, "down to the hem", size=SMALL, anchor="middle", halo=True)
    below(sheet, 162, f"A tape tied round the waist, {say(plan, plan.shape.waistband.girth)}; only pins.")
    return finish(sheet, "Pinning the waist",
                  f"The upper edge pinned under a tape at the waist, {say(plan, own.head)} above it.")


def sew_flounces(plan: Plan, action: str) -> Figure:
    """A flounce gathered and sewn on by its head."""
    sheet, petticoat = begin(action, 176), the(plan.shape.petticoat, "petticoat")
    flounce = petticoat.flounces[0]
    cloth(sheet, 30, 16, 200, 124)
    sheet.curve([(30 + 10 * k, 60 + (4 if k % 2 else 0)) for k in range(21)], width=1.4)
    sheet.curve([(30 + 10 * k, 140 + (6 if k % 2 else 0)) for k in range(21)], width=1.6)
    for k in range(1, 20, 2):
        sheet.line((30 + 10 * k, 64), (30 + 10 * k, 96), stroke=GREY, width=0.8)
    stitches(sheet, [(30, 66), (230, 66)])
    upright(sheet, 62, 142, 246, ("", say(plan, flounce.depth)))
    below(sheet, 164, f"Head {say(plan, flounce.up)} up from the finished hem.")
    return finish(sheet, "Sewing a flounce on",
                  f"A gathered strip sewn on by its head, {say(plan, flounce.up)} up from the finished hem.")


SKETCHES: dict[str, Sketch] = {
    "sew-tucks": sew_tucks,
    "apply-casings": apply_casings,
    "thread-hoop": thread_hoop,
    "pin-waist": pin_waist,
    "pin-gathers": pin_waist,
    "sew-flounces": sew_flounces,
}
