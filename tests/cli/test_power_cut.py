"""A disk that loses what was not flushed to it: whenever the power goes, the next run has a whole plan.

The disk is one with a journal: what became of names is kept in its order, bytes only where they were flushed.
"""

from __future__ import annotations

import errno
import os
import signal
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from hoopwright.cli import writing
from hoopwright.cli.holding import alone
from hoopwright.cli.mover import Mover
from hoopwright.cli.output import Refused, put, seal
from hoopwright.cli.staging import finish

OLD = {"plan.md": "# old\n", "figures/front.svg": "<svg/>\n", "figures/side.svg": "<svg/>\n"}
NEW = {"plan.md": "# new\n", "figures/front.svg": "<svg id='f'/>\n", "figures/hem.svg": "<svg id='h'/>\n"}
BEFORE = {name: seal(name, text) for name, text in OLD.items()}
AFTER = {name: seal(name, text) for name, text in NEW.items()}
CALLS = ("mkdir", "open", "write", "fsync", "close", "link", "replace", "unlink", "chmod", "rmdir")


class Disk:
    """Keeps the bytes of a file when it is flushed; ends the process, and what was not kept, before the call to it
    numbered ``at``."""

    def __init__(self, patch: pytest.MonkeyPatch, folder: Path, at: int, *, flushes: bool) -> None:
        self.folder, self.at, self.flushes = folder, at, flushes
        self.count = 0
        self.loose = set[int]()
        for name in CALLS:
            patch.setattr(os, name, self._instead(getattr(os, name), name))

    def _instead(self, real: Callable[..., Any], name: str) -> Callable[..., Any]:
        def call(*arguments: Any, **named: Any) -> Any:
            self.count += 1
            if self.count == self.at:
                self.cut()
            done = None if name == "fsync" else real(*arguments, **named)
            if name == "write":
                self.loose.add(os.fstat(arguments[0]).st_ino)
            elif name == "fsync" and self.flushes:
                self.loose.discard(os.fstat(arguments[0]).st_ino)
            return done

        return call

    def cut(self) -> None:
        """The power goes."""
        for path in self.folder.rglob("*"):
            if path.is_file() and path.stat().st_ino in self.loose:
                os.truncate(path, 0)
        os.kill(os.getpid(), signal.SIGKILL)


def _state(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in folder.rglob("*")
        if path.is_file() and not path.relative_to(folder).parts[0].startswith(".")
    }


def _fresh(folder: Path) -> Path:
    for name, text in BEFORE.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


def _cut_at(at: int, folder: Path, *, flushes: bool = True) -> bool:
    """Build until the power goes at call ``at``, or after the last one; True for the latter."""
    child = os.fork()
    if child == 0:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(os, "fork", _no_more_processes)
            patch.setattr(writing, "AT_ONCE", 1)  # the calls in one order
            disk = Disk(patch, folder, at, flushes=flushes)
            put(folder, NEW)
            (folder / ".finished").mkdir()
            disk.cut()
    os.waitpid(child, 0)
    finished = (folder / ".finished").is_dir()
    if finished:
        (folder / ".finished").rmdir()
    return finished


def _no_more_processes() -> int:
    raise OSError(errno.EAGAIN, os.strerror(errno.EAGAIN))


def test_whenever_the_power_goes_the_next_run_has_a_whole_plan(tmp_path: Path) -> None:
    found = {"old": 0, "new": 0}
    for at in range(1, 200):
        folder = _fresh(tmp_path / str(at))
        finished = _cut_at(at, folder)
        if finished:
            assert _state(folder) == AFTER  # a plan that is said to be written is
        with alone(folder):
            finish(folder)
        assert _state(folder) in (BEFORE, AFTER), at
        found["new" if _state(folder) == AFTER else "old"] += 1
        put(folder, NEW)
        assert _state(folder) == AFTER, at
        assert [path.name for path in folder.iterdir() if path.name.startswith(".")] == []
        if finished:
            break
    assert finished
    assert min(found.values()) > 5


def test_a_first_plan_is_there_wholly_or_not_at_all(tmp_path: Path) -> None:
    for at in range(1, 200):
        folder = tmp_path / str(at)
        folder.mkdir()
        finished = _cut_at(at, folder)
        with alone(folder):
            finish(folder)
        assert _state(folder) in ({}, AFTER), at
        if finished:
            break
    assert _state(folder) == AFTER


def test_on_a_disk_that_flushes_nothing_a_finished_plan_is_lost(tmp_path: Path) -> None:
    """So the disk of these tests does lose what it should."""
    folder = _fresh(tmp_path / "out")
    assert _cut_at(0, folder, flushes=False)
    assert set(_state(folder).values()) == {""}


def test_every_new_file_is_flushed_before_any_is_moved_and_the_folders_once_at_the_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By several threads, and two plans in one run."""
    told: list[str] = []
    fsync, replace = os.fsync, os.replace
    monkeypatch.setattr(os, "fork", _no_more_processes)
    monkeypatch.setattr(os, "fsync", lambda handle: (told.append(_name(handle)), fsync(handle))[1])
    monkeypatch.setattr(os, "replace", lambda old, new: (told.append("moved"), replace(old, new))[1])
    with Mover() as mover:
        for name in "ab":
            put(tmp_path / name, NEW, mover)
    staged = ["front.svg", "hem.svg", "plan.md", "ready.draft"]
    moved = ["moved"] * 4  # the list first
    assert [*sorted(told[:4]), *told[4:8], *sorted(told[8:12]), *told[12:]] == [
        *staged, *moved, *staged, *moved, "a", "figures", "b", "figures"]


def _name(handle: int) -> str:
    return Path(os.readlink(f"/proc/self/fd/{handle}")).name


def test_where_no_more_threads_may_be_started_one_writes_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(_: object) -> None:
        raise RuntimeError("can't start new thread")

    monkeypatch.setattr(writing.Thread, "start", refused)
    put(tmp_path / "out", NEW)
    assert _state(tmp_path / "out") == AFTER


@pytest.mark.parametrize(("code", "written"), [(errno.EINVAL, True), (errno.ENOSYS, True), (errno.EIO, False)])
def test_a_file_system_that_cannot_flush_is_written_to_and_a_broken_disk_is_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, code: int, written: bool
) -> None:
    def refused(_: int) -> None:
        raise OSError(code, os.strerror(code))

    folder = _fresh(tmp_path / "out")
    monkeypatch.setattr(os, "fsync", refused)
    if written:
        put(folder, NEW)
    else:
        with pytest.raises(Refused, match="what was there is as it was"):
            put(folder, NEW)
    assert _state(folder) == (AFTER if written else BEFORE)
    assert [path.name for path in folder.iterdir() if path.name.startswith(".")] == []
