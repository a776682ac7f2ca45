"""The petticoat whose channels carry the hoops, as the page measures it."""

from __future__ import annotations

from math import degrees

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.words import counted
from hoopwright.shape.model import Channel
from hoopwright.source.record import record
from hoopwright.supply.cloths import strips_of


@record(frozen=True, slots=True)
class ChannelRow:
    """A hoop's channel: its line up the cloth, at the seams and in the middle of a flat panel from the cut
    edge, the width of one panel there, the hoop's and the cloth's girth, and the strip of a casing."""

    hoop: str
    up: str
    flat: str
    wide: str
    girth: str
    cloth: str
    strip: str


@record(frozen=True, slots=True)
class FlounceRow:
    """A flounce: how it is cut, and where its head is sewn on."""

    id: str
    cut: str
    strips: str
    up: str
    girth: str
    depth: str
    material: str


@record(frozen=True, slots=True)
class PetticoatView:
    """Printed measures of the petticoat and its parts; false in a plan without one."""

    kind: str = ""
    count: int = 0
    counted: str = ""
    material: str = ""
    cut: str = ""
    slant: str = ""
    lean: str = ""
    top: str = ""
    hem: str = ""
    seam: str = ""
    head: str = ""
    edge: str = ""
    channel: str = ""
    takes: str = ""
    tucked: bool = False
    casing: str = ""
    round_off: str = ""
    placket: str = ""
    feed_gap: str = ""
    drawstring: str = ""
    cord: str = ""
    gathered: bool = False
    channels: tuple[ChannelRow, ...] = ()
    flounces: tuple[FlounceRow, ...] = ()

    def __bool__(self) -> bool:
        """Whether there is one."""
        return self.count > 0

    @property
    def string(self) -> str:
        """What the drawstring is of."""
        return self.cord


def petticoat_view(plan: Plan) -> PetticoatView:
    """The petticoat of a plan, or the view of none."""
    cloth, p = plan.shape.petticoat, Printer.of(plan.spec)
    if cloth is None:
        return PetticoatView()
    panel = plan.shape.panels[0]
    waist = plan.shape.waistband.girth
    return PetticoatView(
        kind=cloth.kind, count=cloth.count,
        counted=counted(cloth.count, panel.part), material=cloth.material,
        cut=_cut(plan, p), slant=p.length(cloth.slant), lean=f"{degrees(cloth.half_angle):.0f} degrees",
        top=p.length(cloth.top), hem=p.length(cloth.hem), seam=p.length(plan.spec.allowances.seam),
        head=p.length(cloth.head), edge=p.length(cloth.edge), channel=p.length(cloth.channels[0].width),
        takes=p.length(cloth.takes) if cloth.takes else "", tucked=not cloth.casing, casing=cloth.casing,
        round_off=p.length(cloth.round_off) if p.printed(cloth.round_off) > 0 else "",
        placket=p.length(cloth.placket) if cloth.placket else "", feed_gap=p.length(cloth.feed_gap),
        drawstring=p.length(cloth.drawstring) if cloth.drawstring else "", cord=cloth.cord,
        gathered=p.printed(cloth.top) > p.printed(waist),
        channels=tuple(_channel(plan, one, k, p) for k, one in enumerate(cloth.channels)),
        flounces=tuple(FlounceRow(
            one.id, f"{p.long(one.length)} × {p.length(one.height)}",
            counted(strips_of(plan.supply.layouts, one.id), "strip"), p.length(one.up), p.length(one.girth),
            p.length(one.depth), one.material) for one in cloth.flounces),
    )


def _cut(plan: Plan, p: Printer) -> str:
    """A panel's widths at its lower and its upper cut edge, and its height."""
    panel = plan.shape.panels[0]
    low = panel.outline[1][0] - panel.outline[0][0]
    half = len(panel.outline) // 2
    top = panel.outline[half][0] - panel.outline[half + 1][0]
    even = p.printed(low) == p.printed(top)
    wide = f"{p.length(low)} wide" if even else f"{p.length(low)} below, {p.length(top)} above"
    return f"{wide}, {p.length(panel.height)} high"


def _channel(plan: Plan, one: Channel, k: int, p: Printer) -> ChannelRow:
    rule = plan.shape.panels[0].rules[k]
    wide = rule.points[-1][0] - rule.points[0][0] + 2 * plan.spec.allowances.seam
    hoop = plan.shape.hoop(one.hoop)
    strip = f"{p.long(one.strip)} × {p.length(one.height)}" if one.strip else ""
    return ChannelRow(one.hoop, p.length(one.up), p.length(rule.offset), p.length(wide), p.length(hoop.girth),
                      p.length(one.girth), strip)
