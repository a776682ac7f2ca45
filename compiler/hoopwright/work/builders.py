"""Who builds the tasks: one builder for each carrier the language knows.

A builder takes the bench and gives every task of the job, unscheduled; it may ask the bench's spec
for the ground plan and its shape for ties and panels. The first stop to try it on has the id
``try-on-1`` whatever the carrier. A new carrier is a new builder (in a file of its own) and one line here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from hoopwright.spec.model import Carrier
from hoopwright.work.bench import Bench
from hoopwright.work.cage import cage_tasks
from hoopwright.work.corded import corded_tasks
from hoopwright.work.model import Task
from hoopwright.work.pair import pair_tasks
from hoopwright.work.petticoat import petticoat_tasks
from hoopwright.work.wheel import wheel_tasks

Builder = Callable[[Bench], tuple[Task, ...]]

BUILDERS: Mapping[Carrier, Builder] = MappingProxyType({
    "tapes": cage_tasks,
    "channels": petticoat_tasks,
    "wheel": wheel_tasks,
    "cords": corded_tasks,
})
"""One builder of tasks for each carrier."""


def all_tasks(bench: Bench) -> tuple[Task, ...]:
    """Every task of the job, unscheduled, in the order an experienced maker would name them."""
    if bench.spec.build.sides is not None:
        return pair_tasks(bench)
    return BUILDERS[bench.spec.build.carried_by](bench)
