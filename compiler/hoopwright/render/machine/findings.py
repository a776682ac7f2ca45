"""Assumed values and findings, for ``plan.json``."""

from __future__ import annotations

from hoopwright.render.machine.values import Json
from hoopwright.render.quantities import assumed_text
from hoopwright.source.diagnostic import Diagnostic
from hoopwright.spec.model import Spec


def assumed_json(spec: Spec) -> list[Json]:
    """The key ``assumed``: values as a maker would write them into the spec."""
    return [{"path": value.path, "value": assumed_text(value, spec.units), "reason": value.reason}
            for value in spec.assumed]


def findings_json(found: tuple[Diagnostic, ...]) -> list[Json]:
    """The key ``findings``. Lines and columns count from 1; both null when there is no text to show."""
    return [{
        "code": one.code,
        "severity": one.severity.value,
        "message": one.message,
        "file": one.file.replace("\\", "/").rpartition("/")[2],
        "line": one.span.line if one.span else None,
        "column": one.span.column if one.span else None,
        "notes": list(one.notes),
        "help": one.help,
    } for one in found]
