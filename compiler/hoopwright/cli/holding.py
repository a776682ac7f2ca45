"""Holding a folder, so that two builds into it, or a build and the child of a killed one, take turns."""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path


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
        try:
            fcntl.flock(handle, fcntl.LOCK_EX)
        except OSError as problem:  # a file system without locks
            if problem.errno not in (errno.ENOLCK, errno.ENOSYS, errno.EOPNOTSUPP, errno.EINVAL):
                raise
        yield
    finally:
        with suppress(OSError):
            os.close(handle)
