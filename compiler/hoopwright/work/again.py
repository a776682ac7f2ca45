"""What the last fitting asks to do again: as little as puts it right, and the try-on that shows it."""

from __future__ import annotations

from hoopwright.shape.fit.read import least_move
from hoopwright.shape.model import Refit
from hoopwright.work.bench import Bench
from hoopwright.work.model import Again, Task

_STOPS = ("try-on-3", "try-on-2", "try-on-1")


def again(bench: Bench, tasks: tuple[Task, ...]) -> tuple[Again, ...]:
    """Tasks to repeat for some of their parts; nothing when the last fitting found all right."""
    refits = bench.shape.refits
    if not refits or refits[-1].right:
        return ()
    known = {task.id: task for task in tasks}
    found = [*_at_the_waistband(bench, refits[-1]), *_marks(bench, refits[-1], known)]
    done = set(bench.spec.progress.done)
    stop = next((id for id in _STOPS if id in done and id in known), _STOPS[-1])
    if stop in known:
        found.append(Again(stop, "try-on", known[stop].parts, known[stop].minutes))
    return tuple(item for item in found if item.task in known)


def _at_the_waistband(bench: Bench, refit: Refit) -> list[Again]:
    found = []
    if refit.waist is not None:
        found.append(Again("sew-fastening", "fastening", ("waistband",),
                           bench.minutes(("sew fastening", 1))))
    if refit.drawn_up:
        parts = tuple(refit.drawn_up)
        material = bench.spec.build.tapes.material if bench.spec.build.tapes is not None else None
        around = 4 * (material.width if material is not None else 0.0) * len(parts)
        found.append(Again("sew-tapes", "draw-up", parts,
                           bench.minutes(bench.seam(around), ("set up seam", len(parts)))))
    return found


def _marks(bench: Bench, refit: Refit, known: dict[str, Task]) -> list[Again]:
    """Moved marks: drawn anew on their tapes, then each hoop clipped or sewn there again."""
    moved = [mark for mark in refit.moved if abs(mark.goes - mark.was) > least_move(bench.spec)]
    if not moved:
        return []
    tapes = tuple(tape.id for tape in bench.shape.tapes if any(mark.tape == tape.id for mark in moved))
    found = [Again("mark-tapes", "move-marks", tapes, bench.minutes(("mark on tape", len(moved))))]
    done = set(bench.spec.progress.done)
    for hoop in bench.shape.hoops:
        at = tuple(mark.tape for mark in moved if mark.hoop == hoop.id)
        name = bench.short(hoop)
        if hoop.id in refit.girths:
            found.append(Again(f"mark-{name}", "mark-hoop", (hoop.id,), bench.minutes(("mark hoop", 1))))
        if at and f"sew-{name}" in done:
            found.append(Again(f"sew-{name}", "sew", (hoop.id, *at), bench.minutes(("sew fixing", len(at)))))
        elif at:
            found.append(Again(f"clip-{name}", "clip", (hoop.id, *at), bench.minutes(("clip", len(at)))))
    return [item for item in found if item.task in known]
