"""A plan as facts that can be held against another plan's: by section, slot of the part, and what is told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hoopwright.compare.model import Cell, Section
from hoopwright.compare.outcome import outcome
from hoopwright.library.model import Section as StockSection
from hoopwright.plan.model import Plan
from hoopwright.render.quantities import Printer
from hoopwright.shape.model import CordedPetticoat, Shape
from hoopwright.source.quantity import QuantityError, parse_length
from hoopwright.source.record import record
from hoopwright.spec.check import Check
from hoopwright.spec.model import HoopBuild
from hoopwright.work.model import Task

Key = tuple[Section, str, str]


@record(frozen=True, slots=True)
class Fact:
    """One value of a plan, and the id of the part it belongs to there."""

    part: str
    cell: Cell


def facts(plan: Plan, slots: Mapping[str, str]) -> dict[Key, Fact]:
    """Every fact of a plan; ``slots`` gives hoops and tapes their slots."""
    found: dict[Key, Fact] = {}
    for section, part, slot, what, cell in _all(plan, slots):
        found[section, slot, what] = Fact(part, cell)
    return found


Entry = tuple[Section, str, str, str, Cell]


def _all(plan: Plan, slots: Mapping[str, str]) -> Iterator[Entry]:
    for what, cell in _shape(plan):
        yield "shape", "", "", what, cell
    for what, cell in _build(plan):
        yield "build", "", "", what, cell
    yield from _parts(plan, slots)
    yield from _money_and_time(plan)
    yield from _checks(plan, slots)
    yield from _tasks(plan, slots)


def length(metres: float) -> Cell:
    """A length."""
    return Cell(metres, "length")


def _shape(plan: Plan) -> Iterator[tuple[str, Cell]]:
    shape, spec = plan.shape, plan.spec
    yield "hem girth", length(shape.lowest_girth)
    yield "hem off the floor", length(spec.shape.hem_off_floor)
    yield "width at the hem", length(shape.lowest.width)
    yield "depth at the hem", length(shape.lowest.depth)
    if shape.corded is not None:
        yield from _corded(plan, shape.corded)
    yield "hoops", Cell(float(len(shape.hoops)), "count")
    yield "tapes", Cell(float(len(shape.tapes)), "count")
    yield "waist", length(shape.waistband.girth)
    for place in ("front", "side", "back"):
        yield f"skirt at the {place}", length(getattr(plan.skirt, place))
    yield "skirt's hem girth", length(shape.skirt.hem_girth)
    yield "weight of the cage", Cell(plan.assessment.weights.total, "mass")
    yield "verdict", Cell("does not pass" if plan.failing else plan.assessment.verdict, "text")


def _build(plan: Plan) -> Iterator[tuple[str, Cell]]:
    build = plan.spec.build
    if build.hooped is not None:
        yield from _hooped(build.hooped)
    if build.tapes is not None:
        yield "tapes of", Cell(build.tapes.material.name, "text")
        yield "tapes end at", Cell(build.tapes.to, "text")
    yield "waistband of", Cell(build.waistband.material.name, "text")
    yield "fastening", Cell(build.waistband.fastening.name, "text")
    if build.band is not None:
        yield "hem band of", Cell(build.band.material.name, "text")


def _hooped(hoops: HoopBuild) -> Iterator[tuple[str, Cell]]:
    yield "hoops of", Cell(hoops.material.name, "text")
    yield "grade", Cell(hoops.material.grade.name, "text")
    section = hoops.material.section
    yield "section", Cell(section.kind, "text")
    for side in ("width", "thickness", "diameter", "wall"):
        if getattr(section, side):
            yield f"stock's {side}", Cell(getattr(section, side), "stock", _written(section, side))
    yield "join", Cell(hoops.join.name, "text")
    yield "casing", Cell(hoops.casing.name if hoops.casing else "none", "text")


def _corded(plan: Plan, cloth: CordedPetticoat) -> Iterator[tuple[str, Cell]]:
    """A corded petticoat: its rows, what is cut for them, what its sample says."""
    yield "rows of cord", Cell(float(len(cloth.rows)), "count")
    yield "groups of rows", Cell(float(cloth.groups), "count")
    yield "highest row above the hem", length(cloth.rows[-1].up)
    yield "cord of", Cell(cloth.cord, "text")
    yield "cord held", Cell(cloth.held, "text")
    yield "cord to cut", length(cloth.cut)
    yield "length of the petticoat", length(cloth.length)
    yield "rows take up", length(cloth.takes)
    yield "breadth cut long", length(cloth.high)
    yield "breadth cut wide", length(cloth.wide)
    found = plan.assessment.corded
    if found is not None and found.bending_length is not None:
        yield "bending length", length(found.bending_length)


def _written(section: StockSection, side: str) -> str:
    """One size of a section as the maker wrote it, ``0.8 mm``; blank where no such text is kept."""
    text = section.text.removesuffix(" round").removesuffix(" tube")
    for size in text.split(" x "):
        try:
            if abs(parse_length(size) - getattr(section, side)) < 1e-9:
                return size
        except QuantityError:
            continue
    return ""


def _parts(plan: Plan, slots: Mapping[str, str]) -> Iterator[Entry]:
    shape = plan.shape
    named = {name for name in plan.spec.shape.names if name}
    for hoop in shape.hoops:
        yield "parts", hoop.id, slots[hoop.id], "name", Cell(hoop.id if hoop.id in named else "none", "text")
        for what, value in (("height", hoop.height), ("girth", hoop.girth), ("to cut", hoop.cut),
                            ("casing", hoop.casing)):
            if value or what != "casing":
                yield "parts", hoop.id, slots[hoop.id], what, length(value)
    for tape in shape.tapes:
        yield "parts", tape.id, slots[tape.id], "to cut", length(tape.cut)
        for mark in tape.marks:
            yield "marks", tape.id, slots[tape.id], slots[mark.hoop], Cell(mark.at, "length", mark.hoop)
    yield "parts", "waistband", "waistband", "to cut", length(shape.waistband.cut)
    yield "parts", "waistband", "waistband", "width", length(shape.waistband.width)
    if shape.band is not None:
        for what, value in (("height", shape.band.height), ("length", shape.band.length),
                            ("depth", shape.band.depth)):
            yield "parts", "hem band", "band", what, length(value)
    for tie in shape.ties:
        slot = f"tie {slots[tie.hoop]} {tie.id.replace(tie.hoop, '', 1)}"
        yield "parts", tie.id, slot, "to cut", length(tie.cut)
        yield "parts", tie.id, slot, "length", length(tie.length)
    if shape.corded is not None:
        yield from _rows(shape.corded)
    for panel in shape.panels:
        yield "parts", panel.part, f"panel {panel.part}", "pieces", Cell(float(panel.count), "count")
        yield "parts", panel.part, f"panel {panel.part}", "width", length(panel.width)
        yield "parts", panel.part, f"panel {panel.part}", "height", length(panel.height)
    yield from _cloth_and_frames(shape, slots)


def _cloth_and_frames(shape: Shape, slots: Mapping[str, str]) -> Iterator[Entry]:
    """What a petticoat, a wheel or side hoops have beside hoops, tapes, ties and panels."""
    if shape.petticoat is not None:
        for channel in shape.petticoat.channels:
            slot = slots[channel.hoop]
            yield "parts", channel.hoop, slot, "channel above the lower edge", length(channel.up)
            yield "parts", channel.hoop, slot, "channel's width", length(channel.width)
            if channel.strip:
                yield "parts", channel.hoop, slot, "strip of its channel", length(channel.strip)
        for flounce in shape.petticoat.flounces:
            yield "parts", flounce.id, flounce.id, "to cut", length(flounce.length)
            yield "parts", flounce.id, flounce.id, "height", length(flounce.height)
        if shape.petticoat.drawstring:
            yield "parts", "drawstring", "drawstring", "to cut", length(shape.petticoat.drawstring)
    if shape.corded is not None and shape.corded.drawstring:
        yield "parts", "drawstring", "drawstring", "to cut", length(shape.corded.drawstring)
    if shape.wheel is not None:
        for spoke in shape.wheel.spokes:
            yield "parts", spoke.id, f"spoke {spoke.id}", "to cut", length(spoke.cut)
        yield "parts", "cover", "panel cover", "slit", length(shape.wheel.slit)
    if shape.sides is not None:
        for one in shape.sides.channels:
            for hoop in one.hoops:
                yield "parts", hoop, slots[hoop], "channel", length(one.width)
        yield "parts", "outer panel", "panel outer panel", "pocket slit", length(shape.sides.pocket)


def _rows(cloth: CordedPetticoat) -> Iterator[Entry]:
    """Rows of cord by group, from the hem up; what is cut for one is cut for all."""
    yield "parts", "row of cord", "row", "to cut", length(cloth.rows[0].cut)
    for number in range(1, cloth.groups + 1):
        rows = cloth.group(number)
        name = f"group {number}"
        yield "parts", name, name, "cords", Cell(float(len(rows)), "count")
        yield "parts", name, name, "lowest row", length(rows[0].up)
        yield "parts", name, name, "highest row", length(rows[-1].up)


def _money_and_time(plan: Plan) -> Iterator[Entry]:
    p, cost, work = Printer.of(plan.spec), plan.supply.cost, plan.work
    for line in plan.supply.shopping:
        pack = f"{line.pack_length:.4f} {line.pack_count}" if line.price is not None else ""
        slot = f"{line.item} {pack}"
        if line.price is None:
            yield "shopping", line.item, slot, "amount", Cell(line.asked, _unit(line.pack_length))
            continue
        size = f" of {p.shop(line.pack_length)}" if line.pack_length else ""
        yield "shopping", line.item, slot, "packs", Cell(float(line.packs), "count", size)
        if line.cost is not None:
            yield "shopping", line.item, slot, "cost", Cell(line.cost, "money")
    yield "cost", "", "", "total", Cell(cost.total, "money")
    yield "cost", "", "", "with reserve", Cell(cost.total + cost.reserve, "money")
    yield "cost", "", "", "without a price", Cell(", ".join(cost.missing) or "nothing", "text")
    yield "hours", "", "", "in all", Cell(work.minutes, "minutes")
    yield "hours", "", "", "to the first fitting", Cell(work.minutes_to_first_fitting, "minutes")
    if work.minutes_left != work.minutes:
        yield "hours", "", "", "still to do", Cell(work.minutes_left, "minutes")
    yield "hours", "", "", "sittings", Cell(float(len(work.sessions)), "count")


def _unit(pack_length: float) -> str:
    return "length" if pack_length else "count"


def _checks(plan: Plan, slots: Mapping[str, str]) -> Iterator[Entry]:
    """By code; of a code that judges several parts, by part."""
    p = Printer.of(plan.spec)
    codes = [check.code for check in plan.checks]
    seen: dict[str, int] = {}
    for check in plan.checks:
        single = codes.count(check.code) == 1
        slot = check.code if single else f"{check.code} {slots.get(check.part, check.part)}"
        seen[slot] = seen.get(slot, 0) + 1
        if seen[slot] > 1:
            slot = f"{slot} {seen[slot]}"
        yield "checks", _named(check, single), slot, "result", Cell(check.result, "result", _found(check, p))


def _named(check: Check, single: bool) -> str:
    return check.code if single or not check.part else f"{check.code} {check.part}"


def _found(check: Check, p: Printer) -> str:
    return f"{p.check_value(check)}, {p.check_limit(check)}" if check.value is not None else ""


def _tasks(plan: Plan, slots: Mapping[str, str]) -> Iterator[Entry]:
    for task, slot in task_slots(plan, slots):
        yield "tasks", task.id, slot, "minutes", Cell(task.minutes, "minutes", task.title)
        yield "tasks", task.id, slot, "tools", Cell(", ".join(task.tools), "text", task.title)
        yield "tasks", task.id, slot, "measures", Cell(outcome(plan, task), "measures", task.title)


def task_slots(plan: Plan, slots: Mapping[str, str]) -> Iterator[tuple[Task, str]]:
    """Each task with a slot it shares with its like in another plan: its action, and its hoop if it has
    one."""
    hoops = {hoop.id for hoop in plan.shape.hoops}
    seen: dict[str, int] = {}
    for task in sorted(plan.work.tasks, key=lambda one: one.id):
        of = [part for part in task.parts if part in hoops]
        slot = f"{task.action} {slots[of[0]]}" if len(of) == 1 else task.action
        seen[slot] = seen.get(slot, 0) + 1
        yield task, slot if seen[slot] == 1 else f"{slot} {seen[slot]}"
