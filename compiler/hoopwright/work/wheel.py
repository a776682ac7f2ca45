"""Tasks of a wheel: the roll, the bare wheel, the stop for its tilt, then the cover."""

from __future__ import annotations

from dataclasses import replace

from hoopwright.shape.model import Wheel
from hoopwright.supply.needs import cased
from hoopwright.work.belt import waistband_tasks
from hoopwright.work.bench import Bench
from hoopwright.work.casings import casing_tasks
from hoopwright.work.finish import finish_tasks
from hoopwright.work.hoops import join_tasks
from hoopwright.work.metal import cut_cautions, metal_tasks
from hoopwright.work.model import Task
from hoopwright.work.washing import washing_tasks
from hoopwright.work.wheel_stops import skirt_stop, tilt_stop, use_stop


def wheel_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks of a wheel, unscheduled."""
    wheel = bench.shape.wheel
    if wheel is None:
        raise ValueError("only a wheel has spokes")
    metal, stock = (*metal_tasks(bench), _spokes(bench, wheel)), bench.spec.build.hoops.material
    covered = _cased(bench)
    joins = tuple(_waiting(task, bench, covered) for task in join_tasks(bench, ()))
    joined = joins[-1].id if joins else metal[-1].id
    marked = bench.task(
        "mark-rings",
        "mark-rings",
        "mark the spokes on the rings",
        (joined, *(task.id for task in covered), *_cut(bench)),
        bench.minutes(("mark hoop", len(bench.shape.hoops)), ("mark on hoop", wheel.fixings)),
        jobs=("mark",),
        parts=tuple(hoop.id for hoop in bench.shape.hoops),
    )
    bound = bench.task(
        "bind-wheel",
        "bind-wheel",
        "bind the spokes to the rings",
        ("mark-rings", "cut-spokes"),
        bench.minutes(("bind crossing", wheel.fixings)),
        jobs=("sew by hand", "bend round"),
        parts=("wheel",),
        cautions=("bending-strip",) if stock.grade.hard and stock.section.kind == "flat" else (),
    )
    around = bench.shape.hoops[0].girth
    hung = bench.task(
        "set-wheel",
        "set-wheel",
        "sew the wheel to the waistband",
        ("bind-wheel", "make-waistband"),
        bench.minutes(("hand seam", around), ("set up seam", 1)),
        jobs=("sew by hand",),
        parts=("wheel", "waistband"),
    )
    first = tilt_stop(bench, wheel, ("set-wheel", "sew-fastening", "stuff-roll"))
    cover = _cover(bench, wheel, first.id)
    second = skirt_stop(bench, cover[-1].id)
    third = use_stop(bench, wheel, second.id)
    return (
        *metal,
        *covered,
        *joins,
        *_cloth(bench, wheel),
        marked,
        bound,
        hung,
        first,
        *cover,
        second,
        third,
        *finish_tasks(bench, (second.id,), third.id),
    )


def _cut(bench: Bench) -> tuple[str, ...]:
    return tuple(bench.whole(hoop) for hoop in bench.shape.hoops)


def _spokes(bench: Bench, wheel: Wheel) -> Task:
    return bench.task(
        "cut-spokes",
        "cut-spokes",
        "cut and mark the spokes",
        ("test-stock",),
        bench.minutes(("cut spoke", len(wheel.spokes)), ("mark on hoop", wheel.fixings)),
        jobs=("cut stock",),
        parts=tuple(spoke.id for spoke in wheel.spokes),
        cautions=cut_cautions(bench),
    )


def _cased(bench: Bench) -> tuple[Task, ...]:
    """Casings cut, sewn where they are not woven as tubes, and put on the rings before these are joined."""
    hoops, casing = cased(bench.shape), bench.spec.build.hoops.casing
    if not hoops or casing is None:
        return ()
    tasks = list(casing_tasks(bench))
    ready = tasks[-1].id
    for hoop in hoops:
        tasks.append(
            bench.task(
                f"case-{bench.short(hoop)}",
                "case-hoop",
                f"put the casing on ring {hoop.id}",
                (bench.whole(hoop), ready),
                bench.minutes(("thread casing", hoop.girth)),
                jobs=("clip",),
                parts=(hoop.id,),
                cautions=("cut-ends",),
            )
        )
    return tuple(tasks)


def _waiting(task: Task, bench: Bench, covered: tuple[Task, ...]) -> Task:
    """A join also waits until its ring is cut and wears its casing."""
    own = [one.id for one in covered if one.action == "case-hoop" and one.parts[0] in task.parts]
    cut = [bench.whole(hoop) for hoop in bench.shape.hoops if hoop.id in task.parts]
    return (
        replace(task, needs=tuple(dict.fromkeys((*task.needs, *cut, *own))))
        if task.action.startswith("join")
        else task
    )


def _cloth(bench: Bench, wheel: Wheel) -> tuple[Task, ...]:
    """Washed and pressed; the waistband; the roll."""
    casing = bench.spec.build.hoops.casing
    goods = (bench.shape.waistband.material, wheel.cover_material, wheel.roll_material,
             casing.name if casing else "")
    return (
        *washing_tasks(bench, goods),
        *waistband_tasks(bench, len(wheel.spokes)),
        bench.task(
            "cut-roll",
            "cut-roll",
            "cut the roll",
            ("press",),
            bench.minutes(("cut strip", 1)),
            jobs=("cut cloth",),
            parts=("roll",),
        ),
        bench.task(
            "stuff-roll",
            "stuff-roll",
            "sew and stuff the roll",
            ("cut-roll", "make-waistband"),
            bench.minutes(bench.seam(sum(wheel.roll_cut)), ("stuff roll", 1), ("set up seam", 2)),
            jobs=("sew long seams", "sew by hand"),
            parts=("roll",),
        ),
    )


def _cover(bench: Bench, wheel: Wheel, after: str) -> tuple[Task, ...]:
    pieces = 2 if wheel.halves else 1
    seam = wheel.width if wheel.halves else 0.0
    return (
        bench.task(
            "cut-cover",
            "cut-cover",
            "cut the cover",
            ("press", after),
            bench.minutes(("cut cover", pieces)),
            jobs=("cut cloth",),
            parts=("cover",),
        ),
        bench.task(
            "sew-cover",
            "sew-cover",
            "sew the cover on",
            ("cut-cover", "set-wheel"),
            bench.minutes(
                bench.seam(seam),
                ("hand seam", bench.shape.hoops[-1].girth + 2 * wheel.slit),
                ("set up seam", 2 + pieces),
            ),
            jobs=("sew by hand", "clip"),
            parts=("cover",),
        ),
    )
