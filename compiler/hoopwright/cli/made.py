"""What is made of each spec named: in this process one after the other, or by several at once."""

from __future__ import annotations

from collections.abc import Callable, Generator, Sequence
from functools import partial
from typing import TYPE_CHECKING

from hoopwright.cli import CLEAN, DEFECT, FOUND, say
from hoopwright.cli.defect import Defect, attempt
from hoopwright.cli.memory import clear_away
from hoopwright.cli.specs import SpecFile
from hoopwright.source.diagnostic import Diagnostic, failed
from hoopwright.source.record import record

if TYPE_CHECKING:
    from hoopwright.compile import Compiled
    from hoopwright.plan.model import Plan
    from hoopwright.plan.substitutes import Trial
    from hoopwright.spec.model import Units


@record(frozen=True, slots=True)
class Made:
    """What one spec came to: its exit code, a line that says so, and the plan's ``files`` (None when there is no
    plan, or no files are wanted). ``plan`` and ``trials`` are here only where they are asked for. ``failing`` tells
    people of the checks that fail."""

    diagnostics: tuple[Diagnostic, ...]
    code: int
    outcome: str
    plan: Plan | None = None
    trials: tuple[Trial, ...] = ()
    files: dict[str, str] | None = None
    failing: str = ""


def checking(*, plans: bool, syntax_only: bool = False) -> Callable[[SpecFile], Made]:
    """The work of finding out; ``plans``: hand the plans back too."""
    return partial(_checked, plans=plans, syntax_only=syntax_only)


def building(*, plans: bool, units: Units | None, cards: bool) -> Callable[[SpecFile], Made]:
    """The work of making a plan's files."""
    return partial(_built, plans=plans, units=units, cards=cards)


def each(work: Callable[[SpecFile], Made], specs: Sequence[SpecFile], jobs: int) -> Generator[Made]:
    """What each spec came to, in their order, by as many processes as ``jobs`` says; announced on stderr when
    its turn has come. A defect is what its spec came to, and keeps no other from being made."""
    results: Generator[Made | Defect]
    if min(jobs, len(specs)) > 1:
        from hoopwright.cli.jobs import several

        results = several(work, specs, min(jobs, len(specs)))
    else:
        results = (attempt(work, spec) for spec in specs)
    try:
        for number, spec in enumerate(specs, 1):
            if len(specs) > 1:
                say.progress(f"[{number}/{len(specs)}] {spec.label}")
            result = next(results)
            if number < len(specs):
                clear_away()
            yield _owned(result, spec) if isinstance(result, Defect) else result
    finally:
        results.close()


def _owned(defect: Defect, spec: SpecFile) -> Made:
    return Made((defect.diagnostic(spec.shown),), DEFECT, "a defect in hoopwright itself")


def _checked(spec: SpecFile, *, plans: bool, syntax_only: bool) -> Made:
    return _made(spec.compiled(syntax_only=syntax_only), plans)


def _built(spec: SpecFile, *, plans: bool, units: Units | None, cards: bool) -> Made:
    from hoopwright.cli.files import rendered

    result = spec.compiled(units=units)
    files = None if result.plan is None else rendered(result.plan, cards=cards)
    return _made(result, plans, files)


def _made(result: Compiled, plans: bool, files: dict[str, str] | None = None) -> Made:
    return Made(
        result.diagnostics, code_of(result), outcome(result),
        result.plan if plans else None, result.trials if plans else (), files, _failing(result),
    )


def _failing(result: Compiled) -> str:
    """The checks that fail, each with its line of the spec and what to do; empty when all hold."""
    if result.plan is None or result.document is None or not result.plan.failing:
        return ""
    from hoopwright.render.failing import failing_text

    return failing_text(result.plan, result.document, result.diagnostics)


def code_of(result: Compiled) -> int:
    """Exit code of one compiled spec: 1 for errors or failed checks."""
    broken = failed(result.diagnostics) or (result.plan is not None and bool(result.plan.failing))
    return FOUND if broken else CLEAN


def outcome(result: Compiled) -> str:
    """One line that says how it went: failed checks by name, then the count of findings."""
    counted = say.count(result.diagnostics)
    if result.plan is None:
        return counted or "the spec is in order"
    from hoopwright.render.outcome import check_name

    failing = ", ".join(check_name(check, result.plan) for check in result.plan.failing)
    head = f"does not pass: {failing}" if failing else result.plan.assessment.verdict
    return f"{head} ({counted})" if counted else head
