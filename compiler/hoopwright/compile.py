"""The whole compiler on one screen: a spec's text in, a plan and what there is to say about it out.

Every stage takes the values of the stages before it and returns ``(value, findings)``. Findings name keys;
``locate`` gives them their place in the text. A stage that finds an error ends the run after
it has said all it found.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import PurePath
from typing import TYPE_CHECKING

from hoopwright.source.diagnostic import Diagnostic, Finding, Span, failed
from hoopwright.source.fetch import Fetch, no_files
from hoopwright.source.record import record
from hoopwright.spec.document.choice import AS_WRITTEN, Choice

if TYPE_CHECKING:
    from hoopwright.plan.model import Plan
    from hoopwright.plan.substitutes import Trial
    from hoopwright.source.read import Document
    from hoopwright.spec.model import Spec, Units


@record(frozen=True, slots=True)
class Compiled:
    """What a run gave: ``plan`` is None when an error stopped it; ``diagnostics`` are in order of place.
    ``trials`` are the designs planned: one, or one for each choice of materials offered."""

    file: str
    document: Document | None
    spec: Spec | None
    plan: Plan | None
    diagnostics: tuple[Diagnostic, ...]
    trials: tuple[Trial, ...] = ()


def compile_spec(data: bytes, file: str, *, choice: Choice = AS_WRITTEN, fetch: Fetch = no_files,
                 units: Units | None = None, syntax_only: bool = False) -> Compiled:
    """Compile one spec.

    ``data`` is the file as read; ``file`` is the name diagnostics show. ``choice`` says which of its designs
    is meant; ``fetch`` reads the body files it names. ``units`` prints the plan in
    other units than the spec's. ``syntax_only`` stops after the spec stage. Raises
    nothing for any input; what is wrong with it is in ``diagnostics``.
    """
    from hoopwright.source.locate import locate
    from hoopwright.source.read import read
    from hoopwright.spec.document.joining import join
    from hoopwright.spec.reprinted import in_units
    from hoopwright.spec.resolve import resolve

    written, said = read(data, file)
    if written is None or failed(said):
        return Compiled(file, written, None, None, _ordered(said))
    joined = join(written, choice, fetch)
    document = joined.document
    diagnostics = [*said, *joined.diagnostics]
    if document is None:
        return Compiled(file, written, None, None, _ordered(diagnostics))

    def tell(findings: Iterable[Finding]) -> bool:
        """Place the findings in the text; true when they stop the run."""
        placed = [locate(finding, document) for finding in findings]
        diagnostics.extend(placed)
        return failed(tuple(placed))

    spec, found = resolve(document)
    if tell(found) or spec is None or syntax_only:
        return Compiled(file, document, spec, None, _ordered(diagnostics))
    spec = in_units(spec, units)

    from hoopwright.plan.substitutes import choose

    source, several = PurePath(file).name, bool(spec.substitutes)
    trials = tuple(_through(one, source, advice=not several) for one in (spec, *spec.substitutes))
    best, found = choose(trials)
    if several and best.plan is not None and best.plan.failing:
        rows = best.plan.substitutes
        best = _through(best.spec, source)
        best = replace(best, plan=best.plan and replace(best.plan, substitutes=rows))
    tell((*best.findings, *found))
    ordered = _ordered(diagnostics)
    plan = best.plan and replace(best.plan, findings=_renamed(ordered))
    return Compiled(file, document, best.spec, plan, ordered, trials)


def _through(spec: Spec, source: str, *, advice: bool = True) -> Trial:
    """One design through every stage; a stage that finds an error ends it. Without ``advice`` nobody works out what
    would mend a check that fails: one design of several is looked at for whether it passes."""
    from hoopwright.plan.assemble import assemble
    from hoopwright.plan.substitutes import Trial
    from hoopwright.shape.draw import draw
    from hoopwright.strength.assess import assess
    from hoopwright.supply.provide import provide
    from hoopwright.work.arrange import arrange

    shape, said = draw(spec)
    if shape is None or failed(said):
        return Trial(spec, None, said)
    assessment, found = assess(spec, shape, advice=advice)
    supply, more = provide(spec, shape)
    said = (*said, *found, *more)
    if assessment is None or supply is None or failed(said):
        return Trial(spec, None, said)
    work, found = arrange(spec, shape, supply, assessment)
    said = (*said, *found)
    if work is None or failed(said):
        return Trial(spec, None, said)
    return Trial(spec, assemble(source, spec, shape, assessment, supply, work), said)


def _ordered(diagnostics: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    return tuple(sorted(diagnostics, key=Diagnostic.sort_key))


def _renamed(diagnostics: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
    """The same diagnostics under the files' bare names, so that a plan does not depend on where it was
    built."""
    return tuple(
        replace(
            item,
            file=PurePath(item.file).name,
            span=item.span and _bare(item.span),
            labels=tuple(replace(label, span=_bare(label.span)) for label in item.labels),
        )
        for item in diagnostics
    )


def _bare(span: Span) -> Span:
    return span._replace(file=PurePath(span.file).name)
