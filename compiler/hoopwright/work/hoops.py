"""Tasks that bring hoops and cloth together: casings and channels on, clips, joins, fixings."""

from __future__ import annotations

from hoopwright.shape.model import Hoop
from hoopwright.supply.needs import cased, closed
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task
from hoopwright.work.rates import JOIN


def in_band(bench: Bench, hoop: Hoop) -> bool:
    """Whether the hoop runs in a channel of the hem band."""
    band = bench.shape.band
    return band is not None and hoop.id in (band.upper, band.lower)


def levelled(bench: Bench) -> tuple[Hoop, ...]:
    """The hoops whose fixings wait until the hem is levelled: the hem hoop, with a band both its hoops."""
    return tuple(hoop for hoop in bench.shape.hoops if hoop.place == "hem" or in_band(bench, hoop))


def cover_tasks(bench: Bench) -> tuple[Task, ...]:
    """Each open hoop gets its casing, or goes into its channel, and is marked: none of it can be done
    once the hoop is joined."""
    sewn = bench.spec.build.hoops.casing is not None and bench.spec.build.hoops.casing.kind != "braid"
    covered = {hoop.id for hoop in cased(bench.shape)}
    tasks: list[Task] = []
    for hoop in bench.shape.hoops:
        name = bench.short(hoop)
        before = bench.whole(hoop)
        if in_band(bench, hoop):
            tasks.append(
                bench.task(
                    f"thread-{name}",
                    "thread-channel",
                    f"thread hoop {hoop.id} into its channel",
                    (before, "sew-channels"),
                    bench.minutes(("thread channel", hoop.girth)),
                    jobs=("bend round",),
                    parts=(hoop.id, "band"),
                    cautions=("cut-ends", *bench.recoil),
                )
            )
            before = f"thread-{name}"
        elif hoop.id in covered:
            tasks.append(
                bench.task(
                    f"case-{name}",
                    "case-hoop",
                    f"put the casing on hoop {hoop.id}",
                    (before, "sew-casings" if sewn else "cut-casings"),
                    bench.minutes(("thread casing", hoop.girth)),
                    jobs=("clip",),
                    parts=(hoop.id,),
                    cautions=("cut-ends",),
                )
            )
            before = f"case-{name}"
        if hoop.fixings:
            tasks.append(
                bench.task(
                    f"mark-{name}",
                    "mark-hoop",
                    f"mark the tapes on hoop {hoop.id}",
                    (before,),
                    bench.minutes(("mark hoop", 1), ("mark on hoop", len(hoop.fixings))),
                    jobs=("mark", "clamp") if hoop.closed else ("mark",),
                    parts=(hoop.id,),
                    cautions=bench.recoil if hoop.closed else (),
                )
            )
    return tuple(tasks)


def clip_tasks(bench: Bench) -> tuple[Task, ...]:
    """Hoops clipped on at the marks, ends clamped and not joined."""
    return tuple(_clip(bench, hoop) for hoop in bench.shape.hoops)


def _clip(bench: Bench, hoop: Hoop) -> Task:
    name = bench.short(hoop)
    if not hoop.fixings:
        return bench.task(
            f"clip-{name}",
            "clamp-ends",
            f"clamp the ends of hoop {hoop.id} in the band",
            (f"thread-{name}" if in_band(bench, hoop) else bench.whole(hoop),),
            bench.minutes(("clamp", 1)),
            jobs=("clamp",),
            parts=(hoop.id, "band"),
            cautions=bench.clamped,
        )
    return bench.task(
        f"clip-{name}",
        "clip-hoop",
        f"clip hoop {hoop.id} to the tapes",
        (f"mark-{name}", "sew-tapes"),
        bench.minutes(("clip", len(hoop.fixings)), ("clamp", 1)),
        jobs=("clip", "clamp"),
        parts=(hoop.id,),
        cautions=bench.clamped,
    )


def join_tasks(bench: Bench, after: tuple[str, ...]) -> tuple[Task, ...]:
    """Every closed hoop joined after the tasks ``after``, a stop among them, and the proof; then all joins
    washed or checked.
    Hoops open in front have no join."""
    hoops = closed(bench.shape)
    if not hoops:
        return ()
    join = bench.spec.build.hoops.join
    action = "join-hoop-shielded" if join.heat else "join-hoop"
    tasks = []
    for hoop in hoops:
        time = bench.minutes(("prepare join", 1), ("shield join", 1 if join.heat else 0), (JOIN, 1))
        tasks.append(
            bench.task(
                f"join-{bench.short(hoop)}",
                action,
                f"join hoop {hoop.id}",
                (*after, "prove-join"),
                time,
                jobs=("join", "bend round"),
                parts=(hoop.id,),
                cautions=(*join.cautions, *bench.recoil),
            )
        )
    ids = tuple(hoop.id for hoop in hoops)
    kind, said, rate = (
        ("wash-joins", "wash and check every join", "wash join")
        if join.heat
        else ("check-joins", "check every join", "check join")
    )
    tasks.append(
        bench.task(
            kind,
            kind,
            said,
            tuple(task.id for task in tasks),
            bench.minutes((rate, len(ids))),
            parts=ids,
            cautions=("acid-flux",) if join.heat else ("cut-ends",),
        )
    )
    return tuple(tasks)


def band_close_tasks(bench: Bench, after: str) -> tuple[Task, ...]:
    """The band drawn over the joins of its hoops and closed."""
    band = bench.shape.band
    if band is None:
        return ()
    return (
        bench.task(
            "close-band",
            "close-band",
            "close the hem band over the joins",
            (after,),
            bench.minutes(("whip stitch", band.height), ("set up seam", 1)),
            jobs=("sew by hand",),
            parts=("band",),
        ),
    )


def sew_tasks(bench: Bench, hoops: tuple[Hoop, ...], after: tuple[str, ...]) -> tuple[Task, ...]:
    """Fixings sewn hoop by hoop from the top; hoops no tape reaches have none."""
    covered = {hoop.id for hoop in cased(bench.shape)}
    return tuple(
        bench.task(
            f"sew-{bench.short(hoop)}",
            "sew-hoop",
            f"sew hoop {hoop.id} to the tapes",
            after,
            bench.minutes(
                ("sew fixing", len(hoop.fixings)), ("close casing", 1 if hoop.id in covered else 0)
            ),
            jobs=("sew by hand",),
            parts=(hoop.id,),
        )
        for hoop in hoops
        if hoop.fixings
    )
