"""Speed of the commands as ratios to the bare import of the libraries they use, all in one run.

Run it with ``python tests/benchmarks/commands.py``. Each pair of processes is run in turn, so that a
machine that slows
down slows both; the ratio of the medians is printed beside its target. It measures and never judges: no test
depends on it.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SPEC = ROOT / "specs" / "harbour-play" / "cage.yaml"
ROUNDS = 15
ENVIRONMENT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""Without a setting that has our own files, but no library's, compiled anew at every start."""


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        hoopwright = [sys.executable, "-m", "hoopwright"]
        build = [*hoopwright, "build", str(SPEC), "-o", folder]
        _pair(
            "check --syntax",
            [*hoopwright, "check", "--syntax", str(SPEC)],
            _bare(["ruamel.yaml", "jsonschema"]),
            1.6,
        )
        used = _libraries(build)
        _pair(
            f"build (uses {', '.join(used)})",
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


def _pair(what: str, command: list[str], bare: list[str], target: float) -> None:
    ours, theirs = [], []
    for _ in range(ROUNDS + 1):
        ours.append(_time(command))
        theirs.append(_time(bare))
    ratio = statistics.median(ours[1:]) / statistics.median(theirs[1:])
    print(f"{what}: {ratio:.2f} times the bare import (target: at most {target})")


def _time(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(
        command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False, env=ENVIRONMENT
    )
    return time.perf_counter() - start


if __name__ == "__main__":
    main()
