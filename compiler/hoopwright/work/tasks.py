"""Every task of a round cage on tapes, in the order an experienced maker would name them."""

from __future__ import annotations

from hoopwright.work.bench import Bench
from hoopwright.work.cloth import cloth_tasks
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
from hoopwright.work.stops import body_stop, hem_stop, use_stop


def cage_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks, unscheduled. Stops are tasks that others wait for: nothing is joined before the first,
    nothing at the hem is sewn before the second, nothing is put away before the third."""
    clips = clip_tasks(bench)
    first = body_stop(bench, (*(task.id for task in clips), "sew-tapes", "sew-fastening"))
    joins = join_tasks(bench, first.id)
    checked = joins[-1].id if joins else first.id
    closing = band_close_tasks(bench, checked)
    last = levelled(bench)
    upper = tuple(hoop for hoop in bench.shape.hoops if hoop not in last)
    sewn = sew_tasks(bench, upper, (checked,))
    second = hem_stop(bench, (checked, *(task.id for task in (*closing, *sewn))))
    hem = sew_tasks(bench, last, (second.id,))
    trim = _trim(bench, tuple(task.id for task in hem) or (second.id,))
    third = use_stop(bench, (trim.id,))
    return (
        *metal_tasks(bench),
        *cloth_tasks(bench),
        *cover_tasks(bench),
        *clips,
        first,
        *joins,
        *closing,
        *sewn,
        second,
        *hem,
        trim,
        third,
        *_finish(bench, second.id, third.id),
    )


def _trim(bench: Bench, needs: tuple[str, ...]) -> Task:
    tapes = bench.shape.tapes
    return bench.task(
        "trim-tapes",
        "trim-tapes",
        "wrap, trim and sew the ends of the tapes",
        needs,
        bench.minutes(("trim tape", len(tapes))),
        jobs_=("sew by hand",),
        parts=tuple(tape.id for tape in tapes),
    )


def _finish(bench: Bench, second: str, third: str) -> tuple[Task, ...]:
    return (
        bench.task(
            "sew-label",
            "sew-label",
            "sew the label inside the waistband",
            (second,),
            bench.minutes(("label", 1)),
            jobs_=("sew by hand",),
            parts=("waistband",),
        ),
        bench.task(
            "hang-up",
            "hang-up",
            "hang it up",
            (third, "sew-label"),
            bench.minutes(("hang up", 1)),
            parts=("cage",),
            cautions=("fire",),
        ),
    )
