"""The moves that put a staged change in place: forward, or all of them back.

A stage folder holds ``new/`` (files to be moved to their places, by relative name), ``old/`` (second names of what
they replace or what is taken away) and ``ready``, the list of both with their checksums, which is called ``back`` from
the moment on when the moves are taken back. Either way can be broken off anywhere and begun again.

What is read from a stage may come from anybody: only names that a plan's files can have are taken, and links are not
followed.
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
BACK = "back"
DRAFT = "ready.draft"
_NO_SECOND_NAMES = {errno.EPERM, errno.EACCES, errno.EMLINK, errno.EXDEV, errno.EINVAL, errno.ENOSYS, errno.ENOTSUP,
                    errno.EOPNOTSUPP}
"""What systems say of a file that cannot have a second name: there a copy does. Anything else is trouble, a name that
is taken among it, which a copy would write over."""
_NAMES_LINKS = os.link in os.supports_follow_symlinks
"""Whether the system can give a link itself a second name, not what it leads to."""
_NAME = re.compile(r"(?:figures/)?[A-Za-z0-9][\w-]*(?:\.yours-\d+)?\.(?:md|json|html|svg)")


def tame(name: str) -> bool:
    """Whether a relative name is one that a plan's file can have: in the folder or its ``figures``, not hidden."""
    return _NAME.fullmatch(name) is not None


def listed(stage: Path) -> bool:
    """Whether a stage has a list of moves to be made or taken back; without one, all of it is done or nothing was
    begun."""
    return (stage / READY).exists() or (stage / BACK).exists()


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
    if not _NAMES_LINKS:
        shutil.copy2(path, other, follow_symlinks=False)
        return
    try:
        os.link(path, other, follow_symlinks=False)
    except OSError as problem:
        if problem.errno not in _NO_SECOND_NAMES:
            raise
        shutil.copy2(path, other, follow_symlinks=False)


@dataclass(frozen=True, slots=True)
class Moves:
    """A change made ready in ``stage``: ``put`` gives the checksum of each new file (blank: a copy kept of another),
    ``removed`` names what is taken away; ``was`` gives the checksum of what stood in each place where something did
    (blank: no plain file)."""

    stage: Path
    folder: Path
    put: Mapping[str, str]
    removed: tuple[str, ...]
    was: Mapping[str, str]

    @classmethod
    def read(cls, stage: Path, folder: Path) -> Moves | None:
        """What a stopped run left; None when it is not as we write it."""
        folders = (stage / "new", stage / "old", stage / "new" / "figures", stage / "old" / "figures")
        listed = stage / BACK if os.path.lexists(stage / BACK) else stage / READY
        if any(path.is_symlink() for path in (listed, *folders)):
            return None
        try:
            said = json.loads(listed.read_bytes())
            put, removed, was = dict(said["put"]), tuple(said["removed"]), dict(said["was"])
        except (OSError, ValueError, TypeError, KeyError, RecursionError):
            return None
        names = (*put, *removed, *was)
        sound = all(isinstance(name, str) and tame(name) for name in names)
        return cls(stage, folder, put, removed, was) if sound and not (folder / "figures").is_symlink() else None

    def manifest(self) -> str:
        """The text of ``ready``."""
        said = {"put": dict(self.put), "removed": list(self.removed), "was": dict(self.was)}
        return json.dumps(said, indent=1) + "\n"

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
        """Every move made so far taken back, the last first, so that a copy kept of a file goes when the file is there
        again; from then on there is no way but back. Raises OSError at the first that cannot be."""
        if not self.turned:
            os.replace(self.stage / READY, self.stage / BACK)
        for name in (*reversed(tuple(self.put)), *self.removed):
            old, target = self.stage / "old" / name, self.folder / name
            if os.path.lexists(self.stage / "new" / name) or (name in self.removed and os.path.lexists(target)):
                continue  # not moved yet
            if os.path.lexists(old):
                target.parent.mkdir(exist_ok=True)
                os.replace(old, target)
            elif name not in self.was:
                target.unlink(missing_ok=True)

    @property
    def turned(self) -> bool:
        """Whether the moves are being taken back."""
        return (self.stage / BACK).exists()

    def discard(self) -> None:
        """Clear the stage away; the list goes first. What cannot be cleared away does no harm: the next run finds
        all of it done."""
        with suppress(OSError):
            for listed in (READY, BACK):
                (self.stage / listed).unlink(missing_ok=True)
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
            if there is not None and digest(there) in (known, self.was.get(name)):
                continue
            kept.append(free_name(target))
            second_name(target, kept[-1])
        return kept


def checksum_of(path: Path) -> str:
    """The checksum of a plain file, blank for anything else."""
    data = _bytes(path)
    return "" if data is None else digest(data)


def _bytes(path: Path) -> bytes | None:
    """A file's bytes; None for what is not there and for what is no plain file."""
    if path.is_symlink() or not path.is_file():
        return None
    return path.read_bytes()
