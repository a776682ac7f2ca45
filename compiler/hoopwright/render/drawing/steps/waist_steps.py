"""Sketches of the waistband and of the crossings: places, fastening, hoops marked and sewn to tapes."""

from __future__ import annotations

from math import ceil, cos, pi, sin

from hoopwright.plan.model import Plan
from hoopwright.render.drawing.columns import Label, draw_column
from hoopwright.render.drawing.letters import clip, text_width
from hoopwright.render.drawing.marks import SMALL, across, leader
from hoopwright.render.drawing.sheet import GREY, INK, PAPER, Sheet
from hoopwright.render.drawing.spread import spread
from hoopwright.render.drawing.steps.sketch import (
    WIDTH,
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
from hoopwright.shape.model import Hoop
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Place:
    """A place on the waistband: where it lies on the page, its name and its distance in words."""

    x: float
    name: str
    value: str

    @property
    def room(self) -> float:
        """Width of its label on the page."""
        return max(text_width(self.value, SMALL), text_width(self.name, SMALL, bold=True)) + 8


def _write_places(sheet: Sheet, places: list[Place], edge: float, rows: int) -> None:
    """A stroke up from the band's lower edge at each place, its name and distance below, in ``rows`` rows."""
    told: list[tuple[float, float, Place]] = []
    for row in range(rows):
        mine = places[row::rows]
        spots = spread([place.x for place in mine], [place.room for place in mine], 2, WIDTH - 2)
        told += [(x, edge + 14 + 32 * row, place) for x, place in zip(spots, mine, strict=True)]
    for x, y, place in told:
        sheet.line((place.x, edge - 9), (place.x, edge), width=1.8)
        leader(sheet, [(place.x, edge), (x, y - 10)])
    for x, y, place in told:
        sheet.text(x, y, place.name, size=SMALL, anchor="middle", bold=True, halo=True)
        sheet.text(x, y + 13, place.value, size=SMALL, anchor="middle", halo=True)


def make_waistband(plan: Plan, action: str) -> Figure:
    """The waistband laid flat, to scale: every tape's place from centre front, the overlap, the turnings."""
    band, tapes = plan.shape.waistband, plan.shape.tapes
    shares = [("front", 0.0), ("back", 0.5), ("front", 1.0)]
    shares += [(tape.id, tape.waist_fraction) for tape in tapes] + _sides(plan)
    left, y, scale = 16.0, 30.0, (WIDTH - 32) / (band.girth + band.overlap)
    places = [
        Place(left + at * band.girth * scale, clip(name, 40, SMALL, bold=True), say(plan, at * band.girth))
        for name, at in sorted(shares, key=lambda item: item[1])
    ]
    rows = max(2, ceil(sum(place.room for place in places) / (WIDTH - 20)))
    sheet = begin(action, 94 + 32 * rows)
    sheet.rect(left, y, band.girth * scale, 22, fill=PAPER, line=1.4)
    sheet.rect(left + band.girth * scale, y, band.overlap * scale, 22, fill=sheet.pattern("hatch"), line=1.4)
    _write_places(sheet, places, y + 22, rows)
    sheet.text(WIDTH - 14, y - 8, f"overlap {say(plan, band.overlap)}", size=SMALL, anchor="end")
    sheet.text(left, y - 8, "lower edge, by the wearer's left", size=SMALL, fill=GREY)
    below(
        sheet,
        74 + 32 * rows,
        f"Cut {say(plan, band.cut)}; {say(plan, plan.spec.allowances.waistband_turning)} "
        f"turned in at each end; closed it measures {say(plan, band.girth)}.",
    )
    told = [f"{tape.id} {say(plan, tape.waist_fraction * band.girth)}" for tape in tapes]
    told = told or [f"centre back {say(plan, band.girth / 2)}",
                    *(f"{name} side hoop {say(plan, share * band.girth)}" for name, share in _sides(plan))]
    return finish(
        sheet,
        "Marking the waistband",
        f"The waistband laid flat: from centre front: {', '.join(told)}; overlap {say(plan, band.overlap)}.",
    )


def _sides(plan: Plan) -> list[tuple[str, float]]:
    """Where side hoops begin and end on the waistband, fractions from centre front by the wearer's left."""
    pair = plan.shape.sides
    if pair is None:
        return []
    half = pair.on_band / plan.shape.waistband.girth / 2
    return [(name, middle + sign * half) for name, middle in (("left", pair.at), ("right", 1 - pair.at))
            for sign in (-1, 1)]


def sew_fastening(plan: Plan, action: str) -> Figure:
    """The waistband's ends, one over the other, with the fastening."""
    sheet, band = begin(action, 140), plan.shape.waistband
    sheet.rect(120, 42, 186, 34, fill=PAPER, line=1.4)
    sheet.rect(14, 38, 186, 34, fill=PAPER, line=1.4)
    sheet.line((120, 40), (120, 70), stroke=GREY, width=1, dash="3 2")
    for y in (48, 62):
        sheet.ellipse((186, y), 5, 3.5, width=1.6)
        sheet.line((176, y), (181, y), width=1.6)
    across(sheet, 120, 200, 28, f"overlap {say(plan, band.overlap)}")
    name = clip(plan.spec.build.waistband.fastening.name, 130, SMALL)
    tell(sheet, (188, 64), (216, 102), name)
    tell(sheet, (200, 72), (100, 102), "centre front", anchor="end")
    below(sheet, 130, f"Closed: {say(plan, band.girth)} round. Opens with one hand.")
    return finish(
        sheet,
        "The fastening",
        f"The ends of the waistband overlap by {say(plan, band.overlap)} and are "
        f"closed with {plan.spec.build.waistband.fastening.name}.",
    )


def mark_hoop(plan: Plan, action: str) -> Figure:
    """A hoop from above, front at the bottom: how far each tape lies round it from the one at the join."""
    part = first_part(plan, action)
    hoop = next((hoop for hoop in plan.shape.hoops if hoop.id == part and hoop.fixings), plan.shape.hoops[0])
    if not hoop.closed:
        return _mark_open(plan, action, hoop)
    sheet, start = begin(action, 234), _start(plan, hoop)
    x, y, radius = WIDTH / 2, 112.0, 66.0
    sheet.ellipse((x, y), radius, radius, width=2.6)
    left: list[Label] = []
    right: list[Label] = []
    for fixing in hoop.fixings:
        side, ahead = sin(2 * pi * fixing.fraction), cos(2 * pi * fixing.fraction)
        sheet.line((x + 59 * side, y + 59 * ahead), (x + 73 * side, y + 73 * ahead), width=2.2)
        away = ((fixing.fraction - start[1]) % 1.0) * hoop.girth
        value = "start" if fixing.tape == start[0] else say(plan, away)
        (right if side > 0 else left).append(Label((x + 74 * side, y + 74 * ahead), fixing.tape, value))
        if fixing.tape == start[0]:
            sheet.ellipse((x + radius * side, y + radius * ahead), 5, 5, fill=INK, stroke=PAPER)
    for labels, place, name in ((left, 8.0, "left"), (right, WIDTH - 8.0, "right")):
        labels.sort(key=lambda label: label.at[1])
        draw_column(sheet, labels, place, 12.0, 198.0, side=name, room=78.0)
    sheet.text(x, y + 4, clip(hoop.id, 90, SMALL, bold=True), size=SMALL, anchor="middle", bold=True)
    sheet.text(x, y + 19, f"{say(plan, hoop.girth)} round", size=SMALL, anchor="middle")
    sheet.text(x, y + 50, "front", size=SMALL, anchor="middle", fill=GREY)
    sheet.text(x, y - 46, "back", size=SMALL, anchor="middle", fill=GREY)
    below(
        sheet, 214, "From above, anticlockwise from the mark beside the join (dot): front, her left, back."
    )
    told = ", ".join(fixing.tape for fixing in hoop.fixings)
    return finish(
        sheet,
        "Marking a hoop",
        f"{hoop.id} from above with the places of {told}, measured round it from "
        f"{start[0]}, beside which the join lies.",
    )


def _mark_open(plan: Plan, action: str, hoop: Hoop) -> Figure:
    """A hoop that stays open laid straight: how far each tape lies from its end at the wearer's left."""
    left, right, y = 30.0, WIDTH - 30.0, 58.0
    span = hoop.end - hoop.start
    shares = sorted(((fix.fraction - hoop.start) / span, fix.tape) for fix in hoop.fixings)
    places = [Place(left + share * (right - left), tape, say(plan, share * hoop.girth)) for share, tape in shares]
    rows = ceil(sum(place.room for place in places) / (WIDTH - 4))
    sheet = begin(action, y + 50 + 32 * rows)
    sheet.rect(left, y - 7, right - left, 14, fill="#ccc", line=1.2)
    for x in (left, right):
        sheet.rect(x - 3, y - 9, 6, 18, fill=INK)
    sheet.text(left, y - 18, "left", size=SMALL, bold=True)
    sheet.text(right, y - 18, "right", size=SMALL, anchor="end", fill=GREY)
    across(sheet, left, right, 26, f"{clip(hoop.id, 60, SMALL)} {say(plan, hoop.girth)}")
    _write_places(sheet, places, y + 7, rows)
    below(sheet, y + 32 + 32 * rows, "Lying straight; every mark measured from the tip of its left end.")
    told = ", ".join(f"{place.name} at {place.value}" for place in places)
    return finish(sheet, "Marking an open hoop",
                  f"{hoop.id} laid straight, {say(plan, hoop.girth)} long, marked from its end at the wearer's left:"
                  f" {told}.")


def _start(plan: Plan, hoop: Hoop) -> tuple[str, float]:
    """The tape beside the hoop's join, and its fraction of the girth; the first tape when it has no join."""
    beside = next((join.tape for join in plan.joins if join.hoop == hoop.id), "")
    found = next((fixing for fixing in hoop.fixings if fixing.tape == beside), hoop.fixings[0])
    return found.tape, found.fraction


def sew_hoop(plan: Plan, action: str) -> Figure:
    """A crossing of hoop and tape, sewn with a cross of stitches round the hoop."""
    sheet = begin(action, 176)
    x, y, tolerance = 110.0, 74.0, plan.spec.allowances.tape_tolerance
    sheet.rect(x - 24, 12, 48, 126, fill=PAPER, line=1.3)
    sheet.rect(18, y - 14, 184, 28, fill=PAPER, line=1.3)
    sheet.rect(18, y - 6, 184, 12, fill="#ddd", stroke=GREY, line=0.8, dash="3 2")
    torn(sheet, 18, y - 14, y + 14)
    torn(sheet, 202, y - 14, y + 14)
    stitches(sheet, [(x - 19, y - 20), (x + 19, y + 20)])
    stitches(sheet, [(x + 19, y - 20), (x - 19, y + 20)])
    for sign in (-1, 1):
        sheet.line((x + sign * 24, y), (x + sign * 34, y), width=2.4)
    tell(sheet, (x + 34, y - 1), (218, 46), "mark")
    sheet.text(218, 60, f"to {say(plan, tolerance)}", size=SMALL)
    tell(sheet, (190, y + 2), (218, 98), "hoop inside")
    tell(sheet, (x + 14, y + 18), (150, 128), "cross of stitches")
    below(sheet, 160, "Through tape and casing, round the hoop.")
    return finish(
        sheet,
        "Sewing a hoop to a tape",
        "A crossing of tape and cased hoop, sewn with a cross of stitches "
        f"on the mark to within {say(plan, tolerance)}.",
    )


SKETCHES: dict[str, Sketch] = {
    "make-waistband": make_waistband,
    "sew-fastening": sew_fastening,
    "mark-hoop": mark_hoop,
    "sew-hoop": sew_hoop,
}
