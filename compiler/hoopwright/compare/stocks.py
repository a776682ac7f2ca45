"""One plan for each choice of materials a spec offers, ready to be laid side by side."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.compare.ranking import Labelled
from hoopwright.plan.model import Plan
from hoopwright.plan.substitutes import Trial
from hoopwright.source.diagnostic import Severity
from hoopwright.source.record import record


@record(frozen=True, slots=True)
class Choices:
    """Plans with their labels, in the maker's order, and what cannot be made at all, each with the reason."""

    plans: tuple[Labelled, ...]
    left_out: tuple[tuple[str, str], ...]


def stock_plans(label: str, plan: Plan | None, trials: Sequence[Trial]) -> Choices:
    """The plans of one compiled spec: its ``plan``, or one for each of several ``trials``
    (``cage.yaml: cane``)."""
    if len(trials) < 2:
        return Choices(((label, plan),) if plan is not None else (), ())
    plans: list[Labelled] = []
    left_out: list[tuple[str, str]] = []
    for trial in trials:
        name = f"{label}: {' with '.join(trial.spec.offered)}"
        if trial.plan is not None:
            plans.append((name, trial.plan))
            continue
        errors = (found.message for found in trial.findings if found.severity is Severity.ERROR)
        left_out.append((name, next(errors, "it cannot be planned")))
    return Choices(tuple(plans), tuple(left_out))
