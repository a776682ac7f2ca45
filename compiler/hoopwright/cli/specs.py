"""Which files a command means."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from hoopwright.cli import FOUND, MISUSED
from hoopwright.cli.cast import read_cast
from hoopwright.cli.include import leads_out, reader
from hoopwright.cli.kinds import IS_BODY, IS_CAST, IS_SPEC, SUFFIXES, first_bytes, is_spec
from hoopwright.cli.names import shown, text_of
from hoopwright.cli.strange import missing_file, strange_file
from hoopwright.compile import Compiled, compile_spec
from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.source.record import record
from hoopwright.spec.document.choice import AS_WRITTEN, Choice
from hoopwright.spec.model import Units


@record(frozen=True, slots=True)
class SpecFile:
    """A spec as named on the command line, found below a folder or listed by a cast; ``data`` is its bytes.

    ``choice`` says which of its designs is meant. ``home`` is the folder of a cast's plans, None for a spec
    that stands for itself, and ``member`` the name of its folder there.
    """

    path: Path
    shown: str
    data: bytes
    choice: Choice = AS_WRITTEN
    home: Path | None = None
    member: str = ""

    @property
    def label(self) -> str:
        """What it is called in a line of progress."""
        return f"{self.shown} ({self.choice.label})" if self.choice.label else self.shown

    def compiled(self, *, units: Units | None = None, syntax_only: bool = False) -> Compiled:
        """The result of compiling it, printed in ``units`` when they are given; body files it names are read
        from inside its project."""
        return compile_spec(self.data, self.shown, choice=self.choice, fetch=reader(self.path), units=units,
                            syntax_only=syntax_only)


def gather(names: list[str], variant: str = "") -> tuple[list[SpecFile], list[Diagnostic]]:
    """The specs that ``names`` mean, each once, in the order given; and what could not be read.

    A cast stands for its members. ``variant`` is asked of every spec that does not come from a cast.
    """
    files: dict[tuple[Path, str], SpecFile] = {}
    problems: list[Diagnostic] = []
    choice = Choice(variant) if variant else AS_WRITTEN
    for name in names:
        path = Path(name)
        paths = _below(path) if path.is_dir() else [path]
        if not paths:
            problems.append(
                _problem(
                    "folder-without-specs",
                    name,
                    "no spec is in this folder",
                    "name a YAML file that begins with `spec: 1`, or let `hoopwright new` begin one",
                )
            )
        for found in paths:
            if path.is_dir() and leads_out(found):
                problems.append(_problem("path-outside-project", shown(found), "this link leads outside the project",
                                         "name the spec itself, or put it where the link is", Severity.NOTE))
                continue
            try:
                data = first_bytes(found)
                if IS_CAST.search(data) and not IS_SPEC.search(data):
                    problems += _cast(found, data, files)
                elif IS_BODY.search(data) and not IS_SPEC.search(data):
                    problems.append(_problem("body-alone", shown(found), "this is a body, and no design",
                                             "name a spec that takes its wearer from it:"
                                             f" `wearer: {{from: {text_of(found.name)}}}`"))
                elif found.suffix not in SUFFIXES and not IS_SPEC.search(data):
                    problems.append(strange_file(found))
                else:
                    spec = SpecFile(found, shown(found), data, choice)
                    files.setdefault((found.resolve(), ""), spec)
            except OSError as problem:
                problems.append(_unreadable(shown(found), problem))
    return list(files.values()), problems


def _cast(path: Path, data: bytes, files: dict[tuple[Path, str], SpecFile]) -> list[Diagnostic]:
    """Add a cast's members; returns what is wrong with it."""
    members, problems = read_cast(data, path, shown(path))
    home = path.parent / path.stem
    for one in members:
        spec = SpecFile(one.path, one.shown, one.data, one.choice, home, one.name)
        files.setdefault((path.resolve(), one.name), spec)
    return list(problems)


def code_of_problems(problems: Sequence[Diagnostic]) -> int:
    """Exit code of what :func:`gather` could not do: 2 for what cannot be read, 1 for a cast's mistakes."""
    wrong = [problem for problem in problems if problem.severity is Severity.ERROR]
    return max((FOUND if problem.span else MISUSED for problem in wrong), default=0)


def _below(folder: Path) -> list[Path]:
    found = []
    for path in sorted(folder.rglob("*")):
        inside = path.relative_to(folder).parts
        hidden = any(part.startswith(".") for part in inside)
        starter = "starters" in inside[:-1]
        if hidden or starter or path.suffix not in SUFFIXES:
            continue
        if leads_out(path) or is_spec(path, IS_CAST):
            found.append(path)
    return found


def _unreadable(name: str, problem: OSError) -> Diagnostic:
    if isinstance(problem, FileNotFoundError):
        return missing_file(Path(name))
    return _problem(
        "file-unreadable",
        name,
        f"this file cannot be read ({(problem.strerror or 'unknown').lower()})",
        "check that it is a file and that you may read it",
    )


def _problem(code: str, file: str, message: str, help: str,
             severity: Severity = Severity.ERROR) -> Diagnostic:
    return Diagnostic(code, severity, message, file, help=help)
