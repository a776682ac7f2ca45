"""What a run on one spec came to, for the formats that report on many specs in one document."""

from __future__ import annotations

from hoopwright.plan.model import Plan
from hoopwright.plan.naming import named
from hoopwright.render.quantities import Printer
from hoopwright.source.diagnostic import Diagnostic, Severity
from hoopwright.source.record import record
from hoopwright.spec.check import Check


@record(frozen=True, slots=True)
class Outcome:
    """One spec: its file, what it is called in a list, its diagnostics, and its plan when there is one."""

    file: str
    label: str
    diagnostics: tuple[Diagnostic, ...]
    plan: Plan | None = None

    @property
    def errors(self) -> tuple[Diagnostic, ...]:
        """What stopped it."""
        return tuple(one for one in self.diagnostics if one.severity is Severity.ERROR)

    @property
    def checks(self) -> tuple[Check, ...]:
        """The plan's checks, none without a plan."""
        return self.plan.checks if self.plan is not None else ()


def check_name(check: Check, plan: Plan) -> str:
    """A check and its part, the whole by the word of the design's family: ``sag H3``, ``door-width pair``."""
    return f"{check.code} {named(plan.spec, check.part)}".strip()


def check_said(check: Check, plan: Plan) -> str:
    """A check in one line: what was found, what is wanted, and the remedy."""
    p = Printer.of(plan.spec)
    said = f"{check.says}: found {p.check_value(check)}, wanted {p.check_limit(check)}"
    return f"{said}; {check.remedy}" if check.remedy else said
