"""The table of materials offered for one use: how each fares, and why one was taken."""

from __future__ import annotations

from hoopwright.plan.model import Plan, Substitute
from hoopwright.render.quantities import Printer
from hoopwright.source.printed import share_text
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class SubstituteRow:
    """One choice in print; a dash stands for what is not known. ``set`` and ``door`` are shares of what is
    allowed."""

    name: str
    chosen: bool
    join: str
    cost: str
    weight: str
    stiffness: str
    set: str
    door: str
    minutes: str
    result: str
    reason: str


def substitute_rows(plan: Plan, p: Printer) -> tuple[SubstituteRow, ...]:
    """A row for each choice offered, in the maker's order."""
    return tuple(substitute_row(row, p) for row in plan.substitutes)


def substitute_row(row: Substitute, p: Printer) -> SubstituteRow:
    """One choice as a maker reads it."""
    cost = "–" if row.cost is None else p.money(row.cost) + (", in part" if row.partial else "")
    return SubstituteRow(
        name=" with ".join(row.offered),
        chosen=row.chosen,
        join=row.join,
        cost=cost,
        weight="–" if row.weight is None else p.mass(row.weight),
        stiffness="–" if row.stiffness is None else f"{row.stiffness:.3g} N m2",
        set=_share(row.set_used),
        door=_share(row.door_used),
        minutes="–" if row.minutes is None else p.minutes(row.minutes),
        result=row.result,
        reason=row.reason.replace("`", ""),
    )


def _share(used: float | None) -> str:
    return "–" if used is None else share_text(round(used, 2))
