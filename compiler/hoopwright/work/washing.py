"""What comes before anything is cut: cloth and tape washed and pressed."""

from __future__ import annotations

from collections.abc import Iterable

from hoopwright.work.bench import Bench
from hoopwright.work.model import Task
from hoopwright.work.rates import DRYING


def washing_tasks(bench: Bench, goods: Iterable[str], unpressed: tuple[str, ...] = ()) -> tuple[Task, ...]:
    """Wash and press, of goods that may be named twice or be blank; cord is washed and left ``unpressed``."""
    parts = tuple(name for name in dict.fromkeys(goods) if name)
    return (
        bench.task("wash", "wash", "wash tape and cloth", (), bench.minutes(("wash", 1)), parts=(*parts, *unpressed),
                   wait=DRYING),
        bench.task("press", "press", "press tape and cloth", ("wash",), bench.minutes(("press", 1)),
                   jobs=("press",), parts=parts, cautions=("pressing",)),
    )
