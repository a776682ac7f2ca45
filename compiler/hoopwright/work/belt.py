"""Tasks of a waistband that no tapes hang from."""

from __future__ import annotations

from hoopwright.work.bench import Bench
from hoopwright.work.model import Task


def waistband_tasks(bench: Bench, marks: int, pieces: int) -> tuple[Task, ...]:
    """The waistband cut, made with so many marks on it, and fastened."""
    fastening = bench.spec.build.waistband.fastening
    return (
        bench.task(
            "cut-waistband",
            "cut-waistband",
            "cut the waistband",
            ("press",),
            bench.minutes(("cut waistband", 1)),
            jobs_=("cut cloth",),
            parts=("waistband",),
        ),
        bench.task(
            "make-waistband",
            "make-waistband",
            "make the waistband",
            ("cut-waistband",),
            bench.minutes(("make waistband", 1), ("mark on waistband", marks)),
            jobs_=("sew long seams", "mark"),
            parts=("waistband",),
        ),
        bench.task(
            "sew-fastening",
            "sew-fastening",
            f"sew on the {fastening.name}",
            ("make-waistband",),
            bench.minutes(("sew fastening", pieces)),
            jobs_=("sew by hand",),
            parts=("waistband",),
        ),
    )
