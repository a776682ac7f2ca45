"""Speed of the cutting of lengths as ratios within one run: against OR-Tools CP-SAT, and against itself as
orders grow.

Run it with ``python tests/benchmarks/cutting.py [SECONDS]``; SECONDS (default 5) is the longest CP-SAT may
take for an instance, so that its time is understated where it does not finish. Both solve the instances of
``tests/external/data`` in turn, one thread each, in processor time, so that other load on the machine slows
neither. It measures and never judges: no test depends on it.
"""

from __future__ import annotations

import json
import math
import runpy
import statistics
import sys
import time
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

from measured import Ratio, tell

from hoopwright.supply.cutting import CuttingOrder, CuttingPlan, CuttingRules, Pack, Piece, cut_lengths

DATA = Path(__file__).resolve().parents[1] / "external" / "data"
GROWTH = [75, 150, 300]
ROUNDS = 3


def main() -> None:
    """Measure and print."""
    tell(ratios(float(sys.argv[1]) if len(sys.argv) > 1 else 5.0))


def ratios(seconds: float = 5.0) -> Iterator[Ratio]:
    """Against CP-SAT, pooled orders, and growth."""
    made = runpy.run_path(str(DATA / "cutting_cpsat.py"))
    instances: list[dict[str, Any]] = json.loads((DATA / "cutting_cpsat.json").read_text())
    cut_lengths(order_of(instances[11]))  # imports happen once, outside the measure
    yield from _against_cpsat(instances, made["Model"], seconds)
    yield from _pooled(made["instance"])
    yield _growth(made["instance"])


def order_of(data: dict[str, Any]) -> CuttingOrder:
    """An instance as an order."""
    unit = 10_000
    return CuttingOrder(
        tuple(Piece(f"P{i}", p / unit) for i, p in enumerate(data["pieces"])),
        tuple(Pack(p["length"] / unit, Decimal(p["cents"]) / 100, p["available"]) for p in data["packs"]),
        tuple(x / unit for x in data["on_hand"]),
        CuttingRules(kerf=data["kerf"] / unit, trim=data["trim"] / unit),
    )


def _against_cpsat(instances: list[dict[str, Any]], model: Any, seconds: float) -> Iterator[Ratio]:
    ours, theirs, each = [], [], []
    for data in instances:
        own, _ = _timed(order_of(data))
        start = time.process_time()
        model(data).solve(seconds)
        reference = time.process_time() - start
        ours.append(own)
        theirs.append(reference)
        each.append(own / reference)
    ratio = statistics.median(ours) / statistics.median(theirs)
    yield Ratio("our median time over CP-SAT's", ratio, 0.5,
                more=f"{len(instances)} orders, worst {max(each):.2f}; CP-SAT at most {seconds:g} s each")


def _pooled(make: Any) -> Iterator[Ratio]:
    """300 pieces pooled from a cast's cages, in each family of stock: seconds over the five they may take."""
    for family in range(7):
        spent, plan = _timed(order_of(make(500 + family, 300, family)))
        state = "proven" if plan.proven else f"within {100 * plan.gap:.2f} %"
        wanted = plan.proven or plan.gap <= 0.005
        yield Ratio(f"300 pieces of stock {family}: share of 5 s until proven, or within 0.5 %",
                    spent / 5 if wanted else math.inf, 1.0, more=state)


def _growth(make: Any) -> Ratio:
    """Growth of the median time with the number of pieces, over the families whose coils hold many hoops.

    The slowest is printed beside it: now and then an order leaves so little slack that it goes to the solver.
    """
    medians, shown = [], []
    for count in GROWTH:
        orders = [order_of(make(700 + i, count, family)) for i in range(4) for family in (0, 1, 2)]
        times = [_timed(order)[0] for order in orders]
        medians.append(statistics.median(times))
        shown.append(f"{count}: {1e3 * medians[-1]:.0f} ms (slowest {1e3 * max(times):.0f})")
    power = math.log(medians[-1] / medians[0]) / math.log(GROWTH[-1] / GROWTH[0])
    return Ratio("growth of the time by a power of the number of pieces", power, 2.0, more=", ".join(shown))


def _timed(order: CuttingOrder) -> tuple[float, CuttingPlan]:
    """Least processor time of a few runs, s, and the plan."""
    best, plan = math.inf, None
    for _ in range(ROUNDS):
        start = time.process_time()
        found = cut_lengths(order)
        spent = time.process_time() - start
        assert isinstance(found, CuttingPlan)
        if spent < best:
            best, plan = spent, found
        if spent > 0.5:
            break
    assert plan is not None
    return best, plan


if __name__ == "__main__":
    main()
