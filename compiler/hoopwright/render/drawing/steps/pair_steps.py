"""Sketches of side hoops: the ties tacked, a side sewn, its steels threaded, pinned and sewn on, the stops."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.drawing.marks import SMALL, across, floor_line, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
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
)
from hoopwright.render.figure import Figure
from hoopwright.shape.model import SidePair
from hoopwright.work.pair import hanging


def sew_side(plan: Plan, action: str) -> Figure:
    """The outer panel, its channels sewn, gathered on to the inner one's edge."""
    sheet, pair = begin(action, 196), the(plan.shape.sides, "pair of side hoops")
    cloth(sheet, 14, 20, 92, 138)
    for y in (66, 104, 146):
        sheet.line((14, y), (106, y), width=1.4, dash="6 3")
    sheet.text(60, 89, "inner", size=SMALL, anchor="middle", halo=True)
    tell(sheet, (40, 66), (60, 46), "tie", anchor="middle")
    edge: list[XY] = [(116 + (3 if k % 2 else 0), 20 + 6.9 * k) for k in range(21)]
    sheet.path([*edge, (306, 158), (290, 84), (268, 20)], closed=True, fill=sheet.pattern("weave"), width=1.2)
    for y, x in ((66, 284), (104, 294), (146, 302)):
        for off in (-4, 4):
            stitches(sheet, [(124, y + off), (x - 3, y + off)])
    if pair.pocket:
        sheet.line((200, 26), (200, 54), width=1.8, dash="2 3")
        tell(sheet, (200, 40), (214, 40), "slit")
    sheet.text(206, 89, "outer", size=SMALL, anchor="middle", halo=True)
    tell(sheet, (292, 146), (258, 126), "left open", anchor="middle")
    below(sheet, 178, f"{say(plan, pair.ease)} gathered into each edge, so that every channel meets its tie's line;"
                      f" channels {say(plan, pair.channel)} wide, one end of each open.")
    return finish(sheet, "A side sewn together",
                  f"Outer and inner panel side by side: {say(plan, pair.ease)} of the outer one's edge is"
                  f" gathered on to the inner one's; channels {say(plan, pair.channel)} wide, open at one"
                  " end.")


def thread_side(plan: Plan, action: str) -> Figure:
    """A tipped steel going into its channel, a little shorter than it."""
    sheet, pair = begin(action, 158), the(plan.shape.sides, "pair of side hoops")
    one = pair.channels[0]
    cloth(sheet, 62, 22, 226, 96)
    sheet.rect(62, 58, 226, 24, fill=PAPER, line=1.1)
    flat(sheet, 14, 120, 70, 8)
    sheet.line((120, 70), (276, 70), stroke=GREY, width=2.2, dash="5 3")
    sheet.ellipse((14, 70), 5, 5, fill=INK)
    across(sheet, 62, 288, 104, f"channel {say(plan, one.width)}")
    across(sheet, 14, 276, 44, f"{named(plan.spec, 'steel')} {say(plan, one.steel)}")
    below(sheet, 140, "Tipped ends; sew the channel's end shut behind it.")
    return finish(sheet, named(plan.spec, "Threading a steel"),
                  f"{one.hoops[0]}, {say(plan, one.steel)} long and tipped, going into its channel of"
                  f" {say(plan, one.width)}.")


def tie_side(plan: Plan, action: str) -> Figure:
    """An inner panel laid flat, a tie tacked along each of its lines with its ends in the turnings."""
    sheet, pair = begin(action, 190), the(plan.shape.sides, "pair of side hoops")
    tie, panel = plan.shape.ties[0], plan.shape.panels[1]
    scale = min(170 / panel.width, 126 / panel.height)
    x, y, wide = 76.0, 20.0, panel.width * scale
    cloth(sheet, x, y, wide, panel.height * scale)
    inset = (panel.width - pair.front_to_back) / 2 * scale
    for edge in (x + inset, x + wide - inset):
        sheet.line((edge, y), (edge, y + panel.height * scale), stroke=GREY, width=1.0, dash="5 3")
    over = (tie.cut - tie.length) / 2 * scale
    for one, rule in zip(pair.channels, panel.rules, strict=True):
        at = y + (panel.height - rule.offset) * scale
        sheet.rect(x + inset - over, at - 4, wide - 2 * inset + 2 * over, 8, fill=PAPER, line=1.2)
        for edge in (x + inset, x + wide - inset):
            stitches(sheet, [(edge - 2, at - 7), (edge - 2, at + 7)])
        sheet.text(x + inset - over - 6, at + 4, one.hoops[0], size=SMALL, anchor="end", bold=True)
    foot = y + panel.height * scale
    across(sheet, x + inset, x + wide - inset, foot + 20, f"tie {say(plan, tie.length)}")
    below(sheet, foot + 42, "Dashed: the seam lines, where the ties are tacked. A shorter tie makes the hoop stand"
                            " out more.")
    return finish(sheet, "Tacking the ties",
                  f"An inner panel laid flat, a tie along each of its lines, {say(plan, tie.length)} between the seam"
                  " lines and tacked there.")


def pin_side(plan: Plan, action: str) -> Figure:
    """A side gathered and pinned to its place on the waistband, measured from centre front."""
    sheet, pair = begin(action, 190), the(plan.shape.sides, "pair of side hoops")
    waist = plan.shape.waistband.girth
    begins, ends = (pair.at * waist + sign * pair.on_band / 2 for sign in (-1, 1))
    left, scale = 20.0, 270 / (waist / 2)
    x1, x2 = left + begins * scale, left + ends * scale
    sheet.rect(left, 40, 270, 16, fill=PAPER, line=1.4)
    sheet.path([(x1, 56), (x2, 56), (x2 + 26, 150), (x1 - 26, 150)], closed=True,
               fill=sheet.pattern("weave"), width=1.2)
    for k in range(6):
        x = x1 + (x2 - x1) * (k + 0.5) / 6
        sheet.line((x, 46), (x + 3, 66), width=1.3)
    across(sheet, left, x1, 30, say(plan, begins))
    across(sheet, x1, x2, 30, say(plan, pair.on_band))
    sheet.text(left, 72, "centre", size=SMALL)
    sheet.text(left, 87, "front", size=SMALL)
    sheet.text(left + 270, 72, "centre", size=SMALL, anchor="end")
    sheet.text(left + 270, 87, "back", size=SMALL, anchor="end")
    below(sheet, 170, "Half of the waistband by one side; both panels gathered together under it.")
    return finish(sheet, "Pinning a side",
                  f"A side hoop pinned to the waistband from {say(plan, begins)} to {say(plan, ends)} from"
                  " centre front, both panels gathered together.")


def set_sides(plan: Plan, action: str) -> Figure:
    """Both sides sewn to the waistband, seen from the front."""
    sheet, pair = begin(action, 190), the(plan.shape.sides, "pair of side hoops")
    _worn(sheet, pair, 160, 40, 104 / (pair.across / 2), body=False)
    half, hip = 104.0, pair.hip / pair.across * 208
    for sign in (-1, 1):
        stitches(sheet, [(160 + sign * 0.74 * hip, 44), (160 + sign * 0.3 * hip, 44)])
    across(sheet, 160 - half, 160 + half, 158, f"{say(plan, _over(plan, pair))} over both")
    below(sheet, 180, "Sewn twice over where the stop has shown they sit right.")
    return finish(sheet, "Both sides sewn on",
                  f"Both side hoops sewn to the waistband, {say(plan, _over(plan, pair))} over both.")


def _over(plan: Plan, pair: SidePair) -> float:
    """The width over both sides as they hang without the skirt, m."""
    return 2 * (pair.hip + max(out for out, _ in hanging(pair, plan.assessment)))


def try_on(plan: Plan, action: str) -> Figure:
    """One side pinned on: how far it stands out from the hip, how far below the waist, and half the door."""
    sheet, pair = begin(action, 214), the(plan.shape.sides, "pair of side hoops")
    one, door = pair.channels[-1], plan.spec.limits.door
    scale = 110 / max(pair.across / 2, (door or 0.0) / 2)
    x, top = 150.0, 40.0
    _worn(sheet, pair, x, top, scale, sides=(1.0,))
    hip, out, low = x + pair.hip * scale, x + (pair.hip + one.wished) * scale, top + one.drop * scale
    stands, lies = (say(plan, value) for value in hanging(pair, plan.assessment)[-1])
    across(sheet, hip, out, low + 22, stands)
    upright(sheet, top, low, x - pair.hip * scale - 12, (lies, "down"), side="left")
    if door is not None:
        jamb = x + door / 2 * scale
        sheet.line((jamb, 12), (jamb, 180), stroke=GREY, width=1.4, dash="9 4")
        across(sheet, x, jamb, 172, f"half the door {say(plan, door / 2)}")
    below(sheet, 196, f"{one.hoops[0]}: out from the hip and down from the waistline; then sit down.")
    return finish(sheet, "Trying one side on",
                  f"One side hoop pinned on, from the front: {one.hoops[0]} stands {stands} out from the hip,"
                  f" {lies} below the waistline.")


def in_use(plan: Plan, action: str) -> Figure:
    """Both sides in the doorway."""
    sheet, pair, door = begin(action, 206), the(plan.shape.sides, "pair of side hoops"), plan.spec.limits.door
    wide = max(pair.across, door or 0.0)
    scale = 230 / wide
    floor_line(sheet, 10, 310, 158)
    _worn(sheet, pair, 160, 34, min(scale, 100 / pair.channels[-1].drop))
    if door is not None:
        half = door / 2 * scale
        for x in (160 - half - 8, 160 + half):
            sheet.rect(x, 12, 8, 146, fill=sheet.pattern("hatch"), line=1.1)
        across(sheet, 160 - half, 160 + half, 180, f"door {say(plan, door)}")
    below(sheet, 200, "Door, chair, step; then off, alone, three times.")
    wider = f" in a doorway of {say(plan, door)}" if door else ""
    return finish(sheet, "Trying it in use", f"Both side hoops, {say(plan, pair.across)} over both as wished{wider}.")


def hang_up(plan: Plan, action: str) -> Figure:
    """The pair hung by its waistband from two hooks."""
    sheet, pair = begin(action, 170), the(plan.shape.sides, "pair of side hoops")
    sheet.line((40, 12), (280, 12), width=2)
    _worn(sheet, pair, 160, 44, min(104 / (pair.across / 2), 84 / pair.channels[-1].drop), body=False)
    for x in (140.0, 180.0):
        sheet.curve([(x, 12), (x, 32), (x + 4, 37), (x, 42)], width=1.6)
    tell(sheet, (182, 22), (224, 30), "two hooks")
    below(sheet, 164, "Covered and dry, or folded flat.")
    return finish(sheet, "Hanging it up", "The pair hung by its waistband from two hooks.")


def _worn(sheet: Sheet, pair: SidePair, x: float, top: float, scale: float, *, body: bool = True,
          sides: tuple[float, ...] = (-1.0, 1.0)) -> None:
    """Waist, hips and side hoops from the front, to scale."""
    hip, low = pair.hip * scale, pair.channels[-1].drop * scale
    if body:
        sheet.path([(x - hip * 0.72, top), (x + hip * 0.72, top), (x + hip, top + low * 0.7),
                    (x + hip, top + low + 30), (x - hip, top + low + 30), (x - hip, top + low * 0.7)],
                   closed=True, fill="#ededed", stroke=GREY, width=0.8)
    sheet.rect(x - hip * 0.78, top - 6, hip * 1.56, 10, fill=PAPER, line=1.3)
    for sign in sides:
        outs = [(x + sign * (pair.hip + one.wished) * scale, top + one.drop * scale) for one in pair.channels]
        ins = [(x + sign * hip, y) for _, y in outs]
        sheet.path([(x + sign * hip * 0.74, top + 4), *outs, *ins[::-1]], closed=True,
                   fill=sheet.pattern("weave"), width=1.1)
        for a, b in zip(ins, outs, strict=True):
            sheet.line(a, b, width=2.4)


SKETCHES: dict[str, Sketch] = {
    "sew-side": sew_side,
    "thread-side": thread_side,
    "tie-side": tie_side,
    "pin-side": pin_side,
    "set-sides": set_sides,
}
STOPS: dict[str, Sketch] = {
    "try-on-body-alone": try_on,
    "try-on-body-helped": try_on,
    "try-on-hem-alone": in_use,
    "try-on-hem-helped": in_use,
    "try-on-use-alone": in_use,
    "try-on-use-helped": in_use,
    "hang-up": hang_up,
}
"""What side hoops show at their stops and at the end, in place of a cage with a hem."""
