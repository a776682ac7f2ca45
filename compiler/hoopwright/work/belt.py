"""The waistband, cut, made and fastened."""

from __future__ import annotations

from hoopwright.library.goods import FASTENINGS_PER_BAND
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task


def waistband_tasks(bench: Bench, marks: int, *sewn_on: Task) -> tuple[Task, ...]:
    """The waistband cut, made with so many marks on it, and fastened; with tasks that sew something to it
    before it is fastened, in order."""
    fastening = bench.spec.build.waistband.fastening
    pieces = FASTENINGS_PER_BAND.get(fastening.name, 1)
    ready = sewn_on[-1].id if sewn_on else "make-waistband"
    return (
        bench.task("cut-waistband", "cut-waistband", "cut the waistband", ("press",),
                   bench.minutes(("cut waistband", 1)), jobs=("cut cloth",), parts=("waistband",)),
        bench.task("make-waistband", "make-waistband", "make the waistband", ("cut-waistband",),
                   bench.minutes(("make waistband", 1), ("mark on waistband", marks)),
                   jobs=("sew long seams", "mark"), parts=("waistband",)),
        *sewn_on,
        bench.task("sew-fastening", "sew-fastening", f"sew on the {fastening.name}", (ready,),
                   bench.minutes(("sew fastening", pieces)), jobs=("sew by hand",), parts=("waistband",)),
    )
