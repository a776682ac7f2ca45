"""Writing a plan so that a killed build leaves the old plan or the new one, and nobody's changes are lost.

The files are first written whole into a hidden folder beside their places; a last empty file, ``ready``, says
that all are there. Then they are moved into place one by one, each move atomic. A run that is killed
before ``ready`` leaves the old plan untouched; one killed after it leaves moves that the next run
finishes first. Each text file ends in a comment with a checksum of what stands above it; a file that does
not match its own was changed by hand, and is kept beside the new one under another name.
"""

from __future__ import annotations

import difflib
import hashlib
import re
import shutil
import tempfile
from pathlib import Path

_STAGE = ".hoopwright-"
_READY = "ready"
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
        finish_interrupted(folder)
        sealed = {name: seal(name, text) for name, text in files.items()}
        kept = _keep_changed(folder, sealed)
        fresh = {name: text for name, text in sealed.items() if _read(folder / name) != text}
        if fresh:
            _move(_stage(folder, fresh), folder)
        _drop_unnamed_figures(folder, sealed)
    except OSError as problem:
        why = (problem.strerror or str(problem)).lower()
        raise Refused(f"the plan cannot be written here ({why}); the old plan is as it was") from problem
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
        return '"plan": 1' in text
    found = _SEAL.search(text)
    return found is not None and found.group(1) == _sum(text[: found.start()])


def finish_interrupted(folder: Path) -> None:
    """Carry out the moves that a killed run had made ready; clear away what it had not."""
    for stage in sorted(folder.glob(f"{_STAGE}*")):
        if stage.is_dir() and (stage / _READY).exists():
            _move(stage, folder)
        elif stage.is_dir():
            shutil.rmtree(stage, ignore_errors=True)


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


def _stage(folder: Path, files: dict[str, str]) -> Path:
    stage = Path(tempfile.mkdtemp(prefix=_STAGE, dir=folder))
    try:
        for name, text in files.items():
            path = stage / name
            path.parent.mkdir(parents=True, exist_ok=True)
            _write(path, text)
        _write(stage / _READY, "")
    except OSError:
        shutil.rmtree(stage, ignore_errors=True)
        raise
    return stage


def _write(path: Path, text: str) -> None:
    path.write_bytes(text.encode())


def _move(stage: Path, folder: Path) -> None:
    for path in sorted(stage.rglob("*")):
        if path.is_file() and path.name != _READY:
            target = folder / path.relative_to(stage)
            target.parent.mkdir(parents=True, exist_ok=True)
            path.replace(target)
    shutil.rmtree(stage, ignore_errors=True)


def _own_figures(folder: Path) -> list[Path]:
    return [
        path for path in sorted((folder / "figures").glob("*.svg")) if intact(path.name, _read(path) or "")
    ]


def _drop_unnamed_figures(folder: Path, files: dict[str, str]) -> None:
    for path in _own_figures(folder):
        if f"figures/{path.name}" not in files:
            path.unlink()
