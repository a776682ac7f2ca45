"""A difference as Markdown, for a review comment: the outcome first, then a table to each section."""

from __future__ import annotations

from collections.abc import Iterator

from hoopwright.compare.model import Change, Difference
from hoopwright.compare.words import (
    NOTHING,
    TITLES,
    left_out,
    mending_lines,
    remeasured,
    shown,
    undone_text,
    values,
)
from hoopwright.render.escape import code_text, markdown_text
from hoopwright.render.quantities import Printer

_FOLDED = ("marks", "tasks")
"""Sections of many rows, folded away until they are opened."""
_FIRST = (("shape", "verdict"), ("cost", "with reserve"), ("hours", "in all"),
          ("shape", "weight of the cage"))


def markdown(found: Difference, labels: tuple[str, str], p: Printer) -> str:
    """The difference as Markdown. Names of the maker's are escaped."""
    blocks = [f"**{markdown_text(labels[0])} → {markdown_text(labels[1])}**"]
    if found.empty:
        blocks.append(f"{NOTHING[:1].upper()}{NOTHING[1:]}.")
    else:
        blocks.append(_summary(found, p))
    for section, title in TITLES.items():
        changes = shown(found.of(section), p)
        if changes:
            blocks.append(_section(title, changes, p, folded=section in _FOLDED))
    blocks.append(f"*{left_out(found, p)}*" if left_out(found, p) else "")
    blocks.extend(_undone(found, p))
    return "\n\n".join(block for block in blocks if block) + "\n"


def _summary(found: Difference, p: Printer) -> str:
    """One line: what a reviewer asks first."""
    said = []
    for section, what in _FIRST:
        for change in found.changes:
            if (change.section, change.what) == (section, what):
                _, before, after = values(change, p)
                said.append(f"{what} {markdown_text(before)} → {markdown_text(after)}")
    results = found.of("checks")
    if results:
        said.append(f"{len(results)} check{'s' if len(results) > 1 else ''} changed")
    if found.undone:
        said.append(f"**{len(found.undone)} done task{'s' if len(found.undone) > 1 else ''} undone**")
    return "; ".join(said)


def _section(title: str, changes: tuple[Change, ...], p: Printer, *, folded: bool) -> str:
    rows = ["| | What | Before | After |", "| --- | --- | ---: | ---: |"]
    for change in (one for one in changes if one.what != "measures"):
        sign = {"added": "+ ", "dropped": "− ", "changed": ""}[change.kind]
        cells = (f"{sign}{change.name}".strip(), *values(change, p))
        rows.append(f"| {' | '.join(markdown_text(cell) for cell in cells)} |")
    table = "\n".join(rows) if len(rows) > 2 else ""
    table = "\n\n".join(filter(None, (table, *(markdown_text(line.strip()) for line in remeasured(changes)))))
    if folded:
        return f"<details><summary>{title} ({len(changes)})</summary>\n\n{table}\n\n</details>"
    return f"#### {title}\n\n{table}"


def _undone(found: Difference, p: Printer) -> Iterator[str]:
    if found.undone:
        yield "#### Done work that no longer holds"
        yield "\n".join(f"- {code_text(item.task)}: {markdown_text(undone_text(item))}"
                        for item in found.undone)
    lines = mending_lines(found, p)
    if lines:
        yield "#### What can be saved of what was cut"
        yield "\n".join(f"- {markdown_text(line)}" for line in lines)
