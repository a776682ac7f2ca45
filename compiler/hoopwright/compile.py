"""The whole compiler on one screen: a spec's text in, a plan and what there is to say about it out.

Every stage takes the values of the stages before it and returns ``(value, findings)``. Findings name keys;
``locate`` gives them their place in the text. A stage that finds an error ends the run after
it has said all it found.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import PurePath
from typing import TYPE_CHECKING

from hoopwright.source.diagnostic import Diagnostic, Finding, Span, failed
from hoopwright.source.fetch import Fetch, no_files
from hoopwright.spec.choice import AS_WRITTEN, Choice

if TYPE_CHECKING:
    from hoopwright.plan.model import Plan
    from hoopwright.source.read import Document
    from hoopwright.spec.model import Spec, Units


@dataclass(frozen=True, slots=True)
class Compiled:
    """What a run gave: ``plan`` is None when an error stopped it; ``diagnostics`` are in order of place."""


    file: str
    document: Document | None
    spec: Spec | None
    plan: Plan | None
    diagnostics: tuple[Diagnostic, ...]


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
    from hoopwright.spec.joining import join
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

    from hoopwright.plan.assemble import assemble
    from hoopwright.shape.draw import draw
    from hoopwright.strength.assess import assess
    from hoopwright.supply.provide import provide
    from hoopwright.work.arrange import arrange

    stopped = Compiled(file, document, spec, None, ())
    shape, found = draw(spec)
    if tell(found) or shape is None:
        return replace(stopped, diagnostics=_ordered(diagnostics))
    assessment, found = assess(spec, shape)
    supply, more = provide(spec, shape)
    if tell((*found, *more)) or assessment is None or supply is None:
        return replace(stopped, diagnostics=_ordered(diagnostics))
    work, found = arrange(spec, shape, supply)
    if tell(found) or work is None:
        return replace(stopped, diagnostics=_ordered(diagnostics))

    ordered = _ordered(diagnostics)
    source = PurePath(file).name
    plan = assemble(source, spec, shape, assessment, supply, work, _renamed(ordered))
    return Compiled(file, document, spec, plan, ordered)


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
    return replace(span, file=PurePath(span.file).name)
