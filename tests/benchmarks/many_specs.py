"""Many specs in one call of ``build``, solver and files included, as ratios within one run.

Run it with ``python tests/benchmarks/many_specs.py [COUNT...]`` (default: 1 10 100 200). The specs are the
committed ones, then every starter on one body after another and under another load, no two alike; which come
first is shuffled once for all, so that ten of them are a fair sample.

- first: processor time of a fresh process that builds one spec, the mean of ten specs, measured before and after
  those that build many, since the speed of a machine wanders;
- a further spec: what each after the first adds to a process that builds many, over the first;
- two jobs: the time on the clock of one job over that of two; needs two idle processors;
- memory: the most that the process that computes ever held, over that with ten specs.

Processor time, because other load on the machine slows it least. It measures and never judges.
"""

from __future__ import annotations

import re
import statistics
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random

from measured import Ratio, Run, spent, tell

from hoopwright.cli.specs import gather
from hoopwright.source.quantity import parse_mass
from hoopwright.spec.starters import starter, starters

ROOT = Path(__file__).resolve().parents[2]
COUNTS = (1, 10, 100, 200)
SAMPLE = 10
MANY = 50
"""From so many specs on two jobs should be worth it; before that the start of both, which loads every library
twice, weighs too much."""
_WEIGHT = re.compile(r"weight: (\d[\d.]* (?:kg|g|lb|oz)(?: \d[\d.]* oz)?)(?![/\w])")


def main() -> None:
    """Measure and print."""
    tell(ratios([int(word) for word in sys.argv[1:]] or COUNTS))


def ratios(counts: Sequence[int] = COUNTS) -> Iterator[Ratio]:
    """A further spec, two jobs and memory, for each count."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        specs = written(folder, max(*counts, SAMPLE))
        build(specs[:1], folder)  # compiled files and the disk's cache are there from now on
        single = [build([spec], folder) for spec in specs[:SAMPLE]]
        before = statistics.mean(run.processor for run in single)
        largest = max(run.memory for run in single)
        yield Ratio("the first spec, s of processor time", before, more=f"at most {largest:.0f} MB")
        least = 0.0
        for count in sorted(set(counts) - {1}):
            one = build(specs[:count], folder)
            after = statistics.mean(build([spec], folder).processor for spec in specs[:SAMPLE])
            first, before = (before + after) / 2, after
            two = build(specs[:count], folder, jobs=2)
            further = (one.processor - first) / (count - 1)
            yield Ratio(f"a further spec over the first, {count} in a call", further / first, 0.25)
            yield Ratio(f"one job's time over that of two, {count} in a call", one.clock / two.clock,
                        1.7 if count >= MANY else None, most=False,
                        more=f"processor time grows {two.processor / one.processor:.2f} times")
            least = least or one.memory
            yield Ratio(f"memory over that with the fewest, {count} in a call", one.memory / least, 1.1,
                        more=f"{one.memory:.0f} MB; {two.memory:.0f} MB in the larger of two workers")


def written(folder: Path, count: int) -> list[Path]:
    """``count`` specs, no two alike: the committed ones where they lie, the others written into ``folder``."""
    committed = list(dict.fromkeys(spec.path for spec in gather([str(ROOT / "specs")])[0] if spec.home is None))
    names = [name for name, _ in starters()]
    chosen: list[Path | tuple[str, int]] = [*committed, *((name, 0) for name in names)]
    Random(1).shuffle(chosen)
    body = 1
    while len(chosen) < count:
        chosen += [(name, body) for name in names]
        body += 1
    return [one if isinstance(one, Path) else _start(folder, *one) for one in chosen[:count]]


def _start(folder: Path, name: str, body: int) -> Path:
    """A starter on a body of its own (stature 150 to 186 cm, waist 60 to 88), its load up to a quarter lighter
    or heavier."""
    waist = 60 + 7 * body % 29
    text = starter(name, {"title": f"{name}, body {body}", "stature": f"{150 + 11 * body % 37} cm",
                          "waist": f"{waist} cm", "hip": f"{waist + 20 + 5 * body % 13} cm"})
    factor = 0.75 + (3 * body % 11) / 20
    text = _WEIGHT.sub(lambda found: f"weight: {1000 * factor * parse_mass(found[1]):.0f} g", text)
    path = folder / f"{name}-{body}" / "cage.yaml"
    path.parent.mkdir()
    path.write_text(text)
    return path


def build(specs: Sequence[Path], folder: Path, jobs: int = 1) -> Run:
    """Build ``specs`` in one call, into a folder of its own."""
    with tempfile.TemporaryDirectory(dir=folder) as out:
        command = [sys.executable, "-m", "hoopwright", "build", "--jobs", str(jobs), "-o", out,
                   *map(str, specs)]
        run = spent(command)
        assert run.code in (0, 1), f"build ended with {run.code}"
        plans = len(list(Path(out).rglob("plan.json")))
        assert plans == len(specs), f"{plans} plans of {len(specs)} specs"
    return run


if __name__ == "__main__":
    main()
