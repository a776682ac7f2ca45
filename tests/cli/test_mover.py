"""One child moves the plans of a whole run; without it, or when it ends, the run moves by itself."""

from __future__ import annotations

import errno
import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from hoopwright.cli import main, staging
from hoopwright.cli.mover import Mover
from hoopwright.cli.output import put, seal

PLAN = {"plan.md": "# plan\n", "figures/front.svg": "<svg/>\n"}
SPEC = """\
spec: 1
units: centimetres
wearer: {stature: 168 cm, waist: 72 cm}
shape: {hem: {girth: 240 cm}}
"""


@pytest.fixture
def forks(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """The children started since."""
    started: list[int] = []
    fork = os.fork

    def counted() -> int:
        child = fork()
        started.append(child)
        return child

    monkeypatch.setattr(os, "fork", counted)
    return started


def _there(folder: Path) -> bool:
    """Whether the plan lies there whole, and nothing that was staged."""
    return sorted(path.name for path in folder.iterdir()) == ["figures", "plan.md"] and all(
        (folder / name).read_text() == seal(name, text) for name, text in PLAN.items())


def test_one_child_moves_every_plan_of_a_call(tmp_path: Path, forks: list[int]) -> None:
    specs = [tmp_path / name for name in ("one.yaml", "two.yaml")]
    for spec in specs:
        spec.write_text(SPEC)
    assert main(["build", "-o", str(tmp_path / "out"), *map(str, specs)]) in (0, 1)
    assert len(list((tmp_path / "out").glob("*/plan.md"))) == 2
    assert len(forks) == 1
    with pytest.raises(ChildProcessError):  # it has ended, and was waited for
        os.waitpid(forks[0], os.WNOHANG)


def test_a_child_that_was_killed_is_done_without_and_another_takes_its_place(
    tmp_path: Path, forks: list[int]
) -> None:
    with Mover() as mover:
        put(tmp_path / "a", PLAN, mover)
        os.kill(forks[0], signal.SIGKILL)
        put(tmp_path / "b", PLAN, mover)
        put(tmp_path / "c", PLAN, mover)
    assert all(_there(tmp_path / name) for name in "abc")
    assert len(forks) == 2


def test_the_child_holds_nothing_of_the_run(tmp_path: Path, forks: list[int]) -> None:
    """Neither the lock of the first folder nor an end of another process's pipe."""
    hear, tell = os.pipe()
    with Mover() as mover:
        put(tmp_path / "a", PLAN, mover)
        held = {os.readlink(entry) for entry in Path(f"/proc/{forks[0]}/fd").iterdir()}
        assert os.readlink(f"/proc/self/fd/{tell}") not in held
        assert str(tmp_path / "a") not in held
    os.close(hear)
    os.close(tell)


def test_where_ended_children_are_not_kept_the_plan_is_written_all_the_same(tmp_path: Path) -> None:
    """Some services start their programs with that signal ignored."""
    before = signal.signal(signal.SIGCHLD, signal.SIG_IGN)
    try:
        with Mover() as mover:
            put(tmp_path / "a", PLAN, mover)
    finally:
        signal.signal(signal.SIGCHLD, before)
    assert _there(tmp_path / "a")


def test_the_child_holds_nothing_of_the_run_where_any_number_of_files_may_be_open(
    tmp_path: Path, forks: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "sysconf", lambda name: -1)
    hear, tell = os.pipe()
    os.dup2(tell, 200)
    with Mover() as mover:
        put(tmp_path / "a", PLAN, mover)
        held = {os.readlink(entry) for entry in Path(f"/proc/{forks[0]}/fd").iterdir()}
        assert os.readlink("/proc/self/fd/200") not in held
    for end in (hear, tell, 200):
        os.close(end)


@pytest.mark.parametrize("spare", [0, 1])
def test_where_no_more_files_may_be_opened_the_run_moves_by_itself(
    tmp_path: Path, forks: list[int], monkeypatch: pytest.MonkeyPatch, spare: int
) -> None:
    """None for the child's line, or only half of what it needs; what was opened for it is closed again."""
    pipe, asked = os.pipe, []

    def scarce() -> tuple[int, int]:
        asked.append(1)
        if len(asked) > spare:
            raise OSError(errno.EMFILE, os.strerror(errno.EMFILE))
        return pipe()

    open_before = len(os.listdir("/proc/self/fd"))
    with monkeypatch.context() as patch:
        patch.setattr(os, "pipe", scarce)
        with Mover() as mover:
            put(tmp_path / "a", PLAN, mover)
    assert _there(tmp_path / "a")
    assert forks == []
    assert len(os.listdir("/proc/self/fd")) == open_before


INTERRUPTED = """\
import os, signal, sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from hoopwright.cli.mover import Mover
from hoopwright.cli.output import put

run, fork = os.getpid(), os.fork
def interrupted():
    child = fork()
    if child == 0:
        os.kill(os.getpid(), signal.SIGINT)
    return child
os.fork = interrupted
try:
    with Mover() as mover:
        put(Path(sys.argv[1]), {"plan.md": "# plan\\n", "figures/front.svg": "<svg/>\\n"}, mover)
finally:
    os.write(1, b"the run\\n" if os.getpid() == run else b"the child\\n")
"""


def test_an_interrupt_while_the_child_starts_does_not_lead_it_through_the_end_of_the_run(tmp_path: Path) -> None:
    ran = subprocess.run([sys.executable, "-c", INTERRUPTED, str(tmp_path / "a")], capture_output=True, text=True,
                         check=False, timeout=60)
    assert (ran.stdout, ran.stderr) == ("the run\n", "")
    assert _there(tmp_path / "a")


def test_a_stage_that_the_child_of_a_killed_run_clears_away_meanwhile_is_no_trouble(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It was there when the folder was looked through, and is gone when it is to be held."""
    stage = tmp_path / f"{staging.PREFIX}of-another"
    (stage / "new").mkdir(parents=True)
    hold = staging.alone

    @contextmanager
    def late(folder: Path) -> Iterator[None]:
        shutil.rmtree(stage, ignore_errors=True)
        with hold(folder):
            yield

    monkeypatch.setattr(staging, "alone", late)
    put(tmp_path, PLAN)
    assert _there(tmp_path)
