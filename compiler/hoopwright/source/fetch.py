"""How a stage asks for another file without touching files itself: a reader handed in by the command line."""

from __future__ import annotations

from collections.abc import Callable

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Fetched:
    """Another file: the name diagnostics show, and its bytes."""

    file: str
    data: bytes


@record(frozen=True, slots=True)
class Unread:
    """Why another file cannot be had: a diagnostic's code, its message and how to mend it."""

    code: str
    message: str
    help: str


Fetch = Callable[[str, str], Fetched | Unread]
"""``fetch(name, file)``: the file ``name`` as written in ``file``, relative to where that file lies."""


def no_files(name: str, file: str) -> Fetched | Unread:
    """The reader when there is none: every file is refused."""
    return Unread("file-missing", f"`{name}` cannot be read, since no other file is at hand",
                   "run it on the spec's own file, or write the keys into the spec")
