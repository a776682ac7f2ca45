"""The README followed word by word by somebody who has nothing: a fresh clone of what is committed, an empty home, an
empty environment, no package cache and no packages of the user's own. Every command of its code blocks is run in order.

    python tests/hardening/newcomer.py                  # all but the line that runs all the tests
    python tests/hardening/newcomer.py --with-tests     # that line too
    python tests/hardening/newcomer.py --keep FOLDER    # leave the clone there, to look at
"""

from __future__ import annotations

import argparse
import re
import shlex
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FENCE = re.compile(r"^```(\w*)\n(.*?)^```", re.MULTILINE | re.DOTALL)
OUTPUT = re.compile(r"<!-- (\w+):start -->.*?<!-- \1:end -->", re.DOTALL)
TEST_LINE = "pytest"


def commands_of(readme: str) -> list[str]:
    """Every command of the code blocks, in order. Blocks between ``start`` and ``end`` marks are output; of YAML blocks
    only the steps of a job (``- run:``) are commands."""
    return [line for kind, block in FENCE.findall(OUTPUT.sub("", readme)) for line in _lines(kind, block)]


def _lines(kind: str, block: str) -> Iterator[str]:
    for line in block.splitlines():
        if kind == "yaml":
            step = re.match(r"\s*- run: (.*)", line)
            if step:
                yield step[1]
        elif kind in ("", "sh", "bash") and line.strip():
            yield re.sub(r"\s{2,}#.*$", "", line)


def textconv_of(readme: str) -> tuple[str, str]:
    """The line for ``.gitattributes`` and the ``git config`` command that the README names in its text."""
    text = " ".join(readme.split())
    attributes = re.search(r"`(\S+ diff=hoopwright)`", text)
    command = re.search(r"`(git config diff\.hoopwright\.textconv [^`]+)`", text)
    if attributes is None or command is None:
        raise ValueError("the README no longer says how git shows values")
    return attributes[1], command[1]


def surroundings(home: Path) -> dict[str, str]:
    """All that the newcomer's shell knows."""
    return {"PATH": "/usr/local/bin:/usr/bin:/bin", "HOME": str(home), "LANG": "C.UTF-8", "PIP_NO_CACHE_DIR": "1",
            "PYTHONNOUSERSITE": "1", "PIP_DISABLE_PIP_VERSION_CHECK": "1"}


def follow(folder: Path, with_tests: bool) -> list[str]:
    """Clone into ``folder`` and run every command; what failed, each with its output."""
    clone, home = folder / "hoopwright", folder / "home"
    home.mkdir()
    subprocess.run(["git", "clone", "-q", "--no-hardlinks", ROOT.as_uri(), str(clone)], check=True)
    readme = (clone / "README.md").read_text()
    failed = []
    for command in commands_of(readme):
        if TEST_LINE in command and not with_tests:
            print(f"left out:  {command}", flush=True)
            continue
        failed += _run(command, clone, home)
    return [*failed, *_shows_values(readme, clone, home)]


def _run(command: str, clone: Path, home: Path) -> list[str]:
    began = time.monotonic()
    ran = subprocess.run(["bash", "-e", "-o", "pipefail", "-c", command], cwd=clone, env=surroundings(home),
                         capture_output=True, text=True, check=False)
    print(f"{'ok' if ran.returncode == 0 else 'FAILED':6} {time.monotonic() - began:6.1f} s  {command}", flush=True)
    return [] if ran.returncode == 0 else [f"{command}\n{ran.stdout}{ran.stderr}"]


def _shows_values(readme: str, clone: Path, home: Path) -> list[str]:
    """``git diff`` shows values instead of lines, set up as the README says, once the environment is entered."""
    attributes, command = textconv_of(readme)
    (clone / ".gitattributes").write_text(attributes + "\n")
    spec = clone / "specs" / "harbour-play" / "cage.yaml"
    spec.write_text(spec.read_text().replace("swell: 1.3", "swell: 1.4"))
    enter = f"export PATH={shlex.quote(str(clone / '.venv' / 'bin'))}:$PATH"
    return _run(f"{enter}; {command}; git --no-pager diff | grep -F '+shape.line.swell = 1.4'", clone, home)


def main() -> int:
    """Follow the README; 1 when a command of it failed."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    ask.add_argument("--with-tests", action="store_true", help="run the line that runs all the tests, too")
    ask.add_argument("--keep", type=Path, metavar="FOLDER", help="work in this new folder and leave it")
    options = ask.parse_args()
    if options.keep:
        options.keep.mkdir(parents=True)
        failed = follow(options.keep.resolve(), options.with_tests)
    else:
        with tempfile.TemporaryDirectory() as folder:
            failed = follow(Path(folder), options.with_tests)
    for report in failed:
        print(f"\n{report}", file=sys.stderr)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
