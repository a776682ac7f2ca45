"""The child that moves plans into place: one for a whole run, and it outlives the run that is killed.

It is started when the first plan is ready, in a session of its own, is told of each staged change in turn, and
ends when nobody is left to tell it more. While it moves it holds the stage, so that a run that comes after a killed
one waits for it. Where no process may be started, or it ends, the run moves by itself.
"""

from __future__ import annotations

import json
import os
from contextlib import suppress
from itertools import pairwise
from pathlib import Path
from typing import BinaryIO, Self

from hoopwright.cli.holding import alone
from hoopwright.cli.interrupts import held_back
from hoopwright.cli.moves import Moves, listed
from hoopwright.cli.writing import flush_folders

_DONE = b"1"
_FAILED = b"0"
_MANY = 65_536
"""So many files are let go of where the system sets no limit to those open."""


class Mover:
    """The child of one run, started by the first move. Leaving the block ends it, and has the disk keep what was
    moved."""

    def __init__(self) -> None:
        self._child = 0
        self._line: tuple[BinaryIO, BinaryIO] | None = None
        self._folders: dict[Path, None] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._dismiss()
        flush_folders(self._folders)  # once for the run: the first flush takes most of the rest with it

    def moved(self, moves: Moves, *, back: bool) -> bool:
        """Have a change moved forward, or all the way back; False where that was not done, or not wholly."""
        self._folders |= dict.fromkeys((moves.folder, moves.folder / "figures"))
        self._line = self._line or self._started()
        if self._line is None:
            return False
        tell, hear = self._line
        answer = b""
        with suppress(OSError):  # it is there no more
            tell.write(json.dumps([str(moves.stage), str(moves.folder), back]).encode() + b"\n")
            answer = hear.read(1)
        if not answer:
            self._dismiss()
        return answer == _DONE

    def _started(self) -> tuple[BinaryIO, BinaryIO] | None:
        """The ends by which the child is told and heard; None where there is no child."""
        if not hasattr(os, "fork"):
            return None
        ends: list[int] = []
        try:
            ends += os.pipe()
            ends += os.pipe()
            told, tell, hear, heard = ends
            with held_back():  # the child must not be led back through what the run has begun
                self._child = os.fork()
                if self._child == 0:
                    try:
                        os.setsid()
                        _close_all_but(told, heard)
                        _serve(told, heard)
                    finally:
                        os._exit(0)
        except OSError:  # no more processes may be started, or no more files opened
            for end in ends:
                os.close(end)
            return None
        os.close(told)
        os.close(heard)
        return os.fdopen(tell, "wb", buffering=0), os.fdopen(hear, "rb", buffering=0)

    def _dismiss(self) -> None:
        """Hang up on the child, and wait until it has ended."""
        if self._line is not None:
            for end in self._line:
                with suppress(OSError):
                    end.close()
            with suppress(ChildProcessError):  # where ended children are not kept for us, as under some services
                os.waitpid(self._child, 0)
            self._line = None


def _close_all_but(*kept: int) -> None:
    """Let go of whatever else the run holds: its locks and its ends of other processes' pipes."""
    most = os.sysconf("SC_OPEN_MAX")
    ends = [2, *sorted(kept), most if most > 0 else _MANY]
    for before, after in pairwise(ends):
        os.closerange(before + 1, after)


def _serve(told: int, heard: int) -> None:
    """The child's whole life: changes in, answers out, until the other side hangs up."""
    with os.fdopen(told, "rb") as lines:
        for line in lines:
            stage, folder, back = json.loads(line)
            os.write(heard, _DONE if _made(Path(stage), Path(folder), back=back) else _FAILED)


def _made(stage: Path, folder: Path, *, back: bool) -> bool:
    """Make the moves of a stage; nothing is left to make where another run has finished them."""
    try:
        with alone(stage):
            if not listed(stage):
                return True
            moves = Moves.read(stage, folder)
            if moves is None:
                return False
            moves.back() if back else moves.forward()
            moves.discard()
    except OSError:
        return False
    return True
