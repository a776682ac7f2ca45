"""Sketches of the stops: how hem and hoops are measured on the body, alone or helped, and the doorway."""

from __future__ import annotations

from math import pi

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, across, floor_line, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
from hoopwright.render.drawing.steps.sketch import Sketch, begin, below, finish, say, tell
from hoopwright.render.figure import Figure
from hoopwright.spec.family import family_of

FLOOR = 156.0


def alone(plan: Plan, action: str) -> Figure:
    """Alone: a stick fixed across the door frame at the hem's height, a plumb line, a camera on a chair."""
    sheet, off = begin(action, 214), plan.spec.shape.hem_off_floor
    scale = _cage(sheet, plan, 206, 176)
    y = FLOOR - off * scale
    floor_line(sheet, 10, 310, FLOOR)
    for x in (24.0, 44.0):
        sheet.rect(x - 5, 12, 10, FLOOR - 12, fill="#eee")
    sheet.line((14, y), (84, y), width=3.4)
    tell(sheet, (60, y), (56, 42), "stick in the")
    sheet.text(56, 57, "door frame", size=SMALL, halo=True)
    upright(sheet, y, FLOOR, 68, ())
    sheet.text(62, y - 9, say(plan, off), size=SMALL, halo=True)
    below(
        sheet,
        184,
        f"Turn slowly: {_edge(plan)} must touch the stick all round. Take a picture from a chair.",
    )
    return finish(
        sheet,
        "Measuring the hem alone",
        f"A stick fixed across a door frame {say(plan, off)} above the "
        f"floor; {_edge(plan)} touches it all round.",
    )


def helped(plan: Plan, action: str) -> Figure:
    """With a helper: a rule standing on the floor at front, sides and back."""
    sheet, off = begin(action, 214), plan.spec.shape.hem_off_floor
    scale = _cage(sheet, plan, 160, 176)
    y = FLOOR - off * scale
    floor_line(sheet, 10, 310, FLOOR)
    hem = plan.shape.lowest.width / 2 * scale
    x = 160 + hem - 8
    sheet.rect(x, FLOOR - 60, 13, 60, fill=PAPER, line=1.2)
    for at in range(1, 12):
        sheet.line((x, FLOOR - 5 * at), (x + (8 if at % 2 == 0 else 5), FLOOR - 5 * at), width=0.7)
    tell(sheet, (x + 13, FLOOR - 52), (308, 60), "rule", anchor="end")
    upright(sheet, y, FLOOR, 160 - hem - 22, ())
    sheet.text(
        160 - hem - 30, y - 8, say(plan, off), size=SMALL, anchor="start" if hem > 110 else "end", halo=True
    )
    said = "Lower edge of the hem hoop" if plan.shape.hoops else "The petticoat's edge"
    below(sheet, 184, f"{said} above the floor, at front, both sides and back.")
    return finish(
        sheet,
        "Measuring the hem with a helper",
        f"A rule standing on the floor; {_edge(plan)} should be {say(plan, off)} up all round.",
    )


def in_use(plan: Plan, action: str) -> Figure:
    """The doorway the wearer must pass, and the hem beside it."""
    sheet, door = begin(action, 214), plan.spec.limits.door
    hem = plan.shape.lowest.width
    scale = _cage(sheet, plan, 160, 176, widest=max(hem, door or 0.0))
    floor_line(sheet, 10, 310, FLOOR)
    if door is not None:
        half = door / 2 * scale
        for x, out in ((160 - half, -8.0), (160 + half, 8.0)):
            sheet.rect(min(x, x + out), 10, 8, FLOOR - 10, fill=sheet.pattern("hatch"), line=1.1)
        across(sheet, 160 - half, 160 + half, FLOOR + 26, f"door {say(plan, door)}")
    else:
        across(sheet, 160 - hem / 2 * scale, 160 + hem / 2 * scale, FLOOR + 26, f"hem {say(plan, hem)}")
    below(sheet, 204, "Door, chair, stairs; then measure the hem again.")
    wide = f" of {say(plan, door)}" if door else ""
    alt = f"The {family_of(plan.spec)}, {say(plan, hem)} across, in a doorway{wide}."
    return finish(sheet, "Trying it in use", alt)


def hang_up(plan: Plan, action: str) -> Figure:
    """The finished cage hung by its waistband from two hooks."""
    sheet = begin(action, 184)
    sheet.line((40, 12), (280, 12), width=2)
    _cage(sheet, plan, 160, 176, foot=166)
    top = 166 - (plan.shape.waist_heights[1] - _lines(plan)[-1][1]) * _scale(plan, 176, 0.0)
    for x in (150.0, 170.0):
        sheet.curve([(x, 12), (x, top - 10), (x + 4, top - 4), (x, top)], width=1.6)
    tell(sheet, (170, 20), (210, 40), "two hooks")
    return finish(sheet, "Hanging it up", f"The {family_of(plan.spec)} hung by its waist from two hooks.")


def _edge(plan: Plan) -> str:
    """What is levelled."""
    return "the hem hoop's lower edge" if plan.shape.hoops else "the petticoat's edge"


def _scale(plan: Plan, room: float, widest: float) -> float:
    """User units a metre, so that the cage fits into ``room`` across and 132 down."""
    across_it = max(widest, plan.shape.lowest.width)
    return min(room / across_it, 132 / max(plan.shape.waist_heights))


def _lines(plan: Plan) -> list[tuple[float, float]]:
    """(width, height) of every hoop from the top; of a corded petticoat its rows and its edge."""
    cloth = plan.shape.corded
    if cloth is None:
        return [(hoop.plan.width, hoop.height) for hoop in plan.shape.hoops]
    rows = [(row.girth / pi, row.height) for row in reversed(cloth.rows)]
    return [*rows, (cloth.hem / pi, cloth.hem_height)]


def _cage(
    sheet: Sheet, plan: Plan, x: float, room: float, *, widest: float = 0.0, foot: float | None = None
) -> float:
    """The cage from the front, small, over the floor or with its hem at ``foot``; gives its scale."""
    scale = _scale(plan, room, widest)
    shift = FLOOR if foot is None else foot + _lines(plan)[-1][1] * scale
    waist = plan.spec.wearer.waist / 6
    top: list[XY] = [
        (x - waist * scale, shift - plan.shape.waist_heights[3] * scale),
        (x + waist * scale, shift - plan.shape.waist_heights[1] * scale),
    ]
    sides = [[top[0]], [top[1]]]
    for wide, height in _lines(plan):
        half, y = wide / 2 * scale, shift - height * scale
        sheet.line((x - half, y), (x + half, y), width=0.8 if plan.shape.corded else 1.8)
        sides[0].append((x - half, y))
        sides[1].append((x + half, y))
    for side in sides:
        sheet.path(side, stroke=GREY, width=1.0)
    sheet.line(top[0], top[1], stroke=INK, width=3.4)
    return scale


SKETCHES: dict[str, Sketch] = {
    "try-on-body-alone": alone,
    "try-on-body-helped": helped,
    "try-on-hem-alone": alone,
    "try-on-hem-helped": helped,
    "try-on-use-alone": in_use,
    "try-on-use-helped": in_use,
    "hang-up": hang_up,
}
