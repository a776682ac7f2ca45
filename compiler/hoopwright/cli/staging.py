"""Changing a folder's files all at once, as far as a file system lets one.

The new files are written whole into a hidden folder beside their places, down to the disk, and the old ones get a
second name there; a list of both gets its name, ``ready``, when the disk has all of it. Then they are moved into
place, each move atomic, by a child process (:mod:`hoopwright.cli.mover`): killing the build does not stop it. Should
it be stopped all the same (power fails), the next run finishes the moves first, or takes them back when what was
staged did not reach the disk. A move that fails takes back those before it. A lock on the folder keeps two builds
apart.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from hoopwright.cli.holding import alone
from hoopwright.cli.mover import Mover
from hoopwright.cli.moves import (
    BACK,
    DRAFT,
    READY,
    Moves,
    checksum_of,
    digest,
    free_name,
    listed,
    second_name,
    tame,
)
from hoopwright.cli.writing import write_new

PREFIX = ".hoopwright-stage-"
_OURS = {"new", "old", READY, BACK, DRAFT}


class HalfDone(Exception):
    """Some files were moved and could neither be finished nor taken back; the next run will finish them."""


def change(
    folder: Path, files: Mapping[str, str], removed: Sequence[str], kept: Sequence[str] = (),
    mover: Mover | None = None,
) -> list[Path]:
    """Write ``files`` (relative name -> text) and take ``removed`` away, all or nothing; ``kept`` names those of
    them whose old file gets another name beside the new one. Returns these copies. The ``mover`` makes the moves, or
    this process without one.

    Raises OSError when that cannot be done, and nothing has changed then; HalfDone when it could not even be
    taken back; ValueError for a name that could lead out of the folder. The folder must be held.
    """
    for name in (*files, *removed):
        if not tame(name):
            raise ValueError(f"{name!r} is no name for a file of a plan")
    copies = {name: free_name(folder / name) for name in kept}
    if files or removed:
        _apart(_stage(folder, files, removed, copies), mover)
    return list(copies.values())


def finish(folder: Path, mover: Mover | None = None) -> list[Path]:
    """Carry out what a stopped run had made ready, or take it back; clear away what it had not. The folder must
    be held. Returns copies kept of what somebody changed since; raises as ``change``."""
    kept: list[Path] = []
    for stage in sorted(folder.glob(f"{PREFIX}*")):
        if stage.is_symlink() or not stage.is_dir():
            continue  # somebody else's
        try:
            with alone(stage):  # the child of a killed run may still be at it
                if not {path.name for path in stage.iterdir()} <= _OURS:
                    continue  # somebody else's
                if not listed(stage):
                    shutil.rmtree(stage, ignore_errors=True)
                    continue
                moves = Moves.read(stage, folder)
                if moves is None:
                    continue
                kept += moves.spare()
                back = moves.turned or moves.damaged()
        except FileNotFoundError:
            if stage.exists():
                raise
            continue  # that child has just cleared it away
        _apart(moves, mover, back=back)
    return kept


def _stage(
    folder: Path, files: Mapping[str, str], removed: Sequence[str], copies: Mapping[str, Path]
) -> Moves:
    stage = Path(tempfile.mkdtemp(prefix=PREFIX, dir=folder))
    try:
        sums: dict[str, str] = {}
        staged: dict[Path, tuple[bytes, Path | None]] = {}
        for name, copy in copies.items():
            relative = copy.relative_to(folder).as_posix()
            second_name(folder / name, stage / "new" / relative)
            sums[relative] = ""
        for name, text in files.items():
            data = text.encode()
            staged[stage / "new" / name] = data, folder / name
            sums[name] = digest(data)
        was: dict[str, str] = {}
        for name in (*files, *removed):
            if os.path.lexists(folder / name):
                second_name(folder / name, stage / "old" / name)
                was[name] = checksum_of(stage / "old" / name)
        moves = Moves(stage, folder, sums, tuple(removed), was)
        write_new(staged | {stage / DRAFT: (moves.manifest().encode(), None)})
        os.replace(stage / DRAFT, stage / READY)
    except OSError:
        shutil.rmtree(stage, ignore_errors=True)
        raise
    return moves


def _apart(moves: Moves, mover: Mover | None, *, back: bool = False) -> None:
    """Move in the child that outlives a killed build; what it cannot do is tried here."""
    if mover is None or not mover.moved(moves, back=back):
        _settled(moves, back=back)  # says here what went wrong there


def _settled(moves: Moves, *, back: bool) -> None:
    """Forward, or all the way back; raises HalfDone when neither will go."""
    failed: OSError | None = None
    if not back:
        try:
            moves.forward()
        except OSError as problem:
            failed = problem
    if back or failed:
        try:
            moves.back()
        except OSError as problem:
            raise HalfDone(str(problem.strerror or problem)) from problem
    moves.discard()
    if failed:
        raise failed
