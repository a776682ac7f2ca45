"""The corded petticoat, as the page measures it."""

from __future__ import annotations

from math import degrees

from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer, exact_length
from hoopwright.render.words import counted
from hoopwright.shape.model import CordedPetticoat, CordRow
from hoopwright.source.printed import mass_text, share_text
from hoopwright.source.record import record
from hoopwright.strength.gravity import GRAVITY


@record(frozen=True, slots=True)
class RowView:
    """A row of cord: its middle up the finished cloth, on the flat breadth from its cut edge, above the floor, and
    the petticoat round there."""

    id: str
    up: str
    flat: str
    height: str
    girth: str


@record(frozen=True, slots=True)
class GroupView:
    """A group of rows, from the hem up. ``first`` and ``last`` rows; ``spacing`` from middle to middle."""

    number: int
    ids: str
    count: str
    first: RowView
    last: RowView
    spacing: str
    parts: tuple[str, ...]
    rows: tuple[RowView, ...]


@record(frozen=True, slots=True)
class SampleView:
    """The sample: how it is cut and what is measured on it. ``tests``: what was found, blank when nothing was."""

    cords: int = 0
    length: str = ""
    cut: str = ""
    layers: str = ""
    over: str = ""
    before: str = ""
    take_up: str = ""
    stiffness: str = ""
    bending_length: str = ""
    factor: str = ""
    line: str = ""
    apart: str = ""


@record(frozen=True, slots=True)
class CordedView:
    """Printed measures of a corded petticoat; false in a plan without one."""

    count: int = 0
    counted: str = ""
    material: str = ""
    cut: str = ""
    facing: str = ""
    facing_cut: str = ""
    length: str = ""
    hem: str = ""
    across: str = ""
    lean: str = ""
    seam: str = ""
    seam_count: int = 0
    head: str = ""
    turning: str = ""
    sandwich: bool = False
    held: str = ""
    cord: str = ""
    diameter: str = ""
    measured: bool = False
    takes: str = ""
    shrinkage: str = ""
    shrinkage_round: str = ""
    rows: int = 0
    run: str = ""
    run_sum: str = ""
    cord_each: str = ""
    cord_cut: str = ""
    reserve: str = ""
    band: str = ""
    placket: str = ""
    drawstring: str = ""
    string: str = ""
    starch: str = ""
    gathered: bool = False
    groups: tuple[GroupView, ...] = ()
    sample: SampleView = SampleView()

    def __bool__(self) -> bool:
        """Whether there is one."""
        return self.count > 0

    @property
    def kind(self) -> str:
        """What its panels are."""
        return "breadths"


def corded_view(plan: Plan) -> CordedView:
    """The corded petticoat of a plan, or the view of none."""
    cloth, cords, p = plan.shape.corded, plan.spec.build.cords, Printer.of(plan.spec)
    if cloth is None or cords is None:
        return CordedView()
    each = p.length(cloth.rows[0].cut)
    return CordedView(
        count=cloth.count, counted=counted(cloth.count, "breadth"), material=cloth.material,
        cut=f"{p.length(cloth.wide)} wide and {p.length(cloth.high)} high", facing=cloth.facing,
        facing_cut=f"{p.length(cloth.wide)} wide and {p.length(cloth.facing_high)} high" if cloth.facing else "",
        length=p.length(cloth.length), hem=p.length(cloth.hem), across=p.length(plan.shape.lowest.width),
        lean=f"{degrees(cloth.half_angle):.0f} degrees", seam=p.length(plan.spec.allowances.seam),
        seam_count=cloth.count - 1, head=p.length(cloth.head), turning=p.length(cloth.turning),
        sandwich=cloth.held == "sandwich", held=cloth.held, cord=cloth.cord,
        diameter=exact_length(cloth.diameter, p.units),
        measured=cloth.measured, takes=p.length(cloth.takes),
        shrinkage=share_text(cloth.shrinkage) if cloth.shrinkage else "",
        shrinkage_round=share_text(cloth.shrinkage_round) if cloth.shrinkage_round else "",
        rows=len(cloth.rows), run=p.length(cloth.rows[0].run), run_sum=p.long(cloth.run), cord_each=each,
        cord_cut=p.long(len(cloth.rows) * p.printed(cloth.rows[0].cut)), reserve=share_text(cords.reserve),
        band=p.length(cloth.band), placket=p.length(cloth.placket) if cloth.placket else "",
        drawstring=p.length(cloth.drawstring) if cloth.drawstring else "", string=cloth.string,
        starch=cords.starch.name if cords.starch else "", gathered=True,
        groups=tuple(_group(cloth, number, p) for number in range(1, cloth.groups + 1)), sample=_sample(plan, p))


def _group(cloth: CordedPetticoat, number: int, p: Printer) -> GroupView:
    rows = cloth.group(number)
    views = tuple(_row(row, p) for row in rows)
    apart = exact_length(rows[1].up - rows[0].up, p.units) if len(rows) > 1 else ""
    ids = views[0].id if len(rows) == 1 else f"{views[0].id} to {views[-1].id}"
    return GroupView(number, ids, counted(len(rows), "cord"), views[0], views[-1], apart,
                     tuple(row.id for row in rows), views)


def _row(row: CordRow, p: Printer) -> RowView:
    return RowView(row.id, p.length(row.up), p.length(row.flat), p.length(row.height), p.length(row.girth))


def _sample(plan: Plan, p: Printer) -> SampleView:
    cords, found, cloth = plan.spec.build.cords, plan.assessment.corded, plan.shape.corded
    panel = next((piece for piece in plan.shape.panels if piece.part == "sample"), None)
    if cords is None or found is None or panel is None or cloth is None:
        return SampleView()
    tested = found.stiffness is not None
    return SampleView(
        cords.sample.cords, p.length(cords.sample.length), f"{p.length(panel.width)} × {p.length(panel.height)}",
        _layers(cloth), p.length(cords.sample.overhang), p.length(panel.height),
        p.length(cords.sample.cords * cloth.take_up),
        f"{found.cord:.3g} N m2 a cord" if found.cord is not None else "",
        p.length(found.bending_length) if found.bending_length is not None else "",
        f"{found.factor:.1f}" if tested and found.factor is not None else "",
        mass_text(found.line / GRAVITY, plan.spec.units), exact_length(cords.groups[0].spacing, p.units))


def _layers(cloth: CordedPetticoat) -> str:
    """The sample's cloth in words."""
    if cloth.facing in ("", cloth.material):
        return f"{'two pieces' if cloth.facing else 'one piece'} of {cloth.material}"
    return f"one piece of {cloth.material} and one of {cloth.facing}"


def corded_rows(plan: Plan) -> tuple[tuple[str, str], ...]:
    """The rows of the table at a glance; nothing for a plan with hoops."""
    view = corded_view(plan)
    if not view:
        return ()
    p = Printer.of(plan.spec)
    off = p.length(plan.spec.shape.hem_off_floor)
    groups = counted(len(view.groups), "group")
    held = f"between {view.material} and {view.facing}" if view.sandwich else "each in a tuck"
    closed = f"a drawstring of {view.string}" if view.drawstring else "a waistband"
    starched = ", starched" if view.starch else ", not starched"
    return (
        ("Hem", f"{view.hem} round, {view.across} across, {off} off the floor; the cloth is {view.length} long from the"
                " waist down"),
        ("Cords", f"{counted(view.rows, 'row')} of {view.cord}, {view.diameter} thick, in {groups}, {held}{starched}"),
        ("Petticoat", f"{view.counted} of {view.material}, corded up to {view.groups[-1].last.up} above the hem,"
                      f" {closed}"),
    )

