"""Changing a folder's files all at once, as far as a file system lets one.

The new files are written whole into a hidden folder beside their places; a last file, ``ready``, names what
is to be taken away and says that all are there. Then they are moved into place, each move atomic, by a child
process in a session of its own: killing the build does not stop it. Should it be stopped all the same (power
fails), the next run finishes the moves first. A lock on the folder keeps two builds apart.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

_STAGE = ".hoopwright-"
_READY = "ready"


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Hold the folder: another build into it waits. Where folders cannot be locked, it goes on unheld."""
    try:
        import fcntl
    except ImportError:  # not a POSIX system
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def change(folder: Path, files: Mapping[str, str], removed: Sequence[str]) -> None:
    """Write ``files`` (relative name -> text) and take ``removed`` away, all or nothing.

    Raises OSError when the new files cannot be staged; nothing has changed then. The folder must be held.
    """
    if files or removed:
        stage = _stage(folder, files, removed)
        _apart(stage, folder)


def finish(folder: Path) -> None:
    """Carry out what a stopped run had made ready; clear away what it had not. The folder must be held."""
    for stage in sorted(folder.glob(f"{_STAGE}*")):
        if stage.is_dir() and (stage / _READY).exists():
            _move(stage, folder)
        elif stage.is_dir():
            shutil.rmtree(stage, ignore_errors=True)


def _stage(folder: Path, files: Mapping[str, str], removed: Sequence[str]) -> Path:
    stage = Path(tempfile.mkdtemp(prefix=_STAGE, dir=folder))
    try:
        for name, text in files.items():
            path = stage / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text.encode())
        draft = stage / f"{_READY}.draft"
        draft.write_bytes("".join(f"{name}\n" for name in removed).encode())
        draft.replace(stage / _READY)
    except OSError:
        shutil.rmtree(stage, ignore_errors=True)
        raise
    return stage


def _apart(stage: Path, folder: Path) -> None:
    """Move in a child that outlives a killed build; in this process where there is no fork."""
    if not hasattr(os, "fork"):
        _move(stage, folder)
        return
    child = os.fork()
    if child == 0:
        code = 1
        try:
            os.setsid()
            _move(stage, folder)
            code = 0
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    if status:
        _move(stage, folder)  # say here what went wrong there


def _move(stage: Path, folder: Path) -> None:
    for name in (stage / _READY).read_bytes().decode().splitlines():
        (folder / name).unlink(missing_ok=True)
    for path in sorted(stage.rglob("*")):
        if path.is_file() and path.name != _READY:
            target = folder / path.relative_to(stage)
            target.parent.mkdir(parents=True, exist_ok=True)
            path.replace(target)
    shutil.rmtree(stage, ignore_errors=True)
