"""Tasks in tape, braid and cloth: wash, mark, cut, waistband, casings, hem band."""

from __future__ import annotations

from hoopwright.supply.cloths import strips_of
from hoopwright.supply.counts import tape_boxes
from hoopwright.supply.needs import cased
from hoopwright.work.belt import waistband_tasks
from hoopwright.work.bench import Bench
from hoopwright.work.casings import casing_tasks
from hoopwright.work.model import Task
from hoopwright.work.washing import washing_tasks


def cloth_tasks(bench: Bench) -> tuple[Task, ...]:
    """Wash and press, tapes, casings, waistband, band - all that is done before hoops come in."""
    return (*_wash(bench), *_tapes(bench), *casing_tasks(bench), *_waistband(bench), *_band(bench))


def _wash(bench: Bench) -> tuple[Task, ...]:
    goods = ["tapes"]
    goods += ["ties"] if any(tie.cut > 0 for tie in bench.shape.ties) else []
    goods += ["waistband"]
    goods += ["casings"] if cased(bench.shape) else []
    goods += ["band"] if bench.shape.band else []
    goods += ["lacing panels"] if bench.spec.build.lacing is not None else []
    return washing_tasks(bench, goods, ("lacing cord",) if bench.spec.build.lacing is not None else ())


def _tapes(bench: Bench) -> tuple[Task, ...]:
    tapes = bench.shape.tapes
    ids = tuple(tape.id for tape in tapes)
    marks = sum(len(tape.marks) for tape in tapes)
    return (
        bench.task(
            "cut-tapes",
            "cut-tapes",
            "cut the tapes",
            ("press",),
            bench.minutes(("cut tape", len(tapes))),
            jobs=("cut cloth",),
            parts=ids,
        ),
        bench.task(
            "mark-tapes",
            "mark-tapes",
            "mark the tapes under their weight",
            ("cut-tapes",),
            bench.minutes(("mark tape", len(tapes)), ("mark on tape", marks)),
            jobs=("mark",),
            parts=ids,
        ),
    )


def _waistband(bench: Bench) -> tuple[Task, ...]:
    tapes = bench.shape.tapes
    around = tape_boxes(bench.spec, bench.shape)
    return (
        *waistband_tasks(bench, len(tapes) + 3),
        bench.task(
            "sew-tapes",
            "sew-tapes",
            "sew the tapes to the waistband",
            ("make-waistband", "mark-tapes"),
            bench.minutes(bench.seam(around), ("set up seam", len(tapes))),
            jobs=("sew long seams",),
            parts=(*(tape.id for tape in tapes), "waistband"),
        ),
    )


def _band(bench: Bench) -> tuple[Task, ...]:
    band = bench.shape.band
    if band is None:
        return ()
    strips = max(1, strips_of(bench.supply.layouts, "band"))
    cut = bench.task(
        "cut-band",
        "cut-band",
        "cut the strips of the hem band",
        ("press",),
        bench.minutes(("cut strip", strips)),
        jobs=("cut cloth",),
        parts=("band",),
    )
    tasks = [cut]
    if strips > 1:
        tasks.append(
            bench.task(
                "join-band",
                "join-band",
                "join the strips of the hem band",
                ("cut-band",),
                bench.minutes(("whip stitch", (strips - 1) * band.height), ("set up seam", strips - 1)),
                jobs=("sew by hand",),
                parts=("band",),
            )
        )
    tasks.append(
        bench.task(
            "sew-channels",
            "sew-channels",
            "fold the hem band and sew its channels",
            (tasks[-1].id,),
            bench.minutes(bench.seam(3 * band.length), ("set up seam", 3)),
            jobs=("sew long seams", "press"),
            parts=("band",),
        )
    )
    return tuple(tasks)
