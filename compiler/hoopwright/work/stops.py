"""What every stop to try it on shares: the task, and conditions that hold whatever is worn."""

from __future__ import annotations

from hoopwright.work.bench import Bench
from hoopwright.work.model import Condition, Task

AT_WAIST = "move the fastening until the band closes round the waist as measured"
"""What mends a waistband that rides up or tips."""


def stop_task(
    bench: Bench,
    id: str,
    action: str,
    title: str,
    needs: tuple[str, ...],
    conditions: tuple[Condition, ...],
    cautions: tuple[str, ...],
    *,
    clamped: bool = False,
) -> Task:
    """A stop to try it on, alone or with a helper as the workshop says; ``clamped``: hoops are bent round and not yet
    joined or sewn."""
    helper = bench.spec.workshop.helper
    rate = "fitting with a helper" if helper else "fitting alone"
    jobs = ("look and measure",) if helper else ("look and measure", "level alone")
    return bench.task(
        id,
        f"{action}-{'helped' if helper else 'alone'}",
        title,
        needs,
        bench.minutes((rate, 1)),
        jobs=(*jobs, "bend round") if clamped else jobs,
        parts=("cage",),
        cautions=(*cautions, *bench.clamped) if clamped else cautions,
        conditions=conditions,
    )


def waist_closed(bench: Bench) -> Condition:
    """The waistband closes at its girth."""
    return Condition(
        "waist-closed",
        "waistband",
        bench.shape.waistband.girth,
        bench.spec.allowances.hoop_tolerance,
        "move the fastening; write the girth as closed under `fittings`",
    )


def skirt_clear(bench: Bench) -> Condition:
    """The skirt's hem clears the floor all round."""
    return Condition(
        "skirt-off-floor",
        "skirt",
        bench.spec.skirt_off_floor,
        bench.spec.allowances.hem_tolerance,
        "the skirt is let down or taken up, never the cage, once the cage's own hem is level"
        if bench.shape.wheel is None and bench.shape.sides is None
        else "the skirt is let down or taken up at its own hem, never the cage",
    )


def look(key: str, part: str, mend: str) -> Condition:
    """A condition that is looked at, not measured."""
    return Condition(key, part, None, None, mend)


def off_alone() -> Condition:
    """The wearer gets out of it by herself."""
    return look("off-alone", "waistband", "change the fastening for one that opens with one pull")
