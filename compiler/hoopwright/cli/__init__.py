"""Command line: arguments, exit codes, files; nothing else.

Exit codes: 0 clean; 1 a finding of error level, a failed check, or a stale plan; 2 wrong use or
unreadable input;
70 a defect in the compiler itself; 141 nobody read what it printed to the end (of findings the code is kept).
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence

CLEAN, FOUND, MISUSED, DEFECT, UNHEARD = 0, 1, 2, 70, 141
_THREADS = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
"""One thread for each process: our matrices are small, and several jobs must not fight for the processors."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    from hoopwright.cli.arguments import parser
    from hoopwright.cli.memory import look_seldom

    look_seldom()
    _speak_utf8()
    for name in _THREADS:  # before numpy is loaded
        os.environ.setdefault(name, "1")
    words = sys.argv[1:] if arguments is None else list(arguments)
    options = parser(words[0] if words else None).parse_args(words)
    try:
        _as_text(options)
        code: int = options.run(options)
        sys.stdout.flush()
    except BrokenPipeError:
        from hoopwright.cli.unheard import unheard

        unheard(sys.stdout)
        return UNHEARD
    except KeyboardInterrupt:
        return 130
    except Exception as problem:
        return _own_up(problem)
    return code


def _as_text(options: argparse.Namespace) -> None:
    """Words of the command line as text whatever the locale; names of files stay as the system takes them."""
    from hoopwright.cli.names import text_of

    for key, value in vars(options).items():
        if key not in ("specs", "spec", "output", "cages") and value is not None:
            if isinstance(value, str):
                setattr(options, key, text_of(value))
            elif isinstance(value, list):
                setattr(options, key, [text_of(word) if isinstance(word, str) else word for word in value])


def _speak_utf8() -> None:
    """Same bytes in every locale: output is UTF-8 with plain newlines."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")


def _own_up(problem: Exception) -> int:
    """A defect of the compiler: say so in two lines, with the place; the whole trace on request."""
    if os.environ.get("HOOPWRIGHT_TRACE"):
        raise problem
    from hoopwright.cli.defect import caught

    sys.stderr.write(f"defect in hoopwright itself: {caught(problem).said}\n")
    sys.stderr.write("please report it with the spec. HOOPWRIGHT_TRACE=1 shows the trace.\n")
    return DEFECT
