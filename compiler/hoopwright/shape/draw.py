"""The shape stage: a Spec in, the whole shape out, or findings when it cannot be."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import dist

from hoopwright.shape import lengths, problems
from hoopwright.shape.body import body_of, hoop_contacts
from hoopwright.shape.carriers import CARRIERS
from hoopwright.shape.clearance import HEM_OVER_STATURE, clearance_checks
from hoopwright.shape.families.corded import draw_corded
from hoopwright.shape.families.opening import LOOSE, loose_ends, opened
from hoopwright.shape.families.pair import draw_pair
from hoopwright.shape.families.wheel import draw_wheel
from hoopwright.shape.fit.refit import refitted
from hoopwright.shape.impossible import Impossible
from hoopwright.shape.model import Fixing, HemBand, Hoop, HoopPlace, Shape
from hoopwright.shape.places import Places, place_hoops
from hoopwright.shape.shelf import shelf_note
from hoopwright.shape.skirt import over_petticoats, skirt_over
from hoopwright.shape.tapes import Level
from hoopwright.shape.tying.hipties import hip_ties
from hoopwright.shape.tying.lacing import lacing_panels
from hoopwright.shape.tying.stated import stated_ties
from hoopwright.shape.tying.tiecheck import tie_checks
from hoopwright.shape.tying.ties import Tied, ties_of
from hoopwright.shape.waist import Waist, waist_of
from hoopwright.source.diagnostic import Finding
from hoopwright.spec.model import Spec

_SAME = 1e-9


def draw(spec: Spec) -> tuple[Shape | None, tuple[Finding, ...]]:
    """The shape of a spec, with findings; None when a finding is an error."""
    if spec.build.tapes is not None and spec.build.tapes.to == "band" and spec.build.band is None:
        return None, (problems.band_missing(),)
    waist = waist_of(spec)
    try:
        if spec.build.wheel is not None:
            return refitted(spec, draw_wheel(spec, waist))
        if spec.build.sides is not None:
            return refitted(spec, draw_pair(spec, waist))
        if spec.build.cords is not None:
            return refitted(spec, draw_corded(spec, waist))
        places = place_hoops(spec, waist)
        crowded = _crowded(spec, places)
        if crowded is not None:
            return None, (crowded,)
        shape = _shape(spec, waist, places)
    except Impossible as stop:
        return None, (stop.finding,)
    stated = stated_ties(spec, shape)
    if stated:
        return None, stated
    fitted, told = refitted(spec, shape)
    stature = spec.wearer.stature
    wide = stature is not None and spec.shape.hem_girth > HEM_OVER_STATURE * stature
    return fitted, (
        *_line_findings(spec, places), *shelf_note(shape.tapes, shape.hoops), *((problems.hem_wide(),) if wide else ()),
        *_loose(shape), *told,
    )


def _shape(spec: Spec, waist: Waist, places: Places) -> Shape:
    ids = _ids(spec)
    count = len(places.heights)
    outlines = [
        places.ground.outline(girth, height, count - 1 - k)
        for k, (girth, height) in enumerate(zip(places.girths, places.heights, strict=True))
    ]
    outlines = opened(spec, outlines, places.heights, waist)
    levels = [Level(*level) for level in zip(ids, places.heights, outlines, strict=True)]
    body = body_of(spec)
    carried = CARRIERS[spec.build.carried_by](spec, waist, body, levels)
    tied = ties_of(spec, levels, body)
    ties = tuple(tie for one in tied for tie in one.ties)
    hoops = _hoops(spec, waist, places, levels, carried.fixings, tied)
    contacts = (
        *hoop_contacts(body, [(level.id, level.height, level.outline) for level in levels]),
        *carried.contacts,
    )
    skirt = skirt_over(waist, [(level.height, level.outline) for level in levels], body, spec.skirt_off_floor)
    return Shape(
        waist_heights=spec.wearer.waist_heights,
        waistband=lengths.waistband(spec),
        body=body.rows,
        skirt=over_petticoats(skirt, spec.load),
        checks=(*clearance_checks(spec, hoops, carried.tapes, contacts), *tie_checks(spec, hoops, tied)),
        hoops=hoops,
        tapes=carried.tapes,
        band=_band(spec, hoops),
        contacts=contacts,
        ties=(*ties, *hip_ties(spec, levels, body)),
        panels=(*carried.panels, *lacing_panels(spec, levels, ties)),
        petticoat=carried.petticoat,
    )


def _ids(spec: Spec) -> list[str]:
    names = spec.shape.names
    return [names[k] if k < len(names) and names[k] else f"H{k + 1}" for k in range(spec.shape.count)]


def _hoops(
    spec: Spec, waist: Waist, places: Places, levels: Sequence[Level], fixings: Sequence[tuple[Fixing, ...]],
    tied: Sequence[Tied],
) -> tuple[Hoop, ...]:
    hoops = []
    count = len(levels)
    for k, level in enumerate(levels):
        open_ = level.outline.end - level.outline.start < 1.0
        girth = places.girths[k]
        if open_ or abs(level.outline.length - girth) > _SAME:
            girth = level.outline.length
        in_band = spec.build.band is not None and k >= count - 2
        place: HoopPlace = "hem" if k == count - 1 else "band top" if in_band else "top" if k == 0 else "body"
        casing = 0.0 if in_band else lengths.casing_cut(girth, spec)
        hoops.append(
            Hoop(
                level.id,
                place,
                level.height,
                waist.side - level.height,
                girth,
                level.outline.plan(),
                girth if open_ else lengths.hoop_cut(girth, spec),
                casing,
                casing > 0.0,
                fixings[k],
                level.outline.start,
                level.outline.end,
                tied[k].line,
            )
        )
    return tuple(hoops)


def _band(spec: Spec, hoops: Sequence[Hoop]) -> HemBand | None:
    if spec.build.band is None:
        return None
    upper, lower = hoops[-2:]
    return lengths.hem_band(
        spec, (upper.id, upper.girth, upper.plan.width / 2), (lower.id, lower.girth, lower.plan.width / 2)
    )


def _crowded(spec: Spec, places: Places) -> Finding | None:
    """More hoops than fit: two neighbours nearer to each other, on the side profile, than the strip is
    high."""
    height = spec.build.hoops.material.section.height
    reach = places.ground.reach
    points = [(z, reach(girth, z)) for z, girth in zip(places.heights, places.girths, strict=True)]
    room = [dist(above, below) for above, below in pairwise(points)]
    if not room or min(room) >= height:
        return None
    fit = max(1, int(sum(room) / height))
    return problems.hoops_do_not_fit(spec.shape.count, min(fit, spec.shape.count - 1))


def _line_findings(spec: Spec, places: Places) -> tuple[Finding, ...]:
    """What a table's rows want a second look at."""
    rows = spec.shape.line.rows
    found = []
    for index, row in enumerate(rows):
        if spec.shape.top_girth is not None and row.height >= places.heights[0]:
            found.append(problems.table_row_unused(index))
        elif index and row.girth < rows[index - 1].girth:
            found.append(problems.table_narrows(index))
    return tuple(found)


def _loose(shape: Shape) -> tuple[Finding, ...]:
    """Open hoops whose ends stand out beyond their outermost tapes."""
    loose = [hoop.id for hoop in shape.hoops if loose_ends(hoop) > LOOSE]
    return (problems.ends_loose(tuple(loose)),) if loose else ()
