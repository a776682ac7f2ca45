"""Build specs under many surroundings and hold every file, and all that was said, to the same bytes.

Run ``python tests/hardening/same_bytes.py`` for every spec and cast of the repository; the tests do three specs.
Surroundings: hash seeds, working folders, an ASCII, a UTF-8 and a Turkish locale (set as a host program would, so that
the comma is the decimal mark), time zones, one thread of BLAS, an old processor's kernels, the source and the wheel.
``--python PATH`` adds an interpreter that has the libraries; those named ``python3.x`` on the PATH are found.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "compiler"
LIBRARIES = "import ruamel.yaml, jsonschema, jinja2, networkx, numpy, scipy, highspy"
HOSTED = "import locale, sys; locale.setlocale(locale.LC_ALL, ''); from hoopwright.cli import main; sys.exit(main())"
OLD_PROCESSOR = {
    "OPENBLAS_CORETYPE": "Prescott",
    "NPY_DISABLE_CPU_FEATURES": "AVX AVX2 FMA3 F16C AVX512F AVX512CD AVX512_SKX",
}
"""Settings under which numpy and its BLAS do without what newer processors have."""


@dataclass(frozen=True)
class Surrounding:
    """Where a build runs: ``code`` is the folder that holds the package; ``hosted`` by a program that set the
    locale; ``here`` with the repository as its working folder."""

    name: str
    settings: dict[str, str]
    code: Path = SOURCE
    python: str = sys.executable
    hosted: bool = False
    here: bool = False


def surroundings(folder: Path, pythons: Sequence[str] = ()) -> list[Surrounding]:
    """All of them; ``folder`` takes a locale and a wheel made for it. The first is what the others are held to."""
    turkish = turkish_locale(folder / "locales")
    packed = wheel(folder / "wheel")
    old = OLD_PROCESSOR if _quiet("import numpy, scipy.linalg", OLD_PROCESSOR) else {}
    return [
        Surrounding(
            "ASCII, at home",
            {
                "PYTHONHASHSEED": "0",
                "LC_ALL": "C",
                "PYTHONUTF8": "0",
                "PYTHONCOERCECLOCALE": "0",
                "TZ": "UTC",
            },
            here=True,
        ),
        Surrounding(
            "UTF-8, from the wheel",
            {"PYTHONHASHSEED": "1", "LC_ALL": "C.UTF-8", "TZ": "Asia/Tokyo", "OPENBLAS_NUM_THREADS": "1"},
            packed,
        ),
        Surrounding(
            "Turkish" if turkish else "Turkish by name only: the locale could not be made here",
            {
                "PYTHONHASHSEED": "2",
                "LC_ALL": "tr_TR.UTF-8",
                "TZ": "America/St_Johns",
                **old,
                **turkish,
            },
            hosted=bool(turkish),
        ),
        *(Surrounding(f"by {python}", {"PYTHONHASHSEED": "3"}, packed, python) for python in pythons),
    ]


def turkish_locale(folder: Path) -> dict[str, str]:
    """Settings under which the Turkish locale is there: it is made when the system can; else none."""
    if not shutil.which("localedef"):
        return {}
    folder.mkdir()
    made = folder / "tr_TR.UTF-8"
    subprocess.run(["localedef", "-i", "tr_TR", "-f", "UTF-8", made], capture_output=True, check=False)
    test = "import locale; locale.setlocale(locale.LC_ALL, ''); assert locale.localeconv()['decimal_point'] == ','"
    return {"LOCPATH": str(folder)} if _quiet(test, {"LOCPATH": str(folder), "LC_ALL": "tr_TR.UTF-8"}) else {}


def _quiet(code: str, settings: dict[str, str]) -> bool:
    """Whether a piece of Python runs under ``settings`` without a word."""
    run = subprocess.run(
        [sys.executable, "-c", code], env=os.environ | settings, capture_output=True, check=False
    )
    return run.returncode == 0 and not run.stderr


def wheel(folder: Path) -> Path:
    """The folder of the package as the wheel holds it: installed from one, or else built and unpacked now."""
    import hoopwright

    installed = Path(hoopwright.__file__).resolve().parents[1]
    if installed != SOURCE:
        return installed
    isolated = ["--no-build-isolation"] if find_spec("hatchling") else []
    pip = [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", *isolated, "-w", str(folder), str(ROOT)]
    subprocess.run(pip, check=True, capture_output=True)
    with zipfile.ZipFile(next(folder.glob("hoopwright-*.whl"))) as packed:
        packed.extractall(folder / "unpacked")
    return folder / "unpacked"


def other_pythons() -> Iterator[str]:
    """Interpreters on the PATH of other versions than this one that have the libraries."""
    for minor in range(11, 40):
        python = shutil.which(f"python3.{minor}")
        if python and minor != sys.version_info.minor:
            tried = subprocess.run([python, "-c", LIBRARIES], capture_output=True, check=False)
            if tried.returncode == 0:
                yield python


def build(specs: Sequence[Path], place: Surrounding, out: Path) -> dict[str, bytes]:
    """Every file that the specs come to there, by name; and what was said, under the names of the streams."""
    out.mkdir(parents=True)
    names = [str(spec.relative_to(ROOT) if place.here else spec) for spec in specs]
    start = ["-c", HOSTED] if place.hosted else ["-m", "hoopwright"]
    run = subprocess.run(
        [place.python, *start, "build", *names, "-o", str(out / "plans"), "--cards"],
        cwd=ROOT if place.here else out,
        env=os.environ | {"PYTHONPATH": str(place.code)} | place.settings,
        capture_output=True,
        check=False,
    )
    if run.returncode not in (0, 1):
        raise RuntimeError(f"{place.name}: exit {run.returncode}: {run.stderr.decode(errors='replace')}")
    found = {p.relative_to(out).as_posix(): p.read_bytes() for p in sorted(out.rglob("*")) if p.is_file()}
    for name, said in (("stdout", run.stdout), ("stderr", run.stderr)):
        found[name] = said.replace(f"{out}/".encode(), b"").replace(f"{ROOT}/".encode(), b"")
    return found


def differing(specs: Sequence[Path], places: Sequence[Surrounding], folder: Path) -> dict[str, list[str]]:
    """For each surrounding but the first, the names of what is not the same there as in the first."""
    with ThreadPoolExecutor(os.cpu_count() or 1) as pool:
        builds = list(pool.map(lambda at: build(specs, places[at], folder / f"{at}"), range(len(places))))
    first = builds[0]
    assert sum(name.endswith("plan.md") for name in first) >= len(specs)
    return {
        place.name: sorted(n for n in first.keys() | other.keys() if first.get(n) != other.get(n))
        for place, other in zip(places[1:], builds[1:], strict=True)
    }


def main() -> int:
    """Hold every spec to the same bytes and name what differs."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--python", action="append", default=[], metavar="PATH", help="one more interpreter")
    parser.add_argument("specs", nargs="*", type=Path, default=[ROOT / "specs"])
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        places = surroundings(Path(name), [*options.python, *other_pythons()])
        wrong = differing([spec.resolve() for spec in options.specs], places, Path(name) / "out")
        count = sum(1 for _ in (Path(name) / "out" / "0").rglob("plan.md"))
    print(f"{count} plans {places[0].name}, and the same bytes of them:")
    for place, names in wrong.items():
        print(f"  {place}: {', '.join(names) or 'all'}")
    return 1 if any(wrong.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
