"""Sketches of ties and lacings: a tie cut, pinned and sewn; the lacing panels folded, laced, sewn on, eyeleted."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.letters import text_width
from hoopwright.render.drawing.marks import SMALL, across, upright
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, XY, Sheet
from hoopwright.render.drawing.steps.sketch import (
    Sketch,
    begin,
    below,
    finish,
    first_part,
    say,
    stitches,
    tell,
    torn,
)
from hoopwright.render.figure import Figure
from hoopwright.shape.curves.ellipse import point_at
from hoopwright.shape.ground import ellipse_of
from hoopwright.shape.model import Hoop, Panel, Tie
from hoopwright.shape.tying.lacing import FACING, LACED, eyelet_count
from hoopwright.spec.model import LacingBuild


def cut_ties(plan: Plan, action: str) -> Figure:
    """A tie laid straight: the length between its marks, what is left at both ends."""
    sheet, tie = begin(action, 142), _tie(plan)
    end = (tie.cut - tie.length) / 2
    sheet.rect(16, 48, 288, 22, fill=PAPER, line=1.3)
    for x1, x2 in ((16, 70), (250, 304)):
        sheet.rect(x1, 48, x2 - x1, 22, fill=sheet.pattern("hatch"), line=1.3)
    across(sheet, 70, 250, 36, f"{say(plan, tie.length)} under a 1 kg pull")
    for x1, x2 in ((16, 70), (250, 304)):
        across(sheet, x1, x2, 92, say(plan, end))
    sheet.text(160, 64, tie.id, size=SMALL, anchor="middle", bold=True, halo=True)
    below(sheet, 122, f"Cut {say(plan, tie.cut)}; what lies beyond the marks wraps round the hoop.")
    return finish(sheet, "Cutting a tie",
                  f"{tie.id} laid straight, {say(plan, tie.length)} between its marks and {say(plan, end)}"
                  f" beyond each, {say(plan, tie.cut)} in all.")


def pin_ties(plan: Plan, action: str) -> Figure:
    """A hoop from above with its ties pinned from mark to mark: as it lies by itself, and drawn in."""
    sheet, hoop = begin(action, 214), _tied(plan, action)
    ties = [tie for tie in plan.shape.ties if tie.hoop == hoop.id and tie.cut]
    scale = min(216 / hoop.plan.width, 128 / hoop.plan.depth)
    x, y = 160.0, 86.0
    line = _line(hoop)
    off = [(max(one) + min(one)) / 2 for one in ([p[0] for p in line], [p[1] for p in line])]
    spots = [(x + (a - off[0]) * scale, y + (b - off[1]) * scale) for a, b in line]
    sheet.path(spots, closed=hoop.closed, width=2.4)
    places = [[(x + (a - off[0]) * scale, y + (b - off[1]) * scale)
               for a, b in tie.way or (_end(hoop, tie.at), _end(hoop, tie.to))] for tie in ties]
    for ends in places:
        if len(ends) > 2:
            sheet.path(ends, width=1.8)
        else:
            sheet.line(ends[0], ends[1], width=1.8)
        for end in (ends[0], ends[-1]):
            sheet.ellipse(end, 4, 4, fill=PAPER, width=1.4)
    for tie, ends in zip(ties, places, strict=True):
        words, level = say(plan, tie.length), abs(ends[0][1] - ends[-1][1]) < 1
        short = level and abs(ends[0][0] - ends[-1][0]) < text_width(words, SMALL) + 20
        middle = ends[len(ends) // 2] if tie.way else ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        down = 20 if tie.way else -10 if short else 4
        sheet.text(middle[0], middle[1] + down, words, size=SMALL, anchor="middle", halo=True)
    sheet.text(x, 176, f"{hoop.id}, front at the foot", size=SMALL, anchor="middle")
    worn = any(tie.way for tie in ties)
    below(sheet, 200, "As worn; off her it springs wider. Nothing sewn." if worn else
          "Tape flat and straight, pinned at the marks; nothing sewn.")
    lengths = ", ".join(dict.fromkeys(say(plan, tie.length) for tie in ties))
    return finish(sheet, "Pinning the ties",
                  f"{hoop.id} from above, drawn in by {len(ties)} {'tie' if len(ties) == 1 else 'ties'} of"
                  f" {lengths}{', as it lies round the wearer' if worn else ''}.")


def sew_ties(plan: Plan, action: str) -> Figure:
    """A tie's end wrapped round the hoop and sewn through."""
    sheet, wrap = begin(action, 160), plan.spec.allowances.tape_hem
    sheet.rect(60, 62, 214, 22, fill=PAPER, line=1.3)
    torn(sheet, 274, 62, 84)
    sheet.ellipse((60, 74), 8, 18, fill="#bbb", width=1.4)
    sheet.path([(74, 60), (60, 52), (46, 62), (44, 78), (52, 94), (66, 96), (132, 92)], width=2.2)
    for x in (84, 122):
        stitches(sheet, [(x, 58), (x, 98)])
    across(sheet, 60, 132, 124, f"{say(plan, wrap)} round and back")
    tell(sheet, (60, 64), (70, 30), "hoop, cut through", anchor="middle")
    tell(sheet, (200, 66), (206, 46), "tie")
    below(sheet, 150, "Measure from mark to mark once more before the last stitch.")
    return finish(sheet, "Sewing a tie on",
                  f"A tie's end wrapped {say(plan, wrap)} round its hoop and back, and sewn through.")


def sew_panels(plan: Plan, action: str) -> Figure:
    """The straight edge of a lacing panel folded in over the eyelets' line, its ends turned."""
    sheet, _, panel = begin(action, 196), *_laced(plan)
    sheet.path([(60, 24), (186, 24), (234, 150), (60, 150)], closed=True, fill=sheet.pattern("weave"),
               width=1.3)
    sheet.rect(60, 24, 34, 126, fill=PAPER, line=1.2)
    for points in ([(92, 26), (92, 148)], [(62, 32), (188, 32)], [(62, 142), (230, 142)]):
        stitches(sheet, [(float(a), float(b)) for a, b in points])
    across(sheet, 60, 94, 172, f"{say(plan, FACING)} folded in")
    upright(sheet, 24, 150, 258, ("cut", say(plan, panel.height)))
    sheet.text(142, 92, "to the hoops", size=SMALL, anchor="middle", halo=True)
    below(sheet, 190, "Inside; the slanting edge stays raw for the hoops.")
    return finish(sheet, "A lacing panel",
                  f"A lacing panel from inside: its straight edge folded in by {say(plan, FACING)}, upper and"
                  " lower edge turned and sewn.")


def lace_for_now(plan: Plan, action: str) -> Figure:
    """Both panels pinned to the half hoops and laced through the folds, no eyelets yet."""
    sheet, build, _ = begin(action, 208), *_laced(plan)
    _laced_panels(sheet, pinned=True)
    across(sheet, 146, 174, 180, say(plan, build.gap))
    sheet.text(160, 12, "from inside", size=SMALL, anchor="middle", fill=GREY)
    below(sheet, 202, "Gap even from top to bottom; it may still change.")
    return finish(sheet, "Laced for now",
                  f"Both panels pinned to the ends of the half hoops and laced {say(plan, build.gap)} apart"
                  " through their folded edges, without eyelets.")


def sew_panels_on(plan: Plan, action: str) -> Figure:
    """A panel's slanting edge sewn to tape and tipped ends."""
    sheet = begin(action, 168)
    _laced(plan)
    sheet.path([(20, 16), (150, 16), (184, 138), (20, 138)], closed=True, fill=sheet.pattern("weave"),
               width=1.2)
    sheet.path([(146, 16), (160, 16), (194, 138), (180, 138)], closed=True, fill=PAPER, width=1.2)
    for k in range(3):
        y = 36.0 + 38 * k
        x = 152 + (y - 16) * 34 / 122
        sheet.line((x, y), (306, y + 10), width=4, stroke="#777")
        sheet.ellipse((x, y), 5, 5, fill=INK)
        stitches(sheet, [(x - 8, y - 8), (x + 8, y - 8), (x + 9, y + 9), (x - 6, y + 9), (x - 8, y - 8)])
    sheet.text(80, 82, "panel", size=SMALL, anchor="middle", halo=True)
    tell(sheet, (190, 120), (216, 138), "tape")
    tell(sheet, (260, 44), (250, 24), "half hoop, tipped", anchor="middle")
    below(sheet, 158, "Stitches all round each tip: none works through.")
    return finish(sheet, "Panels sewn to the hoops",
                  "A lacing panel's slanting edge sewn to the tape, and stitched round every tipped end.")


def set_eyelets(plan: Plan, action: str) -> Figure:
    """Eyelets along both folded edges, level with each other, laced."""
    sheet, build, _ = begin(action, 208), *_laced(plan)
    _laced_panels(sheet, pinned=False)
    across(sheet, 146, 174, 180, say(plan, build.gap))
    upright(sheet, 24, 48, 232, say(plan, build.spacing))
    count = eyelet_count(plan.spec, plan.shape.panels)
    below(sheet, 202, f"{count} eyelets in all, half on each edge, level.")
    return finish(sheet, "Eyelets and lacing",
                  f"{count} eyelets {say(plan, build.spacing)} apart on both folded edges, laced"
                  f" {say(plan, build.gap)} apart.")


def _laced_panels(sheet: Sheet, *, pinned: bool) -> None:
    """Two panels side by side, the cord crossing between their folded edges."""
    for sign in (-1.0, 1.0):
        near, far = 160 + sign * 14, 160 + sign * 84
        sheet.path([(near, 20), (far, 20), (far + sign * 26, 162), (near, 162)], closed=True,
                   fill=sheet.pattern("weave"), width=1.2)
    rows = [24.0 + 24 * k for k in range(6)]
    for k, y in enumerate(rows):
        if k + 1 < len(rows):
            for a, b in ((-1, 1), (1, -1)):
                sheet.line((160 + a * 20, y), (160 + b * 20, rows[k + 1]), width=1.3)
        for sign in (-1.0, 1.0):
            if pinned:
                x = 160 + sign * (86 + 26 * (y - 20) / 142)
                sheet.line((x - 8, y + 5), (x + 8, y - 1), width=1.4)
            else:
                sheet.ellipse((160 + sign * 20, y), 4, 4, fill=PAPER, width=1.6)


def _tie(plan: Plan) -> Tie:
    """The first tie that is cut from tape."""
    found = next((tie for tie in plan.shape.ties if tie.cut), None)
    if found is None:
        raise ValueError("ties cut in a plan without any")
    return found


def _tied(plan: Plan, action: str) -> Hoop:
    """The first hoop whose ties a task of that action works on."""
    part = first_part(plan, action)
    return plan.shape.hoop(part if any(tie.hoop == part for tie in plan.shape.ties) else _tie(plan).hoop)


def _line(hoop: Hoop) -> tuple[XY, ...]:
    """The hoop's wished line from above."""
    return hoop.plan.path or tuple(point_at(ellipse_of(hoop.plan), k / 72) for k in range(72))


def _end(hoop: Hoop, fraction: float) -> XY:
    """Where on its hoop a tie ends."""
    if not hoop.plan.path:
        return point_at(ellipse_of(hoop.plan), fraction)
    first = abs(fraction - hoop.start) < abs(fraction - hoop.end)
    return hoop.plan.path[0] if first else hoop.plan.path[-1]


def _laced(plan: Plan) -> tuple[LacingBuild, Panel]:
    """The lacing and its panel; only plans that have one come here."""
    panel = next((panel for panel in plan.shape.panels if panel.part == LACED), None)
    if plan.spec.build.lacing is None or panel is None:
        raise ValueError("a task of a lacing in a plan without one")
    return plan.spec.build.lacing, panel


SKETCHES: dict[str, Sketch] = {
    "cut-ties": cut_ties,
    "pin-ties": pin_ties,
    "sew-ties": sew_ties,
    "sew-panels": sew_panels,
    "lace-for-now": lace_for_now,
    "sew-panels-on": sew_panels_on,
    "set-eyelets": set_eyelets,
}
