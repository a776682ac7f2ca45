"""Which files a command means, and where their plans go."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from hoopwright.cli import FOUND, MISUSED
from hoopwright.cli.cast import IS_CAST, read_cast
from hoopwright.cli.include import MOST, leads_out, reader
from hoopwright.cli.names import folder_name, one_of_a_kind, path_of, shown, slug, text_of
from hoopwright.cli.strange import missing_file, strange_file
from hoopwright.compile import Compiled, compile_spec
from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.source.record import record
from hoopwright.spec.document.choice import AS_WRITTEN, Choice
from hoopwright.spec.model import Units

_IS_SPEC = re.compile(rb"^(?:\xef\xbb\xbf)?spec[ \t]*:", re.MULTILINE)
_IS_BODY = re.compile(rb"^(?:\xef\xbb\xbf)?body[ \t]*:", re.MULTILINE)
_SUFFIXES = (".yaml", ".yml")


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
                data = _bytes(found)
                if IS_CAST.search(data) and not _IS_SPEC.search(data):
                    problems += _cast(found, data, files)
                elif _IS_BODY.search(data) and not _IS_SPEC.search(data):
                    problems.append(_problem("body-alone", shown(found), "this is a body, and no design",
                                             "name a spec that takes its wearer from it:"
                                             f" `wearer: {{from: {text_of(found.name)}}}`"))
                elif found.suffix not in _SUFFIXES and not _IS_SPEC.search(data):
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


def plan_folder(spec: SpecFile, output: str | None, among: list[SpecFile]) -> Path:
    """Where a spec's plan goes.

    Without ``output`` it is the spec's own folder, or a folder of its name there when other specs
    live beside it.
    With it, that folder, or a folder of the spec's name in it when several specs are built. A variant's plan
    goes into a folder of its name below the spec's; a cast's plans go into a folder of the cast's name.
    """
    own = path_of(_own_name(spec, among))
    folder = spec.home if spec.home is not None else spec.path.parent
    if output is not None:
        alone = spec.home is None and len(among) == 1
        folder = Path(output) if alone else Path(output) / own
    elif spec.home is not None:
        folder = spec.home / path_of(spec.member)
    elif _has_neighbours(spec.path):
        folder = spec.path.parent / path_of(_beside_others(spec.path))
    if spec.home is None and spec.choice.variant and (output is None or len(among) > 1):
        return folder / path_of(slug(spec.choice.variant) or "variant")
    return folder


def _own_name(spec: SpecFile, among: list[SpecFile]) -> str:
    """The name of a spec's folder beside those of others: no two are the same on any system."""
    stems = [folder_name(text_of(other.path.stem)) for other in among if other.home is None]
    taken: set[str] = set()
    name = ""
    for other in among:
        stem = folder_name(text_of(other.path.stem))
        if other.home is not None:
            name = other.member
        elif stems.count(stem) > 1:
            name = f"{text_of(other.path.resolve().parent.name)}-{stem}"
        else:
            name = stem
        name = one_of_a_kind(name, taken)
        if other is spec or other == spec:
            break
    return name


def _beside_others(path: Path) -> str:
    """The name of a spec's folder among other specs' in its own: its ending with it where another differs in
    that alone."""
    stem = folder_name(text_of(path.stem))
    twin = any(path.with_suffix(other).exists() for other in _SUFFIXES if other != path.suffix)
    return f"{stem}-{path.suffix[1:]}" if twin and path.suffix != _SUFFIXES[0] else stem


def _below(folder: Path) -> list[Path]:
    found = []
    for path in sorted(folder.rglob("*")):
        inside = path.relative_to(folder).parts
        hidden = any(part.startswith(".") for part in inside)
        starter = "starters" in inside[:-1]
        if hidden or starter or path.suffix not in _SUFFIXES:
            continue
        if leads_out(path) or _is_spec(path, IS_CAST):
            found.append(path)
    return found


def _is_spec(path: Path, *also: re.Pattern[bytes]) -> bool:
    try:
        data = _bytes(path) if path.is_file() else b""
        return any(kind.search(data) for kind in (_IS_SPEC, *also))
    except OSError:
        return True  # let reading it say why it cannot be read


def _has_neighbours(path: Path) -> bool:
    try:
        others = [other for other in sorted(path.parent.iterdir()) if other.suffix in _SUFFIXES]
    except OSError:
        return False
    return any(_is_spec(other) for other in others if other.name != path.name and not leads_out(other))


def _bytes(path: Path) -> bytes:
    """The file, or its first bytes when it is larger than the source stage takes."""
    with path.open("rb") as stream:
        return stream.read(MOST + 1)


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
