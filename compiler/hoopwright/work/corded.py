"""Tasks of a corded petticoat, which has no hoops.

The cloth is washed before anything else, and a sample is corded, starched and tested before anything is cut: its
numbers change the plan. The breadths are corded flat, the last seam follows, and the stop comes when the whole is
starched and before the waistband: only then shows how far it stands out, and where the waist's line lies on it.
"""

from __future__ import annotations

from hoopwright.shape.model import CordedPetticoat
from hoopwright.spec.model import CordBuild
from hoopwright.supply.counts import cord_stitches
from hoopwright.supply.needs import waist_part
from hoopwright.work.bench import Bench
from hoopwright.work.model import Condition, Task
from hoopwright.work.petticoat import waist_tasks
from hoopwright.work.rates import DRYING
from hoopwright.work.stops import look, skirt_clear, stop_task, waist_closed

WIDE_TOLERANCE = 0.1
"""How far the width across the hem may miss what was drawn, a share: cloth gives; our judgement."""
_RAISE = "off by the same all round: pin the waist so much higher or lower on the cloth; off at one place: only there"


def corded_tasks(bench: Bench) -> tuple[Task, ...]:
    """All tasks of a corded petticoat, unscheduled."""
    cloth, cords = bench.shape.corded, bench.spec.build.cords
    if cloth is None or cords is None:
        raise ValueError("only a corded petticoat has rows of cord")
    first = (*_wash(bench, cloth, cords), *_sample(bench, cloth, cords))
    cut = _cut(bench, cloth, first[-1].id)
    rows = _rows(bench, cloth)
    seam = _close(bench, cloth, tuple(task.id for task in rows))
    starched = _starch(bench, cords, seam.id)
    pinned = bench.task("pin-waist", "pin-gathers", "pin the waist", (starched[-1].id if starched else seam.id,),
                        bench.minutes(("pin waist", 1)), jobs=("clip",), parts=(waist_part(bench.shape),))
    stop = _body_stop(bench, pinned.id)
    hem = bench.task("sew-hem", "sew-hem", "sew the hem", (stop.id,),
                     bench.minutes(bench.seam(cloth.hem), ("set up seam", 1)), jobs=("sew long seams", "press"),
                     parts=("breadth",))
    waist = waist_tasks(bench, cloth.drawstring > 0, cloth.hem, stop.id, seam.id)
    last = _use_stop(bench, cloth, (hem.id, waist[-1].id))
    return (*first, *cut, *rows, seam, *starched, pinned, stop, hem, *waist, last,
            *_finish(bench, waist[-1].id, last.id))


def _wash(bench: Bench, cloth: CordedPetticoat, cords: CordBuild) -> tuple[Task, ...]:
    goods = dict.fromkeys((cloth.material, cloth.facing, cords.material.name, bench.shape.waistband.material))
    parts = tuple(name for name in goods if name)
    pressed = tuple(name for name in parts if bench.spec.goods[name].kind != "cord")
    return (
        bench.task("wash", "wash", "wash cloth and cord", (), bench.minutes(("wash", 1)), parts=parts, wait=DRYING),
        bench.task("press", "press", "press the cloth", ("wash",), bench.minutes(("press", 1)),
                   jobs=("press",), parts=pressed, cautions=("pressing",)),
    )


def _sample(bench: Bench, cloth: CordedPetticoat, cords: CordBuild) -> tuple[Task, ...]:
    """The sample sewn, washed and starched, tested; everything after it waits for what it says."""
    sample = cords.sample
    lines = sample.cords + (1 if cloth.facing else 0)
    washed = ("wash-sample", "wash the sample")
    if cords.starch:
        washed = ("starch-sample", "wash, starch and dry the sample")
    return (
        bench.task("sew-sample", "sew-sample", f"cord a sample of {sample.cords} rows", ("press",),
                   bench.minutes(bench.seam(lines * sample.length), ("set up seam", lines), ("cut panel", 1)),
                   jobs=("cut cloth", "sew long seams"), parts=("sample",)),
        bench.task(washed[0], washed[0], washed[1], ("sew-sample",),
                   bench.minutes(("starch" if cords.starch else "wash", 1)),
                   jobs=("boil starch",) if cords.starch else (), parts=("sample",), wait=DRYING),
        bench.task("test-sample", "test-sample", "test the sample, and build the plan again", (washed[0],),
                   bench.minutes(("bench test", 1)), jobs=("test sample",), parts=("sample",)),
    )


def _cut(bench: Bench, cloth: CordedPetticoat, after: str) -> tuple[Task, ...]:
    pieces = cloth.count * (2 if cloth.facing else 1)
    parts = ("breadth", "facing") if cloth.facing else ("breadth",)
    lines = len(bench.shape.panels[0].rules)
    return (
        bench.task("cut-breadths", "cut-breadths", "cut the breadths", (after,),
                   bench.minutes(("cut panel", pieces)), jobs=("cut cloth",), parts=parts),
        bench.task("cut-cords", "cut-cords", "cut the cords", (after,),
                   bench.minutes(("cut cord", len(cloth.rows))), jobs=("cut cloth",),
                   parts=tuple(row.id for row in cloth.rows)),
        bench.task("mark-rows", "mark-rows", "rule the rows", ("cut-breadths",),
                   bench.minutes(("mark channel", cloth.count * lines)), jobs=("mark",), parts=("breadth",)),
        bench.task("sew-breadths", "sew-breadths", "sew all seams but one", ("mark-rows",),
                   bench.minutes(bench.seam((cloth.count - 1) * (cloth.high + cloth.facing_high)
                                            + (2 * cloth.hem if cloth.facing else cloth.hem)),
                                 ("set up seam", cloth.count)),
                   jobs=("sew long seams", "press"), parts=parts),
    )


def _rows(bench: Bench, cloth: CordedPetticoat) -> tuple[Task, ...]:
    """A task for each group, from the hem up; each lies on the one before it."""
    found: list[Task] = []
    share = cord_stitches(cloth) / (len(cloth.rows) + (cloth.groups if cloth.facing else 0))
    for number in range(1, cloth.groups + 1):
        rows = cloth.group(number)
        lines = len(rows) + (1 if cloth.facing else 0)
        found.append(bench.task(
            f"cord-{number}", "sew-cords", f"sew in the cords of group {number}",
            (found[-1].id if found else "sew-breadths", "cut-cords"),
            bench.minutes(bench.seam(lines * share), ("set up seam", lines)), jobs=("sew long seams",),
            parts=tuple(row.id for row in rows)))
    return tuple(found)


def _close(bench: Bench, cloth: CordedPetticoat, needs: tuple[str, ...]) -> Task:
    return bench.task("close-round", "close-round", "sew the last seam and the placket", needs,
                      bench.minutes(bench.seam(cloth.high), ("hand seam", 2 * cloth.placket + cloth.band),
                                    ("set up seam", 2)),
                      jobs=("sew long seams", "sew by hand"), parts=("breadth",))


def _starch(bench: Bench, cords: CordBuild, after: str) -> tuple[Task, ...]:
    if cords.starch is None:
        return ()
    return (bench.task("starch", "starch", "wash and starch it, dry it standing", (after,),
                       bench.minutes(("starch", 1), ("press", 1)), jobs=("boil starch", "press"),
                       parts=("petticoat",), wait=DRYING),)


def _body_stop(bench: Bench, after: str) -> Task:
    """Starched, pinned to a tape at the waist, on the body with the skirt over it."""
    across = bench.shape.lowest.width
    return stop_task(
        bench, "try-on-1", "try-on-body", "try it on: starched, skirt on", (after,), (
            _tied(bench), *_edge(bench),
            Condition("hem-across", "hem", across, WIDE_TOLERANCE * across,
                      "narrower: starch it again more stiffly, sew in one more group of cords, or wear less over it;"
                      " measure it, and write what you found under `fittings`"),
            skirt_clear(bench),
            look("waistband-at-waist", "waistband", "tie the tape again where the waist is narrowest"),
            look("band-stands", "hem", "a band that rolls over or falls into folds wants stiffer starch or more rows;"
                 " the sample tells which"),
            look("line-even", "skirt", "a group that shows wants a plain petticoat over it"),
        ), ("fire", "escape"))


def _use_stop(bench: Bench, cloth: CordedPetticoat, needs: tuple[str, ...]) -> Task:
    """Finished, and used: door, chair, stairs, off alone."""
    return stop_task(
        bench, "try-on-2", "try-on-use", "try it in use: door, chair, stairs, off alone", needs, (
            Condition("door", "petticoat", bench.spec.limits.doorway, 0.0,
                      "press the band in at the sides with both hands; cords give and come back"),
            Condition("edge-again", "hem", bench.spec.shape.hem_off_floor, bench.spec.allowances.hem_tolerance,
                      "it has dropped: take it up at the waist; starch that has gone soft wants renewing"),
            _tied(bench),
            look("chair-corded", "petticoat", "gather the band up behind before sitting; practise"),
            look("stairs", "petticoat", "lift the hem by hand"),
            look("off-alone", waist_part(bench.shape), "change what closes it for something one pull opens"),
        ), ("doors", "stairs", "fire", "escape"))


def _tied(bench: Bench) -> Condition:
    one = waist_closed(bench)
    return Condition("waist-tied", one.part, one.value, one.tolerance,
                     "tie it again at the waist's own girth; write the girth as tied under `fittings`")


def _edge(bench: Bench) -> tuple[Condition, ...]:
    off, within = bench.spec.shape.hem_off_floor, bench.spec.allowances.hem_tolerance
    return tuple(Condition(f"edge-{place}", "hem", off, within, _RAISE) for place in ("front", "side", "back"))


def _finish(bench: Bench, waist: str, last: str) -> tuple[Task, ...]:
    return (
        bench.task("sew-label", "sew-label", "sew the label inside the waist", (waist,),
                   bench.minutes(("label", 1)), jobs=("sew by hand",), parts=(waist_part(bench.shape),)),
        bench.task("hang-up", "hang-up", "hang it up", (last, "sew-label"), bench.minutes(("hang up", 1)),
                   parts=("petticoat",), cautions=("fire",)),
    )
