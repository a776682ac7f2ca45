"""Writing a plan so that a killed build leaves the old plan or the new one, and nobody's changes are lost.

Each text file ends in a comment with a checksum of what stands above it. A file that does not match its own
was changed by hand, and is kept beside the new one under another name.
"""

from __future__ import annotations

import difflib
import hashlib
import re
import shutil
from pathlib import Path

from hoopwright.cli import staging

_SEAL = re.compile(r"<!-- made by hoopwright, sum ([0-9a-f]{16}) -->\n\Z")


class Refused(Exception):
    """The plan cannot be written there; the message says why and how to mend it."""


def put(folder: Path, files: dict[str, str]) -> list[Path]:
    """Write ``files`` (relative name -> text) into ``folder``; returns copies kept of files changed by hand.

    Raises Refused when the folder cannot be made or written.
    """
    if folder.exists() and not folder.is_dir():
        raise Refused("this is a file, not a folder; name another folder with -o")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with staging.alone(folder):
            return _put(folder, {name: seal(name, text) for name, text in files.items()})
    except OSError as problem:
        why = (problem.strerror or str(problem)).lower()
        raise Refused(f"the plan cannot be written here ({why}); the old plan is as it was") from problem


def _put(folder: Path, files: dict[str, str]) -> list[Path]:
    staging.finish(folder)
    outside = [name for name in files if (folder / name).parent.is_symlink()]
    if outside:
        raise Refused(
            f"`{Path(outside[0]).parent}` is a link that leads elsewhere; nothing was written there"
        )
    kept = _keep_changed(folder, files)
    stale = [f"figures/{path.name}" for path in _own_figures(folder)]
    fresh = {name: text for name, text in files.items() if _read(folder / name) != text}
    staging.change(folder, fresh, [name for name in stale if name not in files])
    return kept


def differences(folder: Path, files: dict[str, str]) -> str:
    """A unified diff from what is in ``folder`` to ``files``; empty when they agree. Writes nothing."""
    out: list[str] = []
    stale = sorted(
        f"figures/{path.name}" for path in _own_figures(folder) if f"figures/{path.name}" not in files
    )
    for name in [*sorted(files), *stale]:
        new = seal(name, files[name]) if name in files else ""
        old = _read(folder / name)
        if old != new:
            out += difflib.unified_diff(
                (old or "").splitlines(keepends=True),
                new.splitlines(keepends=True),
                f"{name} (on disk)" if old is not None else "/dev/null",
                f"{name} (built now)",
            )
    return "".join(out)


def seal(name: str, text: str) -> str:
    """``text`` with its checksum as a last comment; JSON, which has no comments, stays as it is."""
    if name.endswith(".json"):
        return text
    body = text if text.endswith("\n") else text + "\n"
    return f"{body}<!-- made by hoopwright, sum {_sum(body)} -->\n"


def intact(name: str, text: str) -> bool:
    """Whether ``text`` is as we wrote it."""
    if name.endswith(".json"):
        return '"plan": 1' in text or '"trip": 1' in text
    found = _SEAL.search(text)
    return found is not None and found.group(1) == _sum(text[: found.start()])


def _sum(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _read(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8", errors="replace")
    except (FileNotFoundError, IsADirectoryError, NotADirectoryError):
        return None


def _keep_changed(folder: Path, files: dict[str, str]) -> list[Path]:
    kept = []
    for name, new in sorted(files.items()):
        old = _read(folder / name)
        if old is None or old == new or intact(name, old):
            continue
        path = folder / name
        number = 1
        while (copy := path.with_name(f"{path.stem}.yours-{number}{path.suffix}")).exists():
            number += 1
        shutil.copy2(path, copy)
        kept.append(copy)
    return kept


def _own_figures(folder: Path) -> list[Path]:
    return [
        path for path in sorted((folder / "figures").glob("*.svg")) if intact(path.name, _read(path) or "")
    ]
