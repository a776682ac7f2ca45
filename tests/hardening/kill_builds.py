"""Kill builds at random moments and look at what is left: the old plan or the new one, never a mixture.

Run ``python tests/hardening/kill_builds.py --times 200``; the tests do it twenty times. Every other kill is aimed at
the hundredths of a second in which the plan is written. ``--together 20`` also starts builds of both plans into one
folder at once, so often.
"""

from __future__ import annotations

import argparse
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from random import Random

STAGES = ".hoopwright-stage-*"
SPEC = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: GIRTH}}
"""


def trial_folder(folder: Path) -> tuple[list[str], list[str]]:
    """Two specs of one name in ``folder``; the commands that build each into ``folder/out``."""
    commands = []
    for name, girth in (("old", "280 cm"), ("new", "240 cm")):
        path = folder / name / "cage.yaml"
        path.parent.mkdir()
        path.write_text(SPEC.replace("GIRTH", girth))
        commands.append([sys.executable, "-m", "hoopwright", "build", str(path), "-o", str(folder / "out")])
    return commands[0], commands[1]


def state(folder: Path) -> dict[str, bytes]:
    """Every file of a plan; what the build keeps hidden is not part of it, and may go while it is looked at."""
    found = {}
    for place, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in names:
            path = Path(place, name)
            if not path.relative_to(folder).parts[0].startswith("."):
                found[path.relative_to(folder).as_posix()] = path.read_bytes()
    return dict(sorted(found.items()))


def settled(folder: Path) -> dict[str, bytes]:
    """The state once nothing moves any more: whatever outlives the killed process has ended."""
    deadline = time.monotonic() + 5
    while any((stage / name).exists() for stage in folder.glob(STAGES) for name in ("ready", "back")):
        if time.monotonic() > deadline:
            break
        time.sleep(0.002)
    return state(folder)


def kill_builds(times: int, seed: int) -> tuple[int, int, int]:
    """How often the old plan, the new plan, and anything else was found after a kill."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        old_build, new_build = trial_folder(folder)
        new = _built(new_build, folder / "out")
        start = time.monotonic()
        old = _built(old_build, folder / "out")
        span = 1.2 * (time.monotonic() - start)
        dice, found = Random(seed), [0, 0, 0]
        for number in range(times):
            process = subprocess.Popen(new_build, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            if number % 2:
                _await_writing(process, folder / "out", "" if number % 4 == 1 else "/ready", 5 * span)
                time.sleep(dice.random() * 0.01)
            else:
                time.sleep(dice.random() * span)
            process.send_signal(signal.SIGKILL)
            process.wait()
            left = settled(folder / "out")
            found[0 if left == old else 1 if left == new else 2] += 1
            _restore(folder / "out", old)
        return found[0], found[1], found[2]


def _restore(folder: Path, files: dict[str, bytes]) -> None:
    """Exactly ``files`` in ``folder``."""
    for stage in folder.glob(STAGES):
        shutil.rmtree(stage, ignore_errors=True)
    for name in state(folder).keys() - files.keys():
        (folder / name).unlink()
    for name, data in files.items():
        (folder / name).write_bytes(data)


def _await_writing(process: subprocess.Popen[bytes], folder: Path, sign: str, most: float) -> None:
    """Until the build has begun to write, or, with the sign ``/ready``, to move; or has ended, or ``most`` seconds
    have gone by."""
    deadline = time.monotonic() + most
    while process.poll() is None and time.monotonic() < deadline:
        if any(folder.glob(f"{STAGES}{sign}")):
            return
        time.sleep(0.0005)


def builds_together(times: int) -> tuple[int, int]:
    """How often two builds at once into one folder left one whole plan, and anything else."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        builds = trial_folder(folder)
        whole = [_built(build, folder / "out") for build in builds]
        found = [0, 0]
        for _ in range(times):
            running = [
                subprocess.Popen(build, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) for build in builds
            ]
            codes = [process.wait() for process in running]
            hidden = [path for path in (folder / "out").iterdir() if path.name.startswith(".")]
            found[not (codes == [0, 0] and state(folder / "out") in whole and not hidden)] += 1
        return found[0], found[1]


def _built(command: list[str], folder: Path) -> dict[str, bytes]:
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return state(folder)


def main() -> int:
    """Kill as often as asked and count what was left."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--times", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--together", type=int, default=10)
    options = parser.parse_args()
    old, new, mixed = kill_builds(options.times, options.seed)
    print(f"{options.times} kills: the old plan {old} times, the new one {new}, a mixture {mixed}")
    whole, other = builds_together(options.together)
    print(f"{options.together} times two builds at once: one whole plan {whole} times, anything else {other}")
    return 1 if mixed or other else 0


if __name__ == "__main__":
    sys.exit(main())
