"""Run commands in one process that is watched: ``python watched.py 'JSON list of argument lists'``.

Sockets, subprocesses and unpickling are blocked: a try raises, and is noted. Files that are opened, made, moved or
taken away are noted. Prints what was noted of each command as JSON, with its exit code and what it printed.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import pickle
import sys
from typing import Any, NoReturn

MARK = "alert(1)"
"""A word of the hostile texts: what is compiled as Python must not hold it."""

BLOCKED = (
    "socket.", "subprocess.", "os.system", "os.exec", "os.posix_spawn", "os.spawn", "os.startfile", "pty.", "urllib.",
    "http.", "ftplib.", "smtplib.", "telnetlib.", "webbrowser.", "pickle.find_class", "ctypes.dlopen", "ctypes.dlsym",
    "code.", "winreg.",
)  # fmt: skip
CHANGES = (
    "os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.link", "os.symlink", "os.chmod", "os.chown", "os.truncate",
    "os.utime", "os.setxattr", "shutil.rmtree", "shutil.copyfile", "shutil.move", "tempfile.mkdtemp",
    "tempfile.mkstemp",
)  # fmt: skip
WRITING = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND

noted: dict[str, list[str]] = {}


def _refuse(*_: object, **__: object) -> NoReturn:
    noted.setdefault("blocked", []).append("unpickling")
    raise RuntimeError("unpickling is blocked")


def _watch(event: str, arguments: tuple[Any, ...]) -> None:
    if event == "open":
        path, _, flags = arguments
        if isinstance(path, (str, bytes, os.PathLike)):
            kind = "written" if isinstance(flags, int) and flags & WRITING else "read"
            noted.setdefault(kind, []).append(os.path.abspath(os.fsdecode(path)))
    elif event in CHANGES:
        relative = isinstance(arguments[-1], int) and arguments[-1] >= 0  # below a folder noted already
        for path in arguments[: 2 if event in ("os.rename", "os.link", "shutil.move") else 1]:
            if isinstance(path, (str, bytes, os.PathLike)) and not relative:
                noted.setdefault("written", []).append(os.path.abspath(os.fsdecode(path)))
    elif event == "compile" and MARK in str(arguments[0]):
        noted.setdefault("blocked", []).append("compiling a spec's words")
    elif event.startswith(BLOCKED) and not (event == "ctypes.dlopen" and arguments[0] is None):
        noted.setdefault("blocked", []).append(f"{event} {arguments!r}"[:200])
        raise RuntimeError(f"{event} is blocked")


def main() -> None:
    """Run the commands one after the other, each noted for itself."""
    import _pickle

    for module in (pickle, _pickle):
        for name in ("load", "loads", "Unpickler", "_load", "_loads", "_Unpickler"):
            if hasattr(module, name):
                setattr(module, name, _refuse)
    sys.addaudithook(_watch)
    from hoopwright.cli import main as run

    out = []
    for words in json.loads(sys.argv[1]):
        noted.clear()
        said, told = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(told):
            try:
                code: object = run(words)
            except SystemExit as ended:
                code = ended.code
        took = {kind: list(paths) for kind, paths in noted.items()}
        out.append({"code": code, "out": said.getvalue(), "err": told.getvalue(), **took})
    print(json.dumps(out))


if __name__ == "__main__":
    main()
