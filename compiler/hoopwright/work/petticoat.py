"""Tasks of a petticoat whose channels carry the hoops.

All seams but one, the channels, the hem hoop and one other; then the stop, before the waistband: only the
wearer tells how high the waist's line lies on the cloth. Flounces are sewn on last.
"""

from __future__ import annotations

from dataclasses import replace

from hoopwright.shape.model import Hoop, Petticoat
from hoopwright.supply.cloths import strips_of
from hoopwright.supply.needs import waist_part
from hoopwright.work.belt import waistband_tasks
from hoopwright.work.bench import Bench
from hoopwright.work.cage_stops import body_stop, hem_stop, use_stop
from hoopwright.work.finish import finish_tasks
from hoopwright.work.hoops import join_tasks
from hoopwright.work.metal import metal_tasks
from hoopwright.work.model import Task
from hoopwright.work.washing import washing_tasks


def petticoat_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks of a petticoat with channels, unscheduled."""
    cloth = bench.shape.petticoat
    if cloth is None:
        raise ValueError("only a petticoat has channels")
    sewn = (*_wash(bench, cloth), *_panels(bench, cloth), *_channels(bench, cloth))
    channelled = sewn[-1].id
    hoops = bench.shape.hoops
    first = tuple(dict.fromkeys((hoops[-1], hoops[0])))
    threaded = tuple(_thread(bench, hoop, (channelled,)) for hoop in first)
    pinned = _pin(bench, tuple(task.id for task in threaded))
    stop = _tied(body_stop(bench, (pinned.id,)))
    rest = tuple(_thread(bench, hoop, (stop.id,)) for hoop in hoops if hoop not in first)
    joins = join_tasks(bench, (stop.id,))
    joined = tuple(_after(task, rest, bench) for task in joins)
    seam = _close(bench, cloth, (joined[-1].id if joined else stop.id, *(task.id for task in rest)))
    waist = waist_tasks(bench, cloth.drawstring > 0, cloth.top, stop.id, seam.id)
    second = hem_stop(bench, (waist[-1].id, seam.id))
    second = _tied(second) if cloth.drawstring else second
    flounces = _flounces(bench, cloth, second.id)
    third = use_stop(bench, (flounces[-1].id if flounces else second.id,))
    return (*metal_tasks(bench), *sewn, *threaded, pinned, stop, *rest, *joined, seam, *waist, second,
            *flounces, third, *finish_tasks(bench, (waist[-1].id, second.id), third.id, "petticoat"))


def _tied(stop: Task) -> Task:
    """The same stop where no band is closed: a tape or the drawstring is tied round the waist."""
    mend = "tie it again at the waist's own girth; write the girth as tied under `fittings`"
    return replace(stop, conditions=tuple(
        replace(one, key="waist-tied", mend=mend) if one.key == "waist-closed" else one
        for one in stop.conditions))


def _after(task: Task, rest: tuple[Task, ...], bench: Bench) -> Task:
    """A join also waits until its hoop lies in its channel."""
    own = tuple(one.id for one in rest if one.parts[0] in task.parts and task.action.startswith("join"))
    if not own:
        return task
    return bench.task(task.id, task.action, task.title, (*task.needs, *own), task.minutes, jobs=("join", "bend round"),
                      parts=task.parts, cautions=task.cautions)


def _wash(bench: Bench, cloth: Petticoat) -> tuple[Task, ...]:
    return washing_tasks(bench, (cloth.material, cloth.casing, bench.shape.waistband.material,
                                 *(one.material for one in cloth.flounces)))


def _panels(bench: Bench, cloth: Petticoat) -> tuple[Task, ...]:
    """Cut, marked and sewn together but for the last seam."""
    panel = bench.shape.panels[0]
    lines = len(cloth.channels)
    return (
        bench.task("cut-cloth", "cut-cloth", f"cut the {cloth.kind}", ("press",),
                   bench.minutes(("cut panel", cloth.count)), jobs=("cut cloth",), parts=(panel.part,)),
        bench.task("mark-cloth", "mark-cloth", "mark the channel lines", ("cut-cloth",),
                   bench.minutes(("mark channel", cloth.count * lines)), jobs=("mark",),
                   parts=(panel.part,)),
        bench.task("sew-cloth", "sew-cloth", "sew all seams but one, and the hem", ("mark-cloth",),
                   bench.minutes(bench.seam((cloth.count - 1) * panel.height + cloth.hem),
                                 ("set up seam", cloth.count)),
                   jobs=("sew long seams", "press"), parts=(panel.part,)),
    )


def _channels(bench: Bench, cloth: Petticoat) -> tuple[Task, ...]:
    hoops = tuple(one.hoop for one in cloth.channels)
    count = len(hoops)
    if not cloth.casing:
        return (bench.task("sew-tucks", "sew-tucks", "sew the tucks", ("sew-cloth",),
                           bench.minutes(bench.seam(sum(one.girth for one in cloth.channels)),
                                         ("set up seam", count)),
                           jobs=("sew long seams", "press"), parts=hoops),)
    return (
        bench.task("cut-strips", "cut-strips", "cut the strips of the casings", ("press",),
                   bench.minutes(("cut strip", count)), jobs=("cut cloth",), parts=hoops),
        bench.task("apply-casings", "apply-casings", "sew the casings on", ("sew-cloth", "cut-strips"),
                   bench.minutes(bench.seam(sum(2 * one.strip for one in cloth.channels)),
                                 ("set up seam", 2 * count)),
                   jobs=("sew long seams", "press"), parts=hoops),
    )


def _thread(bench: Bench, hoop: Hoop, needs: tuple[str, ...]) -> Task:
    return bench.task(f"thread-{bench.short(hoop)}", "thread-hoop", f"thread hoop {hoop.id} into its channel",
                      (*needs, f"cut-{bench.short(hoop)}"),
                      bench.minutes(("thread channel", hoop.girth), ("clamp", 1)),
                      jobs=("clamp",), parts=(hoop.id,), cautions=("cut-ends", *bench.clamped))


def _pin(bench: Bench, needs: tuple[str, ...]) -> Task:
    return bench.task("pin-waist", "pin-waist", "pin the last seam and the waist", needs,
                      bench.minutes(("pin waist", 1)), jobs=("clip",), parts=(waist_part(bench.shape),))


def _close(bench: Bench, cloth: Petticoat, needs: tuple[str, ...]) -> Task:
    panel = bench.shape.panels[0]
    return bench.task("close-seam", "close-seam", "sew the last seam and the placket", needs,
                      bench.minutes(bench.seam(panel.height), ("hand seam", 2 * cloth.placket),
                                    ("whip stitch", cloth.feed_gap * len(cloth.channels)),
                                    ("set up seam", 2)),
                      jobs=("sew long seams", "sew by hand"), parts=(panel.part,))


def waist_tasks(bench: Bench, drawn: bool, top: float, stop: str, seam: str) -> tuple[Task, ...]:
    """The waistband made, fastened and sewn on; or the edge, ``top`` m round, turned over a drawstring."""
    if drawn:
        return (bench.task("set-drawstring", "set-drawstring", "turn the waist's edge and draw the string in",
                           (stop, seam, "press"),
                           bench.minutes(bench.seam(top), ("set up seam", 1), ("thread drawstring", 1)),
                           jobs=("sew long seams",), parts=("drawstring",)),)
    sewn_on = bench.task("set-waistband", "set-waistband", "sew the waistband to the petticoat",
                         (stop, seam, "make-waistband"),
                         bench.minutes(bench.seam(2 * bench.shape.waistband.girth), ("gather", top),
                                       ("set up seam", 2)),
                         jobs=("sew long seams",), parts=("waistband",))
    return waistband_tasks(bench, 3, sewn_on)


def _flounces(bench: Bench, cloth: Petticoat, after: str) -> tuple[Task, ...]:
    if not cloth.flounces:
        return ()
    ids = tuple(one.id for one in cloth.flounces)
    strips = sum(strips_of(bench.supply.layouts, id) for id in ids)
    length = sum(one.length for one in cloth.flounces)
    on = sum(one.girth for one in cloth.flounces)
    return (
        bench.task("cut-flounces", "cut-flounces", "cut and join the flounces", ("press",),
                   bench.minutes(("cut strip", strips), bench.seam(sum(
                       strips_of(bench.supply.layouts, one.id) * one.height for one in cloth.flounces)),
                       ("set up seam", strips)),
                   jobs=("cut cloth", "sew long seams"), parts=ids),
        bench.task("sew-flounces", "sew-flounces", "hem, gather and sew on the flounces",
                   ("cut-flounces", after),
                   bench.minutes(bench.seam(length + on), ("gather", length), ("set up seam", 2 * len(ids))),
                   jobs=("sew long seams", "clip"), parts=ids),
    )
