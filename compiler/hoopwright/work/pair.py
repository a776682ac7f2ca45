"""Tasks of side hoops: one side, the stop at a door and on a chair, then the other."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.shape.model import Hoop, SidePair
from hoopwright.source.quantity import length_text
from hoopwright.strength.families.pair import SHORTER, TIED_SHORTER
from hoopwright.strength.model import Assessment
from hoopwright.work.belt import waistband_tasks
from hoopwright.work.bench import Bench
from hoopwright.work.finish import finish_tasks
from hoopwright.work.metal import metal_tasks
from hoopwright.work.model import Condition, Task
from hoopwright.work.stops import look, off_alone, skirt_clear, stop_task, waist_closed
from hoopwright.work.washing import washing_tasks

_MARKS = 7
"""Marks on the waistband: centre front, centre back, the overlap, and both ends of either side hoop."""

_SIDE = 4.0
"""Times a hoop's tolerance by which a side may lie off, and twice that over both: cloth gives and rubs on the hip (our
judgement)."""


def pair_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks of side hoops, unscheduled."""
    pair = bench.shape.sides
    if pair is None:
        raise ValueError("only side hoops come in a pair")
    ties = bench.task(
        "cut-ties",
        "cut-ties",
        "mark and cut the ties",
        ("press",),
        bench.minutes(("mark tape", len(bench.shape.ties)), ("cut tape", len(bench.shape.ties))),
        jobs=("cut cloth",),
        parts=tuple(tie.id for tie in bench.shape.ties),
    )
    left = _side(bench, pair, "L", ())
    first = _first_stop(bench, pair, (left[-1].id, "sew-fastening"))
    right = _side(bench, pair, "R", (first.id,))
    sewn = bench.task(
        "set-sides",
        "set-sides",
        "sew both sides to the waistband",
        (left[-1].id, right[-1].id),
        bench.minutes(bench.seam(4 * pair.on_band), ("set up seam", 4)),
        jobs=("sew long seams",),
        parts=("waistband",),
    )
    second = _use_stop(bench, pair, sewn.id)
    later = {bench.whole(hoop) for hoop in _hoops(bench, "R")}
    metal = tuple(
        replace(task, needs=(*task.needs, first.id)) if task.id in later else task
        for task in metal_tasks(bench)
    )
    return (
        *metal,
        *_cloth(bench, pair),
        ties,
        *left,
        first,
        *right,
        sewn,
        second,
        *finish_tasks(bench, (sewn.id,), second.id),
    )


def _cloth(bench: Bench, pair: SidePair) -> tuple[Task, ...]:
    goods = (pair.material, bench.shape.waistband.material, *(tie.material for tie in bench.shape.ties))
    lines = 2 * (2 * len(pair.channels) + 1)
    return (
        *washing_tasks(bench, goods),
        *waistband_tasks(bench, _MARKS),
        bench.task(
            "cut-sides",
            "cut-sides",
            "cut and mark the panels of both sides",
            ("press",),
            bench.minutes(("cut panel", 4), ("mark channel", lines)),
            jobs=("cut cloth",),
            parts=("outer panel", "inner panel"),
        ),
    )


def _hoops(bench: Bench, side: str) -> tuple[Hoop, ...]:
    """The hoops of a side, from the top."""
    left = side == "L"
    return tuple(hoop for hoop in bench.shape.hoops if (hoop.plan.sideways > 0) == left)


def _side(bench: Bench, pair: SidePair, side: str, after: tuple[str, ...]) -> tuple[Task, ...]:
    """One side: its ties tacked where the seams catch them, sewn, its steels threaded, pinned to the waistband."""
    hoops = _hoops(bench, side)
    ids, name = tuple(hoop.id for hoop in hoops), "left" if side == "L" else "right"
    channels = 2 * sum(one.width for one in pair.channels)
    seams = 2 * bench.shape.panels[0].height + pair.channels[-1].width + pair.front_to_back
    return (
        bench.task(
            f"tie-{name}",
            "tie-side",
            f"tack the ties of the {name} side",
            ("cut-sides", "cut-ties", *after),
            bench.minutes(("sew fixing", 2 * len(hoops))),
            jobs=("sew by hand",),
            parts=ids,
        ),
        bench.task(
            f"sew-{name}",
            "sew-side",
            f"sew the {name} side together",
            (f"tie-{name}",),
            bench.minutes(
                bench.seam(channels + seams + 2 * pair.pocket), ("set up seam", 2 * len(hoops) + 4)
            ),
            jobs=("sew long seams", "press"),
            parts=(f"{name} side",),
        ),
        bench.task(
            f"thread-{name}",
            "thread-side",
            f"thread the steels of the {name} side",
            (f"sew-{name}", *(bench.whole(hoop) for hoop in hoops)),
            bench.minutes(
                ("thread channel", sum(hoop.girth for hoop in hoops)), ("close casing", len(hoops))
            ),
            jobs=("sew by hand", "bend round"),
            parts=ids,
            cautions=("cut-ends", *bench.recoil),
        ),
        bench.task(
            f"pin-{name}",
            "pin-side",
            f"pin the {name} side to the waistband",
            (f"thread-{name}", "make-waistband"),
            bench.minutes(("gather", pair.channels[0].width), ("clip", 6)),
            jobs=("clip",),
            parts=(f"{name} side", "waistband"),
        ),
    )


def _first_stop(bench: Bench, pair: SidePair, needs: tuple[str, ...]) -> Task:
    """The left side alone, at a door and on a chair."""
    low, off = _hoops(bench, "L")[-1].id, _SIDE * bench.spec.allowances.hoop_tolerance
    out, down = hanging(pair, bench.found)[-1]
    return stop_task(
        bench,
        "try-on-1",
        "try-on-body",
        "try on one side: at a door and on a chair",
        needs,
        (
            waist_closed(bench),
            Condition(
                "side-out",
                low,
                out,
                off,
                "too little: take a tuck in each tie and it stands out more; too much: let"
                " them out; a shorter steel makes it smaller altogether",
            ),
            Condition("side-drop", low, down, off, "pin it higher or lower on the waistband"),
            Condition("half-door", "left side", bench.spec.limits.doorway / 2, 0.0,
                      "take shorter steels, or plan to turn sideways"),
            look("side-sits", "left side", "a hoop that catches on the chair's arm or digs in is moved up"),
            look("pocket", "left side", "make the slit longer, or move it to where the hand finds it"),
            look("waistband-at-waist", "waistband", "a side that drags the band down wants a firmer band"),
        ),
        ("fire", "escape"),
    )


def hanging(pair: SidePair, found: Assessment | None) -> tuple[tuple[float, float], ...]:
    """How far each hoop stands out beyond the hip and lies below the waistline without the skirt, m, from the top: as
    it hangs by its own weight, or as wished where that is not known."""
    bare = [one.bare for one in found.sides if one.bare is not None] if found is not None else []
    return tuple(bare) or tuple((one.wished, one.drop) for one in pair.channels)


def _across(bench: Bench, pair: SidePair) -> tuple[Condition, ...]:
    """The width over both sides, first without the skirt, then with it on where its weight is known."""
    off = 2 * _SIDE * bench.spec.allowances.hoop_tolerance
    tie, units = bench.shape.ties[0].length, bench.spec.units
    told = bench.found is not None and any(check.code == "reach" and check.remedy.startswith(TIED_SHORTER)
                                           for check in bench.found.checks)
    mend = (f"too little: take a tuck in each tie, to {length_text(SHORTER * tie, units)} between the seams instead of"
            f" {length_text(tie, units)}{' (the check reach says what that does)' if told else ''}, or pad the hip; one"
            " side more than the other: let its ties out, or pin it nearer the back")
    outs = [("across-both", [out for out, _ in hanging(pair, bench.found)])]
    if bench.found is not None and bench.found.sides and bench.spec.load:
        outs.append(("across-worn", [one.reach for one in bench.found.sides]))
    return tuple(Condition(key, "cage", 2 * (pair.hip + max(out)), off, mend) for key, out in outs)


def _use_stop(bench: Bench, pair: SidePair, after: str) -> Task:
    return stop_task(
        bench,
        "try-on-2",
        "try-on-use",
        "try it in use: skirt, door, chair, stairs, off alone",
        (after,),
        (
            *_across(bench, pair),
            skirt_clear(bench),
            Condition("door", "cage", bench.spec.limits.doorway, 0.0,
                      "turn sideways, or press both sides up under the arms"),
            look(
                "chair",
                "cage",
                "press the sides up, sit, and let them lie on the seat; not in a chair with arms",
            ),
            look("stairs", "cage", "lift the skirt's hem by hand"),
            off_alone(),
        ),
        ("doors", "stairs", "vehicles", "fire", "escape"),
    )
