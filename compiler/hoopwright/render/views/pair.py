"""Side hoops as the page measures them."""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.shape.model import SidePair
from hoopwright.source.record import record
from hoopwright.work.pair import hanging


@record(frozen=True, slots=True)
class SidesView:
    """Printed measures of side hoops. ``rows``: (hoops, below the waist, down the outer panel from the waistband's
    edge, channel, steel, beyond the hip wished, by itself, down the inner panel); ``loaded``: (hoops, beyond the hip
    and below the waist without the skirt, both under the load, how far down that is), where it is known; ``worn``:
    something is stated that is worn over them; ``bare_known``: how they hang without it was found.
    False in a plan without them."""

    across: str = ""
    half: str = ""
    hip: str = ""
    front_to_back: str = ""
    on_band: str = ""
    begins: str = ""
    ends: str = ""
    pocket: str = ""
    channel: str = ""
    ease: str = ""
    gathers: tuple[str, ...] = ()
    material: str = ""
    tie: str = ""
    tie_length: str = ""
    tie_end: str = ""
    outer: str = ""
    outer_top: str = ""
    inner: str = ""
    rows: tuple[tuple[str, ...], ...] = ()
    door: str = ""
    leaves: str = ""
    loaded: tuple[tuple[str, ...], ...] = ()
    across_loaded: str = ""
    across_bare: str = ""
    bare_known: bool = False
    worn: bool = False
    skirt: str = ""

    def __bool__(self) -> bool:
        return bool(self.rows)


def sides_view(plan: Plan) -> SidesView:
    """The side hoops of a plan, or the view of none."""
    pair, p = plan.shape.sides, Printer.of(plan.spec)
    if pair is None:
        return SidesView()
    outer, inner = plan.shape.panels[0], plan.shape.panels[1]
    waist, door = plan.shape.waistband.girth, plan.spec.limits.door
    middle, sides = pair.at * waist, plan.assessment.sides
    room = 0.0 if door is None else p.printed(door) - p.printed(pair.across)
    return SidesView(
        across=p.length(pair.across),
        half=p.length(pair.across / 2),
        hip=p.length(2 * pair.hip),
        front_to_back=p.length(pair.front_to_back),
        on_band=p.length(pair.on_band),
        begins=p.length(middle - pair.on_band / 2),
        ends=p.length(middle + pair.on_band / 2),
        pocket=p.length(pair.pocket) if pair.pocket else "",
        channel=p.length(pair.channel),
        ease=p.length(pair.ease),
        gathers=tuple(_gathers(pair, p)),
        material=pair.material,
        tie=plan.shape.ties[0].material,
        tie_length=p.length(plan.shape.ties[0].length),
        tie_end=p.length((plan.shape.ties[0].cut - plan.shape.ties[0].length) / 2),
        outer=f"{p.length(outer.width)} × {p.length(outer.height)}",
        outer_top=p.length(pair.channels[0].width),
        inner=f"{p.length(inner.width)} × {p.length(inner.height)}",
        rows=tuple(
            (
                " and ".join(one.hoops),
                p.length(one.drop),
                p.length(one.down),
                p.length(one.width),
                p.length(one.steel),
                p.length(one.wished),
                p.length(one.stands) if one.stands else "flat",
                p.length(one.inner),
            )
            for one in pair.channels
        ),
        door=p.length(door) if door else "",
        leaves=p.length(room / 2) if room > 0 else "",
        loaded=tuple(
            (" and ".join(one.hoops), *(map(p.length, one.bare) if one.bare else ("–", "–")), p.length(one.reach),
             p.length(one.drop), p.length(one.down))
            for one in sides
        ),
        across_loaded=p.length(2 * (pair.hip + max(one.reach for one in sides))) if sides else "",
        across_bare=p.length(2 * (pair.hip + max(out for out, _ in hanging(pair, plan.assessment)))),
        bare_known=all(one.bare is not None for one in sides),
        worn=bool(plan.spec.load),
        skirt=p.length(plan.skirt.side),
    )


def _gathers(pair: SidePair, p: Printer) -> Iterator[str]:
    """How much of the outer panel's edge is gathered down to each channel."""
    for k, (gather, one) in enumerate(zip(pair.gathers, pair.channels, strict=True)):
        yield f"{p.length(max(0.0, gather))} {'from there' if k else 'down'} to {' or '.join(one.hoops)}"


def pair_rows(plan: Plan) -> tuple[tuple[str, str], tuple[str, str]] | None:
    """Their size and what carries the steels, for the table at the top; None without side hoops."""
    pair, p = plan.shape.sides, Printer.of(plan.spec)
    if pair is None:
        return None
    view = sides_view(plan)
    hangs = (f" as wished, {view.across_loaded} as they hang {'under the skirt' if view.worn else 'by themselves'};"
             if view.loaded else ",")
    return ("Width", f"{p.length(pair.across)} over both{hangs} {p.length(pair.front_to_back)} from front to back at"
                     " each side"), (
        "Cloth", f"an outer and an inner panel of {pair.material} at each side, a tie inside each hoop")
