"""Damage every spec, starter, body and cast of the repository and run the commands on what comes out.

Run ``python tests/hardening/fuzz_specs.py --count 20000 --jobs 2``. ``fuzzing/judging.py`` says what a run must
come to; each kind of trouble is printed once, with its spec made as small as the trouble lets it be. ``--seed`` gives
other cases; ``--only NUMBER`` runs one case again. ``--solve-every 10`` reads every case and gives only every tenth
to its command: many more in the same time.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from multiprocessing import get_context
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from fuzzing.cases import Case, case
from fuzzing.judging import Run, in_turn
from fuzzing.smaller import smaller

LOT = 25
"""Cases that one worker runs in a row."""


@dataclass
class Tally:
    """What many runs came to."""

    codes: Counter[str] = field(default_factory=Counter)
    troubles: dict[str, tuple[int, Run]] = field(default_factory=dict)
    planned: int = 0
    seconds: float = 0.0
    again: Counter[str] = field(default_factory=Counter)
    slowest: tuple[float, int] = (0.0, -1)
    largest: tuple[float, int] = (0.0, -1)

    def take(self, number: int, command: str, one: Run) -> bool:
        """Count a run; true when its trouble is a new one."""
        self.codes[f"{command} {one.code}"] += 1
        self.planned += one.planned > 0
        self.seconds += one.seconds
        self.slowest = max(self.slowest, (one.seconds, number))
        self.largest = max(self.largest, (one.peak, number))
        if one.trouble:
            self.again[one.sort] += 1
        new = bool(one.trouble) and one.sort not in self.troubles
        if new:
            self.troubles[one.sort] = (number, one)
        return new


Ran = tuple[int, tuple[str, ...], Run]
"""A case's number, the command it was given to, and what it came to."""


def lot(seed: int, first: int, count: int, every: int) -> list[Ran]:
    """Run some cases in a row."""
    import gc

    found = []
    gc.freeze()  # what is loaded stays: only what a case leaves behind is looked for
    for number in range(first, first + count):
        made, one = in_turn(case(seed, number), number, every)
        found.append((number, made.given, one))
        gc.collect()
    return found


def _lot(given: tuple[int, int, int, int]) -> list[Ran]:
    return lot(*given)


def fuzz(seed: int, first: int, count: int, jobs: int, every: int = 1) -> Iterator[Ran]:
    """Run ``count`` cases from ``first`` on, in ``jobs`` processes, or in this one."""
    starts = range(first, first + count, LOT)
    if jobs == 1:
        for start in starts:
            yield from lot(seed, start, min(LOT, first + count - start), every)
        return
    lots = [(seed, start, min(LOT, first + count - start), every) for start in starts]
    with get_context("spawn").Pool(jobs, maxtasksperchild=8) as pool:
        for found in pool.imap_unordered(_lot, lots):
            yield from found


def told(seed: int, number: int, given: tuple[str, ...], one: Run, *, small: bool = True) -> str:
    """A trouble in words, with a case as small as it can be."""
    made: Case = replace(case(seed, number), given=given)
    least = smaller(made, one) if small else made
    return f"=== trouble in case {number} of seed {seed}\n{least.shown()}\n--- {''.join(one.trouble)}\n"


def main() -> int:
    """Fuzz as often as asked; print each kind of trouble once, then the totals."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--count", type=int, default=20000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="the number of the first case")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--only", type=int, help="run this case alone")
    parser.add_argument("--solve-every", type=int, default=1, help="of so many cases one goes beyond being read")
    parser.add_argument("--as-it-is", action="store_true", help="do not make cases smaller")
    options = parser.parse_args()
    first, count = (options.first, options.count) if options.only is None else (options.only, 1)
    tally, start = Tally(), time.monotonic()
    every = 1 if options.only is not None else options.solve_every
    for done, (number, given, one) in enumerate(fuzz(options.seed, first, count, options.jobs, every), 1):
        if tally.take(number, given[0], one):
            print(told(options.seed, number, given, one, small=not options.as_it_is), flush=True)
        if done % 100 == 0:
            print(f"{done} of {count} in {time.monotonic() - start:.0f} s, {sum(tally.again.values())} in trouble",
                  file=sys.stderr, flush=True)
    print(f"{count} damaged specs, seed {options.seed}: {sum(tally.again.values())} in trouble; {tally.planned} came to"
          f" a plan; {tally.seconds:.0f} s of processor time")
    for sort, times in tally.again.most_common():
        print(f"  {times} x {sort} (case {tally.troubles[sort][0]})")
    print("exit codes:", ", ".join(f"{name} x {times}" for name, times in sorted(tally.codes.items())))
    print(f"slowest: {tally.slowest[0]:.1f} s (case {tally.slowest[1]}); most memory: {tally.largest[0]:.0f} MB"
          f" (case {tally.largest[1]})")
    return 1 if tally.again else 0


if __name__ == "__main__":
    sys.exit(main())
