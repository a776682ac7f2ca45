"""Tasks for ties and lacings: cut, pinned before the first stop, sewn after it."""

from __future__ import annotations

from hoopwright.shape.model import Hoop, Tie
from hoopwright.shape.tying.lacing import LACED, eyelet_count
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task


def needed_early(bench: Bench) -> tuple[Hoop, ...]:
    """The hoops that are clipped and tied before the first stop: all of them, but of ovals only the hem, its
    band and one in the middle, so that ties can still be changed on all."""
    hoops = bench.shape.hoops
    half = any(hoop.plan.kind == "bow" for hoop in hoops)
    if half or not any(tie.kind == "cross" for tie in bench.shape.ties):
        return hoops
    tied = {tie.hoop for tie in bench.shape.ties if tie.kind == "cross"}
    band = bench.shape.band
    lowest = {hoops[-1].id} | ({band.upper, band.lower} if band is not None else set())
    others = [hoop for hoop in hoops if hoop.id in tied and hoop.id not in lowest]
    others = others or [hoop for hoop in hoops if hoop.id not in lowest]
    middle = others[len(others) // 2].id if others else ""
    return tuple(hoop for hoop in hoops if hoop.id in lowest or hoop.id == middle)


def cut_tie_tasks(bench: Bench) -> tuple[Task, ...]:
    """All ties marked and cut; the lacing's panels cut and sewn."""
    ties = tuple(tie for tie in bench.shape.ties if tie.cut > 0)
    tasks: list[Task] = []
    if ties:
        tasks.append(bench.task(
            "cut-ties", "cut-ties", "mark and cut the ties", ("press",),
            bench.minutes(("mark tape", len(ties)), ("cut tape", len(ties))),
            jobs=("cut cloth",), parts=tuple(tie.id for tie in ties),
        ))
    panels = [panel for panel in bench.shape.panels if panel.part == LACED]
    if panels and bench.spec.build.lacing is not None:
        run = 2 * sum(panel.count * panel.height for panel in panels)
        tasks.append(bench.task(
            "cut-panels", "cut-panels", "cut the lacing panels", ("press",),
            bench.minutes(("cut strip", sum(panel.count for panel in panels))),
            jobs=("cut cloth",), parts=("lacing panel",),
        ))
        tasks.append(bench.task(
            "sew-panels", "sew-panels", "turn in and sew the edges of the lacing panels", ("cut-panels",),
            bench.minutes(bench.seam(run), ("set up seam", 4)), jobs=("sew long seams",),
            parts=("lacing panel",),
        ))
    return tuple(tasks)


def pin_tasks(bench: Bench, hoops: tuple[Hoop, ...]) -> tuple[Task, ...]:
    """Ties pinned to those hoops, the lacing laced for the time being."""
    tasks = []
    for hoop in hoops:
        ties = _of(bench, hoop)
        if ties:
            name = bench.short(hoop)
            tasks.append(bench.task(
                f"pin-ties-{name}", "pin-ties", f"pin the ties of hoop {hoop.id}",
                ("cut-ties", f"clip-{name}"), bench.minutes(("clip", 2 * len(ties))), jobs=("clip", "bend round"),
                parts=(hoop.id,), cautions=bench.clamped,
            ))
    laced = tuple(hoop for hoop in hoops if _laced(bench, hoop))
    if laced:
        tasks.append(bench.task(
            "lace-for-now", "lace-for-now", "pin the lacing panels to the hoops' ends and lace them for now",
            ("sew-panels", *(f"clip-{bench.short(hoop)}" for hoop in laced)),
            bench.minutes(("clip", 4 * len(laced))), jobs=("clip", "bend round"),
            parts=("lacing panel", *(hoop.id for hoop in laced)), cautions=bench.clamped,
        ))
    return tuple(tasks)


def sew_tie_tasks(bench: Bench, after: tuple[str, ...]) -> tuple[Task, ...]:
    """Ties sewn hoop by hoop once their hoops are; then the lacing's eyelets, and the lacing itself."""
    tasks = []
    sewn = {hoop.id: f"sew-{bench.short(hoop)}" for hoop in bench.shape.hoops if hoop.fixings}
    for hoop in bench.shape.hoops:
        ties = _of(bench, hoop)
        if ties:
            name = bench.short(hoop)
            tasks.append(bench.task(
                f"sew-ties-{name}", "sew-ties", f"sew the ties of hoop {hoop.id}",
                (*after, *((sewn[hoop.id],) if hoop.id in sewn else ())),
                bench.minutes(("sew fixing", 2 * len(ties))), jobs=("sew by hand",), parts=(hoop.id,),
            ))
    if any(_laced(bench, hoop) for hoop in bench.shape.hoops):
        count = eyelet_count(bench.spec, bench.shape.panels)
        edge = 2 * sum(panel.height for panel in bench.shape.panels)
        tasks.append(bench.task(
            "sew-panels-on", "sew-panels-on", "sew the lacing panels to the ends of the hoops", after,
            bench.minutes(("whip stitch", edge), ("set up seam", 2)), jobs=("sew by hand",),
            parts=("lacing panel",),
        ))
        tasks.append(bench.task(
            "set-eyelets", "set-eyelets", "set the eyelets and lace the panels", ("sew-panels-on",),
            bench.minutes(("set eyelet", count)), jobs=("sew by hand",), parts=("lacing panel",),
        ))
    return tuple(tasks)


def _of(bench: Bench, hoop: Hoop) -> tuple[Tie, ...]:
    return tuple(tie for tie in bench.shape.ties if tie.hoop == hoop.id and tie.cut > 0)


def _laced(bench: Bench, hoop: Hoop) -> bool:
    return any(tie.hoop == hoop.id and tie.kind == "lacing" for tie in bench.shape.ties)
