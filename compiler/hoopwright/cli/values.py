"""``hoopwright values``: a spec as sorted lines, for git's textconv."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from hoopwright.cli import CLEAN, MISUSED, say
from hoopwright.cli.names import visible_lines


def run(options: argparse.Namespace) -> int:
    """Print the lines. A text that cannot be read as a spec is printed as it is, so that a diff still shows
    it."""
    from hoopwright.compare.flatten import flattened
    from hoopwright.source.read import read

    try:
        if Path(options.spec).is_dir():
            say.progress(f"{options.spec}: this is a folder; name one spec in it")
            return MISUSED
        data = sys.stdin.buffer.read() if options.spec == "-" else Path(options.spec).read_bytes()
    except OSError as problem:
        say.progress(f"{options.spec}: cannot be read ({(problem.strerror or str(problem)).lower()})")
        return MISUSED
    document, _ = read(data, options.spec)
    text = flattened(document) if document is not None else data.decode("utf-8", errors="replace")
    sys.stdout.write(visible_lines(text))
    return CLEAN
