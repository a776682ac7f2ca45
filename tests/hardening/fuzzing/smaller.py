"""A case made smaller while it stays in the same trouble, so that it can become a test."""

from __future__ import annotations

import time
from collections.abc import Iterator

from fuzzing.cases import Case
from fuzzing.judging import Run, run

PATIENCE = 40.0
"""Seconds spent on one case."""


def smaller(case: Case, trouble: Run) -> Case:
    """The smallest case found by leaving lines and pieces of lines out."""
    end = time.monotonic() + PATIENCE
    if not case.damaged or trouble.sort.startswith("time over") or run(case).sort != trouble.sort:
        return case
    again = True
    while again and time.monotonic() < end:
        again = False
        for text in _less(case.text):
            if time.monotonic() > end:
                break
            if run(case.but(text)).sort == trouble.sort:
                case, again = case.but(text), True
                break
    return case


def _less(text: bytes) -> Iterator[bytes]:
    """The text without some of its lines, blocks first, then without an item within a line."""
    lines = text.splitlines(keepends=True)
    size = max(1, len(lines) // 2)
    while size:
        yield from (b"".join(lines[:at] + lines[at + size :]) for at in range(0, len(lines), size))
        size = size // 2
    yield from (b"".join(lines[:k] + lines[j:]) for k, j in _blocks(lines))


def _blocks(lines: list[bytes]) -> Iterator[tuple[int, int]]:
    """Each line with all that is indented below it."""
    depth = [len(line) - len(line.lstrip()) for line in lines]
    for k in range(len(lines)):
        end = k + 1
        while end < len(lines) and depth[end] > depth[k]:
            end += 1
        if end > k + 1:
            yield k, end
