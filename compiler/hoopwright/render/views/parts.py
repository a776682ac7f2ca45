"""Hoops and tapes as the page names and measures them."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.plan.joins import BehindPlace, JoinPlace
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import ids_text, where
from hoopwright.shape.model import Hoop, Tape
from hoopwright.source.record import record

_WHEEL = {"top": "round the hole", "body": "", "hem": "the rim"}
_PLACES = {"top": "the top hoop", "body": "", "band top": "upper edge of the band", "hem": "the hem hoop"}


@record(frozen=True, slots=True)
class HoopView:
    """One hoop. ``round_marks`` are (tape, distance) going round from the tape beside the join, ``end_marks``
    those of an open hoop from its end at the wearer's left. ``size`` says how long it is round."""

    id: str
    place: str
    height: str
    girth: str
    across: str
    cut: str
    casing: str
    join: str
    join_tape: str
    round_marks: tuple[tuple[str, str], ...]
    banded: bool
    size: str = ""
    end_marks: tuple[tuple[str, str], ...] = ()
    closed: bool = True


@record(frozen=True, slots=True)
class TapeView:
    """One tape. ``at_band`` is its distance along the waistband from centre front by the wearer's left; ``over_body``
    the hoops to which it goes over the body, blank when it hangs free."""

    id: str
    where: str
    cut: str
    at_band: str
    marks: dict[str, str]
    ends_at: str
    over_body: str = ""


def hoop_views(plan: Plan) -> dict[str, HoopView]:
    """Every hoop by id, from the top."""
    printer = Printer.of(plan.spec)
    joins = {join.hoop: join for join in plan.joins}
    found = {hoop.id: _hoop(hoop, joins.get(hoop.id), printer) for hoop in plan.shape.hoops}
    for place in plan.behind:
        found[place.hoop] = replace(found[place.hoop], join=_behind(plan.shape.hoop(place.hoop), place, printer))
    if plan.shape.wheel is not None:
        return {hoop.id: replace(found[hoop.id], place=_WHEEL[hoop.place]) for hoop in plan.shape.hoops}
    if plan.shape.sides is not None:
        return {id: replace(view, place="") for id, view in found.items()}
    return found


def tape_views(plan: Plan) -> dict[str, TapeView]:
    """Every tape by id, from centre front by the wearer's left."""
    printer = Printer.of(plan.spec)
    girth = plan.shape.waistband.girth
    return {tape.id: _tape(tape, girth, printer) for tape in plan.shape.tapes}


def _hoop(hoop: Hoop, join: JoinPlace | None, printer: Printer) -> HoopView:
    towards = {"back": "", "left": ", on the wearer's left of it"}
    across = printer.length(hoop.plan.width)
    if abs(hoop.plan.width - hoop.plan.depth) > 1e-4:
        across = f"{printer.length(hoop.plan.width).rsplit(' ', 1)[0]} × {printer.length(hoop.plan.depth)}"
    return HoopView(
        id=hoop.id,
        place=_PLACES[hoop.place],
        height=printer.length(hoop.height),
        girth=printer.length(hoop.girth) if hoop.closed else "open",
        across=across,
        cut=printer.length(hoop.cut),
        casing=printer.length(hoop.casing) if hoop.casing else "",
        join=f"{join.tape}{towards[join.towards]}" if join else "",
        join_tape=join.tape if join else "",
        round_marks=_round_marks(hoop, join, printer),
        banded=not hoop.cased,
        size=f"{printer.length(hoop.girth)} {'round' if hoop.closed else 'from end to end'}",
        end_marks=_end_marks(hoop, printer),
        closed=hoop.closed,
    )


def _behind(hoop: Hoop, place: BehindPlace, printer: Printer) -> str:
    """Where a join lies that no tape crosses: beside the last seam, or between two spokes and so far round
    from centre front."""
    if not place.beside:
        away = printer.length(abs(place.fraction - 0.5) * hoop.girth)
        return f"the last seam, its middle {away} to the wearer's {place.side}"
    front = printer.length(min(place.fraction, 1 - place.fraction) * hoop.girth)
    return f"{' and '.join(place.beside)}, its middle {front} from centre front on the wearer's {place.side}"


def _end_marks(hoop: Hoop, printer: Printer) -> tuple[tuple[str, str], ...]:
    """Where the tapes meet an open hoop, measured along it from its end at the wearer's left."""
    if hoop.closed:
        return ()
    span = hoop.end - hoop.start
    away = sorted(((fix.fraction - hoop.start) / span * hoop.girth, fix.tape) for fix in hoop.fixings)
    return tuple((tape, printer.length(at)) for at, tape in away)


def _round_marks(hoop: Hoop, join: JoinPlace | None, printer: Printer) -> tuple[tuple[str, str], ...]:
    """Where the tapes meet the hoop, measured round it from the tape beside the join, in tape order, and
    last the same tape again at the full girth."""
    start = next((fix for fix in hoop.fixings if join and fix.tape == join.tape), None)
    if start is None:
        return ()
    away = sorted(((fix.fraction - start.fraction) % 1.0, fix.tape)
                  for fix in hoop.fixings if fix is not start)
    return (*((tape, printer.length(share * hoop.girth)) for share, tape in away),
            (start.tape, printer.length(hoop.girth)))


def _tape(tape: Tape, girth: float, printer: Printer) -> TapeView:
    return TapeView(
        id=tape.id,
        where=where(tape.hem_fraction),
        cut=printer.length(tape.cut),
        at_band=printer.length(tape.waist_fraction * girth),
        marks={mark.hoop: printer.length(mark.at) for mark in tape.marks},
        ends_at=tape.ends_at,
        over_body=ids_text(mark.hoop for mark in tape.marks if mark.on_body),
    )
