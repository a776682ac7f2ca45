"""Casings made ready for the hoops that wear one."""

from __future__ import annotations

from hoopwright.supply.needs import cased
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task


def casing_tasks(bench: Bench) -> tuple[Task, ...]:
    """Casings cut; braid is woven as a tube, tape and cloth are sewn into one first. None without casings."""
    hoops, casing = cased(bench.shape), bench.spec.build.hoops.casing
    if not hoops or casing is None:
        return ()
    ids = tuple(hoop.id for hoop in hoops)
    cut = bench.task("cut-casings", "cut-casings", "cut the casings", ("press",),
                     bench.minutes(("cut casing", len(hoops))), jobs=("cut cloth",), parts=ids)
    if casing.kind == "braid":
        return (cut,)
    length = sum(hoop.casing for hoop in hoops)
    sew = bench.task("sew-casings", "sew-casings", "sew the casings into tubes", ("cut-casings",),
                     bench.minutes(bench.seam(length), ("set up seam", len(hoops))),
                     jobs=("sew long seams",), parts=ids)
    return (cut, sew)
