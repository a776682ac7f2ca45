"""Every task of a cage on tapes, in the order an experienced maker would name them."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.work.bench import Bench
from hoopwright.work.cage_stops import body_stop, hem_stop, use_stop
from hoopwright.work.cloth import cloth_tasks
from hoopwright.work.finish import finish_tasks
from hoopwright.work.hoops import (
    band_close_tasks,
    clip_tasks,
    cover_tasks,
    join_tasks,
    levelled,
    sew_tasks,
)
from hoopwright.work.metal import metal_tasks
from hoopwright.work.model import Task
from hoopwright.work.ties import cut_tie_tasks, needed_early, pin_tasks, sew_tie_tasks


def cage_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks, unscheduled. Stops are tasks that others wait for: nothing is joined before the first,
    nothing at the hem is sewn before the second, nothing is put away before the third."""
    clips = clip_tasks(bench)
    early = needed_early(bench)
    names = {f"clip-{bench.short(hoop)}" for hoop in early}
    pins = pin_tasks(bench, early)
    first = body_stop(
        bench, (*sorted(names), *(task.id for task in pins), "sew-tapes", "sew-fastening")
    )
    late = tuple(
        replace(task, needs=(*task.needs, first.id)) for task in clips if task.id not in names
    )
    late_pins = pin_tasks(bench, tuple(hoop for hoop in bench.shape.hoops if hoop not in early))
    settled = (first.id, *(task.id for task in (*late, *late_pins)))
    joins = join_tasks(bench, settled)
    checked = joins[-1].id if joins else first.id
    closing = band_close_tasks(bench, checked)
    last = levelled(bench)
    upper = tuple(hoop for hoop in bench.shape.hoops if hoop not in last)
    sewn = sew_tasks(bench, upper, (checked,) if joins else settled)
    ties = sew_tie_tasks(bench, (checked,) if joins else settled)
    lowest = {f"sew-{bench.short(hoop)}" for hoop in last}
    sewn_early = tuple(task for task in ties if lowest.isdisjoint(task.needs))
    second = hem_stop(bench, (checked, *(task.id for task in (*closing, *sewn, *sewn_early))))
    hem = (*sew_tasks(bench, last, (second.id,)), *(task for task in ties if task not in sewn_early))
    trim = _trim(bench, tuple(task.id for task in hem) or (second.id,))
    third = use_stop(bench, (trim.id,))
    return (
        *metal_tasks(bench),
        *cloth_tasks(bench),
        *cut_tie_tasks(bench),
        *cover_tasks(bench),
        *(task for task in clips if task.id in names),
        *pins,
        first,
        *late,
        *late_pins,
        *joins,
        *closing,
        *sewn,
        *sewn_early,
        second,
        *hem,
        trim,
        third,
        *finish_tasks(bench, (second.id,), third.id),
    )


def _trim(bench: Bench, needs: tuple[str, ...]) -> Task:
    tapes = bench.shape.tapes
    return bench.task(
        "trim-tapes",
        "trim-tapes",
        "wrap, trim and sew the ends of the tapes",
        needs,
        bench.minutes(("trim tape", len(tapes))),
        jobs=("sew by hand",),
        parts=tuple(tape.id for tape in tapes),
    )
