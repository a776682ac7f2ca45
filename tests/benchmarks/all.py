"""Every benchmark, one after the other, and one table of their ratios with targets, date and machine.

Run it with ``python tests/benchmarks/all.py [PROGRAM...]``: all of them, or those named. The whole takes about
a quarter of an hour on an idle machine; it measures and never judges.
"""

from __future__ import annotations

import os
import sys

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

import cage_pictures
import cage_solver
import commands
import cutting
import many_specs
from measured import Ratio, table, tell

PROGRAMS = {
    "commands": commands.ratios,
    "many_specs": many_specs.ratios,
    "cage_solver": cage_solver.ratios,
    "cage_pictures": cage_pictures.ratios,
    "cutting": cutting.ratios,
}


def main() -> None:
    """Measure, printing ratios as they are found, then the table."""
    rows: list[tuple[str, Ratio]] = []
    for program in sys.argv[1:] or PROGRAMS:
        print(f"\n{program}", flush=True)
        for one in PROGRAMS[program]():
            tell([one])
            rows.append((f"{program}.py", one))
    print(f"\n{table(rows)}")


if __name__ == "__main__":
    main()
