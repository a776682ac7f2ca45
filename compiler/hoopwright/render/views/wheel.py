"""A wheel as the page measures it."""

from __future__ import annotations

from math import degrees, pi

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import counted
from hoopwright.shape.model import Hoop, Wheel
from hoopwright.source.quantity import angle_text
from hoopwright.source.record import record
from hoopwright.strength.load import skirt_masses

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
    known); ``loaded`` is the tilt then; ``hung`` is what the skirt weighs, in all and at each spoke. False
    in a plan without one."""

    width: str = ""
    set_back: str = ""
    tilt: str = ""
    rim_drop: str = ""
    count: str = ""
    spoke_count: str = ""
    opened: tuple[str, ...] = ()
    spokes: tuple[tuple[str, str, tuple[str, ...]], ...] = ()
    ring_ids: tuple[str, ...] = ()
    rings: tuple[tuple[str, str, str], ...] = ()
    crossings: tuple[tuple[str, ...], ...] = ()
    rim: tuple[tuple[str, ...], ...] = ()
    loaded: str = ""
    cover: str = ""
    cover_size: str = ""
    cover_pieces: str = ""
    cover_radius: str = ""
    dart: str = ""
    hem: str = ""
    seam: str = ""
    slit: str = ""
    halves: bool = False
    cover_material: str = ""
    roll: str = ""
    roll_length: str = ""
    roll_cut: str = ""
    roll_material: str = ""
    stuffing: str = ""
    spoke_end: str = ""
    hung: str = ""

    def __bool__(self) -> bool:
        return bool(self.spokes)


def wheel_view(plan: Plan) -> WheelView:
    """The wheel of a plan, or the view of none."""
    wheel, p = plan.shape.wheel, Printer.of(plan.spec)
    if wheel is None:
        return WheelView()
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
        hung=_hung(plan, wheel, p),
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


def _hung(plan: Plan, wheel: Wheel, p: Printer) -> str:
    """The skirt's weight, all of which hangs from the rim, and what of it each spoke's end takes."""
    mass, count = skirt_masses(plan.spec, plan.shape)[-1], len(wheel.spokes)
    return f"{p.mass(mass)} in all: {p.mass(mass / count)} from the end of each of {counted(count, 'spoke')}"


def wheel_rows(plan: Plan) -> tuple[tuple[str, str], tuple[str, str]] | None:
    """The rim's size and what carries the rings, for the table at the top; None without a wheel."""
    wheel, p = plan.shape.wheel, Printer.of(plan.spec)
    if wheel is None:
        return None
    front, back = wheel.rim[0], wheel.rim[4]
    dish = f", the rim {p.length(wheel.rim_drop)} lower" if wheel.rim_drop else ""
    return ("Rim", f"{p.length(wheel.width)} across, {p.length(pi * wheel.width)} round;"
                   f" {p.length(front.height)} off the floor in front, {p.length(back.height)} behind"), (
        "Wheel", f"{counted(len(wheel.spokes), 'spoke')}, tilted {degrees(wheel.tilt):.0f} degrees{dish}, on a roll"
                 f" {p.length(wheel.roll)} thick, under a cover of {wheel.cover_material}")
