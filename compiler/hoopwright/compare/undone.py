"""Done work that a change undoes, and what of it can be saved.

A done task is undone when the new plan has no such task, or asks for other measures beyond the tolerance of
the trade; so is, in turn, every done task that waited for it.
"""

from __future__ import annotations

from dataclasses import replace

from hoopwright.compare.facts import task_slots
from hoopwright.compare.model import Measures, Undone, Values
from hoopwright.compare.outcome import differing, outcome
from hoopwright.compare.pairing import Pairs
from hoopwright.library.model import Section
from hoopwright.plan.model import Plan
from hoopwright.supply.mending import mend
from hoopwright.supply.model import Mending, Salvage
from hoopwright.supply.needs import SAMPLE_CORDS, cased, casing_part
from hoopwright.work.model import Task

_WAIST = ("waistband", "drawstring")
"""What closes the waist, of which there is one."""


def undone_work(before: Plan, after: Plan, pairs: Pairs) -> tuple[tuple[Undone, ...], Mending | None]:
    """Done tasks of ``before`` that no longer hold in ``after``, in working order, and what becomes of the
    pieces that were cut; None when every piece is kept."""
    done = [task for task in before.work.tasks if task.done]
    if not done:
        return (), None
    slots = {task.id: slot for task, slot in task_slots(before, pairs.before)}
    new = {slot: task for task, slot in task_slots(after, pairs.after)}
    found: dict[str, Undone] = {}
    for task in done:
        twin = new.get(slots[task.id])
        if twin is None:
            found[task.id] = Undone(task.id, task.title, "gone", "")
            continue
        names = _beyond(before, task, after, twin)
        if names:
            found[task.id] = Undone(task.id, task.title, "measures", ", ".join(names))
    for task in done:
        cause = next((need for need in task.needs if need in found), None)
        if task.id not in found and cause is not None:
            found[task.id] = Undone(task.id, task.title, "rests on", cause)
    mending = _mending(before, after, pairs)
    return tuple(found[task.id] for task in done if task.id in found), mending if mending.needed else None


def _beyond(before: Plan, task: Task, after: Plan, twin: Task) -> list[str]:
    """The measures of a task that differ by more than their tolerance."""
    one, other = dict(outcome(before, task)), dict(outcome(after, twin))
    return [name for name in (*one, *(more for more in other if more not in one))
            if differing(_only(one, name), _only(other, name), _tolerance(name, before))]


def _only(measures: dict[str, Values], name: str) -> Measures:
    return ((name, measures[name]),) if name in measures else ()


def _tolerance(name: str, plan: Plan) -> float:
    """By how much a measure may differ: a tape's and a row's cut by their reserve."""
    rules, cloth = plan.spec.allowances, plan.shape.corded
    if name == "corded.rows.cut" and cloth is not None:
        return cloth.rows[0].cut - cloth.rows[0].run
    if name == "tape.cut":
        return rules.tape_reserve
    if name.startswith("tape.marks"):
        return rules.tape_tolerance
    if name.endswith("fraction"):
        return 2e-3
    return rules.hem_tolerance if name == "conditions" else rules.hoop_tolerance


def _mending(before: Plan, after: Plan, pairs: Pairs) -> Mending:
    """The pieces cut so far under the names they have in the new plan, and what becomes of them. What is of
    another material than the new plan asks for serves nowhere: its part counts as cut with no length, so that
    it is cut anew."""
    pieces = _pieces(before)
    fitting = {name for name in pieces if _material(name, before, pairs) == _material(name, after, pairs)}
    names = {name: _new_name(name, pairs, after) for name in pieces}
    told = {names[name]: name for name in fitting}
    cut = {names[name]: length if name in fitting else 0.0 for name, length in pieces.items()}
    mending = mend(after.spec, after.shape, cut)
    spare = [Salvage(name, length, "spare", "", 0.0) for name, length in pieces.items() if name not in fitting]
    kept = (_renamed(piece, told) for piece in mending.pieces if piece.part in told)
    return replace(mending, pieces=(*kept, *spare))


def _material(part: str, plan: Plan, pairs: Pairs) -> object:
    """What a part of that kind is cut from in a plan: the stock's section and grade, or the article."""
    build = plan.spec.build
    if build.cords is not None and _row(part):
        return "cord", build.cords.material.name
    if part.startswith("casing "):
        casing = build.hooped.casing if build.hooped is not None else None
        return casing.name if casing is not None else None
    if part in _WAIST:
        return build.waistband.material.name
    if part in _tapes(pairs):
        return build.tapes.material.name if build.tapes is not None else None
    if build.hooped is None:
        return None
    return *_sides(build.hooped.material.section), build.hooped.material.grade.name


def _row(part: str) -> bool:
    """Whether a part is a row of cord, or the sample's cords."""
    return part == SAMPLE_CORDS or (part[:1] == "C" and part[1:].isdigit())


def _spoke(part: str) -> bool:
    """Whether a part is a spoke of a wheel."""
    return part[:1] == "S" and part[1:].isdigit()


def _sides(section: Section) -> tuple[str, ...]:
    """A section's kind and sides, however they were written and without the noise of units."""
    sides = (section.width, section.thickness, section.diameter, section.wall)
    return (section.kind, *(f"{side:.9g}" for side in sides))


def _renamed(piece: Salvage, told: dict[str, str]) -> Salvage:
    return replace(piece, part=told[piece.part])


def _new_name(name: str, pairs: Pairs, after: Plan) -> str:
    """The part's id in the new plan; a part without a pair gets a number the new plan does not use."""
    if (after.shape.corded is not None and _row(name)) or (after.shape.wheel is not None and _spoke(name)):
        return name
    prefix, bare = ("casing ", name.removeprefix("casing ")) if name.startswith("casing ") else ("", name)
    twin = pairs.twin(bare)
    if twin is not None or bare in _WAIST:
        return prefix + (twin or bare)
    count = len(after.shape.hoops) + len(after.shape.tapes)
    digits = "".join(sign for sign in bare if sign.isdigit()) or "0"
    letter = "T" if bare in _tapes(pairs) else bare[0] if after.shape.sides is not None and bare[:1] in "LR" else "H"
    return f"{prefix}{letter}{1000 + count + int(digits[:6])}"


def _tapes(pairs: Pairs) -> set[str]:
    return {name for name, slot in pairs.before.items() if slot.startswith("tape") or name.startswith("T")}


def _pieces(plan: Plan) -> dict[str, float]:
    """Lengths that are cut: as noted, else as the plan asked when the task is done."""
    done = {task.action for task in plan.work.tasks if task.done}
    cut_hoops = {part for task in plan.work.tasks if task.done and task.action == "cut-hoop"
                 for part in task.parts}
    found = {hoop.id: hoop.cut for hoop in plan.shape.hoops if hoop.id in cut_hoops}
    if "cut-spokes" in done and plan.shape.wheel is not None:
        found |= {spoke.id: spoke.cut for spoke in plan.shape.wheel.spokes}
    if "cut-tapes" in done:
        found |= {tape.id: tape.cut for tape in plan.shape.tapes}
    if "cut-casings" in done:
        found |= {casing_part(hoop): hoop.casing for hoop in cased(plan.shape)}
    if "cut-cords" in done and plan.shape.corded is not None:
        found |= {row.id: row.cut for row in plan.shape.corded.rows}
    if "cut-waistband" in done:
        found["waistband"] = plan.shape.waistband.cut
    return found | dict(plan.spec.progress.cut)
