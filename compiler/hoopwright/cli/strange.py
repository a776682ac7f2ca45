"""Names on the command line that mean no spec: nothing is there, or it is something else."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from hoopwright.cli.kinds import IS_CAST, SUFFIXES, first_bytes, is_spec
from hoopwright.cli.names import shown
from hoopwright.source.diagnostic import Diagnostic, Severity

_LABEL = re.compile(rb"^\| Spec \| ([^|\n]{1,200}) \|$", re.MULTILINE)
_BUILT = (".md", ".json", ".svg", ".html")


def missing_file(path: Path) -> Diagnostic:
    """No file of that name; the nearest name in its folder is offered."""
    from hoopwright.spec.checking.nearest import listed, nearest

    help = "check the name and the folder you are in"
    folder = path.parent
    if not folder.is_dir():
        help = f"there is no folder `{shown(folder)}` here either: {help}"
    else:
        here = [one.name for one in _specs_in(folder)]
        near = nearest(path.name, here) or nearest(path.stem, here) or tuple(here[:3])
        if near:
            help = f"{listed(shown(folder / name) for name in near)} is there: {help}"
    return Diagnostic("file-missing", Severity.ERROR, "there is no such file", shown(path), help=help)


def strange_file(path: Path) -> Diagnostic:
    """A file that is no YAML and holds no spec: most often a plan, when its spec is meant."""
    folder = path.parent.parent if path.parent.name == "figures" else path.parent
    beside = next(_specs_in(folder), None) if path.suffix in _BUILT else None
    if beside is not None:
        return Diagnostic("not-a-spec", Severity.ERROR, "this is no spec, but perhaps was built from one",
                          shown(path), help=f"name the spec: `{shown(beside)}`, and not this file")
    named = _named_in(path) if path.suffix == ".md" else ""
    if named:
        return Diagnostic("not-a-spec", Severity.ERROR, "this is no spec, but a plan that was built from one",
                          shown(path), help=f"name its spec, `{named}`, and not this file")
    return Diagnostic("not-a-spec", Severity.ERROR, "this is no spec", shown(path),
                      help="a spec is a plain text file; its name ends in `.yaml`, and it begins with `spec: 1`."
                           " `hoopwright new` begins one")


def _named_in(path: Path) -> str:
    """The spec that a plan's label names; empty when this is no plan."""
    try:
        found = _LABEL.search(first_bytes(path))
    except OSError:
        return ""
    return "" if found is None else shown(Path(found[1].decode("utf-8", "replace")))


def _specs_in(folder: Path) -> Iterator[Path]:
    """The specs and casts in a folder, by name, each looked at when it is asked for."""
    try:
        there = sorted(folder.iterdir())
    except OSError:
        return
    yield from (one for one in there if one.suffix in SUFFIXES and one.is_file() and is_spec(one, IS_CAST))
