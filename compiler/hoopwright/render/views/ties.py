"""Ties and lacing as the page names and measures them."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.shape.model import Hoop, Tie
from hoopwright.shape.tying.lacing import FACING, LACED, eyelet_count
from hoopwright.source.record import record

_KINDS = {
    "cross": "across, draws the oval",
    "chord": "from end to end, holds the half hoop",
    "lacing": "from end to end, set by the lacing",
    "strap": "across the opening, hooked when worn",
    "hip": "behind the hips",
}


@record(frozen=True, slots=True)
class TieView:
    """One tie. ``where`` is its place on the hoop, ``cut`` blank for a lacing; ``round``: it lies round the wearer."""

    id: str
    hoop: str
    kind: str
    where: str
    length: str
    cut: str
    pull: str
    round: bool


@record(frozen=True, slots=True)
class LacingView:
    """The lacing's measures, blank without one."""

    gap: str
    spacing: str
    facing: str
    eyelets: int
    width: str
    height: str


def tie_views(plan: Plan) -> tuple[TieView, ...]:
    """Every tie, hoop by hoop."""
    printer = Printer.of(plan.spec)
    pulls = {tie.id: tie.tension for tie in plan.assessment.ties}
    return tuple(_tie(tie, plan.shape.hoop(tie.hoop), pulls.get(tie.id), printer) for tie in plan.shape.ties)


def lacing_view(plan: Plan) -> LacingView | None:
    """The lacing, or None."""
    build, printer = plan.spec.build.lacing, Printer.of(plan.spec)
    panel = next((panel for panel in plan.shape.panels if panel.part == LACED), None)
    if build is None or panel is None:
        return None
    return LacingView(printer.length(build.gap), printer.length(build.spacing), printer.length(FACING),
                      eyelet_count(plan.spec, plan.shape.panels), printer.length(panel.width),
                      printer.length(panel.height))


def _tie(tie: Tie, hoop: Hoop, tension: float | None, printer: Printer) -> TieView:
    return TieView(
        id=tie.id,
        hoop=tie.hoop,
        kind=_KINDS[tie.kind],
        where=_where(tie, hoop, printer),
        length=printer.length(tie.length),
        cut=printer.length(tie.cut) if tie.cut else "",
        pull="" if tension is None else f"{tension:.1f} N",
        round=bool(tie.way),
    )


def _where(tie: Tie, hoop: Hoop, printer: Printer) -> str:
    """Both ends: along the hoop from centre front by the wearer's left and right, or from its ends."""
    if not hoop.closed:
        side = "before" if tie.kind == "strap" else "behind"
        round_her = f", round {side} the wearer; the ends {printer.length(tie.span)} apart" if tie.way else ""
        return f"from one end of the hoop to the other{round_her}"
    left = printer.length(min(tie.at, 1 - tie.at) * hoop.girth)
    if abs(tie.at + tie.to - 1) < 1e-6:
        return f"{left} from centre front, on both sides"
    right = printer.length(min(tie.to, 1 - tie.to) * hoop.girth)
    side = "left" if tie.at < 0.5 else "right"
    if min(tie.at, 1 - tie.at) < 1e-6:
        return "from centre front to centre back"
    return f"on the {side}, {left} and {right} from centre front"
