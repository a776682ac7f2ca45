"""What comes last: the label inside, and the finished piece hung up."""

from __future__ import annotations

from hoopwright.supply.needs import waist_part
from hoopwright.work.bench import Bench
from hoopwright.work.model import Task


def finish_tasks(bench: Bench, sewn: tuple[str, ...], tried: str, whole: str = "cage") -> tuple[Task, ...]:
    """The label once the tasks ``sewn`` are done, and the ``whole`` hung up once it has been ``tried`` in
    use."""
    return (
        bench.task("sew-label", "sew-label", "sew the label inside the waist", sewn,
                   bench.minutes(("label", 1)), jobs=("sew by hand",), parts=(waist_part(bench.shape),)),
        bench.task("hang-up", "hang-up", "hang it up", (tried, "sew-label"), bench.minutes(("hang up", 1)),
                   parts=(whole,), cautions=("fire",)),
    )
