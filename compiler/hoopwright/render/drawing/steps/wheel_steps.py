"""Sketches of a wheel: a spoke, a ring marked, a crossing bound, the roll, the cover at the rim."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.marks import SMALL, across, arrow_line, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, Sheet
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    finish,
    first_part,
    flat,
    say,
    stitches,
    tell,
    the,
)
from hoopwright.render.figure import Figure


def cut_spokes(plan: Plan, action: str) -> Figure:
    """The longest spoke laid straight, a line at every ring, both ends tipped."""
    sheet, wheel = begin(action, 132), the(plan.shape.wheel, "wheel")
    spoke = max(wheel.spokes, key=lambda one: one.cut)
    end = (spoke.cut - spoke.marks[-1][1]) / 2
    left, right, y = 16.0, 304.0, 60.0
    scale = (right - left) / spoke.cut
    flat(sheet, left, right, y, 10)
    for hoop, at in spoke.marks:
        x = left + (end + at) * scale
        sheet.line((x, y - 12), (x, y + 12), stroke=PAPER, width=3.6)
        sheet.line((x, y - 12), (x, y + 12), width=1.6)
        sheet.text(x, y + 28, hoop, size=SMALL, anchor="middle", halo=True)
    across(sheet, left, right, y - 28, f"{spoke.id} cut {say(plan, spoke.cut)}")
    below(sheet, 112, f"First line {say(plan, end)} from the end; every other is measured from it.")
    marks = ", ".join(f"{hoop} at {say(plan, at)}" for hoop, at in spoke.marks[1:])
    return finish(sheet, "Cutting a spoke",
                  f"{spoke.id} laid straight, {say(plan, spoke.cut)} long, a line {say(plan, end)} from its"
                  f" end and from that line {marks}.")


def mark_rings(plan: Plan, action: str) -> Figure:
    """A ring lying down, front at the foot: the first crossings measured round it from centre front."""
    sheet, part = begin(action, 244), first_part(plan, action)
    rings = [hoop for hoop in plan.shape.hoops if hoop.closed and hoop.fixings]
    ring = rings[-1] if rings else plan.shape.hoop(part)
    x, y, radius = 150.0, 104.0, 74.0
    sheet.ellipse((x, y), radius, radius, width=2.4)
    for fix in ring.fixings:
        t = 2 * pi * fix.fraction
        sheet.line((x + (radius - 7) * sin(t), y + (radius - 7) * cos(t)),
                   (x + (radius + 7) * sin(t), y + (radius + 7) * cos(t)), width=1.8)
        sheet.text(x + (radius - 17) * sin(t), y + (radius - 17) * cos(t) + 4, fix.tape, size=SMALL,
                   anchor="middle")
    sheet.ellipse((x, y + radius), 4, 4, fill=INK)
    turns = [0.02 + k * 0.42 / 8 for k in range(9)]
    arc = [(x + (radius + 15) * sin(t), y + (radius + 15) * cos(t)) for t in turns]
    sheet.curve(arc, width=1.0)
    arrow_line(sheet, arc[-2], arc[-1])
    first = ring.fixings[0]
    tell(sheet, arc[4], (226, 196), f"{first.tape} {say(plan, first.fraction * ring.girth)}")
    for row, words in enumerate((ring.id, say(plan, ring.girth), "round")):
        sheet.text(x, y - 10 + 16 * row, words, size=SMALL, anchor="middle", bold=not row)
    sheet.text(x, y + radius + 30, "centre front", size=SMALL, anchor="middle")
    join = next((one for one in plan.behind if one.hoop == ring.id), None)
    if join is not None:
        t = 2 * pi * join.fraction
        at = (x + radius * sin(t), y + radius * cos(t))
        sheet.ellipse(at, 5, 5, fill=PAPER, width=1.4)
        tell(sheet, at, (246, 20), "join")
    below(sheet, 236, "Go round by the wearer's left.")
    return finish(sheet, "Marking a ring",
                  f"{ring.id}, {say(plan, ring.girth)} round, front at the foot: spokes marked going round by"
                  f" the wearer's left from centre front, {first.tape} at"
                  f" {say(plan, first.fraction * ring.girth)}.")


def bind_wheel(plan: Plan, action: str) -> Figure:
    """A crossing bound crosswise, and a spoke's end turned over the rim or, if it is strip, bent along it."""
    strip = _strip(plan)
    sheet, wheel = begin(action, 184), the(plan.shape.wheel, "wheel")
    end = say(plan, (wheel.spokes[0].cut - wheel.spokes[0].marks[-1][1]) / 2)
    (_strips_bound if strip else _rods_bound)(sheet)
    (_along if strip else _over)(sheet, end)
    stands = "; all stand on edge, spoke upon ring" if strip else ""
    below(sheet, 160, f"Crosswise, tight, at each of {wheel.fixings} crossings{stands}.")
    edges = ", both on edge" if strip else ""
    turned = "bent along it for" if strip else "turned over by"
    return finish(sheet, "Binding the wheel",
                  f"A spoke bound crosswise to a ring{edges}; at the rim its end is {turned} {end} and bound"
                  " down.")


def _strip(plan: Plan) -> bool:
    """Whether spokes and rings are flat strip, which stands on edge."""
    return plan.spec.build.hoops.material.section.kind == "flat"


def _rods_bound(sheet: Sheet) -> None:
    """Two rods crossing, from above, with the thread over them."""
    sheet.rect(64, 22, 14, 118, fill="#bbb", line=1.2)
    sheet.rect(14, 74, 116, 14, fill="#ddd", line=1.2)
    for k in range(4):
        sheet.line((60 + 4 * k, 66 + 2 * k), (70 + 4 * k, 94 - 2 * k + 4), width=1.5)
        sheet.line((82 - 4 * k, 66 + 2 * k), (72 - 4 * k, 94 - 2 * k + 4), width=1.5)
    sheet.text(71, 16, "spoke", size=SMALL, anchor="middle")
    sheet.text(16, 104, "ring", size=SMALL)


def _strips_bound(sheet: Sheet) -> None:
    """Two strips crossing, both on edge: from above two thin lines, from the side one edge on the other."""
    sheet.text(10, 16, "from above", size=SMALL, fill=GREY)
    sheet.line((14, 92), (82, 92), width=4)
    sheet.line((48, 44), (48, 140), width=4, stroke="#666")
    for k in (-4, 4):
        sheet.line((40, 92 - 8 + k), (56, 92 + 8 + k), width=1.3)
        sheet.line((56, 92 - 8 + k), (40, 92 + 8 + k), width=1.3)
    sheet.text(48, 38, "spoke", size=SMALL, anchor="middle")
    sheet.text(14, 112, "ring", size=SMALL)
    sheet.text(104, 16, "from the side", size=SMALL, fill=GREY)
    sheet.rect(100, 92, 84, 24, fill="#ddd", line=1.2)
    sheet.rect(140, 68, 4, 24, fill="#666", line=0.8)
    for k in (10, 16):
        sheet.path([(142 - k, 117), (139, 67), (145, 67), (142 + k, 117)], width=1.3)
    tell(sheet, (142, 66), (142, 50), "spoke, cut through", anchor="middle")
    sheet.text(104, 132, "ring", size=SMALL)


def _over(sheet: Sheet, end: str) -> None:
    """The rim cut through, a round spoke's end turned over it."""
    flat(sheet, 176, 272, 70, 7)
    sheet.ellipse((272, 84), 8, 8, fill="#bbb", width=1.2)
    sheet.path([(272, 70), (284, 74), (287, 84), (284, 94), (272, 98), (244, 98)], width=4.5, stroke="#666")
    for x in (248, 256):
        sheet.line((x, 64), (x, 104), width=1.6)
    sheet.text(226, 60, "spoke", size=SMALL, anchor="middle")
    tell(sheet, (276, 90), (294, 124), "rim")
    across(sheet, 244, 286, 44, f"{end} over")


def _along(sheet: Sheet, end: str) -> None:
    """Rim and spoke from above, both on edge: the spoke's end bent aside to lie along the rim."""
    sheet.text(204, 16, "from above", size=SMALL, fill=GREY)
    sheet.line((258, 24), (258, 142), width=4)
    sheet.path([(200, 62), (240, 62), (247, 64), (252, 70), (253, 77), (253, 118)], width=4, stroke="#666")
    for y in (86, 96, 106):
        sheet.line((246, y), (265, y), width=1.6)
    sheet.text(218, 54, "spoke", size=SMALL, anchor="middle")
    sheet.text(264, 36, "rim", size=SMALL)
    upright(sheet, 62, 118, 272, (end,))


def _cut_ring(sheet: Sheet, plan: Plan, x: float, y: float, radius: float) -> None:
    """A ring cut through, its middle at (x, y): a strip standing on edge, or a rod."""
    if _strip(plan):
        sheet.rect(x - 2, y - radius, 4, 2 * radius, fill="#bbb", line=1.2)
    else:
        sheet.ellipse((x, y), radius, radius, fill="#bbb", width=1.3)


def stuff_roll(plan: Plan, action: str) -> Figure:
    """The stuffed roll, thin ends in front, under the waistband."""
    sheet, wheel = begin(action, 176), the(plan.shape.wheel, "wheel")
    outer = [(160 + 92 * sin(t), 76 - 58 * cos(t)) for t in _bow()]
    inner = [(160 + 62 * sin(t), 76 - 34 * cos(t)) for t in reversed(_bow())]
    sheet.path([*outer, *inner], closed=True, fill=sheet.pattern("dots"), width=1.4)
    sheet.ellipse((160, 76), 60, 32, width=1.6)
    stitches(sheet, inner)
    sheet.text(160, 80, "waistband", size=SMALL, anchor="middle")
    upright(sheet, 18, 42, 262, (f"{say(plan, wheel.roll)}", "thick"))
    sheet.text(160, 138, "front, open", size=SMALL, anchor="middle", fill=GREY)
    tell(sheet, (104, 32), (84, 24), "centre back", anchor="end")
    below(sheet, 162, f"{say(plan, wheel.roll_length)} long, stuffed firmly; sewn on under the waistband.")
    return finish(sheet, "The roll",
                  f"The roll, {say(plan, wheel.roll)} thick and {say(plan, wheel.roll_length)} long, sewn"
                  " under the waistband round the back, its ends short of the front.")


def set_wheel(plan: Plan, action: str) -> Figure:
    """Waistband, roll and wheel cut through at the side: what lies on what."""
    sheet, wheel = begin(action, 176), the(plan.shape.wheel, "wheel")
    sheet.rect(20, 14, 60, 140, fill="#ededed", stroke=GREY, line=0.9)
    sheet.text(50, 130, "body", size=SMALL, anchor="middle", fill=GREY)
    sheet.rect(80, 32, 7, 40, fill=PAPER, line=1.4)
    sheet.ellipse((112, 98), 26, 26, fill=sheet.pattern("dots"), width=1.2)
    if _strip(plan):
        flat(sheet, 95, 300, 66, 12)
        _cut_ring(sheet, plan, 93, 66, 6)
    else:
        _cut_ring(sheet, plan, 95, 68, 5)
        flat(sheet, 95, 300, 68, 6)
    stitches(sheet, [(84, 60), (94, 66)])
    stitches(sheet, [(84, 70), (98, 78)])
    tell(sheet, (84, 40), (112, 26), "waistband")
    tell(sheet, (95, 66), (150, 48), "ring of the hole, sewn on")
    tell(sheet, (240, 69), (226, 100), "spoke")
    tell(sheet, (130, 108), (170, 130), f"roll, {say(plan, wheel.roll)} thick")
    below(sheet, 170, "Cut through at one side; the wheel lies on the roll.")
    return finish(sheet, "Hanging the wheel",
                  "Cut through at the side: the ring round the hole sewn to the waistband's lower edge, the"
                  f" wheel lying on the roll, {say(plan, wheel.roll)} thick.")


def sew_cover(plan: Plan, action: str) -> Figure:
    """The cover's edge turned round the rim and sewn, cut through."""
    sheet, wheel = begin(action, 168), the(plan.shape.wheel, "wheel")
    if _strip(plan):
        flat(sheet, 20, 236, 86, 18)
        _cut_ring(sheet, plan, 238, 86, 9)
    else:
        flat(sheet, 20, 236, 78, 6)
        _cut_ring(sheet, plan, 236, 88, 9)
    sheet.path([(14, 66), (238, 66), (252, 72), (256, 88), (250, 102), (238, 108), (188, 108)], width=2.4)
    stitches(sheet, [(198, 66), (198, 108)])
    across(sheet, 188, 252, 132, f"{say(plan, wheel.hem)} turned under")
    tell(sheet, (90, 66), (90, 38), "cover, front to front", anchor="middle")
    tell(sheet, (240, 84), (272, 48), "rim")
    tell(sheet, (60, 86), (60, 116), "spoke", anchor="middle")
    below(sheet, 158, "Pin the rim's quarters first, then the halves between.")
    return finish(sheet, "Sewing the cover on",
                  f"The cover lies on the spokes; {say(plan, wheel.hem)} of its edge is turned round the rim"
                  " and sewn.")


def _bow() -> list[float]:
    """Angles round the back from one end of the roll to the other."""
    return [-0.78 * pi + k * 1.56 * pi / 40 for k in range(41)]


SKETCHES: dict[str, Sketch] = {
    "cut-spokes": cut_spokes,
    "mark-rings": mark_rings,
    "bind-wheel": bind_wheel,
    "stuff-roll": stuff_roll,
    "set-wheel": set_wheel,
    "sew-cover": sew_cover,
}
