"""The tape marking chart: every mark of every tape, cumulative from the waistband's lower edge."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.render.views.parts import TapeView
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Chart:
    """Heads are the tapes; a row is a hoop and its mark on every tape, a dash where the tape ends above,
    and how high its middle hangs above the floor."""

    tapes: tuple[TapeView, ...]
    rows: tuple[tuple[str, tuple[str, ...], str], ...]
    unit: str
    band: str


def chart_view(plan: Plan, tapes: dict[str, TapeView]) -> Chart:
    """The chart of a plan. Cells have no unit; the heading names it."""
    p = Printer.of(plan.spec)
    all_tapes = tuple(tapes.values())
    rows = tuple(
        (hoop.id, tuple(_bare(tape.marks.get(hoop.id, "")) for tape in all_tapes),
         _bare(p.length(hoop.height)))
        for hoop in plan.shape.hoops if any(hoop.id in tape.marks for tape in all_tapes))
    return Chart(
        tapes=all_tapes,
        rows=rows,
        unit="inches" if p.units == "inches" else "centimetres",
        band=p.length(plan.shape.waistband.girth),
    )


def _bare(text: str) -> str:
    return text.rsplit(" ", 1)[0] if text else "–"
