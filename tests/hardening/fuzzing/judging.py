"""A case run in this process, and what was wrong with the run.

Right is: exit code 0, 1 or 2; no exception; every finding with its file, line and column, and every error and
warning with a mend; whatever is written well formed, with no number that is not finite; 2 s of processor time at
most, 10 s for each design that is solved; 512 MB of memory at most.
"""

from __future__ import annotations

import contextlib
import io
import json
import math
import os
import re
import resource
import signal
import tempfile
import time
import traceback
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any
from unittest.mock import patch
from xml.etree import ElementTree

from fuzzing.cases import Case
from hoopwright.compile import Compiled
from hoopwright.source.diagnostic import Diagnostic, Severity

QUICK, SOLVING, MEMORY = 2.0, 10.0, 512
"""Seconds without and with a design solved, and MB of a process that does nothing else."""
STARTED = 100
"""MB that a fresh process holds when everything is loaded; the rest of the memory is a run's own."""


@dataclass
class Run:
    """What a run came to; ``trouble`` is empty when all was right. ``planned`` designs came to a plan, and the
    strength of ``solved`` was assessed."""

    code: int | None = None
    seconds: float = 0.0
    peak: float = 0.0
    planned: int = 0
    solved: int = 0
    trouble: list[str] = field(default_factory=list)

    @property
    def allowed(self) -> float:
        """Seconds of processor time it may take."""
        return SOLVING * self.solved if self.solved else QUICK

    @property
    def sort(self) -> str:
        """What kind of trouble: equal for the same defect met again."""
        return re.sub(r"\d+(\.\d+)?", "N", self.trouble[0].strip().splitlines()[-1])[:160] if self.trouble else ""


class TimeOver(BaseException):
    """The processor time of a run is used up; not an Exception, so that nothing takes it for its own."""


def run(case: Case) -> Run:
    """Run a case in a folder of its own and judge it; once more when it took too long, since a busy machine is
    slow even in processor time."""
    found = _in_folder(case)
    if found.sort.startswith("time over"):
        again = _in_folder(case)
        return again if again.seconds < found.seconds else found
    return found


def in_turn(case: Case, number: int, every: int) -> tuple[Case, Run]:
    """A case that is read, and with every so many-th given to its own command too, which works for a hundred times
    as long; with what was run last and what it came to."""
    if every > 1 and case.text:
        read = replace(case, given=("check", "--syntax", case.damaged))
        found = run(read)
        if number % every or found.trouble:
            return read, found
    return case, run(case)


def _in_folder(case: Case) -> Run:
    with tempfile.TemporaryDirectory() as folder:
        for name, data in case.files.items():
            path = Path(folder, "case", name)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        Path(folder, "case").mkdir(exist_ok=True)
        with contextlib.chdir(Path(folder, "case")):
            return _run(case)


def _run(case: Case) -> Run:
    from hoopwright.cli import main

    found, out, err = Run(), _Out(), _Out()
    seen = _Seen()
    before, held = peak_memory(), memory()
    start = time.process_time()
    try:
        with _watched(seen), _limit(SOLVING * 12), contextlib.redirect_stdout(out), contextlib.redirect_stderr(err), \
                patch("sys.stdin", _Stdin(case.text)), patch.dict(os.environ, {"HOOPWRIGHT_TRACE": "1"}):
            found.code = main(list(case.given))
    except SystemExit as stop:
        found.code = stop.code if isinstance(stop.code, int) else 1
    except TimeOver:
        found.trouble.append(f"{traceback.format_exc()}\ntime over: more than {SOLVING * 12:.0f} s")
    except Exception:
        found.trouble.append(traceback.format_exc())
    found.seconds = time.process_time() - start
    found.peak = peak_memory()
    found.solved = seen.solved
    found.planned = sum(one.plan is not None for one in seen.compiled)
    if not found.trouble:
        printed = out.getvalue() + err.getvalue()
        found.trouble += _of_code(found.code, printed)
        found.trouble += _of_findings(seen)
        found.trouble += _of_files(seen.files)
        found.trouble += _of_output(case, out.getvalue())
        if found.seconds > found.allowed:
            found.trouble.append(f"time over: {found.seconds:.1f} s, where {found.allowed:.0f} s are allowed\n")
        if found.peak > before and found.peak - held > MEMORY - STARTED:
            found.trouble.append(f"memory over: {found.peak - held:.0f} MB more than before")
    return found


def memory() -> float:
    """MB this process holds now; where the system does not tell, all it has held at most."""
    try:
        pages = int(Path("/proc/self/statm").read_text().split()[1])
    except (OSError, ValueError, IndexError):
        return peak_memory()
    return pages * resource.getpagesize() / 2**20


def peak_memory() -> float:
    """MB this process has held at most."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


@dataclass
class _Seen:
    """What passed through the compiler during a run."""

    compiled: list[Compiled] = field(default_factory=list)
    problems: list[Diagnostic] = field(default_factory=list)
    files: list[dict[str, str]] = field(default_factory=list)
    solved: int = 0


@contextlib.contextmanager
def _watched(seen: _Seen) -> Iterator[None]:
    """Keep what the compiler gives to the commands, and whether a design came to be solved."""
    from hoopwright.cli import files, specs
    from hoopwright.compare import stand_in
    from hoopwright.strength import assess

    compile_spec, rendered, assessed, read_cast = specs.compile_spec, files.rendered, assess.assess, specs.read_cast

    def compiling(*given: Any, **named: Any) -> Compiled:
        seen.compiled.append(compile_spec(*given, **named))
        return seen.compiled[-1]

    def rendering(*given: Any, **named: Any) -> dict[str, str]:
        seen.files.append(rendered(*given, **named))
        return seen.files[-1]

    def assessing(*given: Any, **named: Any) -> Any:
        seen.solved += 1
        return assessed(*given, **named)

    def casting(*given: Any) -> Any:
        members, problems = read_cast(*given)
        seen.problems += problems
        return members, problems

    with patch.object(specs, "compile_spec", compiling), patch.object(files, "rendered", rendering), \
            patch.object(assess, "assess", assessing), patch.object(stand_in, "assess", assessing), \
            patch.object(specs, "read_cast", casting):
        yield


@contextlib.contextmanager
def _limit(seconds: float) -> Iterator[None]:
    """Raise :class:`TimeOver` after so much processor time."""

    def over(*_: object) -> None:
        raise TimeOver

    old = signal.signal(signal.SIGPROF, over)
    signal.setitimer(signal.ITIMER_PROF, seconds, 1.0)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0.0)
        signal.signal(signal.SIGPROF, old)


def _of_code(code: int | None, printed: str) -> list[str]:
    if code not in (0, 1, 2):
        return [f"exit code {code}: {printed[-500:]}"]
    if code and not printed.strip():
        return [f"exit code {code}, and nothing is said"]
    return ["a trace is printed"] if "Traceback (most recent" in printed else []


def _of_findings(seen: _Seen) -> Iterator[str]:
    for compiled in seen.compiled:
        for found in compiled.diagnostics:
            yield from _of_finding(found, compiled)
        if compiled.spec is None and not compiled.diagnostics:
            yield "no spec, and nothing is said"
    for found in seen.problems:
        yield from _of_finding(found, None)


def _of_finding(found: Diagnostic, compiled: Compiled | None) -> Iterator[str]:
    if not found.message or "\n" in found.message:
        yield f"{found.code}: message {found.message!r}"
    if found.severity is not Severity.NOTE and not found.help:
        yield f"{found.code}: no mend"
    if found.span is None:
        if found.code not in ("file-empty", "file-too-large"):
            yield f"{found.code}: no place"
        return
    for span in (found.span, *(label.span for label in found.labels)):
        start, end = (span.line, span.column), (span.end_line, span.end_column)
        if not span.file or start > end or min(start) < 1:
            yield f"{found.code}: place {span}"
        document = compiled and compiled.document
        if document and span.file == document.file:
            lines = document.text.split("\n")
            if span.line > len(lines) or span.column > len(lines[span.line - 1]) + 1:
                yield f"{found.code}: place {span} lies outside the text"


def _of_files(plans: list[dict[str, str]]) -> Iterator[str]:
    """SVG that is XML, JSON with finite numbers, pages without ``nan``."""
    for files in plans:
        for name, text in files.items():
            if name.endswith(".svg"):
                try:
                    ElementTree.fromstring(text)
                except ElementTree.ParseError as problem:
                    yield f"{name.split('-')[0]}: no XML: {problem}"
            elif name.endswith(".json"):
                bad = [number for number in _numbers(json.loads(text)) if not math.isfinite(number)]
                if bad:
                    yield f"{name}: numbers that are not finite: {bad[:3]}"
            odd = re.search(r"(?<![\w-])-?(?:nan|inf)(?![\w-])", text)
            if odd:
                yield f"{name}: a number that is not finite: {text[max(0, odd.start() - 50) : odd.end() + 20]!r}"


def _numbers(value: object) -> Iterator[float]:
    for item in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from _numbers(item)
    if isinstance(value, float):
        yield value


def _of_output(case: Case, out: str) -> Iterator[str]:
    """What says that it is JSON or XML is."""
    how = case.given[case.given.index("--format") + 1] if "--format" in case.given else ""
    try:
        if how in ("json", "sarif") and out.startswith("{"):
            json.loads(out)
        elif how == "jsonl":
            for line in out.splitlines():
                if line.startswith("{"):
                    json.loads(line)
        elif how == "junit" and out:
            ElementTree.fromstring(out)
    except (ValueError, ElementTree.ParseError) as problem:
        yield f"{how} that does not read: {problem}"


class _Out(io.StringIO):
    """A stream for a command, which must be able to encode what is written."""

    def write(self, text: str) -> int:
        return super().write(text.encode("utf-8", "backslashreplace").decode())


class _Stdin:
    def __init__(self, data: bytes) -> None:
        self.buffer = io.BytesIO(data)
