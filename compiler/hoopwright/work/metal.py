"""Tasks at the cutting bench: the coil, its test, the hoops, and the proof of the join."""

from __future__ import annotations

from hoopwright.shape.model import Hoop
from hoopwright.supply.needs import closed
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task
from hoopwright.work.rates import DRYING, JOIN, PROOF

_OFFCUT = 0.3
"""Length of offcut wanted for the proof of a join, m: two short ends."""


def metal_tasks(bench: Bench) -> tuple[Task, ...]:
    """Open the coil, test it, cut every hoop, prove the join."""
    hoops = bench.shape.hoops
    cuts = tuple(_cut(bench, hoop) for hoop in hoops)
    spliced = tuple(_splice(bench, hoop) for hoop in hoops if bench.shares(hoop) > 1)
    proof = (_prove(bench),) if spliced or closed(bench.shape) else ()
    return (*_open(bench), _test(bench), *cuts, *proof, *spliced)


def _open(bench: Bench) -> tuple[Task, ...]:
    """Straight rods have no coil to open."""
    stock = bench.spec.build.hoops.material
    if stock.form == "rod":
        return ()
    lashes = ("coil-lash",) if stock.grade.metal else ()
    wheel = bench.shape.wheel
    parts = (*(hoop.id for hoop in bench.shape.hoops), *(spoke.id for spoke in (wheel.spokes if wheel else ())))
    return (
        bench.task(
            "open-coil",
            "open-coil",
            f"open the coil of {stock.name}",
            (),
            bench.minutes(("open coil", 1)),
            jobs=("open coil",),
            parts=parts,
            cautions=lashes,
        ),
    )


def _test(bench: Bench) -> Task:
    stock = bench.spec.build.hoops.material
    needs = () if stock.form == "rod" else ("open-coil",)
    return bench.task(
        "test-stock",
        "test-stock",
        f"test a sample of {stock.name}",
        needs,
        bench.minutes(("bench test", 1)),
        jobs=("bench test",),
        parts=(stock.name,),
        cautions=bench.recoil,
    )


def _cut(bench: Bench, hoop: Hoop) -> Task:
    wet = (("bend cane", bench.shares(hoop)),) if bench.bent_wet else ()
    return bench.task(
        f"cut-{bench.short(hoop)}",
        "cut-hoop",
        f"cut hoop {hoop.id}",
        ("test-stock",),
        bench.minutes(("cut hoop", bench.shares(hoop)), *wet),
        jobs=("cut stock", "bend wet") if wet else ("cut stock",),
        parts=(hoop.id,),
        cautions=cut_cautions(bench),
        wait=DRYING if wet else 0.0,
    )


def cut_cautions(bench: Bench) -> tuple[str, ...]:
    """What is told wherever hoops or spokes are cut."""
    return ("flying-ends", "cut-ends") if bench.spec.build.hoops.material.grade.metal else ("cut-ends",)


def _splice(bench: Bench, hoop: Hoop) -> Task:
    """The lengths of one hoop made into one, while nothing is on it that heat or a clamp could spoil."""
    join, name = bench.spec.build.hoops.join, bench.short(hoop)
    splices = bench.shares(hoop) - 1
    return bench.task(
        f"splice-{name}",
        "splice-hoop",
        f"splice hoop {hoop.id}",
        (f"cut-{name}", "prove-join"),
        bench.minutes(("prepare join", splices), (JOIN, splices)),
        jobs=("join",),
        parts=(hoop.id,),
        cautions=(*join.cautions, "cut-ends"),
    )


def _prove(bench: Bench) -> Task:
    """The proof waits for the hoops of the pack that leaves the longest end, for its offcut."""
    hoops = bench.spec.build.hoops
    short = {hoop.id: bench.short(hoop) for hoop in bench.shape.hoops}
    packs = [pack for pack in bench.stock_packs() if pack.left >= _OFFCUT]
    longest = max(packs, key=lambda pack: pack.left, default=None)
    parts = [piece.part for piece in longest.pieces] if longest else list(short)
    needs = tuple(f"cut-{short[hoop.id]}" for hoop in bench.shape.hoops if hoop.id in parts)
    time = bench.minutes(("prepare join", 1), (JOIN, 1))
    return bench.task(
        "prove-join",
        "prove-join",
        f"prove a {hoops.join.name} join on an offcut",
        needs,
        time,
        jobs=("join",),
        parts=(hoops.material.name,),
        cautions=hoops.join.cautions,
        wait=PROOF,
    )
