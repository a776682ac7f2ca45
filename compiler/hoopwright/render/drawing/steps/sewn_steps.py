"""Sketches of cut cloth and of a petticoat's long seams: lines marked, seams, placket, waistband, drawstring."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, across, upright
from hoopwright.render.drawing.sheet import GREY, PAPER, XY
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    cloth,
    finish,
    say,
    stitches,
    tell,
    the,
)
from hoopwright.render.figure import Figure


def cut_casings(plan: Plan, action: str) -> Figure:
    """A casing cut, its ends wrapped against fraying, its name on it."""
    hoops = [hoop for hoop in plan.shape.hoops if hoop.casing]
    sheet, hoop = begin(action, 120), (hoops or list(plan.shape.hoops))[-1]
    sheet.rect(16, 44, 288, 20, fill=sheet.pattern("weave"), line=1.3)
    for x in (16, 288):
        sheet.rect(x, 42, 16, 24, fill="#ccc", line=1.2)
    across(sheet, 16, 304, 32, f"cut {say(plan, hoop.casing)}")
    sheet.text(160, 59, hoop.id, size=SMALL, anchor="middle", bold=True, halo=True)
    tell(sheet, (24, 66), (40, 92), "sticky tape, both ends")
    below(sheet, 114, "Longer than its hoop: it shortens when pushed on.")
    return finish(sheet, "Cutting a casing",
                  f"The casing of {hoop.id} laid straight, {say(plan, hoop.casing)} long, both ends wrapped in"
                  " sticky tape.")


def cut_waistband(plan: Plan, action: str) -> Figure:
    """The waistband's strip: turnings, waist, overlap."""
    sheet, band = begin(action, 140), plan.shape.waistband
    turn = plan.spec.allowances.waistband_turning
    for x1, x2, fill in ((16, 44, sheet.pattern("hatch")), (44, 226, PAPER), (226, 276, "#eee"),
                         (276, 304, sheet.pattern("hatch"))):
        sheet.rect(x1, 46, x2 - x1, 24, fill=fill, line=1.2)
    across(sheet, 16, 304, 32, f"cut {say(plan, band.cut)}")
    across(sheet, 44, 226, 94, f"waist {say(plan, band.girth)}")
    tell(sheet, (252, 68), (270, 94), f"overlap {say(plan, band.overlap)}", anchor="middle")
    tell(sheet, (30, 68), (16, 118), f"turned in, {say(plan, turn)} at each end")
    below(sheet, 136, "Not to scale.")
    return finish(sheet, "Cutting the waistband",
                  f"The waistband's strip, {say(plan, band.cut)}: the waist {say(plan, band.girth)}, the"
                  f" overlap {say(plan, band.overlap)} and {say(plan, turn)} turned in at each end.")


def mark_cloth(plan: Plan, action: str) -> Figure:
    """A panel's lower edge rounded, and a line measured up from it in the middle and at both seams."""
    sheet, petticoat = begin(action, 204), the(plan.shape.petticoat, "petticoat")
    rule = plan.shape.panels[0].rules[-1]
    upper = plan.shape.panels[0].rules[0]
    bend = 10.0 if petticoat.round_off > 1e-3 else 0.0
    slope = 34.0 if petticoat.kind == "gores" else 0.0
    foot: list[XY] = [(40.0, 158 - bend), (100.0, 158 - bend / 4), (140.0, 158.0), (180.0, 158 - bend / 4),
                      (240.0, 158 - bend)]
    sheet.path([(40 + slope, 16), (240 - slope, 16), foot[-1], *foot[-2::-1]], closed=True,
               fill=sheet.pattern("weave"), width=1.3)
    for y in (132.0, 60.0):
        half = 100 - slope * (158 - y) / 142
        sheet.curve([(140 - half, y - bend), (140, y), (140 + half, y - bend)], width=1.3, dash="5 3")
    for x in (52.0, 140.0, 228.0):
        away = bend if x != 140.0 else 0.0
        sheet.line((x, 132 - away), (x, 158 - away), width=0.9)
    tell(sheet, (140, 146), (252, 176), f"{rule.name} {say(plan, rule.offset)}", anchor="middle")
    tell(sheet, (190, 58 - bend / 4), (232, 40), f"{upper.name} {say(plan, upper.offset)}")
    if bend:
        tell(sheet, (44, 148), (14, 184), f"rounded off {say(plan, petticoat.round_off)}")
    below(sheet, 208, "Up from the cut edge, in the middle and at both seams.")
    return finish(sheet, "Marking a panel",
                  f"A panel with its lines measured up from the cut edge: {rule.name} {say(plan, rule.offset)},"
                  f" {upper.name} {say(plan, upper.offset)}.")


def sew_cloth(plan: Plan, action: str) -> Figure:
    """The panels in a row, line meeting line, the last seam open."""
    sheet, petticoat = begin(action, 168), the(plan.shape.petticoat, "petticoat")
    count = min(petticoat.count, 6)
    wide = 264 / count
    for k in range(count):
        cloth(sheet, 28 + wide * k, 22, wide, 104)
    for y in (56.0, 90.0):
        sheet.line((28, y), (292, y), stroke=GREY, width=0.9, dash="5 3")
    for k in range(1, count):
        stitches(sheet, [(28 + wide * k, 24), (28 + wide * k, 124)])
    for x, anchor in ((26.0, "start"), (294.0, "end")):
        sheet.line((x, 22), (x, 126), width=2.2)
        sheet.text(x, 144, "last seam, open", size=SMALL, anchor=anchor)
    below(sheet, 162, f"{petticoat.count} {petticoat.kind}; seams of {say(plan, plan.spec.allowances.seam)},"
                      " line meeting line.")
    return finish(sheet, "All seams but one",
                  f"{petticoat.count} {petticoat.kind} sewn side by side, their lines meeting, the last seam"
                  " open.")


def close_seam(plan: Plan, action: str) -> Figure:
    """The last seam closed up to the placket, each channel but for its gap inside."""
    sheet, petticoat = begin(action, 206), the(plan.shape.petticoat, "petticoat")
    cloth(sheet, 40, 14, 190, 160)
    foot = 62.0 if petticoat.placket else 14.0
    if petticoat.placket:
        sheet.path([(132, 14), (135, foot), (138, 14)], closed=True, fill=PAPER, width=1.4)
        upright(sheet, 14, foot, 244, ("placket", say(plan, petticoat.placket)))
    stitches(sheet, [(135, foot), (135, 172)])
    for y in (92.0, 140.0):
        sheet.rect(40, y - 10, 190, 20, fill=PAPER, line=1.1)
        sheet.line((44, y), (226, y), stroke=GREY, width=2.2, dash="5 3")
        sheet.rect(116, y - 11, 38, 22, fill="#ddd", line=1.2)
    tell(sheet, (152, 140), (244, 122), f"gap {say(plan, petticoat.feed_gap)}")
    sheet.text(60, 32, "inside", size=SMALL)
    below(sheet, 194, "At its gap a join can be reached and a hoop drawn out.")
    tall = f" up to the placket of {say(plan, petticoat.placket)}" if petticoat.placket else ""
    return finish(sheet, "The last seam",
                  f"The last seam from inside, closed{tall}; each channel keeps a gap of"
                  f" {say(plan, petticoat.feed_gap)} where the join can be reached.")


def set_waistband(plan: Plan, action: str) -> Figure:
    """The waistband's lower edge on the line marked at the stop, what stands above it cut off."""
    sheet, band = begin(action, 176), plan.shape.waistband
    cloth(sheet, 60, 60, 190, 84)
    for k in range(1, 16):
        sheet.line((60 + 12 * k, 62), (60 + 12 * k, 84), stroke=GREY, width=0.8)
    sheet.path([(60, 40), (250, 30), (250, 60), (60, 60)], closed=True, fill=sheet.pattern("hatch"), width=0.9)
    sheet.rect(46, 46, 218, 18, fill=PAPER, line=1.4)
    stitches(sheet, [(48, 61), (262, 61)])
    tell(sheet, (230, 38), (200, 18), "cut off above", anchor="middle")
    tell(sheet, (62, 62), (34, 92), "line", anchor="middle")
    across(sheet, 46, 264, 164, f"closed {say(plan, band.girth)}")
    below(sheet, 184, "Turned over and sewn down inside.")
    return finish(sheet, "Sewing the waistband on",
                  "The waistband's lower edge along the line marked at the stop; closed it measures"
                  f" {say(plan, band.girth)}.")


def set_drawstring(plan: Plan, action: str) -> Figure:
    """The upper edge turned over a cord, its ends tied in a bow at the placket."""
    sheet, string = begin(action, 172), (plan.shape.corded or the(plan.shape.petticoat, "petticoat")).drawstring
    cloth(sheet, 40, 66, 240, 76)
    sheet.rect(40, 44, 240, 28, fill=PAPER, line=1.3)
    stitches(sheet, [(44, 68), (276, 68)])
    sheet.line((40, 57), (280, 57), stroke=GREY, width=2.4, dash="6 3")
    for sign in (-1.0, 1.0):
        sheet.curve([(160, 57), (160 + sign * 12, 34), (160 + sign * 30, 30), (160 + sign * 20, 46), (160, 56)],
                    width=2.0)
        sheet.curve([(160, 57), (160 + sign * 8, 78), (160 + sign * 18, 100)], width=2.0)
    tell(sheet, (270, 52), (256, 28), "edge turned over", anchor="middle")
    tell(sheet, (134, 32), (124, 22), "one pull opens it", anchor="end")
    below(sheet, 160, f"Cord {say(plan, string)}; tied {say(plan, plan.shape.waistband.girth)}"
                      " round.")
    return finish(sheet, "The drawstring",
                  f"The upper edge turned over a cord of {say(plan, string)}, tied in a bow at the"
                  f" opening so that it measures {say(plan, plan.shape.waistband.girth)} round.")


def cut_flounces(plan: Plan, action: str) -> Figure:
    """Strips cut across the cloth and seamed end to end to a ring."""
    sheet, petticoat = begin(action, 176), the(plan.shape.petticoat, "petticoat")
    flounce = petticoat.flounces[0]
    for k in range(3):
        cloth(sheet, 20 + 88 * k, 30, 88, 50)
    for x in (108, 196):
        stitches(sheet, [(x, 32), (x, 78)])
    sheet.curve([(284, 55), (304, 70), (296, 108), (160, 122), (24, 108), (8, 78), (18, 58)], width=1.2, dash="5 3")
    sheet.text(160, 114, "and the ends to each other: a ring", size=SMALL, anchor="middle", halo=True)
    upright(sheet, 30, 80, 60, say(plan, flounce.height))
    across(sheet, 20, 284, 20, f"{say(plan, flounce.length)} in all")
    below(sheet, 146, f"{flounce.id}: the ring is gathered to {say(plan, flounce.girth)} round the petticoat.")
    return finish(sheet, "Joining a flounce",
                  f"Strips {say(plan, flounce.height)} high seamed end to end to a ring of"
                  f" {say(plan, flounce.length)}.")


SKETCHES: dict[str, Sketch] = {
    "cut-casings": cut_casings,
    "cut-waistband": cut_waistband,
    "mark-cloth": mark_cloth,
    "sew-cloth": sew_cloth,
    "close-seam": close_seam,
    "set-waistband": set_waistband,
    "set-drawstring": set_drawstring,
    "cut-flounces": cut_flounces,
}
