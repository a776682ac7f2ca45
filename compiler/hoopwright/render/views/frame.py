"""Wheels and side hoops, as the page measures them."""

from __future__ import annotations

from math import degrees, pi

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import counted
from hoopwright.shape.model import Hoop
from hoopwright.source.quantity import angle_text
from hoopwright.source.record import record

EIGHTHS = (
    "centre front",
    "left front",
    "left side",
    "left back",
    "centre back",
    "right back",
    "right side",
    "right front",
)
LITRE = 0.001


@record(frozen=True, slots=True)
class WheelView:
    """Printed measures of a wheel. ``spokes``: (id, cut, where each ring crosses, measured from the first);
    ``rings``: (id, how far it is round, places of the spokes from centre front by the wearer's left);
    ``crossings``: the same by spoke, (spoke, its place on each ring);
    ``rim``: (place, from the waist, above the floor, skirt, and both again under the load, where that is
    known); ``loaded`` is the tilt then. False in a plan without one."""

    width: str
    set_back: str
    tilt: str
    rim_drop: str
    count: str
    spoke_count: str
    opened: tuple[str, ...]
    spokes: tuple[tuple[str, str, tuple[str, ...]], ...]
    ring_ids: tuple[str, ...]
    rings: tuple[tuple[str, str, str], ...]
    crossings: tuple[tuple[str, ...], ...]
    rim: tuple[tuple[str, ...], ...]
    loaded: str
    cover: str
    cover_size: str
    cover_pieces: str
    cover_radius: str
    dart: str
    hem: str
    seam: str
    slit: str
    halves: bool
    cover_material: str
    roll: str
    roll_length: str
    roll_cut: str
    roll_material: str
    stuffing: str
    spoke_end: str

    def __bool__(self) -> bool:
        return bool(self.spokes)


NO_WHEEL = WheelView(
    "",
    "",
    "",
    "",
    "",
    "",
    (),
    (),
    (),
    (),
    (),
    (),
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    "",
    False,
    "",
    "",
    "",
    "",
    "",
    "",
    "",
)
"""The view of no wheel."""


def wheel_view(plan: Plan) -> WheelView:
    """The wheel of a plan, or the view of none."""
    wheel, p = plan.shape.wheel, Printer.of(plan.spec)
    if wheel is None:
        return NO_WHEEL
    hoops = plan.shape.hoops
    end = (wheel.spokes[0].cut - wheel.spokes[0].marks[-1][1]) / 2
    cover = plan.shape.panels[0]
    litres = wheel.stuffing / LITRE
    found = plan.assessment.wheel
    sinks = () if found is None else found.sinks
    return WheelView(
        width=p.length(wheel.width),
        set_back=p.length(wheel.set_back),
        tilt=angle_text(wheel.tilt),
        rim_drop=p.length(wheel.rim_drop) if wheel.rim_drop else "",
        count=counted(len(hoops), "ring"),
        spoke_count=counted(len(wheel.spokes), "spoke"),
        opened=tuple(hoop.id for hoop in hoops if not hoop.closed),
        spokes=tuple(
            (spoke.id, p.length(spoke.cut), tuple(p.length(at) for _, at in spoke.marks[1:]))
            for spoke in wheel.spokes
        ),
        ring_ids=tuple(hoop.id for hoop in hoops[1:]),
        rings=tuple(
            (
                hoop.id,
                p.length(hoop.girth),
                ", ".join(
                    f"{fix.tape} {p.length(_along(hoop, fix.fraction))}"
                    for fix in hoop.fixings
                ),
            )
            for hoop in hoops
        ),
        crossings=tuple(
            (spoke.id, *(p.length(_along(hoop, hoop.fixings[k].fraction)) for hoop in hoops))
            for k, spoke in enumerate(wheel.spokes)
        ),
        rim=tuple(
            (place, p.length(point.reach), p.length(point.height), p.length(point.skirt),
             *(p.length(value - sink) for sink in sinks[k : k + 1] for value in (point.height, point.skirt)))
            for k, (place, point) in enumerate(zip(EIGHTHS, wheel.rim, strict=True))
        ),
        loaded="" if found is None else angle_text(found.tilt),
        cover=p.length(wheel.cover),
        cover_size=f"{p.length(cover.width)} × {p.length(cover.height)}",
        cover_pieces="two mirrored halves" if wheel.halves else "one piece",
        cover_radius=p.length(wheel.cover / 2 + wheel.hem),
        dart=p.length(wheel.dart) if p.printed(wheel.dart) > 0 else "",
        hem=p.length(wheel.hem),
        seam=p.length(wheel.seam),
        slit=p.length(wheel.slit),
        halves=wheel.halves,
        cover_material=wheel.cover_material,
        roll=p.length(wheel.roll),
        roll_length=p.length(wheel.roll_length),
        roll_cut=f"{p.length(wheel.roll_cut[0])} × {p.length(wheel.roll_cut[1])}",
        roll_material=wheel.roll_material,
        stuffing=f"{litres:.1f} litres",
        spoke_end=p.length(end),
    )


def _along(hoop: Hoop, fraction: float) -> float:
    """How far along a ring a fraction of it lies, from its start, m."""
    return (fraction - hoop.start) / (hoop.end - hoop.start) * hoop.girth


@record(frozen=True, slots=True)
class SidesView:
    """Printed measures of side hoops. ``rows``: (hoops, below the waist, down the outer panel from the
    waistband's
    edge, channel, steel, beyond the hip wished, by itself, down the inner panel); ``loaded``: (hoops, beyond the
    hip and below the waist under the load, how far down that is), where it is known. False in a plan without
    them."""

    across: str
    half: str
    hip: str
    front_to_back: str
    on_band: str
    begins: str
    ends: str
    pocket: str
    channel: str
    ease: str
    material: str
    tie: str
    tie_length: str
    outer: str
    outer_top: str
    inner: str
    rows: tuple[tuple[str, ...], ...]
    door: str
    leaves: str
    loaded: tuple[tuple[str, ...], ...]
    across_loaded: str

    def __bool__(self) -> bool:
        return bool(self.rows)


NO_SIDES = SidesView("", "", "", "", "", "", "", "", "", "", "", "", "", "", "", "", (), "", "", (), "")
"""The view of no side hoops."""


def sides_view(plan: Plan) -> SidesView:
    """The side hoops of a plan, or the view of none."""
    pair, p = plan.shape.sides, Printer.of(plan.spec)
    if pair is None:
        return NO_SIDES
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
        material=pair.material,
        tie=plan.shape.ties[0].material,
        tie_length=p.length(plan.shape.ties[0].length),
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
            (" and ".join(one.hoops), p.length(one.reach), p.length(one.drop), p.length(one.down))
            for one in sides
        ),
        across_loaded=p.length(2 * (pair.hip + max(one.reach for one in sides))) if sides else "",
    )


def frame_row(plan: Plan) -> tuple[str, str] | None:
    """What carries the rings of a wheel or the steels of side hoops, for the table at the top."""
    wheel, pair = plan.shape.wheel, plan.shape.sides
    if wheel is not None:
        drop = Printer.of(plan.spec).length(wheel.rim_drop)
        dish = f", the rim {drop} lower" if wheel.rim_drop else ""
        return "Wheel", (
            f"{counted(len(wheel.spokes), 'spoke')}, tilted {degrees(wheel.tilt):.0f} degrees{dish},"
            f" on a roll {Printer.of(plan.spec).length(wheel.roll)} thick, under a cover of"
            f" {wheel.cover_material}"
        )
    if pair is not None:
        return "Cloth", f"an outer and an inner panel of {pair.material} at each side, a tie inside each hoop"
    return None


def size_row(plan: Plan) -> tuple[str, str] | None:
    """The size of a wheel or of side hoops, for the table at the top."""
    wheel, pair, p = plan.shape.wheel, plan.shape.sides, Printer.of(plan.spec)
    if wheel is not None:
        front, back = wheel.rim[0], wheel.rim[4]
        return "Rim", (
            f"{p.length(wheel.width)} across, {p.length(pi * wheel.width)} round;"
            f" {p.length(front.height)} off the floor in front, {p.length(back.height)} behind"
        )
    if pair is not None:
        return "Width", (
            f"{p.length(pair.across)} over both, {p.length(pair.front_to_back)} from front to back at"
            " each side"
        )
    return None
