"""Build specs under many surroundings and hold every file of every plan to the same bytes.

Run ``python tests/hardening/same_bytes.py`` for every spec of the repository; the tests do three. Surroundings: two
hash seeds, two working folders, the C, a UTF-8 and a Turkish locale, two time zones, one and two threads of BLAS.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SURROUNDINGS = (
    {"PYTHONHASHSEED": "0", "LC_ALL": "C", "TZ": "UTC"},
    {"PYTHONHASHSEED": "1", "LC_ALL": "C.UTF-8", "TZ": "Asia/Tokyo", "OPENBLAS_NUM_THREADS": "1"},
    {"PYTHONHASHSEED": "2", "LC_ALL": "tr_TR.UTF-8", "LANG": "tr_TR.UTF-8", "TZ": "America/St_Johns"},
)


def specs() -> list[Path]:
    """Every spec of the repository that builds a plan."""
    return sorted(
        path
        for path in (ROOT / "specs").rglob("*.yaml")
        if "starters" not in path.parts and "\nspec: 1" in "\n" + path.read_text()
    )


def differing(spec: Path, folder: Path) -> list[str]:
    """Names of files that are not the same in every surrounding, working folder or name of the output folder."""
    built = []
    for number, surrounding in enumerate(SURROUNDINGS):
        out = folder / f"{spec.parent.name}-{spec.stem}-{number}"
        run = subprocess.run(
            [sys.executable, "-m", "hoopwright", "build", str(spec), "-o", str(out)],
            cwd=folder if number % 2 else ROOT,
            env=os.environ | surrounding,
            capture_output=True,
            check=False,
        )
        if run.returncode not in (0, 1):
            return [f"exit {run.returncode}: {run.stderr.decode(errors='replace')}"]
        built.append(
            {p.relative_to(out).as_posix(): p.read_bytes() for p in sorted(out.rglob("*")) if p.is_file()}
        )
    first = built[0]
    return sorted(
        {
            name
            for other in built[1:]
            for name in first.keys() | other.keys()
            if first.get(name) != other.get(name)
        }
    )


def main() -> int:
    """Hold every spec to the same bytes and name what differs."""
    wrong = 0
    with tempfile.TemporaryDirectory() as name:
        for spec in specs():
            names = differing(spec, Path(name))
            wrong += bool(names)
            print(f"{spec.relative_to(ROOT).as_posix()}: {', '.join(names) or 'the same everywhere'}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
