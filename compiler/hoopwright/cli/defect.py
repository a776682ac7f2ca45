"""A defect of the compiler, met while it worked on one spec: told as a diagnostic, and the run goes on."""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import TypeVar

from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.source.record import record

S = TypeVar("S")
T = TypeVar("T")


@record(frozen=True, slots=True)
class Defect:
    """What went wrong, in one line, and the whole trace; no trace of a process that ended without a word."""

    said: str
    trace: str = ""

    def diagnostic(self, file: str) -> Diagnostic:
        """The defect, told of the spec ``file`` that brought it out."""
        if not self.trace:
            return _told(self, file, "build this spec alone; if that fails too, and memory is not short,"
                                     " report it with the spec")
        if os.environ.get("HOOPWRIGHT_TRACE"):
            return _told(self, file, "report it with the spec", (self.trace.rstrip(),))
        return _told(self, file, "report it with the spec; HOOPWRIGHT_TRACE=1 shows the trace")


def attempt(work: Callable[[S], T], item: S) -> T | Defect:
    """The result of ``work`` on an item, or the defect it brought out."""
    try:
        return work(item)
    except Exception as problem:
        return caught(problem)


def caught(problem: Exception) -> Defect:
    """The defect that an exception is."""
    import traceback

    frames = traceback.extract_tb(problem.__traceback__)
    place = f" ({os.path.basename(frames[-1].filename)}:{frames[-1].lineno})" if frames else ""
    said = f"{type(problem).__name__}: {problem}".rstrip(": ")
    return Defect(f"{said}{place}", "".join(traceback.format_exception(problem)))


def ended(code: int | None) -> Defect:
    """The defect of a process that ended before its work was done; ``code`` is its exit code, below zero the
    signal that stopped it."""
    import signal

    how = "ended"
    if code is not None and code < 0:
        known = {one.value: one.name for one in signal.Signals}
        how = f"was stopped by {known.get(-code, f'signal {-code}')}"
    return Defect(f"the process that worked on this spec {how} before it was done")


def _told(defect: Defect, file: str, help: str, notes: tuple[str, ...] = ()) -> Diagnostic:
    return Diagnostic("compiler-defect", Severity.ERROR, f"a defect in hoopwright itself: {defect.said}", file,
                      notes=notes, help=help)
