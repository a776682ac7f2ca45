"""Checks that fail, for people: what is wrong, the line of the spec that decides it, and what to do."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.plan.model import Plan
from hoopwright.render.outcome import check_name
from hoopwright.render.quantities import Printer
from hoopwright.render.report import paragraph
from hoopwright.source.diagnostic import Diagnostic, Path, Severity, Span
from hoopwright.source.locate import place
from hoopwright.source.read import Document
from hoopwright.spec.check import Check

_HEM: Path = ("shape", "hem", "girth")
_HOOPS: Path = ("build", "hoops", "material")
_DECIDED: Mapping[str, Path] = MappingProxyType({
    "budget": ("limits", "budget"), "weight": ("limits", "weight"), "door": ("limits", "door"),
    "door-width": ("limits", "door"), "car": ("limits", "car"), "bag": ("limits", "bag"),
    "chair": ("limits", "chair"), "seat-room": ("limits", "chair"), "stride": _HEM, "hem-girth": _HEM,
    "floor": ("shape", "hem", "off_floor"), "body-contact": ("shape", "top_hoop"),
    "step-in": ("shape", "top_hoop"), "shelf": ("shape", "top_hoop"), "slack": ("build", "tapes"),
    "swing": ("shape", "ground_plan"), "balance": ("shape", "ground_plan"), "oval": ("build", "ties"),
    "tie-clear": ("build", "ties"), "feeding-gap": ("build", "channels"), "coil": ("materials",),
    "cord-ring": ("build", "cords"), "join-heat": ("build", "hoops", "join"), "join-peel": ("build", "hoops", "join"),
    "join-shear": ("build", "hoops", "join"), "join-stiff": ("build", "hoops", "join"),
})
"""The key that decides a check; it is the material of the hoops for all others."""


def failing_text(plan: Plan, document: Document, diagnostics: tuple[Diagnostic, ...]) -> str:
    """A paragraph for each check that fails. Where a measure was called unlikely, the checks are only named:
    they most likely fail because of it."""
    if not plan.failing:
        return ""
    doubted = [one for one in diagnostics
               if one.severity is Severity.WARNING and one.code.endswith("-unlikely")]
    if doubted:
        names = ", ".join(check_name(check, plan) for check in plan.failing)
        return (f"fails {names}\n  mend first what is called unlikely above ({doubted[0].code}): these may fail"
                " because of it\n")
    failing = sorted(plan.failing, key=lambda check: check.code != "body-contact")
    said = [_paragraph(check, plan, document) for check in failing]
    if len(said) > 1 and failing[0].code == "body-contact":
        said[0] += "  note: mend this first: a hoop that lies on the body upsets all below it\n"
    return "\n".join(said)


def _paragraph(check: Check, plan: Plan, document: Document) -> str:
    p = Printer.of(plan.spec)
    said = f"wanted: {check.says}, {p.check_limit(check)}; found: {p.check_value(check)}"
    found = Diagnostic(check.code, Severity.ERROR, said, document.file, _place(check, document),
                       help=check.remedy)
    return paragraph(f"fails {check_name(check, plan)}", found, document.text)


def _place(check: Check, document: Document) -> Span | None:
    """Where the spec decides a check; None when it is not in this file."""
    path = _DECIDED.get(check.code, _HOOPS)
    while path and path not in document.spans:
        path = path[:-1]
    if not path:
        return None
    span = place(path, document)
    return span if span.file == document.file else None
