"""The moves that put a staged change in place: forward, or all of them back.

A stage folder holds ``new/`` (files to be moved to their places, by relative name), ``old/`` (second names of what
they replace or what is taken away) and ``ready``, the list of both with the checksums of the new. What is read
from a stage may come from anybody: only names that a plan's files can have are taken, and links are not followed.
"""

from __future__ import annotations

import errno
import hashlib
import json
import os
import re
import shutil
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

READY = "ready"
DRAFT = "ready.draft"
_NO_SECOND_NAMES = {errno.EPERM, errno.EACCES, errno.EMLINK, errno.EXDEV, errno.EINVAL, errno.ENOSYS, errno.ENOTSUP,
                    errno.EOPNOTSUPP}
"""What systems say of a file that cannot have a second name: there a copy does. Anything else is trouble, a name that
is taken among it, which a copy would write over."""
_NAME = re.compile(r"(?:figures/)?[A-Za-z0-9][\w-]*(?:\.yours-\d+)?\.(?:md|json|html|svg)")


def tame(name: str) -> bool:
    """Whether a relative name is one that a plan's file can have: in the folder or its ``figures``, not hidden."""
    return _NAME.fullmatch(name) is not None


def digest(data: bytes) -> str:
    """A checksum of a file's bytes."""
    return hashlib.sha256(data).hexdigest()


def free_name(path: Path) -> Path:
    """The next free name for a file changed by hand: ``plan.yours-1.md``."""
    number = 1
    while os.path.lexists(copy := path.with_name(f"{path.stem}.yours-{number}{path.suffix}")):
        number += 1
    return copy


def second_name(path: Path, other: Path) -> None:
    """Give the file ``path`` the name ``other`` too, without following links; a copy where files cannot have two
    names. Raises OSError, also for what is neither a file nor a link."""
    if not path.is_symlink() and not path.is_file():
        code = errno.EISDIR if path.is_dir() else errno.EINVAL
        raise OSError(code, os.strerror(code), str(path))
    other.parent.mkdir(parents=True, exist_ok=True)
    try:
        os.link(path, other, follow_symlinks=False)
    except NotImplementedError:  # what os.link raises where the system cannot name a link without following it
        shutil.copy2(path, other, follow_symlinks=False)
    except OSError as problem:
        if problem.errno not in _NO_SECOND_NAMES:
            raise
        shutil.copy2(path, other, follow_symlinks=False)


@dataclass(frozen=True, slots=True)
class Moves:
    """A change made ready in ``stage``: ``put`` gives the checksum of each new file (blank: not known), ``removed``
    names what is taken away."""

    stage: Path
    folder: Path
    put: Mapping[str, str]
    removed: tuple[str, ...]

    @classmethod
    def read(cls, stage: Path, folder: Path) -> Moves | None:
        """What a stopped run left; None when it is not as we write it."""
        folders = (stage / "new", stage / "old", stage / "new" / "figures", stage / "old" / "figures")
        if (stage / READY).is_symlink() or any(path.is_symlink() for path in folders):
            return None
        try:
            said = json.loads((stage / READY).read_bytes())
            put, removed = dict(said["put"]), tuple(said["removed"])
        except (OSError, ValueError, TypeError, KeyError, RecursionError):
            return None
        names = (*put, *removed)
        sound = all(isinstance(name, str) and tame(name) for name in names)
        return cls(stage, folder, put, removed) if sound and not (folder / "figures").is_symlink() else None

    def manifest(self) -> str:
        """The text of ``ready``."""
        return json.dumps({"put": dict(self.put), "removed": list(self.removed)}, indent=1) + "\n"

    def forward(self) -> None:
        """Every move not yet made. Raises OSError at the first that fails."""
        for name in self.removed:
            (self.folder / name).unlink(missing_ok=True)
        for name in self.put:
            if os.path.lexists(self.stage / "new" / name):
                target = self.folder / name
                target.parent.mkdir(exist_ok=True)
                os.replace(self.stage / "new" / name, target)

    def back(self) -> None:
        """Every move made so far taken back. Raises OSError at the first that cannot be."""
        for name in (*self.put, *self.removed):
            old, target = self.stage / "old" / name, self.folder / name
            if os.path.lexists(self.stage / "new" / name) or (name in self.removed and os.path.lexists(target)):
                continue  # not moved yet
            if os.path.lexists(old):
                target.parent.mkdir(exist_ok=True)
                os.replace(old, target)
            elif name in self.put:
                target.unlink(missing_ok=True)

    def discard(self) -> None:
        """Clear the stage away; ``ready`` goes first, so that nothing is done twice. What cannot be cleared away
        does no harm."""
        with suppress(OSError):
            (self.stage / READY).unlink(missing_ok=True)
            shutil.rmtree(self.stage, ignore_errors=True)

    def damaged(self) -> bool:
        """Whether some of the new files are not, staged or in place, what they were made to be: some did not reach
        the disk, as when power fails, or were taken back or changed since."""
        for name, known in self.put.items():
            staged = _bytes(self.stage / "new" / name)
            there = staged if staged is not None else _bytes(self.folder / name)
            if known and (there is None or digest(there) != known):
                return True
        return False

    def spare(self) -> list[Path]:
        """Keep under other names what somebody changed since the change was made ready; returns these."""
        kept = []
        for name in (*self.put, *self.removed):
            target, known = self.folder / name, self.put.get(name)
            there, staged = _bytes(target), os.path.lexists(self.stage / "new" / name)
            if there == b"" or (there is None and not target.is_symlink()):
                continue  # there is nothing to keep
            if known == "" and not staged:
                continue  # a copy already in its place
            if there is not None and (there == _bytes(self.stage / "old" / name) or digest(there) == known):
                continue
            kept.append(free_name(target))
            second_name(target, kept[-1])
        return kept


def _bytes(path: Path) -> bytes | None:
    """A file's bytes; None for what is not there and for what is no plain file."""
    if path.is_symlink() or not path.is_file():
        return None
    return path.read_bytes()
