"""Which files a command means, and where their plans go."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from hoopwright.source.diagnostic import Diagnostic, Severity

_MOST = 1 << 20  # bytes; the source stage refuses more
_IS_SPEC = re.compile(rb"^(?:\xef\xbb\xbf)?spec[ \t]*:", re.MULTILINE)
_SUFFIXES = (".yaml", ".yml")


@dataclass(frozen=True, slots=True)
class SpecFile:
    """A spec as named on the command line or found below a folder; ``data`` is its bytes."""

    path: Path
    shown: str
    data: bytes


def gather(names: list[str]) -> tuple[list[SpecFile], list[Diagnostic]]:
    """The specs that ``names`` mean, each once, in the order given; and what could not be read."""
    files: dict[Path, SpecFile] = {}
    problems: list[Diagnostic] = []
    for name in names:
        path = Path(name)
        paths = _below(path) if path.is_dir() else [path]
        if not paths:
            problems.append(
                _problem(
                    "folder-without-specs",
                    name,
                    "no spec is in this folder",
                    "name a YAML file that begins with `spec: 1`",
                )
            )
        for found in paths:
            try:
                files.setdefault(found.resolve(), SpecFile(found, found.as_posix(), _bytes(found)))
            except OSError as problem:
                problems.append(_unreadable(found.as_posix(), problem))
    return list(files.values()), problems


def plan_folder(spec: SpecFile, output: str | None, among: list[SpecFile]) -> Path:
    """Where a spec's plan goes.

    Without ``output`` it is the spec's own folder, or a folder of its name there when other specs
    live beside it.
    With it, that folder, or a folder of the spec's name in it when several specs are built.
    """
    stem = spec.path.stem
    if output is None:
        here = spec.path.parent
        return here / stem if _has_neighbours(spec.path) else here
    if len(among) == 1:
        return Path(output)
    same = [other for other in among if other.path.stem == stem]
    if len(same) == 1:
        return Path(output) / stem
    return Path(output) / f"{spec.path.resolve().parent.name}-{stem}"


def _below(folder: Path) -> list[Path]:
    found = []
    for path in sorted(folder.rglob("*")):
        inside = path.relative_to(folder).parts
        hidden = any(part.startswith(".") for part in inside)
        if not hidden and "starters" not in inside[:-1] and path.suffix in _SUFFIXES and _is_spec(path):
            found.append(path)
    return found


def _is_spec(path: Path) -> bool:
    try:
        return path.is_file() and _IS_SPEC.search(_bytes(path)) is not None
    except OSError:
        return True  # let reading it say why it cannot be read


def _has_neighbours(path: Path) -> bool:
    try:
        others = [other for other in sorted(path.parent.iterdir()) if other.suffix in _SUFFIXES]
    except OSError:
        return False
    return any(_is_spec(other) for other in others if other.name != path.name)


def _bytes(path: Path) -> bytes:
    """The file, or its first bytes when it is larger than the source stage takes."""
    with path.open("rb") as stream:
        return stream.read(_MOST + 1)


def _unreadable(name: str, problem: OSError) -> Diagnostic:
    if isinstance(problem, FileNotFoundError):
        return _problem(
            "file-missing", name, "there is no such file", "check the name and the folder you are in"
        )
    return _problem(
        "file-unreadable",
        name,
        f"this file cannot be read ({(problem.strerror or 'unknown').lower()})",
        "check that it is a file and that you may read it",
    )


def _problem(code: str, file: str, message: str, help: str) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, message, file, help=help)
