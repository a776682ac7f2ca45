"""Build on real disks that are full, small or read-only: ``python tests/hardening/real_disks.py``, as root on Linux.

Each size of a small disk in memory stops the build at another place; what was there must be as it was, or the new plan
whole. Then a plan on a disk that is mounted read-only, and one whose ``figures`` lie on another disk.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from hoopwright.cli.output import Refused, put, seal

KILOBYTES = (24, 28, 32, 36, 40, 44, 48, 56, 64, 80, 96, 128, 256)


def plan(word: str) -> dict[str, str]:
    """Files of the size and number of a small plan's."""
    drawings = {f"figures/{word}-{number}.svg": f"<svg>{word * 900}</svg>\n" for number in range(3)}
    return {"plan.md": f"# {word * 900}\n", "plan.json": f'{{\n  "plan": 1,\n  "title": "{word}"\n}}\n', **drawings}


def state(folder: Path) -> dict[str, str]:
    """Every file that is not hidden."""
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not path.relative_to(folder).parts[0].startswith(".")
    }


def said_of(folder: Path) -> str:
    """What a build of the new plan was refused with; blank when it was written."""
    try:
        put(folder, plan("new"))
    except Refused as problem:
        return str(problem)
    return ""


@contextmanager
def mounted(folder: Path, *options: str) -> Iterator[Path]:
    """Something mounted on a folder for a while."""
    folder.mkdir(parents=True, exist_ok=True)
    subprocess.run(["mount", *options, str(folder)], check=True)
    try:
        yield folder
    finally:
        subprocess.run(["umount", str(folder)], check=True)


def main() -> int:
    """Every disk in turn; a line for each, and 1 when a plan was not whole or a message not true."""
    old, new = ({name: seal(name, text) for name, text in plan(word).items()} for word in ("old", "new"))
    wrong = 0

    def tell(what: str, folder: Path, said: str, *, refused: bool | None = None) -> None:
        nonlocal wrong
        good = state(folder) == (old if said else new) and refused in (None, bool(said))
        wrong += not good
        print(f"{what}: {said or 'the new plan'}{'' if good else ' - AND THAT IS WRONG'}")

    with tempfile.TemporaryDirectory() as name:
        top = Path(name)
        for size in KILOBYTES:
            with mounted(top / f"small-{size}", "-t", "tmpfs", "-o", f"size={size}k", "tmpfs") as folder:
                try:
                    put(folder, plan("old"))
                except Refused as problem:
                    print(f"{size} kB: not even the old plan: {problem}")
                    wrong += state(folder) != {}
                    continue
                tell(f"{size} kB", folder, said_of(folder))
        put(top / "plan", plan("old"))
        with mounted(top / "read-only", "--bind", str(top / "plan")) as folder:
            subprocess.run(["mount", "-o", "remount,ro,bind", str(folder)], check=True)
            tell("read-only", folder, said_of(folder), refused=True)
        with mounted(top / "plan" / "figures", "-t", "tmpfs", "tmpfs"):
            for path, text in old.items():
                (top / "plan" / path).write_text(text)
            tell("figures on another disk", top / "plan", said_of(top / "plan"), refused=True)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
