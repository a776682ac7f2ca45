"""A Markdown summary for a job's page: a row for each design, then what has to change."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from hoopwright.render.escape import code_text, markdown_text, prose_text
from hoopwright.render.outcome import Outcome, check_name, check_said
from hoopwright.render.quantities import Printer
from hoopwright.render.words import sentence
from hoopwright.source.diagnostic import Severity

_SHOWN = 50


def summary(outcomes: Sequence[Outcome]) -> str:
    """The page. Names of the maker's are escaped."""
    return "\n".join(_page(outcomes)) + "\n"


def _page(outcomes: Sequence[Outcome]) -> Iterator[str]:
    passing = sum(_passes(outcome) for outcome in outcomes)
    yield f"### {passing} of {len(outcomes)} design{'s' if len(outcomes) != 1 else ''} pass"
    yield ""
    if outcomes:
        yield "| Design | Result | Cost, with reserve | Work | Weight | Findings |"
        yield "| --- | --- | ---: | ---: | ---: | --- |"
        for outcome in outcomes:
            yield f"| {' | '.join(_row(outcome))} |"
    faults = [line for outcome in outcomes for line in _faults(outcome)]
    if faults:
        yield ""
        yield "#### To change"
        yield ""
        yield from faults[:_SHOWN]
        if len(faults) > _SHOWN:
            yield f"- and {len(faults) - _SHOWN} more"


def _passes(outcome: Outcome) -> bool:
    return outcome.plan is not None and not outcome.plan.failing and not outcome.errors


def _row(outcome: Outcome) -> tuple[str, ...]:
    plan = outcome.plan
    counts = [(kind, sum(found.severity is kind for found in outcome.diagnostics)) for kind in Severity]
    findings = ", ".join(f"{number} {kind.value}{'s' if number > 1 else ''}" for kind, number in counts
                         if number)
    name = markdown_text(outcome.label)
    if plan is None:
        return name, "**error**" if outcome.errors else "in order", "", "", "", findings
    p, cost = Printer.of(plan.spec), plan.supply.cost
    failing = ", ".join(check_name(check, plan) for check in plan.failing)
    result = f"**does not pass**: {markdown_text(failing)}" if failing else plan.assessment.verdict
    money = p.money(cost.total + cost.reserve) if cost.currency else ""
    partial = " (partial)" if cost.partial and money else ""
    return (name, result, f"{markdown_text(money)}{partial}", p.minutes(plan.work.minutes),
            p.mass(plan.assessment.weights.total), findings)


def _faults(outcome: Outcome) -> Iterator[str]:
    for found in outcome.errors:
        place = f"{found.file}:{found.span.line}" if found.span else found.file
        help = f". {prose_text(sentence(found.help))}" if found.help else ""
        yield f"- {code_text(place)} {code_text(found.code)} {prose_text(found.message)}{help}"
    for check in outcome.checks:
        if check.result == "fails" and outcome.plan is not None:
            said = prose_text(check_said(check, outcome.plan))
            yield f"- {markdown_text(outcome.label)}: **{markdown_text(check_name(check, outcome.plan))}** {said}"
