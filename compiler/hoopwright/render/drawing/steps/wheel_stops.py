"""Sketches of a wheel's stops: the rim measured, the skirt levelled, the doorway; and how it is hung up."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, across, floor_line, upright
from hoopwright.render.drawing.sheet import GREY, PAPER
from hoopwright.render.drawing.steps.sketch import Sketch, begin, below, finish, say, tell, the
from hoopwright.render.figure import Figure

FLOOR = 168.0


def try_on(plan: Plan, action: str) -> Figure:
    """The bare wheel on its wearer from her left: the rim above the floor in front, at the side, behind."""
    sheet, wheel = begin(action, 212), the(plan.shape.wheel, "wheel")
    front, side, back = (wheel.rim[k].height for k in (0, 2, 4))
    scale = min(128 / back, 150 / wheel.width)
    floor_line(sheet, 10, 310, FLOOR)
    x = 150.0
    sheet.rect(x - 13, FLOOR - back * scale - 12, 26, back * scale + 12, fill="#ededed", stroke=GREY, line=0.8)
    ends = []
    for k, sign in ((0, -1.0), (4, 1.0)):
        reach = wheel.rim[k].reach + plan.spec.wearer.waist / 8
        ends.append((x + sign * reach * scale, FLOOR - wheel.rim[k].height * scale))
    sheet.line(*ends, width=3)
    upright(sheet, ends[0][1], FLOOR, ends[0][0], (), side="left")
    upright(sheet, ends[1][1], FLOOR, ends[1][0], ())
    sheet.text(ends[0][0] - 8, FLOOR - 40, say(plan, front), size=SMALL, anchor="end", halo=True)
    sheet.text(ends[1][0] + 8, FLOOR - 40, say(plan, back), size=SMALL, halo=True)
    sheet.text(x, FLOOR - 28, say(plan, side), size=SMALL, anchor="middle", halo=True)
    sheet.text(x, FLOOR - 42, "side", size=SMALL, anchor="middle", halo=True)
    sheet.text(ends[0][0] - 8, FLOOR - 54, "front", size=SMALL, anchor="end", halo=True)
    sheet.text(ends[1][0] + 8, FLOOR - 54, "back", size=SMALL, halo=True)
    below(sheet, 190, "The rim above the floor; again with the skirt's weight hung round it.")
    return finish(sheet, "Trying the wheel on",
                  f"The wheel on its wearer from her left: its rim {say(plan, front)} above the floor in"
                  f" front, {say(plan, side)} at the side and {say(plan, back)} behind.")


def level_skirt(plan: Plan, action: str) -> Figure:
    """The skirt falling straight from the rim, its hem measured from the floor."""
    sheet, wheel = begin(action, 212), the(plan.shape.wheel, "wheel")
    off, back = plan.spec.skirt_off_floor, wheel.rim[4].height
    scale = min(128 / back, 190 / wheel.width)
    half, y = wheel.width / 2 * scale, FLOOR - wheel.rim[2].height * scale
    floor_line(sheet, 10, 310, FLOOR)
    low = FLOOR - max(off * scale, 7.0)
    sheet.path([(160 - half, y), (160 - half, low), (160 + half, low), (160 + half, y)], closed=True,
               fill=sheet.pattern("weave"), width=1.2)
    sheet.ellipse((160, y), half, 9, fill=PAPER, width=2.0)
    upright(sheet, low, FLOOR, 160 + half + 12, ())
    sheet.text(160 + half + 20, low - 4, say(plan, off), size=SMALL, halo=True)
    sheet.text(160, (y + low) / 2, f"{say(plan, plan.skirt.side)} at the side", size=SMALL,
               anchor="middle", halo=True)
    below(sheet, 190, "Front, sides and back are of different lengths; the hem is even from the floor.")
    return finish(sheet, "Levelling the skirt",
                  f"The skirt falls straight from the rim; its hem is {say(plan, off)} off the floor all"
                  " round.")


def in_use(plan: Plan, action: str) -> Figure:
    """The rim and the doorway."""
    sheet, wheel, door = begin(action, 196), the(plan.shape.wheel, "wheel"), plan.spec.limits.door
    wide = max(wheel.width, door or 0.0)
    scale = 230 / wide
    floor_line(sheet, 10, 310, 150)
    if door is not None:
        half = door / 2 * scale
        for x in (160 - half - 8, 160 + half):
            sheet.rect(x, 14, 8, 136, fill=sheet.pattern("hatch"), line=1.1)
        across(sheet, 160 - half, 160 + half, 172, f"door {say(plan, door)}")
    sheet.ellipse((160, 66), wheel.width / 2 * scale, 10, width=2.2)
    sheet.rect(148, 24, 24, 126, fill="#ededed", stroke=GREY, line=0.8)
    sheet.text(160, 98, f"rim {say(plan, wheel.width)} across", size=SMALL, anchor="middle", halo=True)
    below(sheet, 190, "Door, a stool without arms, a step; then off, alone.")
    wider = f" in a doorway of {say(plan, door)}" if door else ""
    return finish(sheet, "Trying it in use", f"The wheel, {say(plan, wheel.width)} across,{wider or ' worn'}.")


def hang_up(plan: Plan, action: str) -> Figure:
    """The wheel flat against a wall on two hooks."""
    sheet = begin(action, 180)
    wheel = the(plan.shape.wheel, "wheel")
    sheet.rect(20, 8, 280, 150, fill=sheet.pattern("hatch"), stroke="none")
    sheet.ellipse((160, 92), 62, 62, fill=PAPER, width=2.2)
    sheet.ellipse((160, 84), 22, 15, width=1.4)
    for k in range(8):
        t = pi * (k + 0.5) / 4
        sheet.line((160 + 22 * sin(t), 84 + 15 * cos(t)), (160 + 62 * sin(t), 92 + 62 * cos(t)), width=1.0)
    for x in (136, 184):
        sheet.curve([(x, 22), (x, 34), (x + 4, 40), (x, 44)], width=2.0)
    tell(sheet, (186, 24), (236, 26), "two hooks")
    below(sheet, 174, f"Flat, covered, dry; {say(plan, wheel.width)} across.")
    return finish(sheet, "Hanging it up", "The wheel flat against a wall, hung by its rim from two hooks.")


STOPS: dict[str, Sketch] = {
    "try-on-body-alone": try_on,
    "try-on-body-helped": try_on,
    "try-on-hem-alone": level_skirt,
    "try-on-hem-helped": level_skirt,
    "try-on-use-alone": in_use,
    "try-on-use-helped": in_use,
    "hang-up": hang_up,
}
"""What a wheel shows at its stops and at the end, in place of a cage with a hem."""
