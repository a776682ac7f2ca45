"""A difference in words: the values of each change as a maker reads them, and the lines of a plain text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from hoopwright.compare.model import Cell, Change, Difference, Section, Undone
from hoopwright.render.quantities import Printer, exact_length
from hoopwright.source.quantity import minutes_text
from hoopwright.supply.model import Salvage

TITLES: dict[Section, str] = {
    "shape": "Shape", "build": "How it is built", "parts": "Parts", "marks": "Marks on the tapes",
    "shopping": "Shopping list", "cost": "Cost", "hours": "Hours", "checks": "Checks that changed result",
    "tasks": "Tasks",
}
NOTHING = "nothing differs"


def cell_text(cell: Cell | None, p: Printer) -> str:
    """A value as it is printed; blank for none."""
    if cell is None:
        return ""
    value = cell.value
    if cell.dimension == "length" and isinstance(value, float):
        return p.length(value)
    if cell.dimension == "stock" and isinstance(value, float):
        return cell.also or exact_length(value, p.units)
    if cell.dimension == "mass" and isinstance(value, float):
        return p.mass(value)
    if cell.dimension == "minutes" and isinstance(value, float):
        return minutes_text(value)
    if isinstance(value, Decimal):
        return p.money(value)
    if isinstance(value, float):
        return f"{value:g}{cell.also}"
    if cell.dimension == "result" and cell.also:
        return f"{value} ({cell.also})"
    return value if isinstance(value, str) else "as the plan says"


def values(change: Change, p: Printer) -> tuple[str, str, str]:
    """What is told of, before, after. A part that came or went is told by its one value."""
    before, after = cell_text(change.before, p), cell_text(change.after, p)
    if change.section == "tasks":
        return _task_values(change, before, after)
    return change.what, before or "–", after or "–"


def shown(changes: Sequence[Change], p: Printer) -> tuple[Change, ...]:
    """The changes a rule shows: lengths that print alike are left out."""
    return tuple(change for change in changes
                 if change.kind != "changed" or change.section == "tasks"
                 or cell_text(change.before, p) != cell_text(change.after, p))


def left_out(found: Difference, p: Printer) -> str:
    """A line on the changes that print alike, blank when there is none."""
    count = len(found.changes) - len(shown(found.changes, p))
    return f"{count} length{'s' if count > 1 else ''} changed by less than is printed" if count else ""


def remeasured(changes: Sequence[Change]) -> Iterator[str]:
    """One line for all the tasks whose measures changed."""
    names = [change.name for change in changes if change.what == "measures"]
    if names:
        yield f"  to new measures: {', '.join(names)}"


def _task_values(change: Change, before: str, after: str) -> tuple[str, str, str]:
    cell = change.after or change.before
    title = cell.also if cell else ""
    if change.kind != "changed":
        return title, before or "–", after or "–"
    return f"{title}, {change.what}", before or "none", after or "none"


def undone_text(item: Undone) -> str:
    """Why a done task no longer holds."""
    return {"gone": "the design has no such task any more",
            "measures": "asks for other measures now",
            "rests on": f"rests on {item.what}"}[item.why]


def salvage_text(piece: Salvage, p: Printer) -> str:
    """What becomes of a piece."""
    if piece.fate == "recut":
        return f"is recut to {p.length(piece.need)}"
    if piece.fate == "becomes":
        return f"becomes {piece.serves}, recut to {p.length(piece.need)}"
    return "stays" if piece.fate == "kept" else "serves nowhere now; keep it as stock"


def mending_lines(found: Difference, p: Printer) -> list[str]:
    """What can be saved of the pieces cut, and what it costs."""
    if found.mending is None:
        return []
    lines = [f"{piece.part}, cut {p.length(piece.length)}: {salvage_text(piece, p)}"
             for piece in found.mending.pieces if piece.fate != "kept"]
    if found.mending.anew:
        parts = ", ".join(f"{piece.part} {p.length(piece.length)}" for piece in found.mending.anew)
        price = p.money(found.mending.cost)
        lines.append(f"to cut anew: {parts}; what must be bought for it "
                     + ("has no price" if price == "?" else f"costs at most {price}"))
    return lines


def text(found: Difference, labels: tuple[str, str], p: Printer) -> str:
    """The difference as plain text, section by section."""
    return "\n".join(_lines(found, labels, p)) + "\n"


def _lines(found: Difference, labels: tuple[str, str], p: Printer) -> Iterator[str]:
    yield f"{labels[0]} -> {labels[1]}"
    if found.empty:
        yield f"  {NOTHING}"
    for section, title in TITLES.items():
        changes = shown(found.of(section), p)
        if changes:
            yield f"\n{title}"
            plain = [change for change in changes if change.what != "measures"]
            yield from _table([(_head(change), *values(change, p)) for change in plain])
            yield from remeasured(changes)
    if left_out(found, p):
        yield f"\n{left_out(found, p)}"
    if found.undone:
        yield "\nDone work that no longer holds"
        yield from _table([(item.task, undone_text(item), "", "") for item in found.undone])
    more = mending_lines(found, p)
    if more:
        yield "\nWhat can be saved of what was cut"
        yield from (f"  {line}" for line in more)


def _head(change: Change) -> str:
    sign = {"added": "+ ", "dropped": "- ", "changed": "  "}[change.kind]
    return f"{sign}{change.name}".rstrip()


def _table(rows: Sequence[tuple[str, str, str, str]]) -> Iterator[str]:
    """Rows of part, what, before, after in columns."""
    wide = [max((len(row[k]) for row in rows), default=0) for k in range(3)]
    for head, what, before, after in rows:
        left = f"  {head:<{wide[0]}}  {what:<{wide[1]}}" if wide[0] else f"  {what:<{wide[1]}}"
        yield (f"{left}  {before:>{wide[2]}} -> {after}" if after else left).rstrip()
