"""The stages speak of a cage; a plan speaks of what it is about, by the word of :mod:`hoopwright.spec.family`.

Parts keep their names (``cage`` is the part that a check of the whole is about): they are keys, not prose. So
do methods and sources: what they say holds of cages. A half hoop is a steel in the trade; one of cane is a hoop.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from hoopwright.spec.check import Check
from hoopwright.spec.family import family_of
from hoopwright.spec.model import Spec
from hoopwright.strength.model import Assessment
from hoopwright.work.model import Condition, Task, Work

_CAGE = re.compile(r"\bcage\b")
_STEEL = re.compile(r"(?<!spring )(?<!mild )\bsteel(?=s?\b)")


def named(spec: Spec, text: str) -> str:
    """A stage's words with the word of this design's family in place of ``cage``, and no steel that is none."""
    said = _CAGE.sub(family_of(spec), text)
    stock = spec.build.hooped
    return said if stock is None or stock.material.grade.metal else _STEEL.sub("hoop", said)


def named_checks(spec: Spec, checks: Iterable[Check]) -> tuple[Check, ...]:
    """Checks whose prose speaks of the design by its word."""
    if family_of(spec) == "cage":
        return tuple(checks)
    return tuple(replace(check, remedy=named(spec, check.remedy), says=named(spec, check.says))
                 for check in checks)


def named_assessment(spec: Spec, found: Assessment) -> Assessment:
    """The assessment, its verdict's reasons and its checks in the design's words."""
    if family_of(spec) == "cage":
        return found
    return replace(found, checks=named_checks(spec, found.checks),
                   reasons=tuple(named(spec, reason) for reason in found.reasons))


def named_work(spec: Spec, work: Work) -> Work:
    """The work, its titles, what to change at a stop and why a session ends in the design's words."""
    if family_of(spec) == "cage":
        return work
    return replace(
        work,
        tasks=tuple(_task(spec, task) for task in work.tasks),
        sessions=tuple(replace(session, ends=named(spec, session.ends)) for session in work.sessions),
    )


def _task(spec: Spec, task: Task) -> Task:
    return replace(task, title=named(spec, task.title),
                   conditions=tuple(_condition(spec, one) for one in task.conditions))


def _condition(spec: Spec, condition: Condition) -> Condition:
    return replace(condition, mend=named(spec, condition.mend))
