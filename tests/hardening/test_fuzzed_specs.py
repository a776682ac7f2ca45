"""Damaged specs end in findings or in a plan; the command ``fuzz_specs.py`` tries many thousands.

The cases are the command's own, with seeds that stay: what passed once fails only after a change.
"""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

import pytest
from fuzzing.cases import Case, case
from fuzzing.judging import MEMORY, in_turn, run

LOTS, IN_A_LOT = 20, 50
SOLVED = 5
"""Of so many cases one goes on from the spec's own text to its command."""
PATIENCE = 60.0
"""Seconds of processor time after which a lot ends early, so that a slow machine is not kept for ever."""


@pytest.mark.parametrize("lot", range(LOTS))
def test_damaged_specs_in_this_process(lot: int) -> None:
    """1,000 in all: no exception, findings with places and mends, sound files, within the limits. Every one is
    read, and every few go through the stages by a command of their own."""
    start = time.process_time()
    for number in range(IN_A_LOT):
        made = case(1000 + lot, number)
        made, found = in_turn(made, number, SOLVED)
        assert not found.trouble, f"case {number} of seed {1000 + lot}\n{made.shown()}\n{''.join(found.trouble)}"
        if time.process_time() - start > PATIENCE:
            break
    assert number >= IN_A_LOT // 4


@pytest.mark.parametrize("lot", range(10))
def test_damaged_specs_as_processes(tmp_path: Path, lot: int) -> None:
    """50 in all: the same exit code as in this process, no trace, seconds and memory within the limits."""
    for number in range(5):
        made = case(2000 + lot, number)
        inside = run(made)
        assert not inside.trouble, f"case {number} of seed {2000 + lot}\n{made.shown()}\n{''.join(inside.trouble)}"
        code, printed, seconds, megabytes = _process(made, tmp_path / str(number))
        assert code == inside.code, made.shown()
        assert code in (0, 1, 2), made.shown()
        assert b"Traceback" not in printed
        assert seconds <= inside.allowed + STARTING, made.shown()
        assert megabytes <= MEMORY, made.shown()


STARTING = 3.0
"""Seconds of processor time that starting Python and importing everything may take on a slow, busy machine."""


def _process(made: Case, folder: Path) -> tuple[int, bytes, float, float]:
    """Exit code, all that is printed, seconds of processor time and MB at most of a case run as a process."""
    for name, data in made.files.items():
        (folder / "case" / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / "case" / name).write_bytes(data)
    (folder / "case").mkdir(parents=True, exist_ok=True)
    (folder / "stdin").write_bytes(made.text)
    words = [word.replace("\0", "").encode("utf-8", "surrogatepass") for word in made.given]
    with (folder / "stdin").open("rb") as given, (folder / "printed").open("wb") as printed:
        watched = subprocess.run([sys.executable, "-S", "-c", WATCH, str(folder / "used"), sys.executable, "-m",
                                  "hoopwright", *words], cwd=folder / "case", stdin=given, stdout=printed,
                                 stderr=printed, check=False)
    seconds, kilobytes = (folder / "used").read_text().split()
    return watched.returncode, (folder / "printed").read_bytes(), float(seconds), float(kilobytes) / 1024


WATCH = """
import os, resource, sys
code = os.spawnv(os.P_WAIT, sys.argv[2], sys.argv[2:])
used = resource.getrusage(resource.RUSAGE_CHILDREN)
open(sys.argv[1], "w").write(f"{used.ru_utime + used.ru_stime} {used.ru_maxrss}")
sys.exit(code)
"""
"""Runs a command and writes down its seconds and kilobytes: a process of its own, because a child is counted the
memory of whoever started it, and these tests hold much."""
