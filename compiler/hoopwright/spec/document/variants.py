"""Variants: a spec with some keys laid over it. Each is checked here as a whole spec, chosen or not."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from hoopwright.source.diagnostic import Finding, Path, warning
from hoopwright.source.overlay import merged
from hoopwright.spec.checking.references import reference_findings
from hoopwright.spec.checking.schema import load_schema
from hoopwright.spec.checking.validate import validate
from hoopwright.spec.document.canonical import canonical

_APART = ("variants",)


def variant_findings(value: object, known: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """What is wrong with the variants of a spec, beyond the findings ``known`` about the spec itself."""
    variants = value.get("variants") if isinstance(value, dict) else None
    if not isinstance(value, dict) or not isinstance(variants, dict):
        return ()
    base = {key: item for key, item in value.items() if key not in _APART}
    allowed = load_schema("spec")["$defs"]["variant"]["properties"]
    found: list[Finding] = []
    for name, over in variants.items():
        if isinstance(over, dict):
            laid = {key: item for key, item in over.items() if key in allowed}
            whole = merged(base, laid)
            said = (*validate(whole), *reference_findings(whole))
            found.extend(_moved(finding, name) for finding in said
                         if finding not in known and _within(finding.path, laid))
            if laid == over and _said(whole, laid) == _said(base, laid):
                found.append(_idle(name))
    return tuple(found)


def _said(value: dict[str, Any], keys: Iterable[str]) -> dict[str, Any]:
    """What a spec says under some of its outermost keys, whatever units that is written in."""
    return canonical({key: value[key] for key in keys if key in value})


def _idle(name: str) -> Finding:
    """A variant that says only what the spec says."""
    return warning("variant-changes-nothing", ("variants", name),
                   f"the variant `{name[:60]}` says nothing that the spec does not say",
                   "write the keys that differ under it, or delete it", at_key=True)


def _within(path: Path, over: Any) -> bool:
    """Whether a path leads through what the variant itself says."""
    for key in path:
        inside = key in over if isinstance(over, dict) else (
            isinstance(over, list) and isinstance(key, int) and key < len(over))
        if not inside:
            return False
        over = over[key]
    return bool(path)


def _moved(finding: Finding, name: str) -> Finding:
    """The finding at its place within the variant."""
    return replace(finding, path=("variants", name, *finding.path), related=())
