"""Writing a plan so that a killed build leaves the old plan or the new one, and nobody's changes are lost.

Each file ends in a checksum of what stands above it: a comment, in JSON the last key. A file that does not match
its own was changed by hand or was never ours, and is kept beside the new one under another name. Links are
replaced, never followed.
"""

from __future__ import annotations

import difflib
import hashlib
import re
from contextlib import nullcontext
from pathlib import Path

from hoopwright.cli import staging
from hoopwright.cli.holding import alone
from hoopwright.cli.mover import Mover

_SEAL = re.compile(r"<!-- made by hoopwright, sum ([0-9a-f]{16}) -->\n\Z")
_JSON_SEAL = re.compile(r',\n  "sum": "([0-9a-f]{16})"\n\}\n\Z')
_UNSEEN = re.compile(r"[^\S\n\t ]|[\x00-\x08\x0e-\x1f\x7f-\x9f]")
"""What a terminal would obey, or not show."""


class Refused(Exception):
    """The plan cannot be written there; the message says why and how to mend it."""


def put(folder: Path, files: dict[str, str], mover: Mover | None = None) -> list[Path]:
    """Write ``files`` (relative name -> text) into ``folder``, moved there by the ``mover`` of this run or by one
    of its own; returns copies kept of files changed by hand.

    Raises Refused when the folder cannot be made or written.
    """
    try:
        if folder.exists() and not folder.is_dir():
            raise Refused("this is a file, not a folder; name another folder with -o")
        if folder.is_symlink() and not folder.exists():
            raise Refused("this is a link that leads nowhere; mend it, or name another folder with -o")
        folder.mkdir(parents=True, exist_ok=True)
        with alone(folder), nullcontext(mover) if mover else Mover() as by:
            return _put(folder, {name: seal(name, text) for name, text in files.items()}, by)
    except staging.HalfDone as problem:
        raise Refused(
            f"only a part of the plan could be written ({_why(problem, folder)}); the rest is kept there, and the"
            " next build puts it in place"
        ) from problem
    except OSError as problem:
        raise Refused(
            f"the plan cannot be written here ({_why(problem, folder)}); what was there is as it was"
        ) from problem


def _put(folder: Path, files: dict[str, str], mover: Mover) -> list[Path]:
    if (folder / "figures").is_symlink():
        raise Refused("`figures` is a link that leads elsewhere; nothing was written there")
    if (folder / "figures").is_dir() and (folder / "figures").stat().st_dev != folder.stat().st_dev:
        raise Refused("`figures` lies on another disk, to which nothing can be moved; nothing was written there")
    kept = staging.finish(folder, mover)
    _apart(folder, files)
    stale = [f"figures/{path.name}" for path in _own_figures(folder)]
    fresh = {name: text for name, text in files.items() if _read(folder / name) != text}
    return kept + staging.change(
        folder, fresh, [name for name in stale if name not in files], _changed(folder, fresh), mover
    )


def _apart(folder: Path, files: dict[str, str]) -> None:
    """A plan and a shopping trip in one folder would take each other's figures for their own. Beside a plan a maker's
    own ``shopping.md`` may stand, so only one that was made here, even if it was changed since, is a trip's."""
    if "shopping.md" in files and (folder / "plan.md").exists():
        raise Refused("a plan stands here; name a folder of the trip's own with -o")
    if "plan.md" in files and _SEAL.search(_read(folder / "shopping.md") or ""):
        raise Refused("a shopping trip stands here; name a folder of the plan's own with -o")


def _why(problem: Exception, folder: Path) -> str:
    """What the system said, and of which file of the folder."""
    if not isinstance(problem, OSError):
        return str(problem).lower()
    said = (problem.strerror or str(problem)).lower()
    path = Path(str(problem.filename2 or problem.filename or ""))
    if path != folder and path.is_relative_to(folder):
        name = path.relative_to(folder).as_posix()
        return said if name.startswith(".") else f"{said}: {name}"
    return said


def differences(folder: Path, files: dict[str, str]) -> str:
    """A unified diff from what is in ``folder`` to ``files``, to be read on a terminal; empty when they agree.
    Writes nothing."""
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
    return "".join("\N{REPLACEMENT CHARACTER}" if _UNSEEN.match(sign) else sign for sign in "".join(out))


def seal(name: str, text: str) -> str:
    """``text`` with its checksum at the end: as a comment, in a JSON object as its last key."""
    text = text.encode("utf-8", "replace").decode()
    body = text if text.endswith("\n") else text + "\n"
    if name.endswith(".json"):
        return f'{body[:-3]},\n  "sum": "{_sum(body)}"\n}}\n' if body.endswith("\n}\n") else body
    return f"{body}<!-- made by hoopwright, sum {_sum(body)} -->\n"


def intact(name: str, text: str) -> bool:
    """Whether ``text`` is as we wrote it; other line ends, as a checkout may make them, are no change."""
    text = text.replace("\r\n", "\n")
    if name.endswith(".json"):
        found = _JSON_SEAL.search(text)
        if found is None and '"sum"' not in text[-40:]:
            return '\n  "plan": 1,' in text or '\n  "trip": 1,' in text
        return found is not None and found.group(1) == _sum(text[: found.start()] + "\n}\n")
    found = _SEAL.search(text)
    return found is not None and found.group(1) == _sum(text[: found.start()])


def _sum(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _read(path: Path) -> str | None:
    """A file's text; None for what is not there, for a link, and for what is no file."""
    if path.is_symlink() or not path.is_file():
        return None
    return path.read_bytes().decode("utf-8", errors="replace")


def _changed(folder: Path, files: dict[str, str]) -> list[str]:
    """Those of ``files`` whose place is taken by something that is not as we wrote it."""
    found = []
    for name in sorted(files):
        old = _read(folder / name)
        if (folder / name).is_symlink() or (old is not None and not intact(name, old)):
            found.append(name)
    return found


def _own_figures(folder: Path) -> list[Path]:
    return [
        path for path in sorted((folder / "figures").glob("*.svg")) if intact(path.name, _read(path) or "")
    ]
