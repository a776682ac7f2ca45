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
from decimal import Decimal
from pathlib import Path
from typing import Any

from hoopwright.supply.cutting import CuttingOrder, CuttingPlan, CuttingRules, Pack, Piece, cut_lengths

DATA = Path(__file__).resolve().parents[1] / "external" / "data"
GROWTH = [75, 150, 300]
ROUNDS = 3


def main() -> None:
    """Measure and print."""
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 5.0
    made = runpy.run_path(str(DATA / "cutting_cpsat.py"))
    instances: list[dict[str, Any]] = json.loads((DATA / "cutting_cpsat.json").read_text())
    cut_lengths(order_of(instances[11]))  # imports happen once, outside the measure
    _against_cpsat(instances, made["Model"], seconds)
    _pooled(made["instance"])
    _growth(made["instance"])


def order_of(data: dict[str, Any]) -> CuttingOrder:
    """An instance as an order."""
    unit = 10_000
    return CuttingOrder(
        tuple(Piece(f"P{i}", p / unit) for i, p in enumerate(data["pieces"])),
        tuple(Pack(p["length"] / unit, Decimal(p["cents"]) / 100, p["available"]) for p in data["packs"]),
        tuple(x / unit for x in data["on_hand"]),
        CuttingRules(kerf=data["kerf"] / unit, trim=data["trim"] / unit),
    )


def _against_cpsat(instances: list[dict[str, Any]], model: Any, seconds: float) -> None:
    ours, theirs, ratios = [], [], []
    for data in instances:
        own, _ = _timed(order_of(data))
        start = time.process_time()
        model(data).solve(seconds)
        reference = time.process_time() - start
        ours.append(own)
        theirs.append(reference)
        ratios.append(own / reference)
    print(f"{len(instances)} instances, median time: {1e3 * statistics.median(ours):.1f} ms")
    print(f"  CP-SAT (at most {seconds:g} s each): {1e3 * statistics.median(theirs):.1f} ms")
    ratio = statistics.median(ours) / statistics.median(theirs)
    print(f"  ratio of the medians {ratio:.2f} (target at most 0.50)")
    print(f"  median of the ratios {statistics.median(ratios):.2f}, worst {max(ratios):.2f}")


def _pooled(make: Any) -> None:
    """300 pieces pooled from a cast's cages, in each family of stock."""
    for family in range(7):
        spent, plan = _timed(order_of(make(500 + family, 300, family)))
        state = "proven" if plan.proven else f"within {100 * plan.gap:.2f} %"
        print(
            f"300 pieces, family {family}: {state} in {spent:.2f} s (target: proven or within 0.50 % in 5 s)"
        )


def _growth(make: Any) -> None:
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
    print(f"growth, {', '.join(shown)}: power {power:.2f} of the number of pieces (target at most 2.00)")


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
