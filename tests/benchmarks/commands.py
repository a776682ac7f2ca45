"""Speed of the commands as ratios to the bare import of the libraries they use, all in one run.

Run it with ``python tests/benchmarks/commands.py``. Each pair of processes is run in turn, so that a machine that
slows down slows both; the ratio of the medians of their processor time is printed beside its target. It
measures and never judges: no test depends on it.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from measured import Ratio, spent, tell

ROOT = Path(__file__).resolve().parents[2]
SPEC = ROOT / "specs" / "harbour-play" / "cage.yaml"
ROUNDS = 11


def main() -> None:
    """Measure and print."""
    tell(ratios())


def ratios() -> Iterator[Ratio]:
    """Each command over the bare import of what it uses."""
    with tempfile.TemporaryDirectory() as folder:
        hoopwright = [sys.executable, "-m", "hoopwright"]
        build = [*hoopwright, "build", str(SPEC), "-o", folder]
        yield _pair(
            "check --syntax",
            [*hoopwright, "check", "--syntax", str(SPEC)],
            _bare(["ruamel.yaml", "jsonschema"]),
            1.6,
        )
        used = _libraries(build)
        yield _pair(
            "build of the worked example",
            build,
            _bare(used),
            2.2 if "scipy.sparse.linalg" in used else 1.5,
        )


def _libraries(command: list[str]) -> list[str]:
    """The third-party libraries that a command really loads, asked of the interpreter."""
    run = subprocess.run(
        [command[0], "-X", "importtime", *command[1:]], capture_output=True, text=True, check=False
    )
    loaded = {
        line.rsplit("|", 1)[-1].strip() for line in run.stderr.splitlines() if line.startswith("import time:")
    }
    wanted = (
        "ruamel.yaml",
        "jsonschema",
        "jinja2",
        "networkx",
        "numpy",
        "highspy",
        "scipy.linalg",
        "scipy.sparse.linalg",
    )
    return [name for name in wanted if name in loaded]


def _bare(modules: list[str]) -> list[str]:
    return [sys.executable, "-c", "import " + ", ".join(modules)]


def _pair(what: str, command: list[str], bare: list[str], target: float) -> Ratio:
    ours, theirs = [], []
    for _ in range(ROUNDS + 1):
        ours.append(spent(command).processor)
        theirs.append(spent(bare).processor)
    ratio = statistics.median(ours[1:]) / statistics.median(theirs[1:])
    imported = bare[-1].removeprefix("import ")
    return Ratio(f"{what} over the bare import of what it uses", ratio, target, more=imported)


if __name__ == "__main__":
    main()
