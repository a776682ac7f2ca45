"""Sketches of closing a hoop: casing slid on, hoop clipped to the tapes, ends clamped, the join itself."""

from __future__ import annotations

from math import cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import clip
from hoopwright.render.drawing.marks import SMALL, across
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    cloth,
    finish,
    first_part,
    say,
    tell,
    torn,
)
from hoopwright.render.figure import Figure
from hoopwright.shape.model import Hoop


def case_hoop(plan: Plan, action: str) -> Figure:
    """An open hoop in its casing, bare at both ends, clips holding the casing back."""
    sheet, hoop = begin(action, 178), _closed_one(plan, action)
    x, y, rx, ry = 104.0, 78.0, 84.0, 56.0
    bare = _arc(x, y, rx, ry, 0.06, 1.94)
    cased = _arc(x, y, rx, ry, 0.26, 1.74)
    sheet.curve(bare, width=2.6)
    sheet.curve(cased, width=9.0)
    sheet.curve(cased, width=6.6, stroke=PAPER)
    sheet.curve(cased, width=1.6, stroke=GREY, dash="3 3")
    for end in (cased[0], cased[-1]):
        sheet.rect(end[0] - 5, end[1] - 9, 10, 18, fill="#ddd", line=1.2)
    tell(sheet, cased[0], (212, 48), "clip at each end")
    tell(sheet, bare[0], (212, 24), "bare, open ends")
    tell(sheet, cased[7], (212, 84), "casing")
    sheet.text(212, 99, say(plan, hoop.casing) if hoop.casing else "", size=SMALL)
    sheet.text(x, y + 5, clip(hoop.id, 100, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)
    below(sheet, 158, "Before the join: a closed hoop takes no casing." if hoop.closed else
          "Drawn over the tips when the hoop is sewn on.")
    return finish(
        sheet,
        "Sliding a casing on",
        f"{hoop.id}, open, in its casing of {say(plan, hoop.casing)}, "
        "both ends bare and the casing held back by clips.",
    )


def _arc(x: float, y: float, rx: float, ry: float, start: float, end: float) -> list[XY]:
    """Points of an ellipse from ``start`` to ``end`` in half turns, open at its top."""
    turns = [(start + (end - start) * at / 24) * pi - pi / 2 for at in range(25)]
    return [(x + rx * cos(t), y + ry * sin(t)) for t in turns]


def clip_hoop(plan: Plan, action: str) -> Figure:
    """A hoop clipped to a tape at its mark, and the ends of the hoop clamped at the lap line; one that stays open
    has its tip at its first tape, and no clamp."""
    sheet, hoop = begin(action, 168), _closed_one(plan, action)
    y, lap = 70.0, plan.spec.build.hoops.lap
    tape = hoop.fixings[0].tape if hoop.fixings else ""
    mark = next((mark.at for one in plan.shape.tapes if one.id == tape for mark in one.marks
                 if mark.hoop == hoop.id), None)
    if mark is not None:
        sheet.rect(56, 14, 28, 112, fill=PAPER, line=1.2)
        sheet.line((50, y), (90, y), width=1.4)
        sheet.text(70, 138, tape, size=SMALL, anchor="middle", bold=True)
        tell(sheet, (84, y - 2), (100, 24), f"mark {say(plan, mark)}")
    if hoop.closed:
        _strip(sheet, 14, 196, y, 7)
        _strip(sheet, 180, 306, y + 4, 7)
        sheet.rect(176, y - 12, 24, 28, fill="#ddd", line=1.2)
        if lap:
            across(sheet, 166, 210, y - 24, f"lap {say(plan, lap)}")
        tell(sheet, (188, y + 16), (210, 116), "clamp")
    else:
        _strip(sheet, 44, 306, y, 7, whole=True)
        sheet.rect(38, y - 5.5, 10, 11, fill=INK, line=1.0)
        tell(sheet, (43, y + 6), (36, 104), "tip", anchor="end")
    if mark is not None:
        sheet.path([(62, y - 16), (78, y - 16), (76, y + 16), (64, y + 16)], closed=True, fill="#ddd", width=1.2)
    long = f"{say(plan, hoop.girth)} {'round' if hoop.closed else 'from end to end'}"
    below(sheet, 160, f"{hoop.id}: {long}. Nothing is {'joined' if hoop.closed else 'sewn'} yet.")
    how = "its ends held by a clamp, nothing joined yet" if hoop.closed else "from its tip on, nothing sewn yet"
    return finish(sheet, "Clipping the hoops", f"{hoop.id} clipped to {tape or 'nothing'} on its mark, {how}.")


def clamp_ends(plan: Plan, action: str) -> Figure:
    """The two ends of a hoop held together by a clamp."""
    sheet, hoop = begin(action, 122), _hoop(plan, action)
    y, lap = 62.0, plan.spec.build.hoops.lap
    _strip(sheet, 20, 190, y, 8)
    _strip(sheet, 132, 300, y + 5, 8)
    if lap:
        across(sheet, 132, 190, y - 24, f"lap {say(plan, lap)}")
    sheet.rect(148, y - 12, 26, 30, fill="#ddd", line=1.2)
    sheet.text(161, y + 34, "clamp", size=SMALL, anchor="middle")
    below(sheet, 114, f"{hoop.id}: {say(plan, hoop.girth)} round when clamped")
    return finish(
        sheet,
        "Clamping the ends",
        f"The ends of {hoop.id} clamped so that it measures {say(plan, hoop.girth)} round.",
    )


def join_hoop(plan: Plan, action: str) -> Figure:
    """The join beside its tape, lap or sleeve with its length; with heat, a shield between it and cloth."""
    shielded = action.endswith("shielded")
    sheet, hoop, build = begin(action, 178 if shielded else 158), _hoop(plan, action), plan.spec.build.hoops
    y, place = 72.0, next((join for join in plan.joins if join.hoop == hoop.id), None)
    if shielded:
        sheet.path(
            [(94, y + 24), (286, y + 24), (280, y + 32), (100, y + 32)], closed=True, fill="#bbb", width=1.2
        )
        cloth(sheet, 14, y + 12, 64, 22)
        tell(sheet, (40, y + 34), (14, y + 62), "cloth pushed back, wetted")
        tell(sheet, (230, y + 32), (306, y + 46), "heat shield", anchor="end")
    if place is not None:
        sheet.rect(104, 18, 24, y - 2, fill=PAPER, line=1.1)
        sheet.text(116, 14, place.tape, size=SMALL, anchor="middle", bold=True)
    long = build.lap or build.join.sleeve
    _strip(sheet, 14, 216, y, 8)
    _strip(sheet, 150, 306, y + (0 if build.join.sleeve else 6), 8)
    _drawn_join(sheet, build.join.name, bool(build.join.sleeve), y)
    if long:
        across(sheet, 150, 216, y - 24, f"{'lap' if build.lap else 'sleeve'} {say(plan, long)}")
    where = f", beside {place.tape} on the side towards the {place.towards}" if place else ""
    below(
        sheet,
        sheet.height - 24,
        f"{clip(hoop.id, 80, SMALL)}: {build.join.name}, {say(plan, hoop.girth)} round{where}",
    )
    girth = say(plan, hoop.girth)
    alt = f"The ends of {hoop.id} joined ({build.join.name}) so that it measures {girth}{where}."
    return finish(sheet, "Joining a hoop", alt)


def splice_hoop(plan: Plan, action: str) -> Figure:
    """Two lengths of a hoop lapped and joined, straight, nothing on them yet."""
    sheet, hoop, build = begin(action, 132), _hoop(plan, action), plan.spec.build.hoops
    y, long = 62.0, build.lap or build.join.sleeve
    _strip(sheet, 14, 216, y, 8)
    _strip(sheet, 150, 306, y + (0 if build.join.sleeve else 6), 8)
    _drawn_join(sheet, build.join.name, bool(build.join.sleeve), y)
    if long:
        across(sheet, 150, 216, y - 24, f"{'lap' if build.lap else 'sleeve'} {say(plan, long)}")
    place = next((splice for splice in plan.splices if splice.hoop == hoop.id), None)
    names = (f"length {place.first}", f"length {place.then}") if place else ("", "")
    sheet.text(70, y + 28, names[0], size=SMALL, anchor="middle")
    sheet.text(256, y + 34, names[1], size=SMALL, anchor="middle")
    below(sheet, 122, f"{clip(hoop.id, 80, SMALL)}: {say(plan, hoop.cut)} long when all its lengths are joined")
    alt = (
        f"Two lengths of {hoop.id} joined ({build.join.name}), straight and bare; with all its lengths it is "
        f"{say(plan, hoop.cut)} long."
    )
    return finish(sheet, "Splicing a hoop", alt)


def _drawn_join(sheet: Sheet, name: str, sleeve: bool, y: float) -> None:
    """What holds the ends: a sleeve, windings, bolts, or solder in the lap."""
    if sleeve:
        sheet.rect(150, y - 8, 66, 16, fill="#ddd", line=1.3)
        for x in (164, 178, 192, 204):
            sheet.line((x, y - 8), (x, y + 8), width=1.6)
    elif "bound" in name:
        for x in range(154, 216, 6):
            sheet.line((x, y - 7), (x + 4, y + 13), width=1.6)
    elif "bolt" in name or "rivet" in name:
        for x in (168, 198):
            sheet.ellipse((x, y + 3), 5, 8, fill="#ddd", width=1.3)
    else:
        sheet.rect(150, y - 4, 66, 14, fill=sheet.pattern("hatch"), line=1.2)


def _strip(sheet: Sheet, x1: float, x2: float, y: float, thick: float, *, whole: bool = False) -> None:
    """A stretch of hoop with its outer end broken off; with its left end ``whole``, the right one."""
    sheet.rect(x1, y - thick / 2, x2 - x1, thick, fill="#ccc", stroke=INK, line=1.1)
    out = x1 if x1 < 80 and not whole else x2
    sheet.rect(out - 3, y - thick / 2 - 1, 6, thick + 2, fill=PAPER, stroke="none")
    torn(sheet, out, y - thick / 2 - 1, y + thick / 2 + 1)


def _hoop(plan: Plan, action: str) -> Hoop:
    """The first hoop a task of that action works on."""
    part = first_part(plan, action)
    return next((hoop for hoop in plan.shape.hoops if hoop.id == part), plan.shape.hoops[0])


def _closed_one(plan: Plan, action: str) -> Hoop:
    """The first closed hoop a task of that action works on, else the first."""
    parts = {part for task in plan.work.tasks if task.action == action for part in task.parts}
    return next((hoop for hoop in plan.shape.hoops if hoop.closed and hoop.id in parts), _hoop(plan, action))


SKETCHES: dict[str, Sketch] = {
    "case-hoop": case_hoop,
    "clip-hoop": clip_hoop,
    "clamp-ends": clamp_ends,
    "splice-hoop": splice_hoop,
    "join-hoop": join_hoop,
    "join-hoop-shielded": join_hoop,
}
