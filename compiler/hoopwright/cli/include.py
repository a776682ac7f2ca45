"""Files a spec names, read only where they may be: inside the project.

The project is the nearest folder above the spec that holds ``.git``; without one, the folder above the
spec's own. Links are followed before that is judged, so that no link leads out of it.
"""

from __future__ import annotations

import os
from pathlib import Path

from hoopwright.cli.names import path_of, text_of
from hoopwright.source.fetch import Fetch, Fetched, Unread

MOST = 1 << 20
"""Bytes of a file that are read; the source stage refuses more."""


def reader(spec: Path) -> Fetch:
    """A reader for the files that the spec at ``spec``, and the files it names, may name."""
    top = project_of(spec)

    def fetch(name: str, file: str) -> Fetched | Unread:
        shown = Path(os.path.normpath(Path(file).parent / name))
        try:
            real = path_of(str(shown)).resolve()
            inside = real.is_relative_to(top)
        except (OSError, RuntimeError, ValueError):
            return _unread("file-unreadable", name, "cannot be read", "check that it is a file's path")
        if not inside:
            return _unread("path-outside-project", name, "lies outside the project",
                           f"move it below the folder `{text_of(top.name)}`, which holds the project")
        return _read(real, shown.as_posix(), name)

    return fetch


def project_of(spec: Path) -> Path:
    """The folder that holds the project of a spec."""
    return _project_at(spec.resolve().parent)


def leads_out(path: Path) -> bool:
    """Whether a path is a link out of the project of the folder it lies in, or to nothing that can be found."""
    try:
        return path.is_symlink() and not path.resolve().is_relative_to(_project_at(path.parent.resolve()))
    except (OSError, RuntimeError):
        return True


def _project_at(folder: Path) -> Path:
    for above in (folder, *folder.parents):
        if (above / ".git").exists():
            return above
    return folder.parent


def _read(real: Path, shown: str, name: str) -> Fetched | Unread:
    try:
        if real.exists() and not real.is_file():  # a pipe would keep us waiting
            return _unread("file-unreadable", name, f"cannot be read ({_kind(real)})",
                           "check that it is a file and that you may read it")
        with real.open("rb") as stream:
            return Fetched(shown, stream.read(MOST + 1))
    except FileNotFoundError:
        return _unread("file-missing", name, "is not there",
                       f"it is looked for as `{shown}`: write its path from the folder of the file that names it,"
                       " and check its name")
    except (OSError, ValueError) as problem:
        why = (getattr(problem, "strerror", None) or "no file").lower()
        return _unread("file-unreadable", name, f"cannot be read ({why})",
                           "check that it is a file and that you may read it")


def _kind(real: Path) -> str:
    return "is a directory" if real.is_dir() else "no file"


def _unread(code: str, name: str, message: str, help: str) -> Unread:
    return Unread(code, f"`{name[:80]}` {message}", help)
