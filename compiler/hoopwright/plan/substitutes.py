"""Several materials offered for one use: every one is planned, and the cheapest that passes is taken.

A design passes when no check of strength fails and none is left open that another design answers. Among those
the least sum of the shopping list decides, then the maker's order; a design that lacks the price of a main
material which others have comes after those. When none passes, the first that can be made is planned, and
said so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from hoopwright.plan.model import Plan, Substitute
from hoopwright.source.diagnostic import Finding, Path, Severity, note, warning
from hoopwright.source.printed import money_text
from hoopwright.source.record import record
from hoopwright.spec.model import Spec
from hoopwright.supply.saving import SMALL_STUFF

SET_CHECKS = ("set-closed", "set-worn")
"""The checks that judge whether a hoop keeps a bend from closing and wearing it."""


@record(frozen=True, slots=True)
class Trial:
    """One design taken through every stage: its plan, or the findings that stopped it."""

    spec: Spec
    plan: Plan | None
    findings: tuple[Finding, ...]


@record(frozen=True, slots=True)
class _Mark:
    """How a trial stands among the others, best first."""

    rank: int
    unpriced: bool
    total: Decimal
    place: int

    def key(self) -> tuple[int, bool, Decimal, int]:
        return (self.rank, self.unpriced, self.total, self.place)


def choose(trials: Sequence[Trial]) -> tuple[Trial, tuple[Finding, ...]]:
    """The trial to plan, with the table of all in its plan, and what the maker must be told about the choice.

    With one trial nothing is said. When none has a plan, the first one comes back.
    """
    marks = _marks(trials)
    order = sorted(range(len(trials)), key=lambda place: marks[place].key())
    best = trials[order[0]]
    if len(trials) == 1 or best.plan is None:
        return trials[0] if best.plan is None else best, ()
    rows = tuple(_row(trial, mark, best, marks[order[0]]) for trial, mark in zip(trials, marks, strict=True))
    return replace(best, plan=replace(best.plan, substitutes=rows)), (_told(best.spec, rows),)


def _marks(trials: Sequence[Trial]) -> tuple[_Mark, ...]:
    plans = [trial.plan for trial in trials if trial.plan is not None]
    open_everywhere = frozenset.intersection(*(_open(plan) for plan in plans)) if plans else frozenset()
    unpriced_everywhere = (
        frozenset.intersection(*(_unpriced(plan) for plan in plans)) if plans else frozenset()
    )
    found = []
    for place, trial in enumerate(trials):
        if trial.plan is None:
            found.append(_Mark(3, True, Decimal(0), place))
            continue
        rank = 2 if failing(trial.plan) else 1 if _open(trial.plan) - open_everywhere else 0
        unpriced = bool(_unpriced(trial.plan) - unpriced_everywhere)
        found.append(_Mark(rank, unpriced, trial.plan.supply.cost.total if rank < 2 else Decimal(0), place))
    return tuple(found)


def failing(plan: Plan) -> tuple[str, ...]:
    """The checks of strength that fail, ``sag (H6)``."""
    return tuple(
        f"{check.code} ({check.part})" if check.part else check.code
        for check in plan.assessment.checks
        if check.result == "fails"
    )


def _open(plan: Plan) -> frozenset[str]:
    return frozenset(check.code for check in plan.assessment.checks if check.result == "not assessed")


def _unpriced(plan: Plan) -> frozenset[str]:
    """Main materials without a price."""
    return frozenset(
        line.item for line in plan.supply.shopping if line.cost is None and line.kind not in SMALL_STUFF
    )


def _row(trial: Trial, mark: _Mark, best: Trial, first: _Mark) -> Substitute:
    reason = _reason(trial, mark, first, trial is best)
    plan = trial.plan
    if plan is None:
        return Substitute(trial.spec.offered, trial.spec.build.hoops.join.name, "cannot be made", reason)
    return Substitute(
        trial.spec.offered,
        trial.spec.build.hoops.join.name,
        "fails" if mark.rank == 2 else "passes",
        reason,
        chosen=trial is best,
        cost=plan.supply.cost.total,
        partial=plan.supply.cost.partial,
        weight=plan.assessment.weights.total,
        stiffness=next((m.ei_weak for m in plan.assessment.materials), None),
        set_used=used_share(plan, SET_CHECKS),
        door_used=used_share(plan, ("door",)),
        minutes=plan.work.minutes,
    )


def used_share(plan: Plan, codes: tuple[str, ...]) -> float | None:
    """The largest share of a limit that these checks of strength use; None when none was assessed."""
    shares = [
        check.value / check.limit
        for check in plan.assessment.checks
        if check.code in codes and check.value is not None and check.limit
    ]
    return max(shares, default=None)


def _reason(trial: Trial, mark: _Mark, first: _Mark, chosen: bool) -> str:
    if trial.plan is None:
        errors = (found.message for found in trial.findings if found.severity is Severity.ERROR)
        return next(errors, "it cannot be planned")
    if mark.rank == 2:
        return f"fails {', '.join(failing(trial.plan))}"
    if chosen:
        return "the cheapest that passes" if mark.rank == 0 else "the cheapest of those that do not fail"
    if mark.rank == 1:
        return f"not assessed: {', '.join(sorted(_open(trial.plan)))}"
    if mark.unpriced and not first.unpriced:
        return f"no price is known for {', '.join(sorted(_unpriced(trial.plan)))}"
    dearer = mark.total - first.total
    if dearer > 0:
        return f"costs {money_text(dearer, trial.spec.currency or '')} more"
    return "costs the same and is listed later"


def _told(spec: Spec, rows: tuple[Substitute, ...]) -> Finding:
    """Which were tried, which is taken, and why not the others."""
    listed = tuple(f"{name_of(row)}: {row.reason}" for row in rows)
    chosen = next(row for row in rows if row.chosen)
    path: Path = ("build", "hoops", "material")
    if "build.hem_band.material" in spec.stated and chosen.offered == (_band(spec),):
        path = ("build", "hem_band", "material")
    if chosen.result == "fails":
        return warning(
            "substitute-none-passes",
            path,
            f"none of {len(rows)} choices offered passes every check of strength; this is the plan of "
            f"{name_of(chosen)}",
            "offer a stiffer material, or change what the failing checks say",
            notes=listed,
        )
    return note(
        "substitute-chosen",
        path,
        f"{name_of(chosen)} is taken of {len(rows)} choices offered",
        "write one name alone to settle it yourself",
        notes=listed,
    )


def _band(spec: Spec) -> str:
    return spec.build.band.material.name if spec.build.band is not None else ""


def name_of(row: Substitute) -> str:
    """`strip`, or `strip` with `calico`."""
    return " with ".join(f"`{name}`" for name in row.offered)
