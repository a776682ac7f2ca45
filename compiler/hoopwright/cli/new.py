"""``hoopwright new``: a starter spec from a few measurements."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from hoopwright.cli import CLEAN, MISUSED, say
from hoopwright.source.quantity import QuantityError


def run(options: argparse.Namespace) -> int:
    """Print a starter, or write it to a file that does not exist yet."""
    from hoopwright.spec.starters import starter, starters

    known = dict(starters())
    if options.starter is None:
        for name, about in known.items():
            sys.stdout.write(f"{name}\n{_indented(about)}\n")
        return CLEAN
    if options.starter not in known:
        from hoopwright.spec.checking.nearest import nearest

        near = [name for name in known if options.starter and options.starter in name]
        near += [name for name in nearest(options.starter, known, 2) if name not in near]
        offer = f"near it: {', '.join(near)}" if near else f"there are: {', '.join(known)}"
        say.progress(f"there is no starter `{options.starter}`; {offer}")
        return MISUSED
    asked = {key: getattr(options, key) for key in ("title", "stature", "waist", "hip")}
    try:
        text = starter(options.starter, {key: value for key, value in asked.items() if value is not None})
    except QuantityError as problem:
        say.progress(say.of_option(problem, {f"--{key}": value for key, value in asked.items()}))
        return MISUSED
    return _deliver(text, options.output)


def _deliver(text: str, output: str | None) -> int:
    if output is None:
        sys.stdout.write(text)
        return CLEAN
    try:
        Path(output).parent.mkdir(parents=True, exist_ok=True)
        with Path(output).open("x", encoding="utf-8", newline="\n") as stream:
            try:
                stream.write(text)
                stream.flush()
            except OSError:
                Path(output).unlink()
                raise
    except FileExistsError:
        say.progress(f"{output}: this file exists and is left as it is; name another")
        return MISUSED
    except OSError as problem:
        say.progress(f"{output}: cannot be written ({(problem.strerror or str(problem)).lower()})")
        return MISUSED
    say.progress(f"wrote {output}; next: hoopwright build {output}")
    return CLEAN


def _indented(text: str) -> str:
    import textwrap

    return textwrap.indent(textwrap.fill(" ".join(text.split()), 92), "    ")
