"""From a spec as written and a choice to the one document that is built: variant, body, proportions.

The order is fixed: the variant is laid over the spec, then the other wearer, then bodies are fetched from
their files, then lengths are regraded. Fittings and progress belong to the cage made for the spec's own
wearer: with another wearer they are left out, unless the variant states its own.
"""

from __future__ import annotations

from hoopwright.source.diagnostic import Diagnostic, Severity, Span, error
from hoopwright.source.fetch import Fetch, no_files
from hoopwright.source.locate import locate, place
from hoopwright.source.overlay import lay, part, put, with_values, without
from hoopwright.source.read import Document
from hoopwright.source.record import record
from hoopwright.spec.checking.nearest import offer
from hoopwright.spec.document.body import NoBody, body_file, with_body
from hoopwright.spec.document.canonical import canonical
from hoopwright.spec.document.choice import AS_WRITTEN, Choice
from hoopwright.spec.document.regrade import REGRADE, regraded

VARIANTS = "variants"
OF_ONE_CAGE = ("fittings", "progress")


@record(frozen=True, slots=True)
class Joined:
    """The document to build, None when it cannot be had, and what was said."""

    document: Document | None
    diagnostics: tuple[Diagnostic, ...]


def join(document: Document, choice: Choice = AS_WRITTEN, fetch: Fetch = no_files) -> Joined:
    """The document that ``choice`` makes of a spec. Pure: other files come through ``fetch`` alone."""
    try:
        chosen = _with_variant(document, choice)
        base = with_body(document, fetch)
        chosen = _with_wearer(chosen, choice, fetch)
    except NoBody as stop:
        return Joined(None, stop.diagnostics)
    if choice.title:
        chosen = with_values(chosen, {("title",): choice.title})
    if choice.regrade:
        chosen = with_values(chosen, {(REGRADE,): choice.regrade})
    if _measures(chosen) != _measures(base):
        chosen = _of_another_wearer(document, chosen, choice)
    chosen, told = regraded(chosen, base)
    return Joined(chosen, tuple(locate(finding, chosen) for finding in told))


def _with_variant(document: Document, choice: Choice) -> Document:
    """The variant's keys laid over the spec's. Raises NoBody for a variant that is not there."""
    if not choice.variant:
        return document
    known = document.value.get(VARIANTS)
    names = tuple(known) if isinstance(known, dict) else ()
    if choice.variant not in names:
        raise NoBody(_unknown(document, choice, names))
    base = without(document, VARIANTS)
    try:
        return lay(base, part(document, (VARIANTS, choice.variant)))
    except KeyError:
        raise NoBody(locate(error("value-wrong-type", (VARIANTS, choice.variant),
                                  f"`{choice.variant}` takes keys and values",
                                  "write the keys that differ under it"), document)) from None


def _with_wearer(document: Document, choice: Choice, fetch: Fetch) -> Document:
    """The chosen body in the wearer's place, or the body that the wearer is taken from."""
    if not choice.wearer:
        return with_body(document, fetch)
    at = choice.places.get("wearer") or Span(choice.file or document.file, 1, 1, 1, 1)
    body = body_file(choice.wearer, at, fetch, (document.file,))
    return put(document, ("wearer",), part(body, ("wearer",)))


def _of_another_wearer(written: Document, chosen: Document, choice: Choice) -> Document:
    """Fittings and progress that the spec states for its own wearer are left out."""
    variant = (written.value.get(VARIANTS) or {}).get(choice.variant) if choice.variant else None
    own = variant if isinstance(variant, dict) else {}
    return without(chosen, *(key for key in OF_ONE_CAGE if key not in own))


def _measures(document: Document) -> object:
    """What the wearer measures, whatever units that is written in."""
    wearer = document.value.get("wearer")
    if not isinstance(wearer, dict):
        return wearer
    return canonical({"wearer": {key: value for key, value in wearer.items() if key != "name"}})


def _unknown(document: Document, choice: Choice, names: tuple[str, ...]) -> Diagnostic:
    mend = offer(choice.variant, names, "variant") if names else (
        f"this spec has no variants: leave the name out, or write `variants: {{{choice.variant[:40]}: ...}}` with"
        " the keys that differ")
    at = choice.places.get("variant") or place((VARIANTS,), document, at_key=True)
    return Diagnostic("variant-unknown", Severity.ERROR, f"no variant is called `{choice.variant[:60]}`",
                      at.file, at, (), (), mend)
